using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>The gates of two solids over the free joints that move them: sum of factor * position at most so much.</summary>
internal sealed class Gates
{
    private readonly double[][] factors;
    private readonly double[] most, room, range;

    public Gates(IEnumerable<JointGate> gates, List<Joint> joints)
    {
        range = [.. joints.Select(j => j.To - j.From)];
        List<double[]> rows = [];
        List<double> limits = [];
        foreach (var gate in gates)
        {
            var row = new double[joints.Count];
            var limit = gate.Most;
            foreach (var (joint, factor) in gate.Terms)
            {
                var i = joints.IndexOf(joint.Free);
                if (i < 0)
                    throw new ArgumentException($"The gate {gate.Name} names {joint.Name}, which does not move these bodies.", nameof(gates));
                row[i] += factor * (joint.Drive?.Ratio ?? 1);
                limit -= factor * (joint.Drive?.Offset ?? 0);
            }

            rows.Add(row);
            limits.Add(limit);
        }

        factors = [.. rows];
        most = [.. limits];
        // Rounding of a sum of such numbers.
        room = [.. rows.Zip(limits, (row, limit) => 1e-12 * (Math.Abs(limit) + row.Select((f, i) => Math.Abs(f) * Math.Max(Math.Abs(joints[i].From), Math.Abs(joints[i].To))).Sum()))];
    }

    public bool IsAny => factors.Length > 0;

    public bool Uses(int joint) => factors.Any(row => row[joint] != 0);

    /// <summary>No position of the box is allowed.</summary>
    public bool IsShut(double[] low, double[] high)
    {
        for (var g = 0; g < factors.Length; g++)
        {
            var least = 0.0;
            for (var i = 0; i < low.Length; i++)
                least += factors[g][i] * (factors[g][i] > 0 ? low[i] : high[i]);
            if (least > most[g] + room[g])
                return true;
        }

        return false;
    }

    public bool Allow(ReadOnlySpan<double> q)
    {
        for (var g = 0; g < factors.Length; g++)
        {
            if (!(SumOf(g, q) <= most[g] + room[g]))
                return false;
        }

        return true;
    }

    /// <summary>The position, or an allowed one near it.</summary>
    public double[] Rest(double[] q)
    {
        if (factors.Length == 0 || Allow(q))
            return q;
        var half = range.Select(r => 0.5 * r).ToArray();
        double[] low = [.. q.Select((x, i) => x - half[i])], high = [.. q.Select((x, i) => x + half[i])];
        return Pull(q, low, high, 5000) ? q : throw new ArgumentException("The gates leave the joints no position.");
    }

    /// <summary>Moves a position to an allowed one of the box, onto each gate in turn; false where none was found.</summary>
    /// <remarks>Projections onto convex sets one after the other; joints counted in shares of their range, since units differ.</remarks>
    public bool Pull(Span<double> q, double[] low, double[] high, int rounds = 12)
    {
        for (var n = 0; n < rounds; n++)
        {
            for (var g = 0; g < factors.Length; g++)
            {
                var row = factors[g];
                var over = SumOf(g, q) - most[g];
                if (over <= 0)
                    continue;
                var size = 0.0;
                for (var i = 0; i < row.Length; i++)
                    size += row[i] * row[i] * range[i] * range[i];
                if (!(size > 0))
                    return false;
                for (var i = 0; i < row.Length; i++)
                    q[i] = Math.Clamp(q[i] - (over * row[i] * range[i] * range[i] / size), low[i], high[i]);
            }

            if (Allow(q))
                return true;
        }

        return false;
    }

    private double SumOf(int g, ReadOnlySpan<double> q)
    {
        var sum = 0.0;
        for (var i = 0; i < q.Length; i++)
            sum += factors[g][i] * q[i];
        return sum;
    }
}
