using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>Lengths below which there is no route.</summary>
internal static class RouteBounds
{
    private const int Planes = 24;
    private const double Finest = 2.5e-4;

    public static RouteBound Find(RoutePlanCase of)
    {
        LieCase over = new() { Start = of.Start, StartAlong = of.StartAlong, End = of.End, EndAlong = of.EndAlong, Supports = of.Passes.Select(p => p.Support).ToEquatableList(), LeastRadius = of.WantedRadius, Length = 1 };
        var straight = over.Straight;
        var oneEnded = LieSolver.ShortestWay(over);
        return oneEnded > straight * (1 + 1e-12) ? new(oneEnded, RouteBoundKind.OneEnded) : new(straight, RouteBoundKind.Straight);
    }

    /// <summary>A length that no route falls short of, if it is below the longest asked about.</summary>
    /// <remarks>
    /// Every way from start to end passes each plane between them, at a free point. To and from that point it is at least as long
    /// as the shortest curve of the radius from either end. Least over the free points of a plane, by branch and bound on
    /// squares; the greatest over several planes counts. A square is left out only where all of it is proved not free.
    /// </remarks>
    public static double ThroughPlanes(RoutePlanCase of, FreeSpace space, double longest)
    {
        double d = (of.End - of.Start).Size, best = 0;
        var along = (1 / d) * (of.End - of.Start);
        for (var i = 1; i < Planes; i++)
        {
            var at = d * i / Planes;
            // Near the ends the fittings may pass what the conduit may not.
            if (Math.Min(at, d - at) > of.FreeAtEnds)
                best = Math.Max(best, LeastThrough(of, space, of.Start + (at * along), along, longest, best));
        }

        return best;
    }

    private static double LeastThrough(RoutePlanCase of, FreeSpace space, Vector3 middle, Vector3 normal, double longest, double known)
    {
        var x = Rotation.SquareTo(normal);
        var y = Vector3.Cross(normal, x);
        // Beyond this a way through the plane is longer than the longest.
        var reach = Math.Sqrt(Math.Max(0, (0.25 * longest * longest) - (0.25 * Vector3.Dot(of.End - of.Start, of.End - of.Start)))) + 1e-3;
        var queue = new PriorityQueue<(double X, double Y, double Half), double>();
        Add(0, 0, reach);
        while (queue.TryDequeue(out var square, out var bound))
        {
            // All that is left passes at least as far out as this.
            if (bound >= longest)
                return longest;
            if (square.Half < Finest)
                return bound;
            var half = 0.5 * square.Half;
            for (var c = 0; c < 4; c++)
                Add(square.X + ((c & 1) == 0 ? half : -half), square.Y + ((c & 2) == 0 ? half : -half), half);
            if (bound > known && space.At(middle + (square.X * x) + (square.Y * y)) >= 0 && Length(square.X, square.Y, 0) <= known)
                return 0;
        }

        return longest;

        void Add(double u, double v, double half)
        {
            var p = middle + (u * x) + (v * y);
            var radius = Math.Sqrt(2) * half;
            if (space.At(p) >= -radius)
                queue.Enqueue((u, v, half), Length(u, v, radius));
        }

        double Length(double u, double v, double off)
        {
            var p = middle + (u * x) + (v * y);
            return FromEnd(of.StartAlong, p - of.Start, of.WantedRadius, off) + FromEnd(-of.EndAlong, p - of.End, of.WantedRadius, off);
        }
    }

    /// <summary>A bound for all points no farther from this one than given.</summary>
    private static double FromEnd(Vector3 direction, Vector3 to, double radius, double off)
    {
        var t = direction.Unit();
        double x = Vector3.Dot(to, t), y = (to - (x * t)).Size;
        // The bound grows no faster than the point moves, but for the turning circle, across which it jumps.
        var outside = Math.Sqrt((x * x) + ((y - radius) * (y - radius))) - radius;
        return (outside > off ? ShortestWay.From(direction, to, radius) : to.Size) - off;
    }
}
