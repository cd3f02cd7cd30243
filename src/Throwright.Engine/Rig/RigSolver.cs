using Throwright.Shapes;

namespace Throwright.Engine.Rig;

/// <summary>Fits the as-built state to the readings. Theory: docs/theory/rig.md.</summary>
public static class RigSolver
{
    /// <summary>Correlation beyond which two unknowns count as seen only together.</summary>
    private const double Together = 0.9;

    public static RigAnswer Solve(RigCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        int n = of.Unknowns.Count;
        var read = Enumerable.Range(0, of.Readings.Count).Where(i => of.Readings[i].Measured is not null).ToArray();
        var x = new double[n];
        var inverse = Square(n);
        // Gauss and Newton with what was known before; the readings are so nearly straight in the unknowns that three steps do.
        for (var step = 0; step < 4; step++)
        {
            var at = of.Predict(x);
            var slope = Slopes(of, x, at);
            var matrix = Square(n);
            var right = new double[n];
            for (var j = 0; j < n; j++)
            {
                var weight = 1 / (of.Unknowns[j].Before * of.Unknowns[j].Before);
                matrix[j][j] += weight;
                right[j] -= weight * x[j];
            }

            foreach (var i in read)
            {
                var weight = 1 / (of.Readings[i].Error * of.Readings[i].Error);
                var off = of.Readings[i].Measured!.Value - at[i];
                for (var j = 0; j < n; j++)
                {
                    right[j] += weight * slope[i][j] * off;
                    for (var k = 0; k < n; k++)
                        matrix[j][k] += weight * slope[i][j] * slope[i][k];
                }
            }

            inverse = Inverse(matrix);
            for (var j = 0; j < n; j++)
            {
                for (var k = 0; k < n; k++)
                    x[j] += inverse[j][k] * right[k];
            }
        }

        var last = of.Predict(x);
        double misfit = 0, worstOff = 0;
        RigReading? worst = null;
        for (var j = 0; j < n; j++)
            misfit += x[j] / of.Unknowns[j].Before * (x[j] / of.Unknowns[j].Before);
        // A slide of the swivel is no surprise: it is what rigging sets.
        foreach (var i in read)
        {
            var off = (of.Readings[i].Measured!.Value - last[i]) / of.Readings[i].Error;
            misfit += off * off;
            if (Math.Abs(off) > worstOff)
                (worstOff, worst) = (Math.Abs(off), of.Readings[i].Reading);
        }

        var estimates = Enumerable.Range(0, n).Select(j => new Estimate(of.Unknowns[j], x[j], Math.Sqrt(inverse[j][j]))).ToEquatableList();
        var pairs = new List<Inseparable>();
        for (var j = 0; j < n; j++)
        {
            for (var k = j + 1; k < n; k++)
            {
                var correlation = inverse[j][k] / Math.Sqrt(inverse[j][j] * inverse[k][k]);
                if (Math.Abs(correlation) > Together)
                    pairs.Add(new(of.Unknowns[j].Unknown, of.Unknowns[k].Unknown, correlation));
            }
        }

        double? Read(RigReading reading) => of.Readings.FirstOrDefault(r => r.Reading == reading)?.Measured;
        var inside = Read(RigReading.KnobAtPush) - of.TakenAtPush;
        var outside = of.Stroke - Read(RigReading.KnobAtPull) - of.TakenAtPull;
        var error = of.Readings.FirstOrDefault(r => r.Reading == RigReading.KnobAtPush)?.Error;
        return new()
        {
            Estimates = estimates,
            Inseparable = pairs.ToEquatableList(),
            Misfit = misfit,
            Fits = misfit <= ChanceLimit(read.Length),
            Worst = worst,
            CushionIn = inside,
            CushionOut = outside,
            Slide = 0.5 * (outside - inside),
            After = 0.5 * (outside + inside),
            // Each half the sum of two readings.
            AfterError = inside is null || outside is null ? null : error / Math.Sqrt(2),
        };
    }

    /// <summary>What each unknown does to each reading, per SI unit.</summary>
    public static EquatableList<EquatableList<double>> Response(RigCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var x = new double[of.Unknowns.Count];
        return Slopes(of, x, of.Predict(x)).Select(row => row.ToEquatableList()).ToEquatableList();
    }

    /// <summary>Upper limit of chi square that chance passes once in a thousand (Wilson and Hilferty, within 1 %).</summary>
    private static double ChanceLimit(int readings)
    {
        if (readings == 0)
            return double.PositiveInfinity;
        const double z = 3.0902;
        var a = 2.0 / (9 * readings);
        var root = 1 - a + (z * Math.Sqrt(a));
        return readings * root * root * root;
    }

    private static double[][] Slopes(RigCase of, double[] x, IReadOnlyList<double> at)
    {
        var slopes = at.Select(_ => new double[x.Length]).ToArray();
        for (var j = 0; j < x.Length; j++)
        {
            var step = 0.1 * of.Unknowns[j].Before;
            var up = (double[])x.Clone();
            var down = (double[])x.Clone();
            up[j] += step;
            down[j] -= step;
            IReadOnlyList<double> high = of.Predict(up), low = of.Predict(down);
            for (var i = 0; i < at.Count; i++)
                slopes[i][j] = (high[i] - low[i]) / (2 * step);
        }

        return slopes;
    }

    private static double[][] Square(int n) => [.. Enumerable.Range(0, n).Select(_ => new double[n])];

    /// <summary>Inverse of a symmetric positive matrix, by Gauss and Jordan after scaling to a unit diagonal.</summary>
    private static double[][] Inverse(double[][] matrix)
    {
        var n = matrix.Length;
        var scale = matrix.Select((row, i) => 1 / Math.Sqrt(row[i])).ToArray();
        var work = matrix.Select((row, i) => row.Select((v, j) => v * scale[i] * scale[j]).Concat(Enumerable.Range(0, n).Select(j => i == j ? 1.0 : 0)).ToArray()).ToArray();
        for (var p = 0; p < n; p++)
        {
            var best = Enumerable.Range(p, n - p).MaxBy(i => Math.Abs(work[i][p]));
            (work[p], work[best]) = (work[best], work[p]);
            var pivot = work[p][p];
            for (var j = 0; j < 2 * n; j++)
                work[p][j] /= pivot;
            for (var i = 0; i < n; i++)
            {
                if (i == p)
                    continue;
                var factor = work[i][p];
                for (var j = 0; j < 2 * n; j++)
                    work[i][j] -= factor * work[p][j];
            }
        }

        return [.. work.Select((row, i) => row[n..].Select((v, j) => v * scale[i] * scale[j]).ToArray())];
    }
}
