using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

public enum SupportKind
{
    /// <summary>A clamp that lets the conduit slide along its axis: holds point and direction.</summary>
    Sliding,

    /// <summary>A clamp that grips, closed after the conduit has found its place unless a place along it is given.</summary>
    Tight,

    /// <summary>Holds the point only; the conduit turns and slides in it.</summary>
    Grommet,
}

/// <summary>A support between the ends.</summary>
/// <param name="Along">Direction of a clamp toward the lever end, any length; unused for a grommet.</param>
/// <param name="At">Length of conduit from its start to a tight clamp, m; null: where it settles by itself.</param>
public sealed record LieSupport(Vector3 Point, SupportKind Kind, Vector3? Along = null, double? At = null);

/// <summary>Something that the conduit may lie against but not enter.</summary>
/// <param name="DistanceAt">Distance of a point, m, below zero inside; growing no faster than the point moves.</param>
public sealed record LieObstacle(string Name, Func<Vector3, double> DistanceAt);

/// <summary>What decides where the conduit lies. Lengths in m, any axes.</summary>
public sealed record LieCase
{
    /// <summary>Where the conduit leaves the cockpit end, and the direction in which it does.</summary>
    public required Vector3 Start { get; init; }
    public required Vector3 StartAlong { get; init; }

    /// <summary>Where it enters the anchor, and the direction in which it does.</summary>
    public required Vector3 End { get; init; }
    public required Vector3 EndAlong { get; init; }
    public EquatableList<LieSupport> Supports { get; init; } = [];

    /// <summary>What stands in the way between the holds; the lie is pressed against it without friction.</summary>
    public EquatableList<LieObstacle> Obstacles { get; init; } = [];

    /// <summary>Half of the conduit's outer diameter: counts against obstacles only.</summary>
    public double ConduitRadius { get; init; }

    /// <summary>Length of conduit between the two.</summary>
    public required double Length { get; init; }

    /// <summary>Least radius the conduit's maker allows; null: not known.</summary>
    public double? LeastRadius { get; init; }

    /// <summary>Bending stiffness of conduit and wire together, N m^2; null: not known, then no forces and no weight.</summary>
    public double? Stiffness { get; init; }

    /// <summary>Weight per length as a vector, N/m; counts only with a stiffness.</summary>
    public Vector3 Weight { get; init; }

    /// <summary>The case with more or less conduit. A mark for a tight clamp is made from the lever end: it stays there, and what is added lies before it.</summary>
    public LieCase WithLength(double length) => this with
    {
        Length = length,
        Supports = Supports.Any(s => s.At is not null)
            ? Supports.Select(s => s.At is { } at ? s with { At = at + length - Length } : s).ToEquatableList()
            : Supports,
    };

    /// <summary>Sum of the straight lines from hold to hold: no lie is shorter.</summary>
    public double Straight
    {
        get
        {
            var (sum, last) = (0.0, Start);
            foreach (var support in Supports)
                (sum, last) = (sum + (support.Point - last).Size, support.Point);
            return sum + (End - last).Size;
        }
    }
}
