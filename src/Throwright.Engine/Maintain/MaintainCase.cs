using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Maintain;

/// <summary>What the inspection of one run goes by. SI units.</summary>
public sealed record MaintainCase
{
    public required Run Run { get; init; }

    /// <summary>Limits of the two knob places; null: not worked out.</summary>
    public (double Least, double Most)? KnobAtPush { get; init; }
    public (double Least, double Most)? KnobAtPull { get; init; }
    public (double Least, double Most)? LostMotion { get; init; }
    public (double Least, double Most)? Pull { get; init; }

    /// <summary>Standard error of reading a length with a tape, m, and a force with a spring scale, N.</summary>
    public double LengthError { get; init; }
    public double ForceError { get; init; }
    public required EquatableList<AsBuilt> History { get; init; }
}
