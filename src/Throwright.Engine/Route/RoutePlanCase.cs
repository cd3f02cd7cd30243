using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

public enum KeepOutKind
{
    /// <summary>Stays where it is. The fitting passes through it at both ends: see <see cref="RoutePlanCase.FreeAtEnds"/>.</summary>
    Structure,

    /// <summary>Something that moves: its distance function holds for all its positions.</summary>
    Mover,

    /// <summary>Hot: the distance is the builder's or the maker's figure.</summary>
    Heat,

    /// <summary>A sharp edge that chafes.</summary>
    Edge,
}

/// <summary>Something the conduit stays away from.</summary>
/// <param name="Keep">Wanted between the conduit's surface and the thing, m.</param>
/// <param name="DistanceAt">
/// Distance of a point from the thing, m, or less; zero or below inside. Never more, or what is said about the room is wrong: the distance
/// itself grows no faster than the point moves. <see cref="Shapes.Distance.PointDistance"/> makes such functions.
/// </param>
/// <param name="MovesWithEnd">Fixed to what the lever end is fixed to, e.g. the engine.</param>
public sealed record KeepOut(string Name, KeepOutKind Kind, double Keep, Func<Vector3, double> DistanceAt, bool MovesWithEnd = false);

/// <summary>A place at which the conduit may be held.</summary>
/// <param name="Along">Direction of a clamp there, any length; null: it may be turned as the conduit wants.</param>
public sealed record SupportPlace(string Name, Vector3 Point, Vector3? Along = null);

/// <summary>A support that every route has: a hole that the conduit passes, a clamp that stays.</summary>
/// <param name="IsNew">It stays in the search only: a grommet in a hole that a route may pass.</param>
public sealed record RoutePass(string Name, LieSupport Support, bool IsNew = false);

/// <param name="Through">Square to the sheet, either way.</param>
public sealed record RouteOpening(string Name, Vector3 Middle, Vector3 Through);

/// <summary>Where the lever end goes when what carries it moves on its mounts.</summary>
/// <param name="By">Shift of the end, m.</param>
/// <param name="Turn">Turn about the end, as an axis times an angle in rad.</param>
public sealed record EndMove(string Name, Vector3 By, Vector3 Turn = default);

/// <summary>What a route has to keep to. Lengths in m, any axes.</summary>
public sealed record RoutePlanCase
{
    /// <summary>Where the conduit leaves the cockpit end, and the direction in which it does.</summary>
    public required Vector3 Start { get; init; }
    public required Vector3 StartAlong { get; init; }

    /// <summary>Where it enters the anchor, and the direction in which it does.</summary>
    public required Vector3 End { get; init; }
    public required Vector3 EndAlong { get; init; }

    /// <summary>Least radius the conduit's maker allows.</summary>
    public required double LeastRadius { get; init; }

    /// <summary>The radius wanted over the least one, for what hands and tapes do to the plan.</summary>
    public double RadiusMargin { get; init; } = 1.25;

    /// <summary>Half of the conduit's outer diameter.</summary>
    public required double ConduitRadius { get; init; }
    public EquatableList<KeepOut> KeepOuts { get; init; } = [];

    /// <summary>
    /// Conduit at each end, and to each side of a grommet, that structure and edges are not held against: it goes through them
    /// there. To each side of a clamp it may be nearer than wanted, but not touch.
    /// </summary>
    public double FreeAtEnds { get; init; } = 0.03;

    /// <summary>Permitted places for supports; none given: anywhere in the free.</summary>
    public EquatableList<SupportPlace> Places { get; init; } = [];

    /// <summary>Holes in sheets that a route may pass, a grommet in each.</summary>
    public EquatableList<RouteOpening> Openings { get; init; } = [];

    /// <summary>Supports that stay, from the start to the end.</summary>
    public EquatableList<RoutePass> Passes { get; init; } = [];

    /// <summary>False: none but those that stay.</summary>
    public bool MayBeSupported { get; init; } = true;

    /// <summary>Most conduit between two holds; null: no matter.</summary>
    public double? MostSpan { get; init; }

    /// <summary>Longest conduit to be had.</summary>
    public double? LongestLength { get; init; }
    public EquatableList<EndMove> EndMoves { get; init; } = [];

    /// <summary>Bending stiffness of conduit and wire together, N m^2; null: not known, then no weight.</summary>
    public double? Stiffness { get; init; }

    /// <summary>Weight per length as a vector, N/m.</summary>
    public Vector3 Weight { get; init; }

    /// <summary>How many choices are wanted.</summary>
    public int Choices { get; init; } = 3;

    /// <summary>Where few ways were found, those with a support or two more are choices too.</summary>
    public bool MoreHolds { get; init; }

    /// <summary>Length of conduit that one support less is worth.</summary>
    public double SupportWorth { get; init; } = 0.05;

    public double WantedRadius => LeastRadius * RadiusMargin;
}
