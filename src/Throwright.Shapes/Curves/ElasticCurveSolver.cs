using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Curves;

/// <summary>Finds the shapes in which an elastic curve rests. Theory: docs/theory/route.md.</summary>
/// <remarks>
/// Several starts, each brought down on a coarse mesh by Newton steps whose matrix is shifted until its signs are those of
/// a minimum, then refined with the fourth-order element. The number of negative eigenvalues at the end decides whether
/// the shape is stable. Same input, same bytes: nothing depends on time or threads.
/// </remarks>
public static class ElasticCurveSolver
{
    private const int Coarse = 24;
    private const int Attempts = 4;

    // All shifts in units of stiffness / length^2: lowest bending modes lie at 10 and above.
    private const double Still = 1e-6;
    private const double NeutralBelow = 1e-4;
    private const double Rounding = 1e-6;
    private const double SameShape = 2e-2;

    public static ElasticAnswer Solve(ElasticProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        Require(problem);
        var points = new List<Vector3> { problem.Start };
        points.AddRange(problem.Supports.Select(s => s.Point));
        points.Add(problem.End ?? problem.Start);
        var straight = Straight(points, problem.End is null);
        var unit = problem.Length ?? (straight * 1.2);
        if (problem.Length is { } length && length < straight * (1 - 1e-12))
            return new(ElasticOutcome.TooShort, null, []);
        var frame = new ElasticFrame(
            [.. points.Select(p => (1 / unit) * (p - problem.Start))],
            [problem.StartDirection?.Unit(), .. problem.Supports.Select(s => s.Direction?.Unit()), problem.EndDirection?.Unit()],
            (unit * unit * unit / problem.Stiffness) * problem.Load,
            problem.End is null);
        var lengths = SpanLengths(problem, frame, unit);
        if (lengths is null)
            return new(ElasticOutcome.OutOfOrder, null, []);
        var slides = problem.Length is null || problem.Supports.Any(s => s.At is null);
        var endForce = (unit * unit / problem.Stiffness) * problem.EndForce;
        var found = Search(problem, frame, lengths, slides, endForce);
        if (found.Count == 0)
            return new(ElasticOutcome.NotFound, null, []);
        var curves = found.Select(s => CurveReading.Read(s, StabilityOf(s), problem.Start, unit, problem.Stiffness)).OrderBy(c => c.Energy).ToList();
        return new(ElasticOutcome.Found, curves[0], curves.Skip(1).ToEquatableList());
    }

    private static void Require(ElasticProblem p)
    {
        if (p.Length is { } length && !(length > 0 && double.IsFinite(length)))
            throw new ArgumentOutOfRangeException(nameof(p), length, "length > 0");
        if (!(p.Stiffness > 0) || p.Segments < 8 || p.Starts is < 1 or > 9)
            throw new ArgumentOutOfRangeException(nameof(p), p, "stiffness > 0, 8 segments or more, 1 to 9 starts");
        if (p.End is null && (p.Length is null || p.EndDirection is not null))
            throw new ArgumentException("a free end has no direction, and a length is needed", nameof(p));
        if (p.Length is null && (p.End is null || p.Supports.Any(s => s.At is not null)))
            throw new ArgumentException("the natural length is asked for: no support may grip", nameof(p));
    }

    private static double Straight(List<Vector3> points, bool freeEnd)
    {
        var sum = 0.0;
        for (var i = 1; i < points.Count - (freeEnd ? 1 : 0); i++)
            sum += (points[i] - points[i - 1]).Size;
        return sum;
    }

    /// <summary>Given lengths between gripped points; slack shared in proportion to the chords where the curve slides.</summary>
    private static double[]? SpanLengths(ElasticProblem problem, ElasticFrame frame, double unit)
    {
        var lengths = new double[frame.Spans];
        double[] grips = [0, .. problem.Supports.Select(s => s.At is { } at ? at / unit : double.NaN), problem.Length is null ? 1 : problem.Length.Value / unit];
        for (int from = 0, to = 1; to < grips.Length; to++)
        {
            if (double.IsNaN(grips[to]))
                continue;
            double chords = 0, free = frame.FreeEnd && to == grips.Length - 1 ? 1e-3 : 0;
            for (var k = from; k < to; k++)
                chords += frame.IsClosed(k) ? frame.Chord(k).Size : 0;
            var room = grips[to] - grips[from];
            if (!(room > 0) || room < chords * (1 - 1e-12) || (free > 0 && room < chords + free))
                return null;
            for (var k = from; k < to; k++)
            {
                var span = frame.IsClosed(k) ? frame.Chord(k).Size : 0;
                lengths[k] = frame.FreeEnd && to == grips.Length - 1
                    ? frame.IsClosed(k) ? span * 1.02 : room - (1.02 * chords)
                    : chords > 0 ? room * span / chords : room / (to - from);
            }

            from = to;
        }

        return lengths.All(l => l > 0) ? lengths : null;
    }

