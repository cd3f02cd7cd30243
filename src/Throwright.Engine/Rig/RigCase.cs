using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Rig;

/// <summary>A number that is measured on the aircraft.</summary>
public enum RigReading
{
    KnobAtPush,
    KnobAtPull,
    TipGap,
    LostMotion,
    Sweep,
    Pull,
    Push,
}

/// <summary>What may differ on the aircraft from the description.</summary>
public enum RigUnknown
{
    /// <summary>Swivel along the wire, away from the tip, m.</summary>
    Swivel,

    /// <summary>Conduit's end along the wire, away from the arm, m.</summary>
    Anchor,
    Radius,
    LostMotion,
    Sweep,
    Friction,
    Load,
}

/// <summary>One reading: what is expected, how well it is measured, and what was read.</summary>
/// <param name="Error">Standard uncertainty of the measurement, SI.</param>
/// <param name="Measured">SI; null: not measured.</param>
public sealed record ReadingOf(RigReading Reading, string Name, QuantityKind Kind, double Error, double? Measured);

/// <summary>One unknown with what was known of it before: a standard deviation about the description.</summary>
public sealed record UnknownOf(RigUnknown Unknown, string Name, QuantityKind Kind, double Before);

/// <summary>Everything the fit of one set of readings needs. SI units.</summary>
public sealed record RigCase
{
    public required EquatableList<ReadingOf> Readings { get; init; }
    public required EquatableList<UnknownOf> Unknowns { get; init; }

    /// <summary>The readings, in order, that the aircraft would give if the unknowns were off by these amounts.</summary>
    public required Func<IReadOnlyList<double>, IReadOnlyList<double>> Predict { get; init; }

    /// <summary>With its tolerance against it, m.</summary>
    public required double Stroke { get; init; }

    /// <summary>The most that a working hand and heat take from the cushion at the push stop and at the pull stop, m.</summary>
    public required double TakenAtPush { get; init; }
    public required double TakenAtPull { get; init; }

    /// <summary>Least and largest cushion wanted, m.</summary>
    public required double Wanted { get; init; }
    public required double Most { get; init; }
}
