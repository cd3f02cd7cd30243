using System.Text.Json;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Tests;

namespace Throwright.Shapes.Tests.Distance;

/// <summary>Cases that break solvers, each in a file with its closed answer: tests/Throwright.Shapes.Tests/Distance/Adversarial.</summary>
public sealed class AdversarialTests
{
    private static readonly string Folder = Path.Combine(ApprovedText.Root, "tests", "Throwright.Shapes.Tests", "Distance", "Adversarial");

    public static TheoryData<string> Cases => [.. Directory.EnumerateFiles(Folder, "*.json").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Find_IsTheClosedAnswer_EitherWayRound(string name)
    {
        using var file = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, name + ".json")));
        var of = file.RootElement;
        Assert.NotEmpty(of.GetProperty("why").GetString()!);
        var (first, second) = (Body(of.GetProperty("first")), Body(of.GetProperty("second")));
        var expected = of.GetProperty("distance").GetDouble();
        var within = of.TryGetProperty("within", out var w) ? w.GetDouble() : 1e-9;
        // Where every position is a minimum, boxes grow with one over the tolerance.
        var finest = of.TryGetProperty("finest", out var f) ? f.GetDouble() : 1e-6;
        foreach (var (a, b) in new[] { (first, second), (second, first) })
        {
            foreach (var tolerance in new[] { 1e-4, finest })
            {
                var found = LeastDistance.Find(a, b, new() { Tolerance = tolerance, MostBoxes = 200_000 }, cancel: TestContext.Current.CancellationToken);
                Assert.True(found.Lower <= expected + within, $"proved {found.Lower}, true {expected}");
                Assert.True(found.Upper >= expected - within, $"attained {found.Upper}, true {expected}");
                Assert.True(found.Ended is SearchEnd.Converged or SearchEnd.Hits, $"{found.Ended} after {found.Boxes} boxes: {found.Lower} .. {found.Upper}");
                Assert.True(found.Upper - found.Lower <= tolerance + within, $"{found.Lower} .. {found.Upper}");
                // A proof of touching needs a position that touches; closer than the tolerance is not yet one.
                if (expected > 1e-6)
                    Assert.NotEqual(SearchEnd.Hits, found.Ended);
            }
        }
    }

    private static MovingSolid Body(JsonElement of)
    {
        var shapes = of.GetProperty("shapes").EnumerateArray().ToList();
        var chain = new JointChain([.. of.GetProperty("joints").EnumerateArray().Select(JointOf)]);
        return shapes is [var only] && only.TryGetProperty("mesh", out var mesh)
            ? new(Solid.OfTriangles("mesh", [.. mesh.GetProperty("corners").EnumerateArray().Select(Vector)], [.. mesh.GetProperty("indices").EnumerateArray().Select(i => i.GetInt32())]), chain)
            : new(Solid.Of(shapes.Select((s, i) => new Part($"{i}", ShapeOf(s.EnumerateObject().Single())))), chain);
    }

    private static Joint JointOf(JsonElement of)
    {
        var (axis, from, to) = (Vector(of.GetProperty("axis")), of.GetProperty("from").GetDouble(), of.GetProperty("to").GetDouble());
        return of.TryGetProperty("turn", out var turn)
            ? Joint.Turn(turn.GetString()!, Vector(of.GetProperty("through")), axis, from, to)
            : Joint.Slide(of.GetProperty("slide").GetString()!, axis, from, to);
    }

    private static ConvexShape ShapeOf(JsonProperty of)
    {
        Vector3 V(string name) => Vector(of.Value.GetProperty(name));
        double N(string name) => of.Value.GetProperty(name).GetDouble();
        return of.Name switch
        {
            "sphere" => new Sphere(V("centre"), N("radius")),
            "capsule" => new Capsule(V("from"), V("to"), N("radius")),
            "box" => new Box(V("centre"), Rotation.None, V("half"), N("radius")),
            "cylinder" => new Cylinder(V("from"), V("to"), N("across")),
            "cone" => new Cone(V("from"), V("to"), N("across"), N("end")),
            "hull" => new Hull(of.Value.GetProperty("points").EnumerateArray().Select(Vector), N("radius")),
            _ => throw new InvalidDataException(of.Name),
        };
    }

    private static Vector3 Vector(JsonElement of)
    {
        var n = of.EnumerateArray().Select(e => e.GetDouble()).ToArray();
        return new(n[0], n[1], n[2]);
    }
}
