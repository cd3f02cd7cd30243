using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>Distances from a point, as functions of the point: negative or zero inside. None grows faster than the point moves.</summary>
public static class PointDistance
{
    /// <param name="outward">Away from the forbidden half, any length.</param>
    public static Func<Vector3, double> OfHalfSpace(Vector3 through, Vector3 outward)
    {
        var n = outward.Unit();
        return p => Vector3.Dot(n, p - through);
    }

    public static Func<Vector3, double> OfCapsule(Vector3 from, Vector3 to, double radius)
    {
        var along = to - from;
        var square = Vector3.Dot(along, along);
        return p =>
        {
            var d = p - from;
            var u = square > 0 ? Math.Clamp(Vector3.Dot(d, along) / square, 0, 1) : 0;
            return (d - (u * along)).Size - radius;
        };
    }

    /// <summary>A solid at rest. Of a mesh the distance to its surface, so that inside it is above zero again.</summary>
    public static Func<Vector3, double> Of(Solid solid, Pose home)
    {
        ArgumentNullException.ThrowIfNull(solid);
        var back = home.Inverse();
        return p => From(solid, back * p);
    }

    /// <summary>A body on its joints: no position of the joints brings it nearer than this.</summary>
    /// <remarks>
    /// The least over positions on a grid of the joints, less the farthest that anything of the body moves from one grid
    /// position to half the way to the next. More steps come closer; every number of them is proved.
    /// </remarks>
    /// <param name="steps">Grid positions of each joint.</param>
    public static Func<Vector3, double> OfSweep(MovingSolid body, int steps)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        var joints = body.Chain.Joints;
        var count = (int)Math.Pow(steps, joints.Count);
        if (count > 100_000)
            throw new ArgumentOutOfRangeException(nameof(steps), steps, "fewer steps for so many joints");
        var back = new Pose[count];
        var q = new double[joints.Count];
        for (var i = 0; i < count; i++)
        {
            for (int j = 0, rest = i; j < q.Length; j++, rest /= steps)
                q[j] = joints[j].From + ((joints[j].To - joints[j].From) * ((rest % steps) + 0.5) / steps);
            back[i] = (body.Chain.At(q) * body.Home).Inverse();
        }

        var slack = Travel(body, steps);
        return p =>
        {
            var least = double.PositiveInfinity;
            foreach (var pose in back)
            {
                var local = pose * p;
                // Nothing of the solid is farther from its centre than its reach.
                if ((local - body.Solid.Centre).Size - body.Solid.Reach < least)
                    least = Math.Min(least, From(body.Solid, local));
            }

            return least - slack;
        };
    }

    /// <summary>How far anything of the body can be from its place at the nearest grid position.</summary>
    private static double Travel(MovingSolid body, int steps)
    {
        // From the outermost joint inward: the reach from a joint's axis grows by what the joints farther out can do.
        var travel = 0.0;
        var centre = body.Home * body.Solid.Centre;
        var reach = body.Solid.Reach;
        for (var j = body.Chain.Joints.Count - 1; j >= 0; j--)
        {
            var joint = body.Chain.Joints[j];
            var half = 0.5 * (joint.To - joint.From) / steps;
            if (joint.Kind == JointKind.Slide)
            {
                travel += half * joint.Axis.Size;
                reach += Math.Max(Math.Abs(joint.From), Math.Abs(joint.To)) * joint.Axis.Size;
                continue;
            }

            var arm = centre - joint.Through;
            var far = (arm - (Vector3.Dot(arm, joint.Axis) * joint.Axis)).Size + reach;
            travel += half * far;
            // After the turn the body's centre is anywhere on its circle: held in a ball about the same point.
            reach += 2 * far;
        }

        return travel;
    }

    /// <summary>
    /// A slow function asked at most once at each corner of a grid, when a point comes near it: the most that the corners prove. Never above the function itself
    /// where that does not grow faster than the point moves, and below it by less than a cell's diagonal. Outside the grid
    /// the function itself.
    /// </summary>
    public static Func<Vector3, double> Sampled(Func<Vector3, double> distance, Vector3 low, Vector3 high, double step)
    {
        ArgumentNullException.ThrowIfNull(distance);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(step);
        int nx = Cells(high.X - low.X), ny = Cells(high.Y - low.Y), nz = Cells(high.Z - low.Z);
        if ((long)nx * ny * nz > 50_000_000)
            throw new ArgumentOutOfRangeException(nameof(step), step, "a coarser grid");
        var at = new double[(nx + 1) * (ny + 1) * (nz + 1)];
        Array.Fill(at, double.NaN);
        return p =>
        {
            double x = (p.X - low.X) / step, y = (p.Y - low.Y) / step, z = (p.Z - low.Z) / step;
            if (!(x >= 0 && y >= 0 && z >= 0 && x <= nx && y <= ny && z <= nz))
                return distance(p);
            int i = Math.Min((int)x, nx - 1), j = Math.Min((int)y, ny - 1), k = Math.Min((int)z, nz - 1);
            var most = double.NegativeInfinity;
            for (var c = 0; c < 8; c++)
            {
                int ci = i + (c & 1), cj = j + ((c >> 1) & 1), ck = k + (c >> 2);
                var corner = Corner(ci, cj, ck);
                ref var there = ref at[ci + ((nx + 1) * (cj + ((ny + 1) * ck)))];
                if (double.IsNaN(there))
                    there = distance(corner);
                most = Math.Max(most, there - (corner - p).Size);
            }

            return most;
        };

        int Cells(double length) => Math.Max(1, (int)Math.Ceiling(length / step));
        Vector3 Corner(int i, int j, int k) => low + new Vector3(i * step, j * step, k * step);
    }

    private static double From(Solid solid, Vector3 point)
    {
        var least = double.PositiveInfinity;
        var dot = new Core { Centre = Triple.Of(point) };
        foreach (var root in solid.Roots)
            least = Math.Min(least, Node(solid, root, in dot, least));
        return least;
    }

    private static double Node(Solid solid, int node, in Core point, double least)
    {
        ref readonly var shape = ref solid.Core(node);
        if (Away(in shape, in point) >= least)
            return least;
        if (solid.IsLeaf(node))
        {
            ConvexDistance.Between(in point, in TriplePose.None, in shape, in TriplePose.None, default, true, 0, out var found);
            return Math.Min(least, found.Distance);
        }

        var (left, right) = solid.Children(node);
        if (Away(in solid.Core(right), in point) < Away(in solid.Core(left), in point))
            (left, right) = (right, left);
        least = Math.Min(least, Node(solid, left, in point, least));
        return Math.Min(least, Node(solid, right, in point, least));
    }

    /// <summary>The gap along the line to the shape's centre proves this much.</summary>
    private static double Away(in Core shape, in Core point)
    {
        var d = shape.Centre - point.Centre;
        var size = Triple.Size(d);
        return size > 0 ? size + shape.Least((1 / size) * d) - shape.Radius : double.NegativeInfinity;
    }
}
