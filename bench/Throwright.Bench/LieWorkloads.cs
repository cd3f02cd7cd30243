using System.Diagnostics;
using System.Globalization;
using Throwright.Engine.Route;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Bench;

/// <summary>Workloads of the lie: each prints what came out right and how long it took, wall and processor, in one line.</summary>
internal static class LieWorkloads
{
    public static void Run(string name)
    {
        switch (name)
        {
            case "lie-1000":
                Thousand();
                break;
            case "lie-drag":
                Drag();
                break;
            case "lie-bvp":
                BoundaryValue(60);
                break;
            case "lie-contact":
                foreach (var balls in (int[])[1, 3, 6])
                    Contact(balls, 300);
                break;
            case "route-20":
                RouteWorkloads.Boxes(20, 200);
                break;
            case "route-40":
                RouteWorkloads.Boxes(40, 200);
                break;
            default:
                throw new ArgumentException($"no workload {name}", nameof(name));
        }
    }

    /// <summary>1000 pairs of ends: tangents anywhere on the sphere, length over chord 1.02 to 4 (shorter ones as often as longer).</summary>
    private static void Thousand()
    {
        const int Cases = 1000;
        // Until the runtime has compiled for good what is run often.
        for (var i = 0; i < 1500; i++)
            LieSolver.Solve(Pair(5000 + i));
        var times = new Clock(Cases);
        int found = 0, stable = 0, others = 0;
        for (var i = 0; i < Cases; i++)
        {
            var of = Pair(i);
            times.Start();
            var answer = LieSolver.Solve(of);
            times.Stop();
            found += answer.Lie is null ? 0 : 1;
            stable += answer.Lie?.Shape.Stability == CurveStability.Stable ? 1 : 0;
            others += answer.Lie is { Others.Count: > 0 } ? 1 : 0;
            if (answer.Lie?.Shape.Stability != CurveStability.Stable)
                Console.WriteLine($"  case {i}: {answer.Lie?.Shape.Stability.ToString() ?? answer.Refusal?.Reason.ToString()}");
        }

        Console.WriteLine($"lie-1000: found {found}, stable {stable}, with another shape {others}; {times}");
    }

    /// <summary>A run with three supports that share the length; its end is moved step by step and it is solved anew.</summary>
    private static void Drag()
    {
        const int Frames = 300;
        var of = ThreeSupports();
        for (var i = 0; i < 20; i++)
            LieSolver.Solve(Moved(of, i, Frames));
        var cold = new Clock(40);
        for (var i = 0; i < 40; i++)
        {
            cold.Start();
            var answer = LieSolver.Solve(Moved(of, i * 7, Frames));
            cold.Stop();
            if (answer.Lie is null)
                Console.WriteLine($"  frame {i * 7}: {answer.Refusal?.Reason}");
        }

        Console.WriteLine($"lie-drag cold: {cold}");
        var warm = new Clock(Frames);
        var lie = LieSolver.Solve(of).Lie!;
        var worst = 0.0;
        for (var round = 0; round < 3; round++)
        {
            warm = new(Frames);
            for (var i = 1; i <= Frames; i++)
            {
                var moved = Moved(of, i, Frames);
                warm.Start();
                lie = LieSolver.Follow(moved, lie).Lie!;
                warm.Stop();
                if (i % 50 == 0)
                    worst = Math.Max(worst, LieSolver.Apart(lie.Shape, LieSolver.Solve(moved).Lie!.Shape));
            }
        }

        Console.WriteLine($"lie-drag warm: from the cold answer by at most {worst:0.0e0} m, other lies {lie.Others.Count}; {warm}");
    }

