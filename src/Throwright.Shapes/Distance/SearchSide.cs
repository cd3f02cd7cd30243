using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>One solid of a search and its own joints, with room for what the box and the position need.</summary>
/// <remarks>
/// Joints are kept in the body's own axes, so the place at zero is taken off once and not at each corner. What runs most is compiled
/// fully at once: registers are slow in what is compiled in haste, and a process of a second would see little else.
/// </remarks>
internal sealed class SearchSide
{
    // A shape as good as round about the axis of a turn: what it is off counts in the padding.
    private const double Round = 1e-13;

    private readonly Joint[] shared;
    private readonly int[] sharedParameter, parameter;
    private readonly double[] ratio;
    private readonly bool[] turns;

    // Of a slide that a turn takes along: that turn; of that turn: the slide; -1: none.
    private readonly int[] screw;
    private readonly Vector256<double>[] axis, through, axisOut, throughOut;
    private readonly TriplePose home;
    private readonly Pose homePose;
    private readonly JointSpans[] spans;
    private readonly JointArcs[] arcs;
    private readonly double[] reachOfAll;
    private readonly double[]? reachOfNode;
    private readonly double[] widest;
    private readonly double[] cos, sin, slide;

    // The functionals at the corners, a vector of four lanes each: the first turn's corners are the lanes.
    private Vector256<double>[] ux, uy, uz, uk, up, nx, ny, nz, nk, np;

