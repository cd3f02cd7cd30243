using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Curves;

/// <summary>Finds the shapes in which an elastic curve rests. Theory: docs/theory/route.md.</summary>
/// <remarks>
/// Several starts, each brought down on a coarse mesh by Newton steps whose matrix is shifted until its signs are those of
/// a minimum, then refined with the fourth-order element. The number of negative eigenvalues at the end decides whether
/// the shape is stable. Same input, same bytes: nothing depends on time or threads.
/// </remarks>
public static partial class ElasticCurveSolver
{
    private const int Coarse = 24;
    private const int Attempts = 4;

    // All shifts in units of stiffness / length^2: lowest bending modes lie at 10 and above.
    private const double Still = 1e-6;
    private const double NeutralBelow = 1e-4;
    private const double Rounding = 1e-6;
    private const double SameShape = 2e-2;
    private const double Rough = 1e-2;
    private const int RoughSteps = 4;
    private const double Settled = 1e-8;
    private const double Nearly = 1e-4;
    private const double Polished = 3e-8;
    private const int Polish = 48;

    // Turns of a tangent in one step, rad: on the way down, and where a shape is followed.
    private const double LongestTurn = 0.7;
    private const double Stride = 0.5;

    public static ElasticAnswer Solve(ElasticProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        Require(problem);
        if (Posed.Of(problem) is not { } posed)
            return new(ElasticOutcome.TooShort, null, []);
        if (SpanLengths(problem, posed) is not { } lengths)
            return new(ElasticOutcome.OutOfOrder, null, []);
        var found = Search(problem, posed, lengths);
        if (problem.Obstacles.Count > 0)
            return AmongObstacles(problem, posed, lengths, found);
        if (found.Count == 0)
            return new(ElasticOutcome.NotFound, null, []);
        var curves = found.Select(s => CurveReading.Read(s.System, s.Stability, posed.Origin, posed.Unit, problem.Stiffness)).OrderBy(c => c.Energy).ToList();
        return new(ElasticOutcome.Found, curves[0], curves.Skip(1).ToEquatableList());
    }

    /// <summary>The shape that a known one goes over into when its ends, supports, length or load are moved a little.</summary>
    /// <returns>Null where the way there isn't short and stable: then only <see cref="Solve"/> helps.</returns>
    /// <param name="near">A shape of the same number of spans.</param>
    public static ElasticCurve? Follow(ElasticProblem problem, ElasticCurve near)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(near);
        Require(problem);
        if (near.Holds.Count != problem.Supports.Count + 2 || Posed.Of(problem) is not { } posed || SpanLengths(problem, posed) is not { } lengths)
            return null;
        var totals = Totals(problem, posed, lengths);
        if (posed.Slides)
        {
            // The lengths between the holds as they were, in proportion where their sum has changed.
            for (var k = 0; k < lengths.Length; k++)
                lengths[k] = near.SpanLength(k) / posed.Unit;
            for (var g = 0; g < totals.Length; g++)
            {
                var sum = 0.0;
                for (var k = 0; k < lengths.Length; k++)
                    sum += posed.Groups[k] == g ? lengths[k] : 0;
                for (var k = 0; k < lengths.Length; k++)
                    lengths[k] *= posed.Groups[k] == g ? totals[g] / sum : 1;
            }
        }

