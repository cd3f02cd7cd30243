using Throwright.Engine.Findings;
using Throwright.Engine.Maintain;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Pack;

/// <summary>Readings over time, in words.</summary>
public static class MaintainWords
{
    /// <summary>A value of a reading in this builder's units.</summary>
    public static string Show(string reading, double si, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return reading == "pull" ? say.Force(si, Rounding.Nearest) : say.Length(si);
    }

    /// <summary>A limit of a reading, rounded as on the rigging card: lengths to the inside, forces to the outside.</summary>
    public static string Limit(string reading, double si, bool isLeast, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return reading == "pull" ? say.Force(si, isLeast ? Rounding.Down : Rounding.Up) : say.Length(si, isLeast ? Rounding.Up : Rounding.Down);
    }

    /// <summary>"+0.040 in".</summary>
    public static string Moved(ReadingChange change, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(change);
        var by = change.Change ?? 0;
        return $"{(by < 0 ? "-" : "+")}{Show(change.Reading, Math.Abs(by), say)}";
    }
}
