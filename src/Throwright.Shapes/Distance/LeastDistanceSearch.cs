using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>One run of <see cref="LeastDistance"/>: the queue, the best position so far, what was proved.</summary>
internal sealed class LeastDistanceSearch
{
    // Share of the reach that counts against a turn even where the nearest point does not feel it: without it a joint whose
    // nearest point lies on its axis is never split and the search stands still. 0.05 to 0.15 are alike.
    private const double Unfelt = 0.1;

    // Distances on the way need this share of the tolerance only: a direction proves what it proves.
    private const double Share = 1e-3;

    // A wider turn is split at the start: the tip of its triangle runs away at half a turn.
    private const double WidestArc = Math.PI / 2;

    private const int Nothing = -1, NodeOfA = -2, NodeOfB = -3;

    private readonly SearchSide a, b;
    private readonly SearchAim aim;
    private readonly Func<string, string, bool>? allowed;
    private readonly List<Joint> joints;
    private readonly Gates gates;
    private readonly JointSpans[] spans;
    private readonly int count;
    private readonly double padding;
    private readonly SearchQueue queue;
    private readonly int[] domain;
    private readonly double[] middle, corner, low, high;
    private readonly Vector256<double>[] speed;

    private readonly double[] bestQ;
    private Nearness best = new() { Distance = double.PositiveInfinity };
    private int bestA = -1, bestB = -1;
    private double upper = double.PositiveInfinity, dropped = double.PositiveInfinity;
    private long boxes, queries, rounds;

    public LeastDistanceSearch(MovingSolid first, MovingSolid second, SearchAim aim, Func<string, string, bool>? allowed)
    {
        if (!(aim.Tolerance > 0))
            throw new ArgumentException("The tolerance is above zero.", nameof(aim));
        this.aim = aim;
        this.allowed = allowed;
        joints = JointsOf(first, second);
        count = joints.Count;
        spans = [.. joints.Select(_ => new JointSpans())];
        // Joints that both share from the ground on move both alike and cancel.
        var shared = 0;
        while (shared < first.Chain.Joints.Count && shared < second.Chain.Joints.Count && first.Chain.Joints[shared] == second.Chain.Joints[shared])
            shared++;
        a = new(first, shared, joints, spans);
        b = new(second, shared, joints, spans);
        queue = new(count);
        gates = new(first.Chain.Gates.Concat(second.Chain.Gates).Distinct(), joints);
        bestQ = gates.Rest([.. joints.Select(j => 0.5 * (j.From + j.To))]);
        domain = new int[count];
        (low, high) = (new double[count], new double[count]);
        (middle, corner, speed) = (new double[count], new double[count], new Vector256<double>[count]);
        // About fifty operations on numbers of this size; 1e-12 m where everything is small.
        padding = 1e-12 + (64 * 2.2e-16 * (a.Extent + b.Extent));
    }

    public static List<Joint> JointsOf(MovingSolid first, MovingSolid second) => [.. first.Chain.Joints.Concat(second.Chain.Joints).Select(j => j.Free).Distinct()];

    public LeastDistanceResult Run(Action<SearchProgress>? progress, CancellationToken cancel)
    {
        var end = Start() ?? Search(progress, cancel);
        var lower = Math.Min(dropped, queue.Least);
        // Also after an early no: who asks for a range of something else wants to know how badly it fails here.
        if (end == SearchEnd.Converged || (aim.HowBadly && end is SearchEnd.Hits or SearchEnd.TooLittle))
            Descend();
        if (bestA >= 0 && upper > 0 && (aim.HowBadly || end != SearchEnd.TooLittle))
            Settle();
        lower = Math.Max(0, Math.Min(lower - padding, upper));
        if (end == SearchEnd.Hits || upper <= 0)
            (lower, end) = (0, SearchEnd.Hits);
        // The shared joints were left out of the search.
        var outer = a.SharedAt(bestQ);
        return new()
        {
            Lower = lower,
            Upper = Math.Max(0, upper),
            Overlap = Math.Max(0, -upper),
            Ended = end,
            Joints = joints.ToEquatableList(),
            Positions = bestQ.ToEquatableList(),
            OnFirst = outer * Triple.Back(best.OnFirst),
            OnSecond = outer * Triple.Back(best.OnSecond),
            FirstPart = bestA < 0 ? "" : a.Solid.PartOf(bestA),
            SecondPart = bestB < 0 ? "" : b.Solid.PartOf(bestB),
            Boxes = boxes,
            Queries = queries,
        };
    }

