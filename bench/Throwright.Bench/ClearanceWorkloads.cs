using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Bench;

/// <summary>
/// Workloads of clearance, fixed seeds. "clearance" times our own and writes the same poses and scenes to a file, which
/// bench/fcl reads; what it answers is then held against ours.
/// </summary>
internal static partial class ClearanceWorkloads
{
    private const double Degree = Math.PI / 180;
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    /// <param name="exchange">Where the file for the other side goes.</param>
    /// <param name="part">pairs, meshes, scenes or mesh-scenes alone; null: all.</param>
    public static void Run(string exchange, string? part = null)
    {
        using var writer = new BinaryWriter(File.Create(exchange));
        if (part is null or "pairs")
            Pairs(writer);
        if (part is null or "meshes")
            Meshes(writer);
        if (part is null or "scenes")
            Scenes(writer);
        if (part is null or "mesh-scenes")
            MeshScenes();
    }

    /// <summary>Reads what the other side answered and says how far it is from ours, by the same name.</summary>
    public static void Compare(string ours, string theirs)
    {
        foreach (var (a, b) in File.ReadLines(ours).Zip(File.ReadLines(theirs)))
        {
            string[] p = a.Split(' '), q = b.Split(' ');
            if (p[0] != q[0] || p.Length != q.Length)
                throw new InvalidDataException($"{p[0]} and {q[0]}");
            var differences = p.Zip(q).Skip(1).Select(v => double.Parse(v.Second, CultureInfo.InvariantCulture) - double.Parse(v.First, CultureInfo.InvariantCulture)).ToList();
            Say($"{p[0]}: {differences.Count} distances, the other one's above ours by at most {Mm(differences.Max())}, below by at most {Mm(-differences.Min())}, apart by more than 10 um in {differences.Count(d => Math.Abs(d) > 1e-5)}");
        }
    }

    private static string Mm(double metres) => string.Create(CultureInfo.InvariantCulture, $"{1000 * metres:g2} mm");

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    // ---- Distance of two shapes at one position ----

    /// <summary>A shape as both sides know it: about its own centre, a round one along z.</summary>
    /// <param name="Kind">0 ball, 1 capsule, 2 box, 3 cylinder.</param>
    /// <param name="A">Radius, or half the length along x; of a round bar B is half its length.</param>
    private sealed record Plain(int Kind, double A, double B = 0, double C = 0)
    {
        public ConvexShape Shape(Pose at) => Kind switch
        {
            0 => new Sphere(at.At, A),
            1 => new Capsule(at * (-B * Z), at * (B * Z), A),
            2 => new Box(at.At, at.Turn, new(A, B, C)),
            3 => new Cylinder(at * (-B * Z), at * (B * Z), A),
            _ => throw new InvalidOperationException(),
        };

        public void Write(BinaryWriter writer)
        {
            foreach (var v in (double[])[Kind, A, B, C])
                writer.Write(v);
        }
    }

    private static void Write(BinaryWriter writer, Pose p)
    {
        foreach (var v in (Vector3[])[p.Turn.X, p.Turn.Y, p.Turn.Z, p.At])
            Write(writer, v);
    }

    private static void Write(BinaryWriter writer, Vector3 v)
    {
        writer.Write(v.X);
        writer.Write(v.Y);
        writer.Write(v.Z);
    }

    private static readonly Plain Ball = new(0, 0.03), Rod = new(1, 0.012, 0.15), Block = new(2, 0.05, 0.03, 0.02), Bar = new(3, 0.02, 0.08);