    private static List<ElasticSystem> Search(ElasticProblem problem, ElasticFrame frame, double[] lengths, bool slides, Vector3 endForce)
    {
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            // Tight hooks need a finer mesh than the first one; after that the starts are shaken.
            var segments = Meshes(frame, lengths, Coarse << Math.Min(attempt, 2), Coarse / 2);
            var shapes = new List<(ElasticSystem System, double Energy)>();
            for (var start = 0; start < problem.Starts; start++)
            {
                var system = Begin(frame, segments, lengths, start, attempt, endForce);
                if (!Settle(system))
                    continue;
                if (slides)
                {
                    system = Release(system, problem);
                    if (!Settle(system))
                        continue;
                }

                var energy = system.Merit().Energy;
                if (!shapes.Any(s => Same(s.System, system, s.Energy, energy)))
                    shapes.Add((system, energy));
            }

            var refined = new List<ElasticSystem>();
            foreach (var (coarse, _) in shapes.OrderBy(s => s.Energy))
            {
                if (Refine(coarse, Meshes(frame, coarse.Lengths, problem.Segments, Math.Min(32, problem.Segments))) is { } fine
                    && !refined.Any(r => Same(r, fine, r.Merit().Energy, fine.Merit().Energy)))
                    refined.Add(fine);
            }

            if (refined.Count > 0)
                return refined;
        }