    /// <summary>The same cases for our solver and for scipy's collocation at tolerance 1e-6, one after the other in the same minute.</summary>
    private static void BoundaryValue(int cases)
    {
        var problems = Enumerable.Range(0, cases).Select(i => Twin(i)).ToList();
        foreach (var p in problems.Take(20))
            ElasticCurveSolver.Solve(p);
        List<double> one = [], nine = [], theirs = [], theirsFound = [], ratioOne = [], ratioNine = [], off = [], own = [];
        int found = 0, same = 0, higher = 0, lower = 0;
        var script = Path.Combine(Path.GetDirectoryName(Path.GetDirectoryName(Demo.Path))!, "tests", "oracle", "elastic_curve.py");
        using var process = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, Environment = { ["OPENBLAS_NUM_THREADS"] = "1", ["PYTHONWARNINGS"] = "ignore" } })!;
        foreach (var p in problems)
        {
            Vector3 a = p.StartDirection!.Value, b = p.EndDirection!.Value, e = p.End!.Value;
            double[] numbers = [a.X, a.Y, a.Z, e.X, e.Y, e.Z, b.X, b.Y, b.Z, p.Length!.Value, p.Load.X, p.Load.Y, p.Load.Z];
            process.StandardInput.WriteLine(string.Join(' ', numbers.Select(n => n.ToString("R", CultureInfo.InvariantCulture))));
            process.StandardInput.Flush();
            var answer = System.Text.Json.JsonDocument.Parse(process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("python3 with scipy is wanted")).RootElement;
            var few = Least(() => ElasticCurveSolver.Solve(p with { Starts = 1 }), out var curve);
            var all = Least(() => ElasticCurveSolver.Solve(p), out var best);
            var energy = best!.Energy;
            own.Add(Math.Abs(ElasticCurveSolver.Solve(p with { Segments = 768, Starts = 1 }).Curve!.Energy - curve!.Energy) / curve.BendingEnergy);
            one.Add(few);
            nine.Add(all);
            var seconds = 1000 * answer.GetProperty("seconds").GetDouble();
            theirs.Add(seconds);
            if (!answer.GetProperty("found").GetBoolean())
                continue;
            found++;
            theirsFound.Add(seconds);
            ratioOne.Add(seconds / few);
            ratioNine.Add(seconds / all);
            var apart = (answer.GetProperty("energy").GetDouble() - energy) / best.BendingEnergy;
            if (Math.Abs(apart) < 1e-4)
            {
                same++;
                off.Add(Math.Abs(apart));
            }
            else if (apart > 0)
            {
                higher++;
            }
            else
            {
                lower++;
            }
        }

        process.StandardInput.Close();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"lie-bvp: {cases} cases; scipy found {found}: same shape {same}, higher energy {higher}, lower energy {lower}; energies apart median {Middle(off):0.0e0}, our own mesh error median {Middle(own):0.0e0}"));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"lie-bvp: ms median scipy {Middle(theirs):0.##} (processor, found cases {Middle(theirsFound):0.##}), ours one start {Middle(one):0.###}, nine starts {Middle(nine):0.###}; ratio median {Middle(ratioOne):0} with one start, {Middle(ratioNine):0} with nine"));

        static double Middle(List<double> of) => of.Count == 0 ? double.NaN : of.Order().ElementAt(of.Count / 2);

        // The least of three: other work on the machine only adds; scipy's is its processor time, which other work does not swell.
        static double Least(Func<ElasticAnswer> solve, out ElasticCurve? curve)
        {
            var least = double.PositiveInfinity;
            curve = null;
            for (var i = 0; i < 3; i++)
            {
                var start = Stopwatch.GetTimestamp();
                curve = solve().Curve;
                least = Math.Min(least, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }

            return least;
        }
    }

    private static ElasticProblem Twin(int number)
    {
        var random = new CounterRandom(4000, number);
        return new()
        {
            Start = default,
            StartDirection = Within(random, 0),
            End = new(1, 0, 0),
            EndDirection = Within(random, 2),
            Length = 1.05 + (0.6 * random.Uniform(4)),
            Load = number % 3 == 2 ? new(0, 0, -8) : default,
            Segments = 64,
        };
    }

    /// <summary>Balls pressed into the free lie from the side, by up to half their radius.</summary>
    private static void Contact(int balls, int cases)
    {
        var times = new Clock(cases);
        int found = 0, stable = 0, touching = 0, others = 0;
        double deepest = 0, worstForce = 0;
        for (var i = -10; i < cases; i++)
        {
            var problem = Pressed(balls, i);
            times.Start();
            var answer = ElasticCurveSolver.Solve(problem);
            times.Stop();
            if (i < 0)
                continue;
            if (answer.Curve is not { } curve)
            {
                Console.WriteLine($"  {balls} balls, case {i}: {answer.Outcome}");
                continue;
            }

            found++;
            stable += curve.Stability == CurveStability.Stable ? 1 : 0;
            touching += curve.Contacts.Count > 0 ? 1 : 0;
            others += answer.Others.Count > 0 ? 1 : 0;
            foreach (var o in problem.Obstacles)
                deepest = Math.Max(deepest, curve.Nodes.Skip(1).SkipLast(1).Max(n => o.Keep - o.DistanceAt(n.Point)));
            // Whole curve in balance: reactions and contacts.
            var sum = curve.Reactions.Aggregate(default(Vector3), (a, r) => a + r.Force) + curve.Contacts.Aggregate(default(Vector3), (a, c) => a + c.Force);
            worstForce = Math.Max(worstForce, sum.Size);
        }

        Console.WriteLine($"lie-contact {balls} balls: found {found} of {cases}, stable {stable}, touching {touching}, with another shape {others}; nodes inside by at most {deepest:0.0e0} chord, forces out of balance by at most {worstForce:0.0e0}; {times}");
    }

    private static ElasticProblem Pressed(int balls, int number)
    {
        var random = new CounterRandom(3000 + (ulong)balls, number);
        ElasticProblem problem = new()
        {
            Start = default,
            StartDirection = Within(random, 0),
            End = new(1, 0, 0),
            EndDirection = Within(random, 2),
            Length = 1.05 + (0.5 * random.Uniform(4)),
        };
        var free = ElasticCurveSolver.Solve(problem with { Starts = 1 }).Curve!;
        var obstacles = new List<ElasticObstacle>();
        for (var at = 10; obstacles.Count < balls && at < 2000; at += 6)
        {
            double s = free.Length * (0.15 + (0.7 * random.Uniform(at))), radius = 0.03 + (0.12 * random.Uniform(at + 1)), deep = radius * 0.5 * random.Uniform(at + 2), turn = 2 * Math.PI * random.Uniform(at + 3);
            Vector3 point = free.PointAt(s), t = free.TangentAt(s), u = Math.Abs(t.X) < 0.7 ? Vector3.Cross(t, new(1, 0, 0)).Unit() : Vector3.Cross(t, new(0, 1, 0)).Unit();
            var centre = point + ((radius - deep) * ((Math.Cos(turn) * u) + (Math.Sin(turn) * Vector3.Cross(t, u))));
            // The ends and their first bit of conduit stay free.
            if (Enumerable.Range(0, 9).Any(i => Math.Min((free.PointAt(0.01 * i) - centre).Size, (free.PointAt(free.Length - (0.01 * i)) - centre).Size) < radius + 0.02))
                continue;
            obstacles.Add(new(p => (p - centre).Size - radius, 0));
        }

        return problem with { Obstacles = [.. obstacles] };
    }

    private static Vector3 Within(CounterRandom random, int position)
    {
        double z = random.Uniform(position), turn = 2 * Math.PI * random.Uniform(position + 1), across = Math.Sqrt(1 - (z * z));
        return new(z, across * Math.Cos(turn), across * Math.Sin(turn));
    }

    public static LieCase ThreeSupports() => new()
    {
        Start = default,
        StartAlong = new(1, 0, 0),
        Supports =
        [
            new(new(0.3, 0.02, 0), SupportKind.Sliding, new(0.95, 0.2, 0)),
            new(new(0.6, 0.15, 0.02), SupportKind.Grommet),
            new(new(0.8, 0.3, 0.05), SupportKind.Tight, new(0.6, 0.8, 0.1)),
        ],
        End = new(0.9, 0.6, 0.1),
        EndAlong = new(0, 1, 0),
        Length = 1.24,
        LeastRadius = 0.1,
        Stiffness = 0.1,
        Weight = new(0, 0, -1),
    };

    private static LieCase Moved(LieCase of, int frame, int frames)
    {
        var turn = 2 * Math.PI * frame / frames;
        return of with { End = of.End + new Vector3(0.03 * Math.Sin(turn), 0.02 * Math.Sin(2 * turn), 0.03 * (1 - Math.Cos(turn))) };
    }

    private static LieCase Pair(int number)
    {
        var random = new CounterRandom(1000, number);
        return new()
        {
            Start = default,
            StartAlong = Direction(random, 0),
            End = new(1, 0, 0),
            EndAlong = Direction(random, 2),
            Length = 1.02 * Math.Exp(random.Uniform(4) * Math.Log(3.99 / 1.02)),
        };
    }

    public static Vector3 Direction(CounterRandom random, int position)
    {
        double z = (2 * random.Uniform(position)) - 1, turn = 2 * Math.PI * random.Uniform(position + 1), across = Math.Sqrt(1 - (z * z));
        return new(z, across * Math.Cos(turn), across * Math.Sin(turn));
    }
}

/// <summary>Times of many solves, wall clock and processor: on a loaded machine the second is the truer one.</summary>
internal sealed class Clock(int most)
{
    private readonly List<double> wall = new(most);
    private readonly Process process = Process.GetCurrentProcess();
    private TimeSpan processor, from;
    private long start;

    public void Start()
    {
        process.Refresh();
        from = process.TotalProcessorTime;
        start = Stopwatch.GetTimestamp();
    }

    public void Stop()
    {
        wall.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        process.Refresh();
        processor += process.TotalProcessorTime - from;
    }

    public double Median => At(0.5);

    public double At(double part) => wall.Order().ElementAt(Math.Min(wall.Count - 1, (int)(part * wall.Count)));

    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"ms median {Median:0.###}, p95 {At(0.95):0.###}, p99 {At(0.99):0.###}, most {wall.Max():0.###}; processor mean {processor.TotalMilliseconds / wall.Count:0.###}");
}