    private static void Pairs(BinaryWriter writer)
    {
        const int Poses = 20_000;
        foreach (var (name, a, b) in new[] { ("capsule-capsule", Rod, Rod), ("ball-capsule", Ball, Rod), ("box-box", Block, Block), ("capsule-box", Rod, Block), ("cylinder-box", Bar, Block), ("cylinder-cylinder", Bar, Bar) })
        {
            var (first, second) = (a.Shape(Pose.None), b.Shape(Pose.None));
            var poses = new List<(Pose A, Pose B)>();
            for (var i = 0; poses.Count < Poses; i++)
            {
                var random = new CounterRandom(77, i);
                var (p, q) = (PoseOf(random, 0, 0.05), PoseOf(random, 8, 0.3));
                if (ConvexDistance.Between(first, p, second, q, depth: false).Distance > 1e-3)
                    poses.Add((p, q));
            }

            writer.Write(1.0);
            writer.Write((double)Poses);
            a.Write(writer);
            b.Write(writer);
            foreach (var (p, q) in poses)
            {
                Write(writer, p);
                Write(writer, q);
            }

            var distances = new double[Poses];
            var all = poses.ToArray();
            var best = double.PositiveInfinity;
            // Longer than the compiler waits before it compiles anew what runs often.
            for (var (round, begun) = (0, Processor()); round < 5 || Processor() - begun < 0.6; round++)
            {
                var start = Processor();
                for (var i = 0; i < Poses; i++)
                    distances[i] = ConvexDistance.Between(first, in all[i].A, second, in all[i].B, depth: false).Distance;
                best = Math.Min(best, Processor() - start);
            }

            Say($"distance-{name}: ours {Poses / best / 1e6:0.00} M/s");
            Record($"distance-{name}", distances);
        }
    }

    private static void Meshes(BinaryWriter writer)
    {
        var (large, small) = (StickSkin(100_000, 1), StickSkin(20_000, 2));
        WriteMesh(writer, large);
        WriteMesh(writer, small);
        var start = Processor();
        var solid = Solid.OfTriangles("large", large.Corners, large.Indices);
        Say($"mesh-build-100k: ours {1000 * (Processor() - start):0} ms");
        var other = Solid.OfTriangles("small", small.Corners, small.Indices);
        foreach (var (name, poses, second, kind) in new[] { ("mesh-100k-capsule", 500, Solid.Of(new Part("rod", Rod.Shape(Pose.None))), 2.0), ("mesh-100k-mesh-20k", 100, other, 3.0) })
        {
            writer.Write(kind);
            writer.Write((double)poses);
            Rod.Write(writer);
            var distances = new double[poses];
            List<(Pose A, Pose B)> all = [];
            for (var i = 0; i < poses; i++)
            {
                var random = new CounterRandom(78, i);
                var (p, q) = (PoseOf(random, 0, 0.05), PoseOf(random, 8, 0.05));
                q = q with { At = q.At + (0.75 * Direction(random, 20)) };
                all.Add((p, q));
                Write(writer, p);
                Write(writer, q);
            }

            var best = double.PositiveInfinity;
            for (var round = 0; round < 2; round++)
            {
                start = Processor();
                for (var i = 0; i < poses; i++)
                    distances[i] = LeastDistance.Find(new(solid, JointChain.Fixed, all[i].A), new(second, JointChain.Fixed, all[i].B), new() { Tolerance = 1e-6 }).Upper;
                best = Math.Min(best, Processor() - start);
            }

            Say($"distance-{name}: ours {poses / best:0} /s");
            Record($"distance-{name}", distances);
        }
    }

    private static void WriteMesh(BinaryWriter writer, Skin skin)
    {
        writer.Write(0.0);
        writer.Write((double)skin.Corners.Count);
        writer.Write((double)skin.Triangles);
        foreach (var c in skin.Corners)
            Write(writer, c);
        foreach (var i in skin.Indices)
            writer.Write((double)i);
    }

    // ---- Least distance over joints ----

    private sealed record Scene((Plain Shape, Pose At)[] A, (Plain Shape, Pose At)[] B, JointChain ChainA, JointChain ChainB)
    {
        public MovingSolid First => new(Solid.Of(A.Select((s, i) => new Part($"{i}", s.Shape.Shape(s.At)))), ChainA);
        public MovingSolid Second => new(Solid.Of(B.Select((s, i) => new Part($"{i}", s.Shape.Shape(s.At)))), ChainB);
    }

