using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>How a place was found where no ruler reaches: distances from named points, and what else is known of it.</summary>
public sealed record TapedPlace
{
    public EquatableList<TapeDistance> Distances { get; init; } = [];

    /// <summary>How far a reading without limits of its own may be off, to either side; null: the published figure.</summary>
    public Length? Tape { get; init; }

    /// <summary>Coordinates that could be read directly.</summary>
    public Toleranced<Length>? Station { get; init; }
    public Toleranced<Length>? Buttline { get; init; }
    public Toleranced<Length>? Waterline { get; init; }

    /// <summary>Point of the same waterline; empty: none.</summary>
    public string Level { get; init; } = "";

    /// <summary>Point straight above or below this one.</summary>
    public string Plumb { get; init; } = "";
    public string SameStation { get; init; } = "";
    public string SameButtline { get; init; } = "";

    /// <summary>Two points with which this one is in line.</summary>
    public EquatableList<string> InLine { get; init; } = [];

    /// <summary>How far level, plumb line, string and the like may be off, to either side; null: the published figure.</summary>
    public Length? Within { get; init; }

    /// <summary>Which of two mirrored places is meant.</summary>
    public SideAt? Side { get; init; }

    /// <summary>Coordinates that were worked out before and noted beside the readings; the readings count.</summary>
    public PointAt? Noted { get; init; }
}

/// <summary>A distance read off a tape, from a named point.</summary>
public sealed record TapeDistance(string From, Toleranced<Length> Distance);

/// <summary>A side: of the other place that fits, or of a named point.</summary>
public sealed record SideAt(Side Side, string Of);

/// <summary>Which of two mirrored places is meant; aircraft axes: station aft, buttline right, waterline up.</summary>
public enum Side
{
    RightOf,
    LeftOf,
    Above,
    Below,
    ForwardOf,
    AftOf,
}