    /// <summary>Puts the whole domain into the queue, wide turns in pieces.</summary>
    private SearchEnd? Start()
    {
        var pieces = new int[count];
        for (var i = 0; i < count; i++)
        {
            var width = joints[i].To - joints[i].From;
            var turn = Math.Max(a.Widest(i), b.Widest(i));
            pieces[i] = Math.Max(1, (int)Math.Ceiling((turn / WidestArc) - 1e-9));
            if (pieces[i] > 64)
                throw new ArgumentException($"Joint {joints[i].Name} turns {turn / (2 * Math.PI):0.#} times round: one full turn reaches every position.");
            domain[i] = 1;
            for (var p = 0; p < pieces[i]; p++)
            {
                spans[i].Add(
                    joints[i].From + (width * p / pieces[i]),
                    p == pieces[i] - 1 ? joints[i].To : joints[i].From + (width * (p + 1) / pieces[i]));
            }
        }

        foreach (var rootA in a.Solid.Roots)
        {
            foreach (var rootB in b.Solid.Roots)
            {
                Array.Fill(domain, 1);
                Lock(domain, rootA, rootB);
                if (From(0, rootA, rootB) is { } end)
                    return end;
            }
        }

        return null;

        // Every choice of pieces of this joint and those after it.
        SearchEnd? From(int joint, int rootA, int rootB)
        {
            if (joint == count)
                return Consider(domain, rootA, rootB, default, double.NegativeInfinity, locksJoints: false);
            if (domain[joint] != 1)
                return From(joint + 1, rootA, rootB);
            for (var p = 1; p <= pieces[joint]; p++)
            {
                domain[joint] = p;
                if (From(joint + 1, rootA, rootB) is { } end)
                    return end;
            }

            domain[joint] = 1;
            return null;
        }
    }

    private SearchEnd Search(Action<SearchProgress>? progress, CancellationToken cancel)
    {
        while (queue.Count > 0)
        {
            if (queue.Least - padding >= Goal())
                return Settled();
            if (boxes >= aim.MostBoxes)
                return SearchEnd.OutOfBudget;
            if (cancel.IsCancellationRequested)
                return SearchEnd.Cancelled;
            if ((++rounds & 1023) == 0)
                progress?.Invoke(new(boxes, Math.Max(0, Math.Min(queue.Least, dropped) - padding), upper));

            var item = queue.Take();
            var bound = queue[item].Bound;
            if (Split(item) is { } end)
            {
                // What was taken out and not looked at in full stays unproved.
                dropped = Math.Min(dropped, bound);
                return end;
            }

            queue.Free(item);
        }

        return Settled();
    }

    private SearchEnd Settled() => Math.Min(dropped, queue.Least) - padding >= aim.Enough ? SearchEnd.Enough : SearchEnd.Converged;

    private double Goal() => Math.Min(upper - aim.Tolerance, aim.Enough);

    private SearchEnd? Split(int number)
    {
        var item = queue[number];
        var box = queue.BoxOf(number).AsSpan();
        if (item.Split == NodeOfA)
        {
            var (left, right) = a.Solid.Children(item.NodeA);
            return Consider(box, left, item.NodeB, item.Direction, item.Bound, a.Solid.IsLeaf(left)) ?? Consider(box, right, item.NodeB, item.Direction, item.Bound, a.Solid.IsLeaf(right));
        }

        if (item.Split == NodeOfB)
        {
            var (left, right) = b.Solid.Children(item.NodeB);
            return Consider(box, item.NodeA, left, item.Direction, item.Bound, b.Solid.IsLeaf(left)) ?? Consider(box, item.NodeA, right, item.Direction, item.Bound, b.Solid.IsLeaf(right));
        }

        var (low, high) = spans[item.Split].Halves(box[item.Split]);
        box[item.Split] = low;
        if (Consider(box, item.NodeA, item.NodeB, item.Direction, item.Bound, locksJoints: false) is { } end)
            return end;
        box[item.Split] = high;
        return Consider(box, item.NodeA, item.NodeB, item.Direction, item.Bound, locksJoints: false);
    }

