using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>A point that the curve is held at between its ends.</summary>
/// <param name="Direction">Tangent there, any length; null: free to turn.</param>
/// <param name="At">Arc length from the start at which the curve is gripped; null: it slides through without friction.</param>
public sealed record ElasticSupport(Vector3 Point, Vector3? Direction = null, double? At = null);

/// <summary>Something the curve may touch but not enter; without friction.</summary>
/// <param name="DistanceAt">Distance of a point, below zero inside; growing no faster than the point moves.</param>
/// <param name="Keep">Distance of the centre line when it touches: half the thickness of what lies there.</param>
public sealed record ElasticObstacle(Func<Vector3, double> DistanceAt, double Keep);

/// <summary>An elastic curve of given length, free of twist, held at its ends and at supports.</summary>
/// <remarks>
/// Least of 1/2 B (curvature)^2 over the length, less the work of the load. Without load the shape does not depend on B.
/// Any consistent units.
/// </remarks>
public sealed record ElasticProblem
{
    public required Vector3 Start { get; init; }

    /// <summary>Tangent at the start, any length; null: free to turn.</summary>
    public Vector3? StartDirection { get; init; }

    /// <summary>Null: the end is free, under <see cref="EndForce"/>.</summary>
    public required Vector3? End { get; init; }
    public Vector3? EndDirection { get; init; }

    /// <summary>Total length; null: any length may be drawn in, and the natural one is looked for (all supports slide).</summary>
    public required double? Length { get; init; }
    public EquatableList<ElasticSupport> Supports { get; init; } = [];

    /// <summary>What the curve may not enter between its holds.</summary>
    public EquatableList<ElasticObstacle> Obstacles { get; init; } = [];

    /// <summary>Bending stiffness B.</summary>
    public double Stiffness { get; init; } = 1;

    /// <summary>Force per length, e.g. the weight.</summary>
    public Vector3 Load { get; init; }

    /// <summary>On a free end only.</summary>
    public Vector3 EndForce { get; init; }

    /// <summary>Segments of the longest span; the error falls with the fourth power.</summary>
    public int Segments { get; init; } = 96;

    /// <summary>How many starts are tried, 1..9: one finds the shape, more find the other ones. Over several holds slack gathered in each span is tried too.</summary>
    public int Starts { get; init; } = 9;
}

/// <summary>How the search ended.</summary>
public enum ElasticOutcome
{
    Found,

    /// <summary>Shorter than the straight lines between the points: no such curve exists.</summary>
    TooShort,

    /// <summary>The points gripped leave a span no length, or their order is not the order along the curve.</summary>
    OutOfOrder,

    /// <summary>No start led to a stable shape.</summary>
    NotFound,
}

/// <summary>The stable shape of least energy that was found, and the other stable ones.</summary>
public sealed record ElasticAnswer(ElasticOutcome Outcome, ElasticCurve? Curve, EquatableList<ElasticCurve> Others);