    /// <summary>A stick on pitch and roll beside a handle that is pulled and turned.</summary>
    private static Scene Of(int seed)
    {
        var random = new CounterRandom(79, seed);
        double Number(int at, double low, double high) => low + (random.Uniform(at) * (high - low));
        double stick = Number(0, 0.40, 0.52), grip = 0.06;
        Plain held = (seed % 3) switch { 0 => new(1, 0.02, grip), 1 => new(2, 0.018, 0.024, grip), _ => new(3, 0.022, grip) };
        var foot = new Vector3(Number(1, -0.42, -0.20), Number(2, -0.3, 0.3), Number(3, 0.35, 0.6));
        var axis = (X + (0.4 * Direction(random, 4))).Unit();
        var along = Rotation.Between(Z, axis);
        Plain knob = (seed / 3 % 4) switch { 0 => new(0, 0.018), 1 => new(3, 0.016, 0.012), 2 => new(1, 0.009, 0.04), _ => new(2, 0.02, 0.012, 0.01) };
        // A T-handle's bar stands across.
        var knobAt = new Pose(seed / 3 % 4 == 2 ? along * Rotation.About(X, Math.PI / 2) : along, foot + (0.045 * axis));
        return new(
            [(new(1, 0.012, 0.5 * stick), new(Rotation.None, 0.5 * stick * Z)), (held, new(Rotation.None, (stick + grip) * Z))],
            [(new(1, 0.005, 0.06), new(along, foot - (0.03 * axis))), (knob, knobAt)],
            new([Joint.Turn("pitch", default, Y, -20 * Degree, 20 * Degree), Joint.Turn("roll", default, X, -25 * Degree, 25 * Degree)]),
            new([Joint.Slide("pull", axis, 0, Number(7, 0.03, 0.075)), Joint.Turn("turn", foot, axis, -60 * Degree, 60 * Degree)]));
    }

    private static void Scenes(BinaryWriter writer)
    {
        foreach (var (name, aim) in new[] { ("clearance-primitives", new SearchAim()), ("clearance-fine", new SearchAim { Tolerance = 1e-5 }), ("clearance-yes-no", SearchAim.IsClearBy(0.01)) })
        {
            for (var seed = 0; seed < 200; seed++)
                LeastDistance.Find(Of(seed).First, Of(seed).Second, aim);
            List<double> times = [];
            List<long> boxes = [];
            for (var seed = 1; seed <= 200; seed++)
            {
                var (first, second) = (Of(seed).First, Of(seed).Second);
                LeastDistanceResult? found = null;
                var best = double.PositiveInfinity;
                for (var round = 0; round < 3; round++)
                {
                    var start = Processor();
                    found = LeastDistance.Find(first, second, aim);
                    best = Math.Min(best, Processor() - start);
                }

                if (found!.Ended == SearchEnd.Hits && name != "clearance-yes-no")
                    continue;
                times.Add(best);
                boxes.Add(found.Boxes);
            }

            times.Sort();
            boxes.Sort();
            Say($"{name}: {times.Count} scenes; ours median {1000 * times[times.Count / 2]:0.000} ms, p95 {1000 * times[times.Count * 95 / 100]:0.000} ms, worst {1000 * times[^1]:0.000} ms; boxes median {boxes[boxes.Count / 2]}, worst {boxes[^1]}");
        }

        // Twelve clear scenes for the other side to sample.
        var given = 0;
        var (all, uppers) = (0.0, new List<double>());
        for (var seed = 1; given < 12; seed++)
        {
            var scene = Of(seed);
            var start = Processor();
            var found = LeastDistance.Find(scene.First, scene.Second);
            var took = Processor() - start;
            if (found.Ended == SearchEnd.Hits || found.Lower > 0.1)
                continue;
            given++;
            all += took;
            uppers.Add(found.Upper);
            writer.Write(4.0);
            writer.Write(found.Upper);
            foreach (var body in (ReadOnlySpan<(Plain, Pose)[]>)[scene.A, scene.B])
            {
                writer.Write((double)body.Length);
                foreach (var (shape, at) in body)
                {
                    shape.Write(writer);
                    Write(writer, at);
                }
            }

            foreach (var chain in (ReadOnlySpan<JointChain>)[scene.ChainA, scene.ChainB])
            {
                writer.Write((double)chain.Joints.Count);
                foreach (var joint in chain.Joints)
                {
                    writer.Write(joint.Kind == JointKind.Turn ? 1.0 : 0.0);
                    Write(writer, joint.Through);
                    Write(writer, joint.Axis);
                    writer.Write(joint.From);
                    writer.Write(joint.To);
                }
            }
        }

        Say($"sampled-12: ours {1000 * all / given:0.000} ms mean a scene, proved to 0.1 mm");
        Record("sampled-12", [.. uppers]);
    }