        var scratch = new ElasticScratch();
        if (problem.Obstacles.Count > 0)
            return FollowAmongObstacles(problem, posed, totals, lengths, near);
        var system = Laid(problem, posed, totals, lengths, Meshes(posed.Frame, lengths, Coarse, Coarse / 2), near, near.Holds, scratch);
        Vector3[] before = [.. system.Tangents];
        if (!Sharpen(system, Nearly, Stride) || Apart(system.Tangents, before, 2 * Stride) > Stride)
            return null;
        var fine = Finer(system, Meshes(posed.Frame, system.Lengths, problem.Segments, LeastOf(problem)), scratch);
        // On a mesh of few segments nothing is to be had by the last digits.
        if (!Sharpen(fine, problem.Segments < Polish ? Nearly : Polished, Stride) || StabilityOf(fine) is not (not CurveStability.Unstable and var stability))
            return null;
        return CurveReading.Read(fine, stability, posed.Origin, posed.Unit, problem.Stiffness);
    }

    /// <summary>A solved curve on a mesh of this problem, its ends turned to where they are held.</summary>
    /// <param name="holds">Its nodes at the holds of this problem.</param>
    private static ElasticSystem Laid(ElasticProblem problem, Posed posed, double[] totals, double[] lengths, int[] segments, ElasticCurve curve, IReadOnlyList<int> holds, ElasticScratch scratch)
    {
        var system = new ElasticSystem(posed.Frame, segments, posed.Slides ? posed.Groups : null, totals, scratch);
        lengths.CopyTo(system.Lengths, 0);
        var force = default(Vector3);
        var reaction = 0;
        for (var k = 0; k < system.Spans; k++)
        {
            var (node, end) = (holds[k], holds[k + 1]);
            double start = curve.Nodes[node].At, over = curve.Nodes[end].At - start;
            for (var i = 0; i <= segments[k]; i++)
            {
                var at = start + (over * i / segments[k]);
                while (node + 2 <= end && curve.Nodes[node + 1].At <= at)
                    node++;
                CurveNode a = curve.Nodes[node], b = curve.Nodes[node + 1];
                system.Tangents[system.Offset[k] + i] = Between(a.Tangent, a.Curvature, b.Tangent, b.Curvature, b.At - a.At, Math.Min(1, (at - a.At) / (b.At - a.At)));
            }

            // What else holds the curve on the way is left out here.
            while (curve.Holds[reaction] < holds[k])
                reaction++;
            force -= (posed.Unit * posed.Unit / problem.Stiffness) * curve.Reactions[reaction].Force;
            system.Force[k] = posed.Frame.IsClosed(k) ? force : posed.EndForce + (system.Lengths[k] * posed.Frame.Load);
            force -= system.Lengths[k] * posed.Frame.Load;
        }

        for (var k = 0; k <= system.Spans; k++)
        {
            if (posed.Frame.Directions[k] is { } held)
                system.Tangents[system.Offset[k]] = held;
        }

        return system;
    }

    /// <summary>The problem in the solver's own measure: length about 1, stiffness 1, from an origin of its own.</summary>
    private sealed record Posed(ElasticFrame Frame, Vector3 Origin, double Unit, Vector3 EndForce, bool Slides, int[] Groups)
    {
        /// <returns>Null where the length is below the straight lines.</returns>
        public static Posed? Of(ElasticProblem problem)
        {
            var points = new List<Vector3> { problem.Start };
            points.AddRange(problem.Supports.Select(s => s.Point));
            points.Add(problem.End ?? problem.Start);
            var straight = Straight(points, problem.End is null);
            if (problem.Length is { } length && length < straight * (1 - 1e-12))
                return null;
            var unit = problem.Length ?? (straight * 1.2);
            // Length drawn in brings the work of its own weight, counted from the origin: from the middle of the ends neither end is preferred.
            var origin = problem is { Length: null, End: { } end } ? 0.5 * (problem.Start + end) : problem.Start;
            var frame = new ElasticFrame(
                [.. points.Select(p => (1 / unit) * (p - origin))],
                [problem.StartDirection?.Unit(), .. problem.Supports.Select(s => s.Direction?.Unit()), problem.EndDirection?.Unit()],
                (unit * unit * unit / problem.Stiffness) * problem.Load,
                problem.End is null);
            // A grip parts the curve into groups of spans that share a length.
            var groups = new int[frame.Spans];
            for (var k = 1; k < groups.Length; k++)
                groups[k] = groups[k - 1] + (problem.Supports[k - 1].At is null ? 0 : 1);
            return new(frame, origin, unit, (unit * unit / problem.Stiffness) * problem.EndForce, problem.Length is null || problem.Supports.Any(s => s.At is null), groups);
        }
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
    private static double[]? SpanLengths(ElasticProblem problem, Posed posed)
    {
        var (frame, unit) = (posed.Frame, posed.Unit);
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

    private static double[] Totals(ElasticProblem problem, Posed posed, double[] lengths) =>
        !posed.Slides || problem.Length is null ? [] : [.. Enumerable.Range(0, posed.Groups[^1] + 1).Select(g => lengths.Where((_, k) => posed.Groups[k] == g).Sum())];

    /// <summary>A shape and whether it may swing at no cost: such are one shape wherever they swing.</summary>
    private sealed record Shape(ElasticSystem System, double Energy, CurveStability Stability);

    private static List<Shape> Search(ElasticProblem problem, Posed posed, double[] lengths)
    {
        var scratch = new ElasticScratch();
        var totals = Totals(problem, posed, lengths);
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            // Tight hooks need a finer mesh than the first one; after that the starts are shaken.
            var segments = Meshes(posed.Frame, lengths, Coarse << Math.Min(attempt, 2), Coarse / 2);
            var shapes = new List<Shape>();
            // Where it slides, the slack may also gather in any one span.
            var gathered = posed.Slides && problem.Length is not null && posed.Frame.Spans > 1 && problem.Starts > 1 ? posed.Frame.Spans : 0;
            for (var start = 0; start < problem.Starts + gathered; start++)
            {
                var system = start < problem.Starts
                    ? Begin(posed, segments, lengths, start, attempt, scratch)
                    : Begin(posed, segments, Gathered(posed, lengths, start - problem.Starts), 0, attempt, scratch);
                if (posed.Slides)
                {
                    // First with shares of the length, roughly; then with lengths free.
                    if (Descend(system, Rough, []) != Way.Down)
                        continue;
                    var free = new ElasticSystem(posed.Frame, segments, posed.Groups, totals, scratch);
                    Copy(system, free);
                    system = free;
                }

                if (Settle(system, shapes) is { } shape && !shapes.Any(s => Same(s, shape)))
                    shapes.Add(shape);
            }

            var refined = new List<Shape>();
            foreach (var coarse in shapes.OrderBy(s => s.Energy))
            {
                if (Refine(coarse.System, Meshes(posed.Frame, coarse.System.Lengths, problem.Segments, LeastOf(problem)), scratch) is { } fine && !refined.Any(r => Same(r, fine)))
                    refined.Add(fine);
            }

            if (refined.Count > 0)
                return refined;
        }

        return [];
    }

    /// <summary>The lengths with the slack of its group all in one span; the others are nearly drawn tight.</summary>
    private static double[] Gathered(Posed posed, double[] lengths, int span)
    {
        const double Tight = 0.1;
        double[] to = [.. lengths];
        for (var k = 0; k < to.Length; k++)
        {
            if (k == span || posed.Groups[k] != posed.Groups[span] || !posed.Frame.IsClosed(k))
                continue;
            var slack = (1 - Tight) * (to[k] - posed.Frame.Chord(k).Size);
            to[k] -= slack;
            to[span] += slack;
        }

        return to;
    }

    /// <summary>Segments of a short span.</summary>
    private static int LeastOf(ElasticProblem problem) => Math.Min(32, problem.Segments / 2);

    private static int[] Meshes(ElasticFrame frame, double[] lengths, int most, int least)
    {
        var longest = lengths.Max();
        return [.. Enumerable.Range(0, frame.Spans).Select(k => Math.Clamp((int)Math.Ceiling(most * lengths[k] / longest), least, most))];
    }

    private static ElasticSystem Begin(Posed posed, int[] segments, double[] lengths, int kind, int attempt, ElasticScratch scratch)
    {
        var frame = posed.Frame;
        var system = new ElasticSystem(frame, segments, null, [], scratch);
        Array.Copy(lengths, system.Lengths, lengths.Length);
        var directions = Guess(frame);
        for (var k = 0; k < frame.Spans; k++)
        {
            if (!frame.IsClosed(k))
            {
                for (var i = 0; i <= segments[k]; i++)
                    system.Tangents[system.Offset[k] + i] = directions[k];
                system.Force[k] = posed.EndForce + (lengths[k] * frame.Load);
                continue;
            }

            var tangents = CurveStarts.Tangents(frame.Chord(k), directions[k], directions[k + 1], frame.Load, lengths[k], kind, segments[k]);
            Array.Copy(tangents, 0, system.Tangents, system.Offset[k], tangents.Length);
        }

        for (var k = 0; k <= frame.Spans; k++)
        {
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

    /// <summary>Down to a stable shape with the plain scheme; null where none was reached, or only one that is known.</summary>
    private static Shape? Settle(ElasticSystem system, List<Shape> known)
    {
        for (var again = 0; again < 3; again++)
        {
            if (Descend(system, Settled, known) != Way.Down)
                return null;
            if (system.Factor(NeutralBelow) == system.Wanted)
                return new(system, system.Merit().Energy, system.Factor(-NeutralBelow) == system.Wanted ? CurveStability.Stable : CurveStability.Neutral);
            // Balanced on a ridge: push it off.
            Shake(system, 100 + again, 0.05);
        }

        return null;
    }

    private enum Way
    {
        Down,
        ToKnown,
        Nowhere,
    }

    private static Way Descend(ElasticSystem system, double settled, List<Shape> known)
    {
        double shift = Still, weight = 1;
        for (var iteration = 0; iteration < 120; iteration++)
        {
            system.Assemble();
            while (system.Factor(shift) != system.Wanted)
            {
                shift = Math.Max(1, shift * 3);
                if (shift > 1e9)
                    return Way.Nowhere;
            }

            var turn = system.LargestTurn();
            var stretch = system.LargestStretch();
            if (!double.IsFinite(turn))
                return Way.Nowhere;
            var (energy, gap) = system.Merit();
            if (turn < settled && gap < 0.1 * settled && stretch < 0.1 * settled)
            {
                system.Advance(1, true);
                system.Assemble();
                return Way.Down;
            }

            // A start is good enough once its spans nearly close: to go on with lengths that are not free would take longer,
            // and lead to fewer shapes.
            if (settled == Rough && iteration >= RoughSteps && gap < Rough)
                return Way.Down;
            if (shift == Still && turn < SameShape && known.Any(k => Apart(k.System.Tangents, system.Tangents, SameShape) < SameShape))
                return Way.ToKnown;
            weight = Math.Max(weight, 1.5 * system.NextForce());
            var part = Math.Min(1, Math.Min(LongestTurn / turn, stretch > 0 ? 0.05 / stretch : 1));
            var slope = system.Slope(weight);
            var merit = energy + (weight * gap);
            system.Keep();
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

                system.GoBack();
                part *= 0.5;
            }

            if (!accepted)
            {
                shift = Math.Max(1, 10 * shift);
                if (shift > 1e9)
                    return Way.Nowhere;
                continue;
            }

            system.Advance(0, true);
            shift = part == 1 ? (shift <= 1 ? Still : shift / 8) : shift;
        }

        return Way.Nowhere;
    }

    private static void Copy(ElasticSystem from, ElasticSystem to)
    {
        from.Tangents.CopyTo(to.Tangents, 0);
        from.Force.CopyTo(to.Force, 0);
        from.Lengths.CopyTo(to.Lengths, 0);
        from.Balance.CopyTo(to.Balance.AsSpan()[..Math.Min(from.Balance.Length, to.Balance.Length)]);
    }

    private static Shape? Refine(ElasticSystem coarse, int[] segments, ElasticScratch scratch)
    {
        // The fourth-order element on the first mesh is nearly there already: the fine one only polishes.
        var quick = new ElasticSystem(coarse.Frame, coarse.Segments, coarse.Groups, coarse.Totals, scratch);
        Copy(coarse, quick);
        if (Sharpen(quick, Nearly, LongestTurn))
        {
            var fine = Finer(quick, segments, scratch);
            if (Sharpen(fine, Polished, LongestTurn) && StabilityOf(fine) is not CurveStability.Unstable and var stability)
                return new(fine, fine.Merit().Energy, stability);
        }

        // The finer mesh may show a ridge that the coarse one took for a valley: push off once.
        for (var again = 0; again < 2; again++)
        {
            var fine = Finer(coarse, segments, scratch);
            if (again > 0)
                Shake(fine, 200, 0.05);
            if (Descend(fine, Settled, []) != Way.Down || !Sharpen(fine, Polished, LongestTurn))
                return null;
            if (StabilityOf(fine) is not CurveStability.Unstable and var stability)
                return new(fine, fine.Merit().Energy, stability);
        }

        return null;
    }

    /// <summary>The same curve on another mesh.</summary>
    private static ElasticSystem Finer(ElasticSystem coarse, int[] segments, ElasticScratch scratch)
    {
        var fine = new ElasticSystem(coarse.Frame, segments, coarse.Groups, coarse.Totals, scratch);
        coarse.Lengths.CopyTo(fine.Lengths, 0);
        coarse.Force.CopyTo(fine.Force, 0);
        coarse.Balance.CopyTo(fine.Balance, 0);
        for (var k = 0; k < fine.Spans; k++)
        {
            var h = coarse.StepAt(k);
            var last = -1;
            Vector3 a = default, b = default, da = default, db = default;
            for (var i = 0; i <= segments[k]; i++)
            {
                var place = (double)i / segments[k] * coarse.Segments[k];
                var j = Math.Min((int)place, coarse.Segments[k] - 1);
                if (j != last)
                {
                    (a, b) = (coarse.Tangents[coarse.Offset[k] + j], coarse.Tangents[coarse.Offset[k] + j + 1]);
                    (da, db) = coarse.Fine ? (coarse.Curvature(k, j, false), coarse.Curvature(k, j, true)) : ((1 / h) * (b - a), (1 / h) * (b - a));
                    last = j;
                }

                fine.Tangents[fine.Offset[k] + i] = Between(a, da, b, db, h, place - j);
            }
        }

        for (var k = 0; k <= fine.Spans; k++)
            fine.Tangents[fine.Offset[k]] = coarse.Tangents[coarse.Offset[k]];
        return fine;
    }

    private static Vector3 Between(Vector3 a, Vector3 da, Vector3 b, Vector3 db, double h, double u)
    {
        var v = 1 - u;
        return ((v * v * (1 + (2 * u)) * a) + (u * u * (1 + (2 * v)) * b) + (h * u * v * v * da) - (h * u * u * v * db)).Unit();
    }

    /// <summary>Newton steps with the fourth-order element; false where they do not close.</summary>
    /// <param name="enough">A step this long ends it: the next one would be about its square.</param>
    /// <param name="longest">Longest turn of a tangent in one step, rad.</param>
    private static bool Sharpen(ElasticSystem system, double enough, double longest)
    {
        system.Fine = true;
        var last = double.PositiveInfinity;
        for (var i = 0; i < 20; i++)
        {
            system.Assemble();
            if (system.Factor(Still) < 0)
                return false;
            double turn = system.LargestTurn(), stretch = system.LargestStretch();
            if (!(turn < longest) || stretch > 0.2)
                return false;
            system.Advance(1, true);
            var change = Math.Max(turn, stretch);
            // Along a direction that costs nothing rounding moves the curve by more than elsewhere.
            if (change < enough || (change < Rounding && change > 0.5 * last))
                break;
            if (i == 19 && change > Rounding)
                return false;
            last = change;
        }

        system.Assemble();
        return true;
    }

    private static CurveStability StabilityOf(ElasticSystem system) =>
        system.Factor(NeutralBelow) != system.Wanted ? CurveStability.Unstable
        : system.Factor(-NeutralBelow) == system.Wanted ? CurveStability.Stable
        : CurveStability.Neutral;

    private static bool Same(Shape a, Shape b) =>
        Math.Abs(a.Energy - b.Energy) <= 1e-6 * Math.Max(1, Math.Abs(a.Energy))
        // A bow that can swing to any side is one shape.
        && ((a.Stability == CurveStability.Neutral && b.Stability == CurveStability.Neutral) || Apart(a.System.Tangents, b.System.Tangents, SameShape) < SameShape);

    /// <summary>Largest difference of the tangents; looked at no further than to the most.</summary>
    private static double Apart(Vector3[] a, Vector3[] b, double most)
    {
        var apart = 0.0;
        for (var i = 0; i < Math.Min(a.Length, b.Length) && apart < most * most; i++)
        {
            var d = a[i] - b[i];
            apart = Math.Max(apart, Vector3.Dot(d, d));
        }

        return Math.Sqrt(apart);
    }
}
