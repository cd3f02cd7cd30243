using System.Globalization;
using System.Text.Json;

namespace Throwright.Cli.Tests;

/// <summary>
/// One conduit from panel to valve, each time with one demand that decides its way: without it the short way is taken and
/// breaks it, with it another, which is held against points alone. Invented.
/// </summary>
/// <remarks>The judge here knows the lie only by the points that `check --json --curves` prints, and the things by formulas of its own.</remarks>
public class RouteByFileTests
{
    private const double Inch = 0.0254, Outside = 3 / 16.0 * Inch, LeastRadius = 3 * Inch;

    // 3/8 in, AC 43.13-1B 11-115, as data/ has it.
    private const double Usual = 0.375 * Inch;

    // Typed lengths and places are rounded to 0.001 in, printed points lie 7 mm apart.
    private const double Near = 2e-4;

    private static readonly double[] Start = [40, 0, 30], End = [16, 5, 27];

    [Fact]
    public void Heat_BesideTheShortWay_IsGoneRound()
    {
        const string Pipe = """{ "id": "exhaust", "shapes": [ { "capsule": { "from": ["28 in", "2.5 in", "20 in"], "to": ["28 in", "2.5 in", "28 in"], "radius": "3/4 in" } } ]""";
        double Away(double[] p) => Capsule(p, [28, 2.5, 20], [28, 2.5, 28], 0.75) - (0.5 * Outside);
        var cold = Solved(Bodies(Pipe + " }"));
        var hot = Solved(Bodies(Pipe + """, "keepAway": { "distance": "3 in", "because": "heat" } }"""));
        Assert.InRange(cold.Least(Away), Usual - Near, (3 * Inch) - 0.01);
        Assert.InRange(hot.Least(Away), (3 * Inch) - Near, 4 * Inch);
        Assert.True(hot.Length > cold.Length + 0.01);
    }

    [Fact]
    public void Edge_AcrossTheShortWay_IsKeptAwayFrom()
    {
        const string Lip = """{ "id": "frame-lip", "shapes": [ { "box": { "centre": ["28 in", "2.5 in", "26 in"], "size": ["1/8 in", "8 in", "3 in"] } } ]""";
        double Away(double[] p) => Box(p, [28, 2.5, 26], [0.0625, 4, 1.5]) - (0.5 * Outside);
        var smooth = Solved(Bodies(Lip + " }"));
        var sharp = Solved(Bodies(Lip + """, "keepAway": { "distance": "2 in", "because": "edge" } }"""));
        Assert.InRange(smooth.Least(Away), Usual - Near, (2 * Inch) - 0.01);
        Assert.InRange(sharp.Least(Away), (2 * Inch) - Near, 3 * Inch);
    }

    [Fact]
    public void Arm_ThatSwingsThroughTheShortWay_HasItsWholeSweepKept()
    {
        static string Arm(string joint) => $$"""{ "id": "trim-arm", {{joint}} "shapes": [ { "capsule": { "from": ["28 in", "-3 in", "22 in"], "to": ["28 in", "-3 in", "30 in"], "radius": "3/8 in" } } ] }""";
        static double Away(double[] p) => Enumerable.Range(0, 321).Min(i =>
        {
            // Right-handed about aft: from up toward the left, so downward turns go to the right.
            var turn = -80 * Math.PI / 180 * i / 320;
            return Capsule(p, [28, -3, 22], [28, -3 - (8 * Math.Sin(turn)), 22 + (8 * Math.Cos(turn))], 0.375);
        }) - (0.5 * Outside);
        var still = Solved(Bodies(Arm("")));
        var swings = Solved(Bodies(Arm("""
            "joints": [ { "id": "swing", "turn": [1, 0, 0], "about": ["28 in", "-3 in", "22 in"], "from": "-80 deg", "to": "0 deg" } ],
            """)));
        Assert.True(still.Least(Away) < 0.5 * Usual);
        Assert.InRange(swings.Least(Away), Usual - Near, Usual + (0.5 * Inch));
    }

