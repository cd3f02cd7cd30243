using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>One node of a solved curve: arc length from the start, point, unit tangent, curvature vector.</summary>
public readonly record struct CurveNode(double At, Vector3 Point, Vector3 Tangent, Vector3 Curvature);

/// <summary>What the support or end does to the curve.</summary>
/// <param name="At">Arc length from the start.</param>
public readonly record struct CurveReaction(double At, Vector3 Force, Vector3 Moment);

/// <summary>A place where the curve touches an obstacle.</summary>
/// <param name="At">Arc length from the start.</param>
/// <param name="Force">Of the obstacle on the curve; along a line of contact the nodes share it.</param>
/// <param name="Obstacle">Number in the problem's list.</param>
public readonly record struct CurveContact(double At, Vector3 Point, Vector3 Force, int Obstacle);

/// <summary>How firmly the shape is held.</summary>
public enum CurveStability
{
    Stable,

    /// <summary>Some motion costs no energy, e.g. a bow between ends in line may fall to any side.</summary>
    Neutral,
    Unstable,
}

/// <summary>A solved elastic curve.</summary>
public sealed record ElasticCurve
{
    public required EquatableList<CurveNode> Nodes { get; init; }

    /// <summary>Index of the node at the start, at each support and at the end.</summary>
    public required EquatableList<int> Holds { get; init; }

    /// <summary>At the start, each support, the end.</summary>
    public required EquatableList<CurveReaction> Reactions { get; init; }
    public required CurveStability Stability { get; init; }

    /// <summary>Where it touches obstacles, in the order along the curve.</summary>
    public EquatableList<CurveContact> Contacts { get; init; } = [];

    /// <summary>
    /// Least of distance less what is kept, over nodes and the middles between them: what a curve in contact enters between
    /// nodes. Infinite without obstacles.
    /// </summary>
    public double LeastGap { get; init; } = double.PositiveInfinity;

    /// <summary>1/2 B times the integral of the square of the curvature.</summary>
    public required double BendingEnergy { get; init; }

    /// <summary>Bending energy less the work of the load from the origin, and of the end force.</summary>
    public required double Energy { get; init; }

    /// <summary>Integral of the curvature, rad.</summary>
    public required double BendTotal { get; init; }

    /// <summary>Infinite for a straight curve.</summary>
    public required double LeastRadius { get; init; }

    /// <summary>Arc length where the radius is least.</summary>
    public required double LeastRadiusAt { get; init; }

    /// <summary>
    /// Spread of 1/2 B curvature^2 + force along the tangent, which is constant along each span of the exact curve without
    /// load, as a part of its largest term: a measure of the error. NaN with a load.
    /// </summary>
    public required double Spread { get; init; }

    public double Length => Nodes[^1].At;

    /// <summary>Length from one hold to the next.</summary>
    public double SpanLength(int span) => Nodes[Holds[span + 1]].At - Nodes[Holds[span]].At;

    /// <summary>Point at an arc length, by quintic interpolation of point, tangent and curvature.</summary>
    public Vector3 PointAt(double at)
    {
        var i = SegmentAt(at);
        CurveNode a = Nodes[i], b = Nodes[i + 1];
        var h = b.At - a.At;
        return Within(a, b, h, Math.Clamp((at - a.At) / h, 0, 1));
    }

    private static Vector3 Within(in CurveNode a, in CurveNode b, double h, double u)
    {
        var u3 = u * u * u;
        double p1 = u3 * (10 + (u * ((6 * u) - 15))), m0 = u - (u3 * (6 + (u * ((3 * u) - 8)))), m1 = u3 * (-4 + (u * (7 - (3 * u))));
        double c0 = 0.5 * u * u * Cube(1 - u), c1 = 0.5 * u3 * (1 - u) * (1 - u);
        return a.Point + (p1 * (b.Point - a.Point)) + (h * m0 * a.Tangent) + (h * m1 * b.Tangent) + (h * h * c0 * a.Curvature) + (h * h * c1 * b.Curvature);
    }

    public Vector3 TangentAt(double at)
    {
        var i = SegmentAt(at);
        CurveNode a = Nodes[i], b = Nodes[i + 1];
        double h = b.At - a.At, u = Math.Clamp((at - a.At) / h, 0, 1), v = 1 - u;
        return ((v * v * (1 + (2 * u)) * a.Tangent) + (u * u * (1 + (2 * v)) * b.Tangent) + (h * u * v * v * a.Curvature) - (h * u * u * v * b.Curvature)).Unit();
    }

    /// <summary>Least distance from a point to the curve.</summary>
    public double DistanceFrom(Vector3 point)
    {
        var best = double.PositiveInfinity;
        var at = 0;
        for (var i = 0; i < Nodes.Count;)
        {
            var d = (Nodes[i].Point - point).Size;
            if (d < best)
                (best, at) = (d, i);
            // A node within the distance to spare can't be nearer.
            var spare = Nodes[i].At + d - best;
            for (i++; i < Nodes.Count && Nodes[i].At < spare;)
                i++;
        }

        for (var i = Math.Max(at - 1, 0); i < Math.Min(at + 1, Nodes.Count - 1); i++)
            best = Math.Min(best, FromSegment(i, point));
        return best;
    }

    /// <summary>Is the curve seen to come within a distance of the point? Looked for downhill from a node only: no proves nothing.</summary>
    /// <param name="node">Where to begin; afterwards where it ended.</param>
    public bool IsWithin(Vector3 point, double distance, ref int node)
    {
        var best = (Nodes[node].Point - point).Size;
        for (var way = 1; way >= -1; way -= 2)
        {
            for (var i = node + way; i >= 0 && i < Nodes.Count && (Nodes[i].Point - point).Size is var d && d < best; i += way)
                (best, node) = (d, i);
        }

        if (best <= distance)
            return true;
        for (var i = Math.Max(node - 1, 0); i < Math.Min(node + 1, Nodes.Count - 1); i++)
        {
            if (FromSegment(i, point) <= distance)
                return true;
        }

        return false;
    }

    /// <summary>Foot of the point on a segment by Newton steps on (r - point).t = 0.</summary>
    private double FromSegment(int i, Vector3 point)
    {
        CurveNode a = Nodes[i], b = Nodes[i + 1];
        double h = b.At - a.At, u = Math.Clamp(Vector3.Dot(point - a.Point, b.Point - a.Point) / (h * h), 0, 1);
        for (var step = 0; step < 4; step++)
        {
            var off = Within(a, b, h, u) - point;
            Vector3 t = ((1 - u) * a.Tangent) + (u * b.Tangent), k = ((1 - u) * a.Curvature) + (u * b.Curvature);
            var slope = Vector3.Dot(t, t) + Vector3.Dot(off, k);
            if (!(slope > 0))
                break;
            var next = Math.Clamp(u - (Vector3.Dot(off, t) / (h * slope)), 0, 1);
            if (Math.Abs(next - u) < 1e-9)
                break;
            u = next;
        }

        return (Within(a, b, h, u) - point).Size;
    }

    private int SegmentAt(double at)
    {
        int low = 0, high = Nodes.Count - 2;
        while (low < high)
        {
            var mid = (low + high + 1) / 2;
            if (Nodes[mid].At <= at)
                low = mid;
            else
                high = mid - 1;
        }

        return low;
    }

    private static double Cube(double v) => v * v * v;
}