    public SearchSide(MovingSolid moving, int skip, List<Joint> joints, JointSpans[] all)
    {
        Solid = moving.Solid;
        spans = all;
        homePose = moving.Home;
        home = new(in homePose);
        shared = [.. moving.Chain.Joints.Take(skip)];
        Joint[] own = [.. moving.Chain.Joints.Skip(skip)];
        // A turn and a slide along its axis may change places.
        for (var j = 0; j + 1 < own.Length; j++)
        {
            if (own[j].Kind == JointKind.Turn && own[j + 1].Kind == JointKind.Slide && own[j].Free == own[j + 1].Free && (own[j].Axis == own[j + 1].Axis || own[j].Axis == -own[j + 1].Axis))
                (own[j], own[j + 1]) = (own[j + 1], own[j]);
        }

        parameter = [.. own.Select(j => joints.IndexOf(j.Free))];
        sharedParameter = [.. shared.Select(j => joints.IndexOf(j.Free))];
        ratio = [.. own.Select(j => j.Drive?.Ratio ?? 1)];
        turns = [.. own.Select(j => j.Kind == JointKind.Turn)];
        screw = ScrewsOf(own, ratio);
        arcs = [.. own.Select((joint, j) => new JointArcs(all[parameter[j]], turns[j], ratio[j], joint.Drive?.Offset ?? 0)
        {
            Screw = turns[j] && screw[j] is >= 0 and var slides ? (ratio[slides] / ratio[j], (own[slides].Drive?.Offset ?? 0) - (ratio[slides] / ratio[j] * (joint.Drive?.Offset ?? 0))) : null,
        })];
        axis = [.. own.Select(j => Triple.Of(homePose.Turn.Back(j.Axis)))];
        through = [.. own.Select(j => Triple.Of(homePose.Back(j.Through)))];
        (axisOut, throughOut) = (new Vector256<double>[own.Length], new Vector256<double>[own.Length]);
        (cos, sin, slide) = (new double[own.Length], new double[own.Length], new double[own.Length]);
        widest = [.. own.Select(j => j.Kind == JointKind.Turn ? j.To - j.From : 0)];
        // The first turn's corners are lanes, a later one's are blocks.
        var blocks = 1;
        for (var j = Array.IndexOf(turns, true) + 1; j < turns.Length; j++)
            blocks *= turns[j] ? Corners(j) : 1;
        (ux, uy, uz, uk, up) = (new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks]);
        (nx, ny, nz, nk, np) = (new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks], new Vector256<double>[blocks]);
        reachOfAll = new double[own.Length];
        Extent = Reach(own, homePose * Solid.Centre, Solid.Reach, reachOfAll);
        if (Solid.NodeCount <= 64)
        {
            reachOfNode = new double[Solid.NodeCount * own.Length];
            for (var node = 0; node < Solid.NodeCount; node++)
            {
                ref readonly var core = ref Solid.Core(node);
                var reach = reachOfNode.AsSpan(node * own.Length, own.Length);
                Reach(own, homePose * Triple.Back(core.Centre), core.Reach + core.Radius, reach);
                for (var j = 0; j < own.Length; j++)
                {
                    if (turns[j] && IsRoundAbout(in core, j))
                        reach[j] = 0;
                }
            }
        }
    }

    public Solid Solid { get; }

    /// <summary>Size of the numbers that go into a bound, m.</summary>
    public double Extent { get; }

    /// <summary>No point of the node moves faster by this parameter, m a unit; 0: the node looks the same wherever it stands.</summary>
    public double ReachBy(int node, int by)
    {
        var sum = 0.0;
        for (var j = 0; j < parameter.Length; j++)
        {
            if (parameter[j] == by)
                sum += Math.Abs(ratio[j]) * (reachOfNode is null ? reachOfAll[j] : reachOfNode[(node * parameter.Length) + j]);
        }

        return sum;
    }

    /// <summary>Widest turn that a parameter drives, rad.</summary>
    public double Widest(int by)
    {
        var most = 0.0;
        for (var j = 0; j < parameter.Length; j++)
            most = parameter[j] == by ? Math.Max(most, widest[j]) : most;
        return most;
    }

    public bool Feels(int node, int by) => ReachBy(node, by) > 0;

    public Pose SharedAt(ReadOnlySpan<double> q)
    {
        var pose = Pose.None;
        for (var j = 0; j < shared.Length; j++)
            pose *= shared[j].At(shared[j].Drive is { } drive ? drive.Offset + (drive.Ratio * q[sharedParameter[j]]) : q[sharedParameter[j]]);
        return pose;
    }

    /// <summary>Where the body stands at the middle of the box.</summary>
    public TriplePose AtMiddle(ReadOnlySpan<int> box)
    {
        for (var j = 0; j < parameter.Length; j++)
        {
            ref readonly var arc = ref arcs[j][box[parameter[j]]];
            (cos[j], sin[j], slide[j]) = (arc.CosMiddle, arc.SinMiddle, arc.Middle);
        }

        return Placed();
    }

    public TriplePose At(ReadOnlySpan<double> q)
    {
        for (var j = 0; j < parameter.Length; j++)
        {
            var at = arcs[j].Position(q[parameter[j]]);
            slide[j] = at;
            if (turns[j])
                (sin[j], cos[j]) = Math.SinCos(at);
        }

        return Placed();
    }

    /// <summary>Speed of a point for each joint at the position last asked for, along a direction and in all.</summary>
    public void AddSpeeds(Span<Vector256<double>> speed, Vector256<double> point, double sign)
    {
        for (var j = 0; j < parameter.Length; j++)
            speed[parameter[j]] += sign * ratio[j] * (turns[j] ? Triple.Cross(axisOut[j], point - throughOut[j]) : axisOut[j]);
    }

    /// <summary>Least value of u.x over the node in every position of the box (outer axes, less the shared joints).</summary>
    /// <remarks>
    /// n.(T(q) x) is affine in (cos, sin) of each turn and in each slide, so over the product of triangles it is least
    /// at a product of corners. Through one turn about axis a through o, u.(o + R (x - o)) + k becomes
    ///   u' = R^T u = (u.a) a + c w - s (a x u),  w = u - (u.a) a,   k' = k + (u - u').o
    /// </remarks>
    /// <param name="corner">Number of the corner.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Low(int node, Vector256<double> direction, ReadOnlySpan<int> box, out int corner)
    {
        ref readonly var core = ref Solid.Core(node);
        var k = Triple.Dot(direction, home.At);
        var u = Vector256.Create(Triple.Dot(direction, home.X), Triple.Dot(direction, home.Y), Triple.Dot(direction, home.Z), 0);
        var blocks = 0;
        // What a slide that a later turn takes along adds for each metre.
        var pitch = 0.0;
        var isScrewOpen = false;
        for (var j = 0; j < turns.Length; j++)
        {
            ref readonly var arc = ref arcs[j][box[parameter[j]]];
            var (a, o) = (axis[j], through[j]);
            if (blocks == 0)
            {
                var along = Triple.Dot(u, a);
                if (!turns[j])
                {
                    if (screw[j] >= 0)
                        (pitch, isScrewOpen) = (along, true);
                    else
                        k += Math.Min(along * arc.Low, along * arc.High);
                    continue;
                }

                var p = along * a;
                var w = u - p;
                var v = Triple.Cross(a, u);
                // The corners as lanes.
                ux[0] = Vector256.Create(p[0]) + (arc.Cos * w[0]) - (arc.Sin * v[0]);
                uy[0] = Vector256.Create(p[1]) + (arc.Cos * w[1]) - (arc.Sin * v[1]);
                uz[0] = Vector256.Create(p[2]) + (arc.Cos * w[2]) - (arc.Sin * v[2]);
                uk[0] = Vector256.Create(k) + ((Vector256.Create(u[0]) - ux[0]) * o[0]) + ((Vector256.Create(u[1]) - uy[0]) * o[1]) + ((Vector256.Create(u[2]) - uz[0]) * o[2]);
                up[0] = Vector256.Create(pitch);
                if (screw[j] >= 0)
                {
                    uk[0] += pitch * arc.Slid;
                    isScrewOpen = false;
                }

                blocks = 1;
                continue;
            }

            Vector256<double> ax = Vector256.Create(a[0]), ay = Vector256.Create(a[1]), az = Vector256.Create(a[2]);
            if (!turns[j])
            {
                isScrewOpen |= screw[j] >= 0;
                Vector256<double> low = Vector256.Create(arc.Low), high = Vector256.Create(arc.High);
                for (var b = 0; b < blocks; b++)
                {
                    var along = (ux[b] * ax) + (uy[b] * ay) + (uz[b] * az);
                    if (screw[j] >= 0)
                        up[b] = along;
                    else
                        uk[b] += Vector256.Min(along * low, along * high);
                }

                continue;
            }

            Vector256<double> ox = Vector256.Create(o[0]), oy = Vector256.Create(o[1]), oz = Vector256.Create(o[2]);
            var corners = Corners(j);
            for (var b = 0; b < blocks; b++)
            {
                Vector256<double> x = ux[b], y = uy[b], z = uz[b];
                var along = (x * ax) + (y * ay) + (z * az);
                Vector256<double> px = along * ax, py = along * ay, pz = along * az;
                Vector256<double> wx = x - px, wy = y - py, wz = z - pz;
                Vector256<double> vx = (ay * z) - (az * y), vy = (az * x) - (ax * z), vz = (ax * y) - (ay * x);
                for (var i = 0; i < corners; i++)
                {
                    Vector256<double> c = Vector256.Create(arc.Cos[i]), s = Vector256.Create(arc.Sin[i]);
                    Vector256<double> tx = px + (c * wx) - (s * vx), ty = py + (c * wy) - (s * vy), tz = pz + (c * wz) - (s * vz);
                    var to = (i * blocks) + b;
                    (nx[to], ny[to], nz[to]) = (tx, ty, tz);
                    var more = uk[b] + ((x - tx) * ox) + ((y - ty) * oy) + ((z - tz) * oz);
                    nk[to] = screw[j] >= 0 ? more + (up[b] * arc.Slid[i]) : more;
                    if (isScrewOpen)
                        np[to] = up[b];
                }
            }

            if (screw[j] >= 0)
                isScrewOpen = false;
            blocks *= corners;
            (ux, nx) = (nx, ux);
            (uy, ny) = (ny, uy);
            (uz, nz) = (nz, uz);
            (uk, nk) = (nk, uk);
            (up, np) = (np, up);
        }

        corner = 0;
        if (blocks == 0)
            return k + Triple.Dot(u, core.Centre) + core.Least(u) - core.Radius;
        var least = Vector256.Create(double.PositiveInfinity);
        var which = Vector256<double>.Zero;
        for (var b = 0; b < blocks; b++)
        {
            var value = uk[b] + core.Least(ux[b], uy[b], uz[b]);
            which = Vector256.ConditionalSelect(Vector256.LessThan(value, least), Vector256.Create((double)b), which);
            least = Vector256.Min(value, least);
        }

        var lane = 0;
        for (var i = 1; i < 4; i++)
            lane = least[i] < least[lane] ? i : lane;
        corner = lane + (4 * (int)which[lane]);
        return least[lane] - core.Radius;
    }

    /// <summary>Joint positions at a corner of <see cref="Low"/>, as far as corners are positions.</summary>
    public void Predict(Vector256<double> direction, int corner, ReadOnlySpan<int> box, Span<double> q)
    {
        var u = Vector256.Create(Triple.Dot(direction, home.X), Triple.Dot(direction, home.Y), Triple.Dot(direction, home.Z), 0);
        var corners = 4;
        for (var j = 0; j < turns.Length; j++)
        {
            ref readonly var span = ref spans[parameter[j]][box[parameter[j]]];
            ref readonly var arc = ref arcs[j][box[parameter[j]]];
            var along = Triple.Dot(u, axis[j]);
            if (!turns[j])
            {
                // A slide that a turn takes along is where the turn is.
                if (screw[j] < 0)
                    q[parameter[j]] = along * arc.Low <= along * arc.High ? span.Low : span.High;
                continue;
            }

            if (corners == 0)
                corners = Corners(j);
            var i = corner % corners;
            corner /= corners;
            corners = 0;
            var p = along * axis[j];
            u = p + (arc.Cos[i] * (u - p)) - (arc.Sin[i] * Triple.Cross(axis[j], u));
            q[parameter[j]] = i switch { 0 => span.Low, 1 => span.High, _ => span.Middle };
        }
    }

    private int Corners(int turn) => screw[turn] >= 0 ? 4 : 3;

    /// <summary>Slides that go along with a turn: which belongs to which.</summary>
    private static int[] ScrewsOf(Joint[] own, double[] ratio)
    {
        var screw = new int[own.Length];
        Array.Fill(screw, -1);
        // One is followed at a time; what is not paired moves freely, which covers more.
        var free = 0;
        for (var j = 0; j < own.Length; j++)
        {
            var m = j >= free && own[j].Kind == JointKind.Slide ? Array.FindIndex(own, j, o => o.Kind == JointKind.Turn && o.Free == own[j].Free) : -1;
            if (m > j && ratio[m] != 0)
                (screw[j], screw[m], free) = (m, j, m + 1);
        }

        return screw;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private TriplePose Placed()
    {
        Vector256<double> x = home.X, y = home.Y, z = home.Z, at = home.At;
        for (var j = 0; j < turns.Length; j++)
        {
            var a = axis[j];
            var aOut = Triple.Combined(a, x, y, z);
            axisOut[j] = aOut;
            if (!turns[j])
            {
                at += slide[j] * aOut;
                continue;
            }

            var oOut = at + Triple.Combined(through[j], x, y, z);
            throughOut[j] = oOut;
            // What stood at x turns to the same about the axis as it stands in outer axes.
            var (c, s) = (cos[j], sin[j]);
            x = Turned(x, aOut, c, s);
            y = Turned(y, aOut, c, s);
            z = Turned(z, aOut, c, s);
            at = oOut + Turned(at - oOut, aOut, c, s);
        }

        return new(x, y, z, at);

        static Vector256<double> Turned(Vector256<double> v, Vector256<double> a, double c, double s)
        {
            var along = Triple.Dot(a, v) * a;
            return along + (c * (v - along)) + (s * Triple.Cross(a, v));
        }
    }

    /// <summary>A ball round a part of the body, carried from the last joint to the first.</summary>
    /// <returns>Size of the numbers, m.</returns>
    private static double Reach(Joint[] own, Vector3 centre, double radius, Span<double> reach)
    {
        var extent = centre.Size + radius;
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
                var off = (d - (Vector3.Dot(d, joint.Axis) * joint.Axis)).Size;
                reach[j] = off + radius;
                var half = Math.Min(Math.PI, 0.5 * (joint.To - joint.From));
                centre = joint.At(0.5 * (joint.From + joint.To)) * centre;
                radius += 2 * off * Math.Sin(0.5 * half);
            }

            extent = Math.Max(extent, centre.Size + radius + joint.Through.Size);
        }

        return extent;
    }

    /// <summary>Does the core look the same however this joint is turned? Joints after it must keep it on the axis.</summary>
    private bool IsRoundAbout(in Core core, int joint)
    {
        var (a, o) = (axis[joint], through[joint]);
        for (var j = joint + 1; j < turns.Length; j++)
        {
            if (Triple.Size(Triple.Cross(a, axis[j])) > 1e-15 || (turns[j] && Triple.Size(Triple.Cross(a, through[j] - o)) > Round))
                return false;
        }

        return Triple.Size(Triple.Cross(a, core.Centre - o)) <= Round
            && (core.Kind == CoreKind.Point || ((core.Kind is CoreKind.Segment or CoreKind.Bar or CoreKind.Cone) && Triple.Size(Triple.Cross(a, core.X)) <= Round));
    }
}