    [Fact]
    public void Wheel_ThatSlidesAndTurns_HasItsWholeSweepKept()
    {
        static string Wheel(string joints) => $$"""
            { "id": "wheel", {{joints}} "shapes": [
              { "name": "bar", "capsule": { "from": ["29 in", "2.6 in", "29 in"], "to": ["29 in", "12.6 in", "29 in"], "radius": "1/2 in" } },
              { "name": "shaft", "capsule": { "from": ["19 in", "7.6 in", "29 in"], "to": ["29 in", "7.6 in", "29 in"], "radius": "1/2 in" } } ] }
            """;
        static double Away(double[] p)
        {
            var least = double.PositiveInfinity;
            for (var i = 0; i <= 24; i++)
            {
                var aft = 6.0 * i / 24;
                least = Math.Min(least, Capsule(p, [19 + aft, 7.6, 29], [29 + aft, 7.6, 29], 0.5));
                for (var j = -30; j <= 30; j++)
                {
                    double turn = Math.PI / 3 * j / 30, y = 5 * Math.Cos(turn), z = 5 * Math.Sin(turn);
                    least = Math.Min(least, Capsule(p, [29 + aft, 7.6 - y, 29 - z], [29 + aft, 7.6 + y, 29 + z], 0.5));
                }
            }

            return least - (0.5 * Outside);
        }

        var still = Solved(Bodies(Wheel("")));
        var moves = Solved(Bodies(Wheel("""
            "joints": [ { "id": "aft", "slide": [1, 0, 0], "from": "0 in", "to": "6 in" },
                        { "id": "turn", "turn": [1, 0, 0], "about": ["29 in", "7.6 in", "29 in"], "from": "-60 deg", "to": "60 deg" } ],
            """)));
        Assert.True(still.Least(Away) < Usual - (5 * Near), $"{still.Least(Away)}");
        Assert.True(moves.Least(Away) >= Usual - Near, $"{moves.Least(Away)}");
    }

    [Fact]
    public void Firewall_WithOneHole_IsPassedThere()
    {
        const double X = 24, Y = 1, Z = 26, Radius = 0.375;
        var free = Solved("");
        var passes = Solved($$""" "sheets": [ {{Firewall}}, "holes": [ { "at": ["24 in", "1 in", "26 in"], "diameter": "3/4 in" } ] } ],""");
        double[] Pierced(Lie lie) => Assert.Single(lie.Points.Zip(lie.Points.Skip(1)).Where(s => (s.First[0] - (X * Inch)) * (s.Second[0] - (X * Inch)) <= 0 && s.First[0] != s.Second[0]).Select(s =>
        {
            var part = ((X * Inch) - s.First[0]) / (s.Second[0] - s.First[0]);
            return new[] { s.First[1] + (part * (s.Second[1] - s.First[1])), s.First[2] + (part * (s.Second[2] - s.First[2])) };
        }));
        double Off(Lie lie) => Math.Sqrt(Math.Pow(Pierced(lie)[0] - (Y * Inch), 2) + Math.Pow(Pierced(lie)[1] - (Z * Inch), 2));
        Assert.True(Off(free) > Radius * Inch);
        Assert.True(Off(passes) + (0.5 * Outside) <= Radius * Inch);
    }

    [Fact]
    public void Firewall_WithoutHole_IsNamedWithWhatToChange()
    {
        var (code, text) = Solve($$""" "sheets": [ {{Firewall}} } ],""");
        Assert.Equal(1, code);
        Assert.Contains("In the way is firewall: without it there would be one of", text, StringComparison.Ordinal);
        Assert.Contains("give it a hole (holes of the sheet firewall)", text, StringComparison.Ordinal);
        Assert.Contains("No: The conduit runs through firewall", text, StringComparison.Ordinal);
    }

    [Fact]
    public void HeatAtTheLeverEnd_IsNamedWithTheEndAndWhatToChange()
    {
        var (code, text) = Solve(Bodies("""{ "id": "muffler", "shapes": [ { "sphere": { "centre": ["16 in", "7 in", "27 in"], "radius": "1 in" } } ], "keepAway": { "distance": "2 in", "because": "heat" } }"""));
        Assert.Equal(1, code);
        var flat = string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("The lever end of the conduit, or the way it points, is", flat, StringComparison.Ordinal);
        Assert.Contains("nearer to muffler than wanted. Shield it as the kit's plans say", flat, StringComparison.Ordinal);
    }