    /// <summary>Bounds one box and drops or queues it.</summary>
    /// <param name="bound">What is proved of it already.</param>
    /// <param name="locksJoints">Looks for joints that leave both nodes as they are.</param>
    private SearchEnd? Consider(ReadOnlySpan<int> whole, int nodeA, int nodeB, Vector256<double> direction, double bound, bool locksJoints)
    {
        var leaf = a.Solid.IsLeaf(nodeA) && b.Solid.IsLeaf(nodeB);
        if (leaf && allowed is not null && allowed(a.Solid.PartOf(nodeA), b.Solid.PartOf(nodeB)))
            return null;
        if (gates.IsAny && IsShut(whole))
            return null;
        boxes++;
        var number = queue.New();
        var box = queue.BoxOf(number).AsSpan();
        whole.CopyTo(box);
        if (locksJoints && leaf)
            Lock(box, nodeA, nodeB);
        if (direction != default)
        {
            bound = Math.Max(bound, Bound(nodeA, nodeB, direction, box, out _, out _));
            if (Drop(bound, number))
                return null;
        }

        // At the middle: a direction, and a distance that is attained.
        for (var i = 0; i < count; i++)
            middle[i] = spans[i][box[i]].Middle;
        queries++;
        var (poseA, poseB) = (a.AtMiddle(box), b.AtMiddle(box));
        var enough = Share * aim.Tolerance;
        ConvexDistance.Between(in a.Solid.Core(nodeA), in poseA, in b.Solid.Core(nodeB), in poseB, direction, leaf && aim.HowBadly, enough, out var there);
        var travel = Worth(in there, box, nodeA, nodeB, leaf, out var split);
        direction = there.Direction;
        bound = Math.Max(bound, there.Proved - travel);
        if (leaf && TakeAllowed(ref there, middle, box, nodeA, nodeB) is { } end)
            return end;
        if (Drop(bound, number))
            return null;
        var (cornerA, cornerB) = (0, 0);
        if (travel > 0)
        {
            bound = Math.Max(bound, Bound(nodeA, nodeB, direction, box, out cornerA, out cornerB));
            if (Drop(bound, number))
                return null;
        }

        if (leaf && split == Nothing)
        {
            // Nothing left to split: one pair at one position, settled to the accuracy of its distance.
            dropped = Math.Min(dropped, bound);
            queue.Free(number);
            return null;
        }

        if (leaf)
        {
            // At the corner where the bound is attained: closes minima at a limit exactly.
            middle.CopyTo(corner, 0);
            a.Predict(-direction, cornerA, box, corner);
            b.Predict(direction, cornerB, box, corner);
            queries++;
            (poseA, poseB) = (a.At(corner), b.At(corner));
            ConvexDistance.Between(in a.Solid.Core(nodeA), in poseA, in b.Solid.Core(nodeB), in poseB, direction, aim.HowBadly, enough, out there);
            var found = there.Direction;
            if (TakeAllowed(ref there, corner, box, nodeA, nodeB) is { } ended)
                return ended;
            var other = Bound(nodeA, nodeB, found, box, out _, out _);
            if (other > bound)
                (bound, direction) = (other, found);
            if (Drop(bound, number))
                return null;
        }

        ref var item = ref queue[number];
        (item.NodeA, item.NodeB, item.Direction, item.Bound, item.Split) = (nodeA, nodeB, direction, bound, split);
        queue.Add(number);
        return null;
    }

    /// <summary>A joint that leaves both nodes as they are is held at its middle.</summary>
    private void Lock(Span<int> box, int nodeA, int nodeB)
    {
        for (var i = 0; i < count; i++)
        {
            if (joints[i].To > joints[i].From && !a.Feels(nodeA, i) && !b.Feels(nodeB, i) && !gates.Uses(i))
                box[i] = spans[i].Held(Math.Clamp(0, joints[i].From, joints[i].To));
        }
    }

    private bool IsShut(ReadOnlySpan<int> box)
    {
        Ends(box);
        return gates.IsShut(low, high);
    }

    private void Ends(ReadOnlySpan<int> box)
    {
        for (var i = 0; i < count; i++)
            (low[i], high[i]) = (spans[i][box[i]].Low, spans[i][box[i]].High);
    }

    /// <summary>What was found counts as attained only where the gates let the joints be; else the nearest such place of the box is tried.</summary>
    private SearchEnd? TakeAllowed(ref Nearness there, double[] q, ReadOnlySpan<int> box, int nodeA, int nodeB)
    {
        if (gates.IsAny && !gates.Allow(q))
        {
            Ends(box);
            if (!gates.Pull(q, low, high))
                return null;
            Query(q, nodeA, nodeB, default, Share * aim.Tolerance, out there);
        }

        return Take(in there, q, nodeA, nodeB);
    }

    private bool Drop(double bound, int number)
    {
        if (bound - padding < Goal())
            return false;
        dropped = Math.Min(dropped, bound);
        queue.Free(number);
        return true;
    }

    private SearchEnd? Take(in Nearness s, double[] q, int nodeA, int nodeB)
    {
        if (s.Distance < upper)
        {
            upper = s.Distance;
            best = s;
            q.CopyTo(bestQ, 0);
            (bestA, bestB) = (nodeA, nodeB);
        }

        // What was not looked at is not proved: nothing is dropped above what was found.
        if (upper <= 0 || upper < aim.TooLittle)
        {
            dropped = Math.Min(dropped, 0);
            return upper <= 0 ? SearchEnd.Hits : SearchEnd.TooLittle;
        }

        return null;
    }

