using Throwright.Shapes;

namespace Throwright.Engine.Route;

/// <summary>How near the conduit comes to something it stays away from.</summary>
/// <param name="Least">Proved: nowhere along the conduit's surface is it nearer than this, m.</param>
/// <param name="At">Conduit from the start to the nearest place.</param>
/// <param name="Keep">The distance wanted.</param>
public sealed record RouteGap(string Name, KeepOutKind Kind, double Least, double At, double Keep);

/// <summary>The lie when the lever end has moved.</summary>
/// <param name="Moved">Largest move of the conduit sideways, m.</param>
/// <param name="LeastRadius">Then; NaN where the moved lie was not found.</param>
/// <param name="LeastRoom">Least of gap less wanted distance, m.</param>
public sealed record RouteAtMove(string Name, double Moved, double LeastRadius, double LeastRoom);

/// <summary>What a route asks of one support.</summary>
/// <param name="Place">Name of the place, of the hole or of the support that stays; empty where it may sit anywhere.</param>
/// <param name="Kind">A grommet for one that stays and is one, and for a hole. Else a clamp: tight where that will do, sliding where only that lets the lever end move.</param>
/// <param name="IsTurned">The clamp's line has to be the lie's; else it may be left to turn as the conduit lies, and then closed.</param>
/// <param name="Stays">It was there before.</param>
public sealed record RouteHold(string Place, SupportKind Kind, bool IsTurned, bool Stays);

/// <summary>One route: supports, length, and the lie they give.</summary>
public sealed record RouteChoice
{
    /// <summary>The lie before the clamps are closed: one that may be left to turn holds like a grommet.</summary>
    public required Lie Lie { get; init; }

    /// <summary>From the start to the end.</summary>
    public required EquatableList<RouteHold> Holds { get; init; }
    public required EquatableList<RouteGap> Gaps { get; init; }
    public required EquatableList<RouteAtMove> AtMoves { get; init; }

    public double Length => Lie.Case.Length;

    public int Supports => Lie.Case.Supports.Count;
}

public enum RouteBoundKind
{
    /// <summary>The straight line.</summary>
    Straight,

    /// <summary>The shortest curve of the least radius from one end to the other's point.</summary>
    OneEnded,

    /// <summary>By way of a free point of a plane between the ends, with the least radius from either end to it.</summary>
    ThroughPlanes,
}

/// <summary>No route that keeps to the case, its margin included, is shorter than this.</summary>
/// <remarks>Proved for every curve; it does not say that so short a route exists.</remarks>
public sealed record RouteBound(double Length, RouteBoundKind Kind);

public enum NoRouteReason
{
    /// <summary>An end or its direction is inside something it should stay away from.</summary>
    EndBlocked,

    /// <summary>A support that stays is inside something that the conduit has to stay away from.</summary>
    PassBlocked,

    /// <summary>Even the shortest way is longer than the longest conduit.</summary>
    TooFar,

    /// <summary>The search found no curve of the wanted radius through the free space.</summary>
    NoWay,

    /// <summary>Ways were found, but with the supports permitted the conduit lies in none of them.</summary>
    NotHeld,
}

/// <summary>Why no route is offered: what was searched for and not found is not proved absent, but for TooFar.</summary>
/// <param name="Nearest">The name of what stands in the way most, where known.</param>
public sealed record NoRoute(NoRouteReason Reason, string Nearest)
{
    /// <summary>Of an end that is blocked: how much nearer than wanted it is, m.</summary>
    public double Lacks { get; init; }

    /// <summary>It is the cockpit end that is blocked.</summary>
    public bool AtStart { get; init; }
}

/// <summary>Routes by rising cost; none, and the reason why.</summary>
public sealed record RoutePlan(EquatableList<RouteChoice> Choices, RouteBound Bound, NoRoute? Refusal);