    [Fact]
    public void EngineThatMoves_GetsTheLengthForIt()
    {
        double[] end = [16, 1, 29];
        var stays = Solved("", end: end);
        var shakes = Solved("", end: end, moves: """, "moves": [ { "name": "engine forward", "aft": "-3/8 in" }, { "name": "engine aft", "aft": "3/8 in" } ]""");
        // The clamps closed: what is between the last one and the anchor has to reach it.
        static double Spare(Lie lie, double[] end)
        {
            var held = Enumerable.Range(0, lie.Points.Count).Where(i => lie.Supports.Any(s => Away(lie.Points[i], s) < 0.004)).DefaultIfEmpty(0).Max();
            double[] moved = [(end[0] - 0.375) * Inch, end[1] * Inch, end[2] * Inch];
            return lie.Points.Skip(held).Zip(lie.Points.Skip(held + 1)).Sum(s => Away(s.First, s.Second)) - Away(lie.Points[held], moved);
        }

        Assert.True(Spare(stays, end) < 0);
        Assert.True(Spare(shakes, end) > 0);
    }

    [Fact]
    public void Places_ThatArePermitted_DecideTheWay()
    {
        var anywhere = Solved("");
        var places = Solved("", places: """, "places": [["31 in", "-2 in", "29 in"], ["25 in", "-1 in", "28 in"]]""");
        double[][] permitted = [[31, -2, 29], [25, -1, 28]];
        Assert.NotEmpty(places.Supports);
        Assert.All(places.Supports, s => Assert.Contains(permitted, p => Away(s, [.. p.Select(c => c * Inch)]) < 1e-5));
        Assert.DoesNotContain(anywhere.Supports, s => permitted.Any(p => Away(s, [.. p.Select(c => c * Inch)]) < 0.01));
        Assert.All(places.Supports, s => Assert.True(places.Points.Min(p => Away(p, s)) < 0.004));
    }

    private const string Firewall = """{ "id": "firewall", "at": ["24 in", "0 in", "28 in"], "normal": [1, 0, 0], "thickness": "0.032 in", "outline": [["24 in", "-15 in", "15 in"], ["24 in", "15 in", "15 in"], ["24 in", "15 in", "40 in"], ["24 in", "-15 in", "40 in"]]""";

    private sealed record Lie(List<double[]> Points, List<double[]> Supports, double Length)
    {
        /// <summary>Least over points 2 mm apart or so, straight between the printed ones.</summary>
        public double Least(Func<double[], double> distance) => Points.Zip(Points.Skip(1)).Min(s => Enumerable.Range(0, 4).Min(i =>
            distance([.. s.First.Zip(s.Second, (a, b) => a + (i / 3.0 * (b - a)))])));
    }

    private static string Bodies(string body) => $$""" "bodies": [ {{body}} ],""";

    private static string File(string things, double[] end, string moves, string places)
    {
        static string Place(double[] p) => "[" + string.Join(", ", p.Select(c => string.Create(CultureInfo.InvariantCulture, $"\"{c} in\""))) + "]";
        return $$"""
            { "format": 1, "aircraft": { "name": "Bench: one demand" }, {{things}}
              "runs": [ { "id": "vent", "label": "VENT", "how": "PULL TO OPEN", "function": "cabinAir",
                "cockpitEnd": { "stroke": "2 in ± 1/32 in", "pushMeans": "shut", "pullMeans": "open" },
                "cable": {
                  "core": { "diameter": "0.062 in ± 0.001 in" },
                  "conduit": { "outside": "3/16 in", "bore": "0.078 in ± 0.002 in", "minRadius": "3 in" },
                  "friction": "0.12 ± 0.04"{{places}},
                  "ends": { "leaves": { "at": {{Place(Start)}}, "along": [-1, 0, 0] }, "arrives": { "at": {{Place(end)}}, "along": [-1, 0, 0] }{{moves}} },
                  "source": "invented" },
                "leverEnd": { "arm": { "radius": "1 1/8 in ± 1/64 in" }, "sweep": "75 deg ± 2 deg", "bench": { "distance": "4 in ± 1/16 in", "rule": "halfSagitta" },
                  "anchor": { "tip": "3/8 in", "swivels": "8 deg" }, "swivel": { "length": "5/16 in" }, "load": { "measured": true, "torque": "0.6 lbf in ± 20 %" } } } ] }
            """;
    }

    private static (int Code, string Text) Solve(string things)
    {
        using var bench = new Workbench();
        var file = bench.Put("one.throwright.json", File(things, End, "", ""));
        var solved = CommandLine.Run("solve", "route", file, "vent", "--plain");
        return (solved.Exit, solved.Out + solved.Error);
    }