    private static void MeshScenes()
    {
        foreach (var triangles in new[] { 100_000, 200_000 })
        {
            List<double> times = [];
            List<long> boxes = [];
            var clear = 0;
            for (var seed = 1; seed <= 10; seed++)
            {
                var scene = Of(seed);
                var skin = StickSkin(triangles, seed);
                var first = new MovingSolid(Solid.OfTriangles("stick", skin.Corners, skin.Indices), scene.ChainA);
                var best = double.PositiveInfinity;
                LeastDistanceResult? found = null;
                for (var round = 0; round < 2; round++)
                {
                    var start = Processor();
                    found = LeastDistance.Find(first, scene.Second);
                    best = Math.Min(best, Processor() - start);
                }

                if (found!.Ended == SearchEnd.Hits)
                    continue;
                clear++;
                times.Add(best);
                boxes.Add(found.Boxes);
            }

            times.Sort();
            Say($"clearance-mesh-{triangles / 1000}k: {clear} clear of 10; ours median {1000 * times[times.Count / 2]:0.0} ms, worst {1000 * times[^1]:0.0} ms; boxes worst {boxes.Max()}");
        }
    }

    /// <summary>A stick with a grip and bumps, closed, with the noise of a scan: rings round z.</summary>
    private static Skin StickSkin(int triangles, int seed)
    {
        var round = (int)Math.Sqrt(triangles / 20.0);
        var rings = (triangles / (2 * round)) + 1;
        var corners = new List<Vector3>();
        var indices = new List<int>();
        for (var i = 0; i < rings; i++)
        {
            var z = 0.58 * i / (rings - 1);
            for (var k = 0; k < round; k++)
            {
                var angle = 2 * Math.PI * k / round;
                var random = new CounterRandom((ulong)(80 + seed), (i * round) + k);
                var r = (z < 0.45 ? 0.012 : 0.021 + (0.003 * Math.Sin(60 * z) * Math.Cos(3 * angle))) + (0.0006 * (random.Uniform(0) - 0.5));
                corners.Add(new(r * Math.Cos(angle), r * Math.Sin(angle), z));
                if (i == 0)
                    continue;
                int a = ((i - 1) * round) + k, b = ((i - 1) * round) + ((k + 1) % round), c = a + round, d = b + round;
                indices.AddRange([a, b, d, a, d, c]);
            }
        }

        return new(corners, indices);
    }

    private static Vector3 Direction(CounterRandom random, int at)
    {
        double z = (2 * random.Uniform(at)) - 1, angle = 2 * Math.PI * random.Uniform(at + 1), r = Math.Sqrt(1 - (z * z));
        return new(r * Math.Cos(angle), r * Math.Sin(angle), z);
    }

    private static Pose PoseOf(CounterRandom random, int at, double size) => new(
        Rotation.About(Direction(random, at), 6.28 * random.Uniform(at + 3)),
        size * new Vector3((2 * random.Uniform(at + 4)) - 1, (2 * random.Uniform(at + 5)) - 1, (2 * random.Uniform(at + 6)) - 1));

    private static void Record(string name, double[] distances)
    {
        if (Environment.GetEnvironmentVariable("THROWRIGHT_BENCH_OURS") is { } path)
            File.AppendAllText(path, name + string.Concat(distances.Select(d => " " + d.ToString("R", CultureInfo.InvariantCulture))) + "\n");
    }

    /// <summary>Processor time of this thread, s: what other work on the machine takes does not count.</summary>
    private static double Processor()
    {
        const int ThreadTime = 3;
        return OperatingSystem.IsLinux() && GetTime(ThreadTime, out var time) == 0 ? time.Seconds + (1e-9 * time.Nanoseconds) : Stopwatch.GetElapsedTime(0).TotalSeconds;
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Time
    {
        public long Seconds;
        public long Nanoseconds;
    }

    [DllImport("libc", EntryPoint = "clock_gettime")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetTime(int clock, out Time time);
}
