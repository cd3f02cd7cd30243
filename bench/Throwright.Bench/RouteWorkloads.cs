using System.Globalization;
using Throwright.Engine.Route;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Bench;

/// <summary>Routes through boxes strewn at random in a cube of 1 m.</summary>
internal static class RouteWorkloads
{
    private const double Radius = 0.076, Keep = 0.009, Conduit = 0.003;

    private sealed record Scene(RoutePlanCase Case, (Vector3 Low, Vector3 High)[] Boxes);

    public static void Boxes(int boxes, int scenes)
    {
        for (var i = 0; i < 5; i++)
            RoutePlanner.Plan(Of(boxes, 900 + i).Case);
        var times = new Clock(scenes);
        List<double> over = [], overCertified = [];
        var certified = 0;
        var supports = new int[12];
        int blocked = 0, wrong = 0, choices = 0;
        for (var i = 0; i < scenes; i++)
        {
            var scene = Of(boxes, i);
            blocked += IsBlocked(scene) ? 1 : 0;
            times.Start();
            var plan = RoutePlanner.Plan(scene.Case);
            times.Stop();
            if (plan.Choices.Count == 0)
            {
                Console.WriteLine($"  scene {i}: {plan.Refusal}");
                continue;
            }

            choices += plan.Choices.Count;
            over.Add((plan.Choices[0].Length / plan.Bound.Length) - 1);
            var bound = RoutePlanner.Certify(scene.Case, plan);
            certified += bound.Kind == RouteBoundKind.ThroughPlanes ? 1 : 0;
            overCertified.Add((plan.Choices.Min(c => c.Length) / bound.Length) - 1);
            supports[plan.Choices[0].Supports]++;
            foreach (var choice in plan.Choices)
            {
                if (Fault(scene, choice) is { } fault)
                {
                    wrong++;
                    Console.WriteLine($"  scene {i}: {fault}");
                }
            }
        }

        string Part(List<double> of, double p) => of.Order().ElementAt(Math.Min(of.Count - 1, (int)(p * of.Count))).ToString("P1", CultureInfo.InvariantCulture);
        Console.WriteLine($"route-{boxes}: straight way blocked {blocked}, found {over.Count} of {scenes}, choices {choices}, found wrong by the outside check {wrong}; first choice above the obstacle-free bound median {Part(over, 0.5)}, p90 {Part(over, 0.9)}, most {Part(over, 1)}; shortest above the certified one median {Part(overCertified, 0.5)}, p90 {Part(overCertified, 0.9)}, most {Part(overCertified, 1)} (through planes in {certified}); supports 0.. {string.Join(' ', supports)}; {times}");
    }

    /// <summary>Dense points alone: radius of the circle through three of them, distance to the boxes, length of the polygon.</summary>
    private static string? Fault(Scene scene, RouteChoice choice)
    {
        const int N = 4000;
        var curve = choice.Lie.Shape;
        var p = Enumerable.Range(0, N + 1).Select(i => curve.PointAt(curve.Length * i / N)).ToArray();
        var length = 0.0;
        for (var i = 0; i <= N; i++)
        {
            length += i > 0 ? (p[i] - p[i - 1]).Size : 0;
            foreach (var (low, high) in scene.Boxes)
            {
                double x = Math.Max(Math.Max(low.X - p[i].X, p[i].X - high.X), 0), y = Math.Max(Math.Max(low.Y - p[i].Y, p[i].Y - high.Y), 0), z = Math.Max(Math.Max(low.Z - p[i].Z, p[i].Z - high.Z), 0);
                if (Math.Sqrt((x * x) + (y * y) + (z * z)) < Keep + Conduit - 1e-6)
                    return $"too near a box at {i}";
            }

            if (i < 20 || i > N - 20)
                continue;
            Vector3 a = p[i - 20], b = p[i], c = p[i + 20];
            var circle = (b - a).Size * (c - b).Size * (c - a).Size / (2 * Vector3.Cross(b - a, c - a).Size);
            if (circle < Radius * 0.999)
                return $"too tight at {i}: {circle}";
        }

        return Math.Abs(length - choice.Length) > 1e-4 * length ? $"length {length}, not {choice.Length}" : (p[0] - scene.Case.Start).Size > 1e-9 || (p[N] - scene.Case.End).Size > 1e-9 ? "does not meet its ends" : null;
    }

    private static bool IsBlocked(Scene scene) =>
        Enumerable.Range(0, 1001).Any(i => scene.Case.KeepOuts.Any(k => k.DistanceAt(scene.Case.Start + (i / 1000.0 * (scene.Case.End - scene.Case.Start))) < Keep + Conduit));

    private static Scene Of(int boxes, int number)
    {
        var random = new CounterRandom(2020, number);
        Vector3 start = new(0.05, 0.3 + (0.4 * random.Uniform(0)), 0.3 + (0.4 * random.Uniform(1))), end = new(0.95, 0.3 + (0.4 * random.Uniform(2)), 0.3 + (0.4 * random.Uniform(3)));
        Vector3 startAlong = Tilted(random, 4), endAlong = Tilted(random, 6);
        var list = new List<(Vector3 Low, Vector3 High)>();
        for (var at = 10; list.Count < boxes; at += 6)
        {
            Vector3 half = 0.5 * new Vector3(Size(at), Size(at + 1), Size(at + 2)), centre = new(random.Uniform(at + 3), random.Uniform(at + 4), random.Uniform(at + 5));
            (Vector3 Low, Vector3 High) box = (centre - half, centre + half);
            // Both ends and a radius and a half ahead of them stay free.
            if (Near(box, start, startAlong) || Near(box, end, -endAlong))
                continue;
            list.Add(box);
        }

        var of = new RoutePlanCase
        {
            Start = start,
            StartAlong = startAlong,
            End = end,
            EndAlong = endAlong,
            LeastRadius = Radius,
            RadiusMargin = 1,
            ConduitRadius = Conduit,
            KeepOuts = [.. list.Select((b, i) => new KeepOut($"box {i}", KeepOutKind.Structure, Keep, p => Distance(b, p)))],
            FreeAtEnds = 0,
        };
        return new(of, [.. list]);

        double Size(int at) => 0.06 + (0.24 * random.Uniform(at));
        static bool Near((Vector3, Vector3) box, Vector3 from, Vector3 along) => Enumerable.Range(0, 12).Any(i => Distance(box, from + (0.01 * i * along)) < 0.03);
    }

    private static Vector3 Tilted(CounterRandom random, int at)
    {
        double tilt = Math.PI / 6 * Math.Sqrt(random.Uniform(at)), turn = 2 * Math.PI * random.Uniform(at + 1);
        return new(Math.Cos(tilt), Math.Sin(tilt) * Math.Cos(turn), Math.Sin(tilt) * Math.Sin(turn));
    }

    private static double Distance((Vector3 Low, Vector3 High) box, Vector3 p)
    {
        double x = Math.Max(box.Low.X - p.X, p.X - box.High.X), y = Math.Max(box.Low.Y - p.Y, p.Y - box.High.Y), z = Math.Max(box.Low.Z - p.Z, p.Z - box.High.Z);
        var inside = Math.Max(x, Math.Max(y, z));
        if (inside <= 0)
            return inside;
        (x, y, z) = (Math.Max(x, 0), Math.Max(y, 0), Math.Max(z, 0));
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }
}