    /// <summary>The route written into the file, read back as points, and held against radius, ends and length.</summary>
    private static Lie Solved(string things, double[]? end = null, string moves = "", string places = "")
    {
        end ??= End;
        using var bench = new Workbench();
        var file = bench.Put("one.throwright.json", File(things, end, moves, places));
        var solved = CommandLine.Run("solve", "route", file, "vent", "--plain", "--write");
        Assert.True(solved.Exit == 0, solved.Out + solved.Error);
        using var json = JsonDocument.Parse(CommandLine.Run("check", file, "--json", "--curves").Out);
        var run = json.RootElement.GetProperty("files")[0].GetProperty("runs")[0];
        var points = run.GetProperty("lie").EnumerateArray().Select(p => new[] { p.GetProperty("station").GetDouble(), p.GetProperty("buttline").GetDouble(), p.GetProperty("waterline").GetDouble() }).ToList();
        Assert.True(points.Count > 60);
        Assert.True(Away(points[0], [.. Start.Select(c => c * Inch)]) < 1e-6);
        Assert.True(Away(points[^1], [.. end.Select(c => c * Inch)]) < 1e-6);
        // Circle through three neighbours: abc / (4 area).
        for (var i = 1; i + 1 < points.Count; i++)
        {
            double a = Away(points[i - 1], points[i]), b = Away(points[i], points[i + 1]), c = Away(points[i - 1], points[i + 1]), s = 0.5 * (a + b + c);
            var area = Math.Sqrt(Math.Max(0, s * (s - a) * (s - b) * (s - c)));
            Assert.True(a * b * c >= 4 * area * LeastRadius, $"radius {a * b * c / (4 * area)} at point {i}");
        }

        // It leaves and arrives forward: no turn between the given line and the first chord than the radius allows.
        Assert.True(points[0][0] - points[1][0] >= Away(points[0], points[1]) * Math.Cos(Away(points[0], points[1]) / LeastRadius));
        var length = points.Zip(points.Skip(1)).Sum(p => Away(p.First, p.Second));
        var cable = JsonDocument.Parse(System.IO.File.ReadAllText(file)).RootElement.GetProperty("runs")[0].GetProperty("cable");
        var typed = double.Parse(cable.GetProperty("length").GetString()!.Split(' ')[0], CultureInfo.InvariantCulture) * Inch;
        Assert.InRange(length, 0.9985 * typed, typed * 1.0001);
        var supports = cable.TryGetProperty("supports", out var list)
            ? list.EnumerateArray().Select(s => s.GetProperty("at").EnumerateArray().Select(c => Typed(c.GetString()!)).ToArray()).ToList() : [];
        Assert.All(supports, s => Assert.True(points.Min(p => Away(p, s)) < 0.004));
        return new(points, supports, length);
    }

    /// <summary>"28 1/2 in" and the like.</summary>
    private static double Typed(string text) => Inch * text.Replace('−', '-').Replace("in", "", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part => part.Split('/') switch
    {
        [var whole] => double.Parse(whole, CultureInfo.InvariantCulture),
        [var over, var under] => double.Parse(over, CultureInfo.InvariantCulture) / double.Parse(under, CultureInfo.InvariantCulture),
        _ => double.NaN,
    }).Aggregate(0.0, (sum, part) => text[0] is '-' or '−' ? sum - Math.Abs(part) : sum + part);

    private static double Away(double[] a, double[] b) => Math.Sqrt(a.Zip(b, (x, y) => (x - y) * (x - y)).Sum());

    /// <summary>Corners in inches, the point and the answer in metres.</summary>
    private static double Capsule(double[] p, double[] from, double[] to, double radius)
    {
        double[] a = [.. from.Select(c => c * Inch)], d = [.. to.Zip(from, (t, f) => (t - f) * Inch)], w = [.. p.Zip(a, (x, y) => x - y)];
        var part = Math.Clamp(w.Zip(d, (x, y) => x * y).Sum() / d.Sum(x => x * x), 0, 1);
        return Away(w, [.. d.Select(x => part * x)]) - (radius * Inch);
    }

    private static double Box(double[] p, double[] middle, double[] half)
    {
        double[] over = [.. Enumerable.Range(0, 3).Select(i => Math.Abs(p[i] - (middle[i] * Inch)) - (half[i] * Inch))];
        return over.Any(o => o > 0) ? Math.Sqrt(over.Sum(o => Math.Max(0, o) * Math.Max(0, o))) : over.Max();
    }
}