        return [];
    }

    private static int[] Meshes(ElasticFrame frame, double[] lengths, int most, int least)
    {
        var longest = lengths.Max();
        return [.. Enumerable.Range(0, frame.Spans).Select(k => Math.Clamp((int)Math.Ceiling(most * lengths[k] / longest), least, most))];
    }

    private static ElasticSystem Begin(ElasticFrame frame, int[] segments, double[] lengths, int kind, int attempt, Vector3 endForce)
    {
        var system = new ElasticSystem(frame, segments, null, []);
        Array.Copy(lengths, system.Lengths, lengths.Length);
        var directions = Guess(frame);
        for (var k = 0; k < frame.Spans; k++)
        {
            if (!frame.IsClosed(k))
            {
                for (var i = 0; i <= segments[k]; i++)
                    system.Tangents[system.Offset[k] + i] = directions[k];
                system.Force[k] = endForce + (lengths[k] * frame.Load);
                continue;
            }

            var tangents = CurveStarts.Tangents(frame.Chord(k), directions[k], directions[k + 1], frame.Load, lengths[k], kind, segments[k]);
            Array.Copy(tangents, 0, system.Tangents, system.Offset[k], tangents.Length);
        }

        for (var k = 0; k <= frame.Spans; k++)
        {
            system.Fixed[system.Offset[k]] = frame.Directions[k] is not null;
            if (frame.Directions[k] is { } held)
                system.Tangents[system.Offset[k]] = held;
        }

        Smooth(system);
        if (attempt > 0 || frame.FreeEnd)
            Shake(system, (attempt * 16) + kind, attempt > 0 ? 0.2 : 0.02 * kind);
        return system;
    }

    /// <summary>A start with a cusp is outside the element's range: neighbours are averaged until it has none.</summary>
    private static void Smooth(ElasticSystem system)
    {
        const double Sharp = 0.8;
        var t = system.Tangents;
        for (var pass = 0; pass < 100; pass++)
        {
            var sharpest = 0.0;
            for (var i = 1; i < t.Length; i++)
                sharpest = Math.Max(sharpest, (t[i] - t[i - 1]).Size);
            if (sharpest < Sharp)
                return;
            var last = t[0];
            for (var i = 1; i < t.Length - 1; i++)
            {
                var own = t[i];
                // A little sideways, or two opposite neighbours would have no middle.
                var mean = last + own + t[i + 1] + (1e-3 * ElasticSystem.Across(own).First);
                last = own;
                if (!system.Fixed[i] && mean.Size > 1e-6)
                    t[i] = mean.Unit();
            }
        }
    }

    private static Vector3[] Guess(ElasticFrame frame)
    {
        var guess = new Vector3[frame.Points.Length];
        for (var k = 0; k < guess.Length; k++)
        {
            var along = frame.Points[Math.Min(k + 1, guess.Length - (frame.FreeEnd ? 2 : 1))] - frame.Points[Math.Max(k - 1, 0)];
            guess[k] = frame.Directions[k] ?? (along.Size > 0 ? along.Unit() : k > 0 ? guess[k - 1] : new(1, 0, 0));
        }

        return guess;
    }

    private static void Shake(ElasticSystem system, int stream, double size)
    {
        var random = new CounterRandom(20240717, stream);
        var wave = Enumerable.Range(0, 9).Select(i => size * ((2 * random.Uniform(i)) - 1)).ToArray();
        for (var i = 0; i < system.Tangents.Length; i++)
        {
            if (system.Fixed[i])
                continue;
            var s = Math.PI * i / (system.Tangents.Length - 1);
            double a = Math.Sin(s), b = Math.Sin(2 * s), c = Math.Sin(3 * s);
            system.Tangents[i] = (system.Tangents[i] + new Vector3(
                (wave[0] * a) + (wave[1] * b) + (wave[2] * c),
                (wave[3] * a) + (wave[4] * b) + (wave[5] * c),
                (wave[6] * a) + (wave[7] * b) + (wave[8] * c))).Unit();
        }
    }

    /// <summary>Down to a stable shape with the plain scheme; false where none was reached.</summary>
    private static bool Settle(ElasticSystem system)
    {
        for (var again = 0; again < 3; again++)
        {
            if (!Descend(system))
                return false;
            if (system.Factor(NeutralBelow) == system.Wanted)
                return true;
            // Balanced on a ridge: push it off.
            Shake(system, 100 + again, 0.05);
        }

        return false;
    }

    private static bool Descend(ElasticSystem system)
    {
        double shift = Still, weight = 1;
        for (var iteration = 0; iteration < 120; iteration++)
        {
            system.Assemble();
            while (system.Factor(shift) != system.Wanted)
            {
                shift = Math.Max(1, shift * 3);
                if (shift > 1e9)
                    return false;
            }

            var turn = system.LargestTurn();
            var stretch = system.LargestStretch();
            if (!double.IsFinite(turn))
                return false;
            var (energy, gap) = system.Merit();
            if (turn < 1e-8 && gap < 1e-9 && stretch < 1e-9)
            {
                system.Advance(1, true);
                system.Assemble();
                return true;
            }

            weight = Math.Max(weight, 1.5 * system.NextForce());
            var part = Math.Min(1, Math.Min(0.7 / turn, stretch > 0 ? 0.05 / stretch : 1));
            var slope = system.Slope(weight);
            var merit = energy + (weight * gap);
            var old = (Vector3[])system.Tangents.Clone();
            var oldLengths = (double[])system.Lengths.Clone();
            var accepted = false;
            for (var half = 0; half < 12; half++)
            {
                system.Advance(part, false);
                var (e, g) = system.Merit();
                if (e + (weight * g) <= merit + (1e-4 * part * Math.Min(slope, 0)) + (1e-12 * (1 + Math.Abs(merit))))
                {
                    accepted = true;
                    break;
                }

                old.CopyTo(system.Tangents, 0);
                oldLengths.CopyTo(system.Lengths, 0);
                part *= 0.5;
            }

            if (!accepted)
            {
                shift = Math.Max(1, 10 * shift);
                if (shift > 1e9)
                    return false;
                continue;
            }

            system.Advance(0, true);
            shift = part == 1 ? (shift <= 1 ? Still : shift / 8) : shift;
        }

        return false;
    }

    /// <summary>The same curve with its span lengths set free.</summary>
    private static ElasticSystem Release(ElasticSystem tight, ElasticProblem problem)
    {
        // A grip parts the curve into groups of spans that share a length.
        var groups = new int[tight.Spans];
        for (var k = 1; k < groups.Length; k++)
            groups[k] = groups[k - 1] + (problem.Supports[k - 1].At is null ? 0 : 1);
        double[] totals = problem.Length is null ? [] : [.. Enumerable.Range(0, groups[^1] + 1).Select(g => tight.Lengths.Where((_, k) => groups[k] == g).Sum())];
        var free = new ElasticSystem(tight.Frame, tight.Segments, groups, totals);
        Copy(tight, free);
        return free;
    }

    private static void Copy(ElasticSystem from, ElasticSystem to)
    {
        from.Tangents.CopyTo(to.Tangents, 0);
        from.Fixed.CopyTo(to.Fixed, 0);
        from.Force.CopyTo(to.Force, 0);
        from.Lengths.CopyTo(to.Lengths, 0);
    }

    private static ElasticSystem? Refine(ElasticSystem coarse, int[] segments)
    {
        var fine = new ElasticSystem(coarse.Frame, segments, coarse.Groups, coarse.Totals);
        coarse.Lengths.CopyTo(fine.Lengths, 0);
        coarse.Force.CopyTo(fine.Force, 0);
        coarse.Balance.CopyTo(fine.Balance, 0);
        for (var k = 0; k < fine.Spans; k++)
        {
            for (var i = 0; i <= segments[k]; i++)
            {
                var place = (double)i / segments[k] * coarse.Segments[k];
                var j = Math.Min((int)place, coarse.Segments[k] - 1);
                Vector3 a = coarse.Tangents[coarse.Offset[k] + j], b = coarse.Tangents[coarse.Offset[k] + j + 1];
                fine.Tangents[fine.Offset[k] + i] = (((1 - place + j) * a) + ((place - j) * b)).Unit();
            }
        }

        for (var k = 0; k <= fine.Spans; k++)
        {
            fine.Fixed[fine.Offset[k]] = coarse.Fixed[coarse.Offset[k]];
            fine.Tangents[fine.Offset[k]] = coarse.Tangents[coarse.Offset[k]];
        }

        // The finer mesh may show a ridge that the coarse one took for a valley: push off once.
        for (var again = 0; again < 2; again++)
        {
            fine.Fine = false;
            if (again > 0)
                Shake(fine, 200, 0.05);
            if (!Descend(fine) || !Sharpen(fine))
                return null;
            if (StabilityOf(fine) != CurveStability.Unstable)
                return fine;
        }

        return null;
    }

    /// <summary>Newton steps with the fourth-order element; false where they do not close.</summary>
    private static bool Sharpen(ElasticSystem fine)
    {
        fine.Fine = true;
        var last = double.PositiveInfinity;
        for (var i = 0; i < 20; i++)
        {
            fine.Assemble();
            if (fine.Factor(Still) < 0)
                return false;
            double turn = fine.LargestTurn(), stretch = fine.LargestStretch();
            if (!(turn < 0.7) || stretch > 0.2)
                return false;
            fine.Advance(1, true);
            var change = Math.Max(turn, stretch);
            // Along a direction that costs nothing rounding moves the curve by more than elsewhere.
            if (change < 1e-12 || (change < Rounding && change > 0.5 * last))
                break;
            if (i == 19 && change > Rounding)
                return false;
            last = change;
        }

        fine.Assemble();
        return true;
    }

    private static CurveStability StabilityOf(ElasticSystem system) =>
        system.Factor(NeutralBelow) != system.Wanted ? CurveStability.Unstable
        : system.Factor(-NeutralBelow) == system.Wanted ? CurveStability.Stable
        : CurveStability.Neutral;

    private static bool Same(ElasticSystem a, ElasticSystem b, double energyA, double energyB)
    {
        var alike = Math.Abs(energyA - energyB) <= 1e-6 * Math.Max(1, Math.Abs(energyA));
        if (!alike)
            return false;
        var apart = 0.0;
        for (var i = 0; i < Math.Min(a.Tangents.Length, b.Tangents.Length); i++)
            apart = Math.Max(apart, (a.Tangents[i] - b.Tangents[i]).Size);
        // A bow that can swing to any side is one shape.
        return apart < SameShape || (a.Factor(-NeutralBelow) != a.Wanted && b.Factor(-NeutralBelow) != b.Wanted);
    }
}
