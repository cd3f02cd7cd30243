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

    private readonly Side a, b;
    private readonly SearchAim aim;
    private readonly Func<string, string, bool>? allowed;
    private readonly List<Joint> joints;
    private readonly Gates gates;
    private readonly int count;
    private readonly double padding;
    private readonly PriorityQueue<Item, (double Bound, long Number)> queue = new();

    private double[] bestQ;
    private Separation best = new(double.PositiveInfinity, 0, default, default, default);
    private int bestA = -1, bestB = -1;
    private double upper = double.PositiveInfinity, dropped = double.PositiveInfinity;
    private long boxes, queries, number, rounds;
    private Item? boxOf;

    public LeastDistanceSearch(MovingSolid first, MovingSolid second, SearchAim aim, Func<string, string, bool>? allowed)
    {
        if (!(aim.Tolerance > 0))
            throw new ArgumentException("The tolerance is above zero.", nameof(aim));
        this.aim = aim;
        this.allowed = allowed;
        joints = JointsOf(first, second);
        count = joints.Count;
        // Joints that both share from the ground on move both alike and cancel.
        var shared = 0;
        while (shared < first.Chain.Joints.Count && shared < second.Chain.Joints.Count && first.Chain.Joints[shared] == second.Chain.Joints[shared])
            shared++;
        a = new(first, shared, joints);
        b = new(second, shared, joints);
        gates = new(first.Chain.Gates.Concat(second.Chain.Gates).Distinct(), joints);
        bestQ = gates.Rest([.. joints.Select(j => 0.5 * (j.From + j.To))]);
        // About fifty operations on numbers of this size; 1e-12 m where everything is small.
        padding = 1e-12 + (64 * 2.2e-16 * (a.Extent + b.Extent));
    }

    public static List<Joint> JointsOf(MovingSolid first, MovingSolid second) => [.. first.Chain.Joints.Concat(second.Chain.Joints).Select(j => j.Free).Distinct()];

    public LeastDistanceResult Run(Action<SearchProgress>? progress, CancellationToken cancel)
    {
        var end = Start() ?? Search(progress, cancel);
        var lower = Math.Min(dropped, queue.TryPeek(out _, out var key) ? key.Bound : double.PositiveInfinity);
        // Also after an early no: who asks for a range of something else wants to know how badly it fails here.
        if (end is SearchEnd.Converged or SearchEnd.Hits or SearchEnd.TooLittle)
            Descend();
        if (bestA >= 0 && upper > 0)
            Settle();
        lower = Math.Max(0, Math.Min(lower - padding, upper));
        if (end == SearchEnd.Hits || upper <= 0)
            (lower, end) = (0, SearchEnd.Hits);
        var (onA, onB) = PointsOf();
        return new()
        {
            Lower = lower,
            Upper = Math.Max(0, upper),
            Overlap = Math.Max(0, -upper),
            Ended = end,
            Joints = joints.ToEquatableList(),
            Positions = bestQ.ToEquatableList(),
            OnFirst = onA,
            OnSecond = onB,
            FirstPart = bestA < 0 ? "" : a.Solid.PartOf(bestA),
            SecondPart = bestB < 0 ? "" : b.Solid.PartOf(bestB),
            Boxes = boxes,
            Queries = queries,
        };
    }

    /// <summary>Puts the whole domain into the queue, wide turns in pieces.</summary>
    private SearchEnd? Start()
    {
        var turn = new double[count];
        a.AddTurns(turn);
        b.AddTurns(turn);
        foreach (var rootA in a.Solid.Roots)
        {
            foreach (var rootB in b.Solid.Roots)
            {
                foreach (var (low, high) in Domain(turn, SpunBy(a, rootA), SpunBy(b, rootB)))
                {
                    if (Consider(low, high, rootA, rootB, default) is { } end)
                        return end;
                }
            }
        }

        return null;

        // A joint that moves other things too, or stands in a gate, is looked at all the same.
        int SpunBy(Side side, int root) => side.SpunBy(root) is var i && i >= 0 && a.Driven(i) + b.Driven(i) == 1 && !gates.Uses(i) ? i : -1;
    }

    /// <param name="spunA">A joint about which the pair looks the same in every position; -1: none.</param>
    private List<(double[] Low, double[] High)> Domain(double[] turn, int spunA, int spunB)
    {
        List<(double[] Low, double[] High)> domain = [([.. joints.Select(j => j.From)], [.. joints.Select(j => j.To)])];
        foreach (var i in (ReadOnlySpan<int>)[spunA, spunB])
        {
            if (i >= 0)
                domain[0].Low[i] = domain[0].High[i] = Math.Clamp(0, joints[i].From, joints[i].To);
        }

        for (var i = 0; i < count; i++)
        {
            if (i == spunA || i == spunB)
                continue;
            var pieces = Math.Max(1, (int)Math.Ceiling((turn[i] / WidestArc) - 1e-9));
            if (pieces > 64)
                throw new ArgumentException($"Joint {joints[i].Name} turns {turn[i] / (2 * Math.PI):0.#} times round: one full turn reaches every position.");
            if (pieces == 1)
                continue;
            var width = joints[i].To - joints[i].From;
            List<(double[] Low, double[] High)> cut = [];
            foreach (var (low, high) in domain)
            {
                for (var p = 0; p < pieces; p++)
                {
                    double[] l = [.. low], h = [.. high];
                    l[i] = joints[i].From + (width * p / pieces);
                    h[i] = p == pieces - 1 ? joints[i].To : joints[i].From + (width * (p + 1) / pieces);
                    cut.Add((l, h));
                }
            }

            domain = cut;
        }

        return domain;
    }

    private SearchEnd Search(Action<SearchProgress>? progress, CancellationToken cancel)
    {
        while (queue.TryPeek(out var item, out var key))
        {
            if (key.Bound - padding >= Goal())
                return Settled();
            if (boxes >= aim.MostBoxes)
                return SearchEnd.OutOfBudget;
            if (cancel.IsCancellationRequested)
                return SearchEnd.Cancelled;
            if ((++rounds & 1023) == 0)
                progress?.Invoke(new(boxes, Math.Max(0, Math.Min(key.Bound, dropped) - padding), upper));

            queue.Dequeue();
            if (Split(item) is { } end)
            {
                // What was taken out and not looked at in full stays unproved.
                dropped = Math.Min(dropped, item.Bound);
                return end;
            }
        }

        return Settled();
    }

    private SearchEnd Settled() => Math.Min(dropped, Least()) - padding >= aim.Enough ? SearchEnd.Enough : SearchEnd.Converged;

    private double Least() => queue.TryPeek(out _, out var key) ? key.Bound : double.PositiveInfinity;

    private double Goal() => Math.Min(upper - aim.Tolerance, aim.Enough);

    private SearchEnd? Split(Item item)
    {
        var (left, right) = item.SplitA ? a.Solid.Children(item.NodeA) : item.SplitB ? b.Solid.Children(item.NodeB) : (0, 0);
        if (item.SplitA)
            return Consider(item.Low, item.High, left, item.NodeB, item.Direction, item) ?? Consider(item.Low, item.High, right, item.NodeB, item.Direction, item);
        if (item.SplitB)
            return Consider(item.Low, item.High, item.NodeA, left, item.Direction, item) ?? Consider(item.Low, item.High, item.NodeA, right, item.Direction, item);
        var i = item.Parameter;
        var middle = 0.5 * (item.Low[i] + item.High[i]);
        double[] cutHigh = [.. item.High], cutLow = [.. item.Low];
        cutHigh[i] = middle;
        cutLow[i] = middle;
        return Consider(item.Low, cutHigh, item.NodeA, item.NodeB, item.Direction, item)
            ?? Consider(cutLow, item.High, item.NodeA, item.NodeB, item.Direction, item);
    }

    /// <summary>Bounds one box and drops or queues it.</summary>
    private SearchEnd? Consider(double[] low, double[] high, int nodeA, int nodeB, Vector3 direction, Item? parent = null)
    {
        var leaf = a.Solid.IsLeaf(nodeA) && b.Solid.IsLeaf(nodeB);
        if (leaf && allowed is not null && allowed(a.Solid.PartOf(nodeA), b.Solid.PartOf(nodeB)))
            return null;
        boxes++;
        if (gates.IsShut(low, high))
            return null;
        var item = new Item { Low = low, High = high, NodeA = nodeA, NodeB = nodeB, Number = number++ };
        SetBox(item);
        var bound = parent?.Bound ?? double.NegativeInfinity;
        if (direction != default)
        {
            bound = Math.Max(bound, Bound(nodeA, nodeB, direction));
            if (Drop(bound))
                return null;
        }

        // At the middle: a direction, and a distance that is attained.
        Span<double> q = stackalloc double[count];
        for (var i = 0; i < count; i++)
            q[i] = 0.5 * (low[i] + high[i]);
        var middle = Query(q, nodeA, nodeB, leaf);
        Span<double> rate = stackalloc double[count];
        rate.Clear();
        var worth = SplitWorth(item, middle, q, rate);
        if (leaf && TakeAllowed(middle, q, item) is { } end)
            return end;
        direction = middle.Direction;
        bound = Math.Max(bound, Bound(nodeA, nodeB, direction));
        bound = Math.Max(bound, middle.Proved - worth.Travel);
        if (Drop(bound))
            return null;

        if (leaf && worth.Parameter >= 0)
        {
            // At the corner where the bound is attained: closes minima at a limit exactly.
            Span<double> corner = stackalloc double[count];
            q.CopyTo(corner);
            a.Predict(corner, low, high);
            b.Predict(corner, low, high);
            var there = Query(corner, nodeA, nodeB, true);
            if (TakeAllowed(there, corner, item) is { } ended)
                return ended;
            var other = Bound(nodeA, nodeB, there.Direction);
            if (other > bound)
                (bound, direction) = (other, there.Direction);
            if (Drop(bound))
                return null;
        }

        if (leaf && worth.Parameter < 0)
        {
            // Nothing left to split: one pair at one position, settled to the accuracy of its distance.
            dropped = Math.Min(dropped, bound);
            return null;
        }

        item.Bound = bound;
        item.Direction = direction;
        (item.Parameter, item.SplitA, item.SplitB) = (worth.Parameter, worth.SplitA, worth.SplitB);
        queue.Enqueue(item, (bound, item.Number));
        return null;
    }

    private bool Drop(double bound)
    {
        if (bound - padding < Goal())
            return false;
        dropped = Math.Min(dropped, bound);
        return true;
    }

    private SearchEnd? Take(in Separation s, ReadOnlySpan<double> q, int nodeA, int nodeB)
    {
        if (s.Distance < upper)
        {
            upper = s.Distance;
            best = s;
            q.CopyTo(bestQ);
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

    /// <summary>What was found counts as attained only where the gates let the joints be; else the nearest such place of the box is tried.</summary>
    private SearchEnd? TakeAllowed(in Separation s, Span<double> q, Item item)
    {
        if (gates.Allow(q))
            return Take(s, q, item.NodeA, item.NodeB);
        return gates.Pull(q, item.Low, item.High) ? Take(Query(q, item.NodeA, item.NodeB, true), q, item.NodeA, item.NodeB) : null;
    }

    private Separation Query(ReadOnlySpan<double> q, int nodeA, int nodeB, bool depth, bool isFinal = false)
    {
        queries++;
        return ConvexDistance.Between(a.Solid.Node(nodeA), a.PoseAt(q), b.Solid.Node(nodeB), b.PoseAt(q), depth, isFinal ? 0 : Share * aim.Tolerance);
    }

    /// <summary>dist >= min over B of n.x - max over A of n.x, over the whole box of joint positions.</summary>
    private double Bound(int nodeA, int nodeB, Vector3 n) => a.Low(nodeA, -n) + b.Low(nodeB, n);

    private void SetBox(Item item)
    {
        if (boxOf is not null && ReferenceEquals(boxOf.Low, item.Low) && ReferenceEquals(boxOf.High, item.High))
            return;
        boxOf = item;
        a.SetBox(item.Low, item.High);
        b.SetBox(item.Low, item.High);
    }

    /// <summary>Which joint or node to split: the one that can move the distance most.</summary>
    private (int Parameter, bool SplitA, bool SplitB, double Travel) SplitWorth(Item item, in Separation s, ReadOnlySpan<double> q, Span<double> rate)
    {
        Span<Vector3> speed = stackalloc Vector3[count];
        speed.Clear();
        a.AddSpeeds(speed, s.OnFirst, -1);
        b.AddSpeeds(speed, s.OnSecond, 1);
        a.AddReach(rate);
        b.AddReach(rate);
        var most = 0.0;
        var parameter = -1;
        var travel = 0.0;
        for (var i = 0; i < count; i++)
        {
            var h = 0.5 * (item.High[i] - item.Low[i]);
            // Halving ends where the middle is no longer a third number.
            if (!(h > 0) || q[i] <= item.Low[i] || q[i] >= item.High[i])
                continue;
            travel += rate[i] * h;
            var v = speed[i].Size;
            var along = Math.Abs(Vector3.Dot(speed[i], s.Direction));
            var worth = Math.Min(v * h, (along * h) + (v * v * h * h / (2 * Math.Max(Math.Abs(s.Distance), 1e-3)))) + (Unfelt * rate[i] * h);
            if (worth > most)
                (most, parameter) = (worth, i);
        }

        var sizeA = a.Solid.IsLeaf(item.NodeA) ? 0 : a.Solid.Node(item.NodeA).CoreReach;
        var sizeB = b.Solid.IsLeaf(item.NodeB) ? 0 : b.Solid.Node(item.NodeB).CoreReach;
        if (Math.Max(sizeA, sizeB) > most || (parameter < 0 && !(a.Solid.IsLeaf(item.NodeA) && b.Solid.IsLeaf(item.NodeB))))
        {
            var splitA = !a.Solid.IsLeaf(item.NodeA) && (sizeA >= sizeB || b.Solid.IsLeaf(item.NodeB));
            return (0, splitA, !splitA, travel);
        }

        return (parameter, false, false, travel);
    }

    /// <summary>The attained value as near as numbers go.</summary>
    private void Settle()
    {
        var s = Query(bestQ, bestA, bestB, true, isFinal: true);
        if (s.Distance <= upper)
            (upper, best) = (s.Distance, s);
    }

    /// <summary>Pattern search from the best position found: a better attained value, never part of the proof.</summary>
    private void Descend()
    {
        if (bestA < 0 || count == 0)
            return;
        Span<double> step = stackalloc double[count];
        Span<double> q = stackalloc double[count];
        bestQ.CopyTo(q);
        for (var i = 0; i < count; i++)
            step[i] = (joints[i].To - joints[i].From) / 16;
        for (var round = 0; round < 24; round++)
        {
            var better = false;
            for (var i = 0; i < count; i++)
            {
                for (var sign = -1; sign <= 1; sign += 2)
                {
                    var before = q[i];
                    q[i] = Math.Clamp(before + (sign * step[i]), joints[i].From, joints[i].To);
                    if (q[i] == before)
                        continue;
                    if (!gates.Allow(q))
                    {
                        q[i] = before;
                        continue;
                    }

                    var s = Query(q, bestA, bestB, true);
                    if (s.Distance < upper - 1e-13)
                    {
                        upper = s.Distance;
                        best = s;
                        q.CopyTo(bestQ);
                        better = true;
                        break;
                    }

                    q[i] = before;
                }
            }

            if (better)
                continue;
            for (var i = 0; i < count; i++)
                step[i] *= 0.4;
        }
    }

    /// <summary>The nearest points in outer axes: the shared joints were left out of the search.</summary>
    private (Vector3 OnA, Vector3 OnB) PointsOf()
    {
        var outer = a.SharedAt(bestQ);
        return (outer * best.OnFirst, outer * best.OnSecond);
    }

    private sealed class Item
    {
        public required double[] Low { get; init; }
        public required double[] High { get; init; }
        public required int NodeA { get; init; }
        public required int NodeB { get; init; }
        public required long Number { get; init; }
        public double Bound { get; set; }
        public Vector3 Direction { get; set; }
        public int Parameter { get; set; }
        public bool SplitA { get; set; }
        public bool SplitB { get; set; }
    }

    /// <summary>One solid and its own joints, with room for what the box and the position need.</summary>
    private sealed class Side
    {
        private readonly Joint[] own, shared;
        private readonly int[] parameter, sharedParameter, screw;
        private readonly double[] ratio, offset;
        private readonly Pose home;
        private readonly Pose[] before;
        private readonly double[] reach;
        private readonly (double C, double S, double Slid)[][] corner;
        private readonly double[] low, high, pitch;
        private readonly int[] choice, chosen;
        private double least;
        private ConvexShape? shape;

        public Side(MovingSolid moving, int skip, List<Joint> joints)
        {
            Solid = moving.Solid;
            home = moving.Home;
            shared = [.. moving.Chain.Joints.Take(skip)];
            own = [.. moving.Chain.Joints.Skip(skip)];
            // A turn and a slide along its axis may change places.
            for (var j = 0; j + 1 < own.Length; j++)
            {
                if (own[j].Kind == JointKind.Turn && own[j + 1].Kind == JointKind.Slide && own[j].Free == own[j + 1].Free && (own[j].Axis == own[j + 1].Axis || own[j].Axis == -own[j + 1].Axis))
                    (own[j], own[j + 1]) = (own[j + 1], own[j]);
            }

            parameter = [.. own.Select(j => joints.IndexOf(j.Free))];
            sharedParameter = [.. shared.Select(j => joints.IndexOf(j.Free))];
            ratio = [.. own.Select(j => j.Drive?.Ratio ?? 1)];
            offset = [.. own.Select(j => j.Drive?.Offset ?? 0)];
            screw = new int[own.Length];
            pitch = new double[own.Length];
            Array.Fill(screw, -1);
            for (var j = 0; j < own.Length; j++)
            {
                var m = own[j].Kind == JointKind.Slide ? Array.FindIndex(own, j, o => o.Kind == JointKind.Turn && o.Free == own[j].Free) : -1;
                if (m > j && screw[m] < 0 && ratio[m] != 0)
                    (screw[j], screw[m]) = (m, j);
            }

            before = new Pose[own.Length];
            reach = new double[own.Length];
            corner = new (double C, double S, double Slid)[own.Length][];
            (low, high) = (new double[own.Length], new double[own.Length]);
            (choice, chosen) = (new int[own.Length], new int[own.Length]);
            // A ball round the body, carried from the last joint to the first.
            var centre = home * Solid.Centre;
            var radius = Solid.Reach;
            Extent = centre.Size + radius;
            for (var j = own.Length - 1; j >= 0; j--)
            {
                var joint = own[j];
                if (joint.Kind == JointKind.Slide)
                {
                    reach[j] = 1;
                    var half = 0.5 * (joint.To - joint.From);
                    centre += 0.5 * (joint.From + joint.To) * joint.Axis;
                    radius += half;
                }
                else
                {
                    var d = centre - joint.Through;
                    var along = Vector3.Dot(d, joint.Axis) * joint.Axis;
                    var off = (d - along).Size;
                    reach[j] = off + radius;
                    var mid = joint.At(0.5 * (joint.From + joint.To));
                    var half = Math.Min(Math.PI, 0.5 * (joint.To - joint.From));
                    centre = mid * centre;
                    radius += 2 * off * Math.Sin(0.5 * half);
                }

                Extent = Math.Max(Extent, centre.Size + radius + joint.Through.Size);
            }
        }

        public Solid Solid { get; }

        /// <summary>Size of the numbers that go into a bound, m.</summary>
        public double Extent { get; }

        public Pose SharedAt(ReadOnlySpan<double> q)
        {
            var pose = Pose.None;
            for (var j = 0; j < shared.Length; j++)
                pose *= shared[j].At(shared[j].Drive is { } drive ? drive.Offset + (drive.Ratio * q[sharedParameter[j]]) : q[sharedParameter[j]]);
            return pose;
        }

        public Pose PoseAt(ReadOnlySpan<double> q)
        {
            var pose = Pose.None;
            for (var j = 0; j < own.Length; j++)
            {
                before[j] = pose;
                pose *= own[j].At(offset[j] + (ratio[j] * q[parameter[j]]));
            }

            return pose * home;
        }

        /// <summary>Speed of the point for each joint at the position last asked for.</summary>
        public void AddSpeeds(Span<Vector3> speed, Vector3 point, int sign)
        {
            for (var j = 0; j < own.Length; j++)
            {
                var axis = before[j].Turn * own[j].Axis;
                var v = own[j].Kind == JointKind.Slide ? axis : Vector3.Cross(axis, point - (before[j] * own[j].Through));
                speed[parameter[j]] += sign * ratio[j] * v;
            }
        }

        public void AddReach(Span<double> rate)
        {
            for (var j = 0; j < own.Length; j++)
                rate[parameter[j]] += Math.Abs(ratio[j]) * reach[j];
        }

        /// <summary>Widest turn that each free joint drives.</summary>
        public void AddTurns(double[] turn)
        {
            for (var j = 0; j < own.Length; j++)
            {
                if (own[j].Kind == JointKind.Turn)
                    turn[parameter[j]] = Math.Max(turn[parameter[j]], own[j].To - own[j].From);
            }
        }

        /// <summary>How many joints of this side a free joint moves.</summary>
        public int Driven(int i) => parameter.Count(p => p == i);

        /// <summary>The free joint that only spins this node about its own axis; -1: none.</summary>
        public int SpunBy(int node) =>
            own is [.., { Kind: JointKind.Turn } last] && Solid.IsLeaf(node) && Solid.Node(node).Moved(home).IsRoundAbout(last.Through, last.Axis) ? parameter[^1] : -1;

        /// <summary>Ends of each arc and the point where their tangents meet: the arc lies in that triangle.</summary>
        /// <remarks>
        /// With a slide that goes along, (slide, cos, sin) runs up a screw line, which lies in the tetrahedron of its ends and the two
        /// points where their tangents meet the middle: tan h - h of the angle above and below it (docs/theory/clearance.md).
        /// </remarks>
        public void SetBox(double[] boxLow, double[] boxHigh)
        {
            for (var j = 0; j < own.Length; j++)
            {
                (low[j], high[j]) = (offset[j] + (ratio[j] * boxLow[parameter[j]]), offset[j] + (ratio[j] * boxHigh[parameter[j]]));
                if (low[j] > high[j])
                    (low[j], high[j]) = (high[j], low[j]);
            }

            for (var j = 0; j < own.Length; j++)
            {
                if (own[j].Kind == JointKind.Slide)
                    continue;
                var slide = screw[j];
                // m of the slide per rad of the turn.
                var lead = slide < 0 ? 0 : ratio[slide] / ratio[j];
                var slid = slide < 0 ? 0 : 0.5 * (low[slide] + high[slide]);
                var (s0, c0) = Math.SinCos(low[j]);
                if (low[j] == high[j])
                {
                    corner[j] = [(c0, s0, slid)];
                    continue;
                }

                var (s1, c1) = Math.SinCos(high[j]);
                var half = 0.5 * (high[j] - low[j]);
                var (sm, cm) = Math.SinCos(0.5 * (low[j] + high[j]));
                var far = 1 / Math.Cos(half);
                if (slide < 0)
                {
                    corner[j] = [(c0, s0, 0), (c1, s1, 0), (far * cm, far * sm, 0)];
                    continue;
                }

                var off = lead * (Math.Tan(half) - half);
                corner[j] = [(c0, s0, slid - (lead * half)), (c1, s1, slid + (lead * half)), (far * cm, far * sm, slid - off), (far * cm, far * sm, slid + off)];
            }
        }

        /// <summary>Least value of u.x over the node in every position of the box (outer axes, less the shared joints).</summary>
        /// <remarks>
        /// n.(T(q) x) is affine in (cos, sin) of each turn and in each slide, so over the product of triangles it is least
        /// at a product of corners. Through one turn about axis a through o, u.(o + R (x - o)) + k becomes
        ///   u' = R^T u = (u.a) a + c w - s (a x u),  w = u - (u.a) a,   k' = k + (u - u').o
        /// </remarks>
        public double Low(int node, Vector3 u)
        {
            shape = Solid.Node(node);
            least = double.PositiveInfinity;
            Down(0, u, 0);
            return least - shape.Radius;
        }

        /// <summary>Joint positions at which the bound last asked for is attained, as far as corners are positions.</summary>
        public void Predict(Span<double> q, double[] boxLow, double[] boxHigh)
        {
            for (var j = 0; j < own.Length; j++)
            {
                var i = parameter[j];
                // A slide that a turn takes along is where the turn is.
                if (own[j].Kind == JointKind.Slide && screw[j] >= 0)
                    continue;
                q[i] = chosen[j] switch
                {
                    0 => ratio[j] >= 0 ? boxLow[i] : boxHigh[i],
                    1 => ratio[j] >= 0 ? boxHigh[i] : boxLow[i],
                    _ => 0.5 * (boxLow[i] + boxHigh[i]),
                };
            }
        }

        private void Down(int j, Vector3 u, double k)
        {
            if (j == own.Length)
            {
                var value = k + Vector3.Dot(u, home.At) + shape!.Least(home.Turn.Back(u));
                if (value < least)
                {
                    least = value;
                    choice.CopyTo(chosen, 0);
                }

                return;
            }

            var joint = own[j];
            var axis = joint.Axis;
            var along = Vector3.Dot(u, axis);
            if (joint.Kind == JointKind.Slide)
            {
                if (screw[j] >= 0)
                {
                    pitch[screw[j]] = along;
                    Down(j + 1, u, k);
                    return;
                }

                choice[j] = along >= 0 ? 0 : 1;
                Down(j + 1, u, k + (along * (along >= 0 ? low[j] : high[j])));
                return;
            }

            var p = along * axis;
            var w = u - p;
            var v = Vector3.Cross(axis, u);
            var corners = corner[j];
            for (var i = 0; i < corners.Length; i++)
            {
                var (c, s, slid) = corners[i];
                var turned = p + (c * w) - (s * v);
                choice[j] = i;
                Down(j + 1, turned, k + (pitch[j] * slid) + Vector3.Dot(u - turned, joint.Through));
            }
        }
    }
}
