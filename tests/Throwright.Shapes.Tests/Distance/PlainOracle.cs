using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>
/// Least distance over joints by grid and descent, on distances by projections alone: no line of the program's search.
/// </summary>
/// <remarks>
/// Projections back and forth are the projected gradient of half the square of the distance to the second set, with step 1; so
/// they may be hurried by momentum (Nesterov 1983), begun anew where it overshoots. Each pair of points met lies in the two
/// sets, so every value is an upper bound, as with the plain ones.
/// </remarks>
internal sealed class PlainOracle(Plain[] first, JointChain firstChain, Plain[] second, JointChain secondChain)
{
    private readonly Vector3[] warm = [.. first.SelectMany(a => second.Select(_ => a.Nearest(default)))];

    public double At(double[] q, int steps)
    {
        var n = firstChain.Joints.Count;
        var relative = firstChain.At(q.AsSpan(0, n)).Inverse() * secondChain.At(q.AsSpan(n));
        var back = relative.Inverse();
        var least = double.PositiveInfinity;
        for (var i = 0; i < first.Length; i++)
        {
            for (var k = 0; k < second.Length; k++)
                least = Math.Min(least, Between(first[i], second[k], relative, back, ref warm[(i * second.Length) + k], steps));
        }

        return least;
    }

    /// <summary>The least of a grid, and the best of it refined by steps of one joint at a time.</summary>
    public (double Value, double[] Place) Least(IReadOnlyList<Joint> joints, int perJoint, int starts)
    {
        List<(double Value, double[] Q)> all = [];
        var total = (int)Math.Pow(perJoint, joints.Count);
        for (var k = 0; k < total; k++)
        {
            var q = new double[joints.Count];
            for (int j = 0, rest = k; j < q.Length; j++, rest /= perJoint)
                q[j] = joints[j].From + ((joints[j].To - joints[j].From) * (rest % perJoint) / (perJoint - 1));
            all.Add((At(q, 12), q));
        }

        var (least, place) = (double.PositiveInfinity, all[0].Q);
        foreach (var (_, from) in all.OrderBy(s => s.Value).Take(starts))
        {
            var (value, q) = (At(from, 200), (double[])from.Clone());
            for (var step = 0.5 / (perJoint - 1); step > 2e-5; step *= 0.4)
            {
                for (var j = 0; j < q.Length; j++)
                {
                    foreach (var sign in (ReadOnlySpan<int>)[-1, 1])
                    {
                        var before = q[j];
                        q[j] = Math.Clamp(before + (sign * step * (joints[j].To - joints[j].From)), joints[j].From, joints[j].To);
                        var next = At(q, 60);
                        if (next < value)
                            value = next;
                        else
                            q[j] = before;
                    }
                }
            }

            if (value < least)
                (least, place) = (value, q);
        }

        return (least, place);
    }

    private static double Between(Plain a, Plain b, Pose aFromB, Pose bFromA, ref Vector3 start, int steps)
    {
        var p = start;
        var (last, momentum) = (p, 1.0);
        var least = double.PositiveInfinity;
        for (var i = 0; i < steps; i++)
        {
            var next = (1 + Math.Sqrt(1 + (4 * momentum * momentum))) / 2;
            var z = p + ((momentum - 1) / next * (p - last));
            var q = aFromB * b.Nearest(bFromA * z);
            var to = a.Nearest(q);
            least = Math.Min(least, (to - q).Size);
            var moved = to - p;
            (momentum, last) = Vector3.Dot(z - to, moved) > 0 ? (1, to) : (next, p);
            p = to;
            if (Vector3.Dot(moved, moved) < 1e-26 && i > 3)
                break;
        }

        start = p;
        return least - a.Radius - b.Radius;
    }
}
