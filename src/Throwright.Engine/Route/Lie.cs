using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>One stretch of conduit between two holds.</summary>
/// <param name="Chord">Straight distance of the two holds.</param>
public sealed record LieSpan(double Length, double Chord);

/// <summary>What a support or end carries, N and N m; the force acts on the conduit.</summary>
public sealed record SupportLoad(double At, Vector3 Force, Vector3 Moment);

/// <summary>A place where the conduit lies against something: there it chafes.</summary>
/// <param name="At">Conduit from the start, m; the middle of a longer line.</param>
/// <param name="Over">Conduit that touches, m; 0 for a single place.</param>
/// <param name="Force">Of the thing on the conduit, N; NaN where the stiffness is not known.</param>
public sealed record LieContact(string Name, double At, double Over, Vector3 Point, double Force);

/// <summary>Another place in which the conduit may rest, seen from its lie.</summary>
/// <param name="Toward">Unit direction in which it falls at the place where it moves most.</param>
/// <param name="Far">How far it moves there, m.</param>
/// <param name="At">Conduit from the start to that place, m.</param>
/// <param name="EnergyOver">Energy of the other place over that of the lie.</param>
public sealed record LieFall(Vector3 Toward, double Far, double At, double EnergyOver);

/// <summary>Where the conduit lies.</summary>
public sealed record Lie
{
    public required LieCase Case { get; init; }

    /// <summary>The centre line; its forces are in units of the stiffness where that is not known.</summary>
    public required ElasticCurve Shape { get; init; }

    public double LeastRadius => Shape.LeastRadius;

    /// <summary>Conduit from the start to the tightest place, m.</summary>
    public double LeastRadiusAt => Shape.LeastRadiusAt;

    /// <summary>Sum of the angles turned, rad.</summary>
    public double BendTotal => Shape.BendTotal;

    public required EquatableList<LieSpan> Spans { get; init; }

    /// <summary>Largest move of the lie sideways over the length added; NaN where the longer conduit has no lie.</summary>
    public required double MovePerLength { get; init; }

    /// <summary>At the start, each support and the end; empty where the stiffness is not known.</summary>
    public required EquatableList<SupportLoad> Loads { get; init; }

    /// <summary>Where it lies against obstacles.</summary>
    public EquatableList<LieContact> Contacts { get; init; } = [];

    /// <summary>The bow can fall to any side: only its weight or a support decides.</summary>
    public required bool FallsToAnySide { get; init; }

    /// <summary>More bend in one span than a plain bend or bow has: a loop.</summary>
    public required bool IsLoop { get; init; }

    /// <summary>Other places in which the same conduit may rest, by rising energy.</summary>
    public required EquatableList<ElasticCurve> Others { get; init; }

    /// <summary>Which way, and how far, it may fall to each of them.</summary>
    public EquatableList<LieFall> Falls => Others.Select(Fall).ToEquatableList();

    private LieFall Fall(ElasticCurve other)
    {
        const int Places = 64;
        var at = Enumerable.Range(1, Places - 1).Select(i => Shape.Length * i / Places).MaxBy(s => (other.PointAt(s) - Shape.PointAt(s)).Size);
        var way = other.PointAt(at) - Shape.PointAt(at);
        return new(way.Unit(), way.Size, at, other.Energy / Shape.Energy);
    }
}

public enum NoLieReason
{
    /// <summary>Shorter than the straight lines between ends and supports.</summary>
    TooShort,

    /// <summary>Shorter than any way with the conduit's least radius, and no lie was found.</summary>
    TooShortForRadius,

    /// <summary>Two holds that follow each other are one place.</summary>
    OnePlace,

    /// <summary>So much longer than the way that it lies in loops of chance.</summary>
    TooSlack,

    /// <summary>A tight clamp's place along the conduit leaves a span too short.</summary>
    ClampOutOfPlace,

    /// <summary>The search ended without a lie.</summary>
    NotFound,
}

/// <summary>Why there is no lie.</summary>
/// <param name="Length">The conduit's.</param>
/// <param name="Bound">The length it is held against; 0 where there is none.</param>
public sealed record NoLie(NoLieReason Reason, double Length, double Bound)
{
    public string Say(FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return Reason switch
        {
            NoLieReason.TooShort => $"The conduit is {say.Length(Length, Shapes.Quantities.Rounding.Down)} long; the straight way over its supports is {say.Length(Bound, Shapes.Quantities.Rounding.Up)} already.",
            NoLieReason.TooShortForRadius => $"The conduit is {say.Length(Length, Shapes.Quantities.Rounding.Down)} long; with its least radius the way takes at least {say.Length(Bound, Shapes.Quantities.Rounding.Up)}.",
            NoLieReason.TooSlack => $"The conduit is {say.Length(Length)} long; above {say.Length(Bound)} it lies in loops and where it rests is chance.",
            NoLieReason.OnePlace => "Two supports that follow each other, or an end and the support next to it, are one place: nothing can lie between them.",
            NoLieReason.ClampOutOfPlace => "The places of the tight clamps along the conduit leave a span shorter than its straight way.",
            _ => "No lie was found for these ends, supports and length.",
        };
    }
}

/// <summary>The lie, or why there is none.</summary>
public sealed record LieAnswer(Lie? Lie, NoLie? Refusal);
