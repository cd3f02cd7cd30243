using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Oracle;

/// <summary>The solver against plain differences, against shaken curves and against a general boundary-value solver.</summary>
public class ElasticCurveTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(6)]
    public void Equilibrium_ByDifferencesOfThePointsAlone_Holds(double weight)
    {
        // t'' + |t'|^2 t = -(F - (F.t) t), F = F0 - q s, with t', t'' from fourth-order differences of interpolated points.
        for (var i = 0; i < 10; i++)
        {
            Vector3 q = new(0, 0, -weight);
            var curve = ElasticCurveSolver.Solve(RandomCurves.Problem(i, false) with { Load = q, Segments = 300, Starts = 1 }).Curve!;
            var start = -curve.Reactions[0].Force;
            var h = curve.Length / 300;
            for (var n = 20; n <= 280; n += 20)
            {
                Vector3 P(int k) => curve.Nodes[n + k].Point;
                var t = (1 / (12 * h)) * (P(-2) - P(2) + (8 * (P(1) - P(-1))));
                var k1 = (1 / (12 * h * h)) * ((16 * (P(1) + P(-1))) - P(2) - P(-2) - (30 * P(0)));
                var k2 = (1 / (8 * h * h * h)) * (P(-3) - P(3) + (8 * (P(2) - P(-2))) + (13 * (P(-1) - P(1))));
                var force = start - (curve.Nodes[n].At * q);
                var rest = k2 + (Vector3.Dot(k1, k1) * t) + force - (Vector3.Dot(force, t) * t);
                Assert.InRange(rest.Size, 0, 2e-4 * Math.Max(1, force.Size) * Math.Max(1, Vector3.Dot(k1, k1)));
            }
        }
    }

    [Fact]
    public void Energy_OfShakenPolygonsOfTheSameLength_IsNeverLower()
    {
        // A relaxation of its own kind: a polygon with stiff legs, pulled downhill by plain gradient steps from random curves.
        for (var i = 0; i < 2; i++)
        {
            var problem = RandomCurves.Problem(i, false);
            var curve = ElasticCurveSolver.Solve(problem).Curve!;
            var lowest = double.PositiveInfinity;
            for (var draw = 0; draw < 3; draw++)
            {
                var energy = PolygonRelaxation.Energy(problem, new CounterRandom(31, (10 * i) + draw));
                lowest = Math.Min(lowest, energy);
                // Its own error: second order in 24 legs, and legs that stretch a little.
                Assert.True(energy > 0.97 * curve.BendingEnergy, $"case {i}.{draw}: {energy} < {curve.BendingEnergy}");
            }

            Assert.InRange(lowest, 0.97 * curve.BendingEnergy, 1.05 * curve.BendingEnergy);
        }
    }

    [Fact]
    public void Energy_SixtyRestartsOfAnotherMethod_IsNeverAboveAny()
    {
        for (var i = 0; i < 4; i++)
        {
            var problem = RandomCurves.Problem(500 + i, i == 3, 1.4, 1.1, 1.9) with { Segments = 64 };
            var energy = ElasticCurveSolver.Solve(problem).Curve!.BendingEnergy;
            var lowest = double.PositiveInfinity;
            var met = 0;
            for (var draw = 0; draw < 60; draw++)
            {
                var restart = Restart.Energy(problem, new CounterRandom(64, (100 * i) + draw));
                if (double.IsNaN(restart))
                    continue;
                met++;
                lowest = Math.Min(lowest, restart);
            }

            Assert.InRange(met, 50, 60);
            // Its own error is of second order in 24 legs.
            Assert.InRange(lowest, 0.98 * energy, 1.02 * energy);
        }
    }

    [Fact]
    public void Energy_FewStartsOrMany_IsTheSame()
    {
        for (var i = 0; i < 25; i++)
        {
            var problem = RandomCurves.Problem(200 + i, false) with { Segments = 64 };
            double one = ElasticCurveSolver.Solve(problem with { Starts = 1 }).Curve!.Energy, nine = ElasticCurveSolver.Solve(problem).Curve!.Energy;
            Assert.True(nine <= one + 1e-9);
            Assert.Equal(nine, one, 1e-3 * nine);
        }
    }

    [Fact]
    public void Shape_MatchesAGeneralBoundaryValueSolver()
    {
        // tests/oracle/elastic_curve.py: scipy's collocation of the twist-free rod equations, tolerance 1e-6.
        var problems = Enumerable.Range(0, 8).Select(i => RandomCurves.Problem(i, i % 3 == 0) with { Load = i % 2 == 0 ? default : new(0, 0, -5) }).ToList();
        var answers = Python(problems);
        if (answers is null)
            Assert.Skip("python3 with scipy is not here; THROWRIGHT_REQUIRE_PYTHON=1 makes it compulsory");
        var compared = 0;
        for (var i = 0; i < problems.Count; i++)
        {
            if (!answers[i].GetProperty("found").GetBoolean())
                continue;
            var curve = ElasticCurveSolver.Solve(problems[i]).Curve!;
            double[] Row(string name) => [.. answers[i].GetProperty(name).EnumerateArray().Select(e => e.GetDouble())];
            var energy = answers[i].GetProperty("energy").GetDouble();
            // It may sit on a higher shape; it never finds a lower one.
            Assert.True(energy > curve.Energy - (1e-4 * Math.Max(1, Math.Abs(curve.Energy))), $"case {i}: {energy} < {curve.Energy}");
            if (Math.Abs(energy - curve.Energy) > 1e-3 * Math.Max(1, Math.Abs(curve.Energy)))
                continue;
            compared++;
            var middle = Row("middle");
            Assert.InRange((curve.PointAt(0.5 * curve.Length) - new Vector3(middle[0], middle[1], middle[2])).Size, 0, 2e-4);
            Assert.Equal(answers[i].GetProperty("peak").GetDouble(), 1 / curve.LeastRadius, 1e-3 / curve.LeastRadius);
        }

        Assert.InRange(compared, 5, problems.Count);
    }

    private static List<JsonElement>? Python(List<ElasticProblem> problems)
    {
        var compulsory = Environment.GetEnvironmentVariable("THROWRIGHT_REQUIRE_PYTHON") == "1";
        var script = Path.Combine(Throwright.Tests.ApprovedText.Root, "tests", "oracle", "elastic_curve.py");
        var interpreter = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : "python3";
        try
        {
            using var process = Process.Start(new ProcessStartInfo(interpreter, [script]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            foreach (var p in problems)
            {
                Vector3 a = p.StartDirection!.Value, b = p.EndDirection!.Value, e = p.End!.Value;
                double[] numbers = [a.X, a.Y, a.Z, e.X, e.Y, e.Z, b.X, b.Y, b.Z, p.Length!.Value, p.Load.X, p.Load.Y, p.Load.Z];
                process.StandardInput.WriteLine(string.Join(' ', numbers.Select(n => n.ToString("R", CultureInfo.InvariantCulture))));
            }

            process.StandardInput.Close();
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode == 0)
                return [.. text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement)];
            Assert.False(compulsory, errors.Result);
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or IOException)
        {
            Assert.False(compulsory, e.Message);
        }

        return null;
    }
}