    private void Query(ReadOnlySpan<double> q, int nodeA, int nodeB, Vector256<double> guess, double enough, out Nearness there)
    {
        queries++;
        var (poseA, poseB) = (a.At(q), b.At(q));
        ConvexDistance.Between(in a.Solid.Core(nodeA), in poseA, in b.Solid.Core(nodeB), in poseB, guess, aim.HowBadly, enough, out there);
    }

    /// <summary>dist >= min over B of n.x - max over A of n.x, over the whole box of joint positions.</summary>
    private double Bound(int nodeA, int nodeB, Vector256<double> n, ReadOnlySpan<int> box, out int cornerA, out int cornerB) =>
        a.Low(nodeA, -n, box, out cornerA) + b.Low(nodeB, n, box, out cornerB);

    /// <summary>Speed of the second's nearest point against the first's, for each joint at the position last asked for.</summary>
    private void Speeds(in Nearness s)
    {
        Array.Clear(speed);
        a.AddSpeeds(speed, s.OnFirst, -1);
        b.AddSpeeds(speed, s.OnSecond, 1);
    }

    /// <summary>How much the joints can change the distance, at most, and which joint or node to split: the one that can most.</summary>
    private double Worth(in Nearness s, ReadOnlySpan<int> box, int nodeA, int nodeB, bool leaf, out int split)
    {
        Speeds(in s);
        var most = 0.0;
        var travel = 0.0;
        split = Nothing;
        for (var i = 0; i < count; i++)
        {
            ref readonly var span = ref spans[i][box[i]];
            if (!span.CanBeCut)
                continue;
            var h = 0.5 * (span.High - span.Low);
            var reach = a.ReachBy(nodeA, i) + b.ReachBy(nodeB, i);
            travel += reach * h;
            var square = Triple.Dot(speed[i], speed[i]);
            var along = Math.Abs(Triple.Dot(speed[i], s.Direction));
            var worth = Math.Min(Math.Sqrt(square) * h, (along * h) + (square * h * h / (2 * Math.Max(Math.Abs(s.Distance), 1e-3)))) + (Unfelt * reach * h);
            if (worth > most)
                (most, split) = (worth, i);
        }

        if (leaf)
            return travel;
        bool leafA = a.Solid.IsLeaf(nodeA), leafB = b.Solid.IsLeaf(nodeB);
        var sizeA = leafA ? 0 : a.Solid.Core(nodeA).Reach;
        var sizeB = leafB ? 0 : b.Solid.Core(nodeB).Reach;
        if (Math.Max(sizeA, sizeB) > most || split == Nothing)
            split = !leafA && (sizeA >= sizeB || leafB) ? NodeOfA : NodeOfB;
        return travel;
    }

    /// <summary>The attained value as near as numbers go.</summary>
    private void Settle()
    {
        Query(bestQ, bestA, bestB, best.Direction, 0, out var s);
        if (s.Distance <= upper)
            (upper, best) = (s.Distance, s);
    }

    /// <summary>Steps downhill from the best position found: a better attained value, never part of the proof.</summary>
    /// <remarks>The distance changes with a joint by the speed of the two nearest points along their direction.</remarks>
    private void Descend()
    {
        if (bestA < 0 || count == 0)
            return;
        const int Most = 24;
        Span<double> q = stackalloc double[count];
        Query(bestQ, bestA, bestB, best.Direction, Share * aim.Tolerance, out var here);
        var step = 1.0 / 8;
        Span<double> down = stackalloc double[count];
        for (var round = 0; round < Most; round++)
        {
            Speeds(in here);
            var steepest = 0.0;
            for (var i = 0; i < count; i++)
            {
                var range = joints[i].To - joints[i].From;
                down[i] = -range * Triple.Dot(speed[i], here.Direction);
                if ((down[i] > 0 && bestQ[i] >= joints[i].To) || (down[i] < 0 && bestQ[i] <= joints[i].From))
                    down[i] = 0;
                steepest = Math.Max(steepest, Math.Abs(down[i]));
            }

            // Nothing to gain that a tolerance would show.
            var better = false;
            while (round < Most && step * steepest > 1e-3 * aim.Tolerance)
            {
                for (var i = 0; i < count; i++)
                    q[i] = Math.Clamp(bestQ[i] + (step * (joints[i].To - joints[i].From) * down[i] / steepest), joints[i].From, joints[i].To);
                Query(q, bestA, bestB, here.Direction, Share * aim.Tolerance, out var there);
                if (there.Distance < upper && (!gates.IsAny || gates.Allow(q)))
                {
                    (upper, best, here) = (there.Distance, there, there);
                    q.CopyTo(bestQ);
                    step *= 1.5;
                    better = true;
                    break;
                }

                step *= 0.25;
                round++;
            }

            if (!better)
                return;
        }
    }
}
