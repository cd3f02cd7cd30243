using Throwright.Files.Saving;
using CsCheck;
using Throwright.Engine.Model;

namespace Throwright.Files.Tests;

/// <summary>100 000 inputs of four sorts: nothing crashes, nothing at fault gives a run, nothing at fault is saved.</summary>
public sealed class GarbageTests : IDisposable
{
    private static readonly string[] Sound = [SoundFiles.Bench, SoundFiles.Spatial];

    /// <summary>What a hand or a disk may put into a file.</summary>
    private static readonly string[] Scraps =
    [
        "\"", "{", "}", "[", "]", ",", ":", "//", "/*", "*/", "null", "true", "NaN", "-", "1e999", "-1e999", "0", "\\", "\\u0000", "\\ud800", "\n", "\r", "\t", "\0", "\uFEFF", "\u202E", "½", "±", " normal",
        "\"1,5 in\"", "\"1e308 m ± 1e308 %\"", "\"-0 in\"", "\"1/0 in\"", "\"0 in\"", "[[[[[[[[", "{\"a\":", "$schema", "runs", "'", "“", "9999999999999999999999",
    ];

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory();

    /// <summary>After each test: not one file was written.</summary>
    public void Dispose()
    {
        var written = folder.GetFileSystemInfos();
        folder.Delete(recursive: true);
        Assert.Empty(written);
    }

    [Fact]
    public void RandomBytes_AreReadWithoutCrash() =>
        Gen.Byte.Array[0, 60].Sample(bytes => Holds(AircraftFile.Read("x", bytes)), iter: 25_000);

    [Fact]
    public void RandomJson_IsReadWithoutCrash() => Json(4).Sample(text => Holds(AircraftFile.Parse("x", text)), iter: 25_000);

    [Fact]
    public void RandomValuesInASoundFile_AreReadWithoutCrash()
    {
        // Each value of the file, one to three at a time, becomes a random one.
        var values = Sound.Select(Values).ToArray();
        Gen.Select(Gen.Int[0, 1], Gen.Select(Gen.Int[0, 1000], Gen.OneOf<string>(Json(1), Gen.OneOf<string>(Scraps), QuantityLike)).Array[1, 3]).Sample(
            (file, changes) =>
            {
                var text = Sound[file];
                foreach (var (start, end, value) in changes.Select(c => (values[file][c.Item1 % values[file].Count], c.Item2)).DistinctBy(c => c.Item1).OrderByDescending(c => c.Item1.Start).Select(c => (c.Item1.Start, c.Item1.End, c.Item2)))
                    text = string.Concat(text.AsSpan(0, start), value, text.AsSpan(end));
                Holds(AircraftFile.Parse("x", text));
            },
            iter: 25_000);
    }

    [Fact]
    public void SpoiledSoundFiles_AreReadWithoutCrash()
    {
        var spoil = Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 3], Gen.OneOf<string>(Scraps), Gen.Int[0, 40]);
        Gen.Select(Gen.Int[0, 1], spoil.Array[1, 4]).Sample(
            (file, spoils) =>
            {
                var text = Sound[file];
                foreach (var (place, way, scrap, length) in spoils)
                {
                    var at = place % (text.Length + 1);
                    var part = Math.Min(length, text.Length - at);
                    text = way switch
                    {
                        0 => text.Insert(at, scrap),
                        1 => text.Remove(at, part),
                        2 => text.Insert(at, text.Substring(at, part)),
                        _ => text[..at],
                    };
                }

                Holds(AircraftFile.Parse("x", text));
            },
            iter: 25_000);
    }

    private static readonly Gen<string> QuantityLike = Gen.Select(
        Gen.OneOf<string>(Gen.Double.Select(d => d.ToString("R")), Gen.Int[-9, 99].Select(i => $"{i}"), Gen.OneOf<string>("1 3/4", "1/2", ".5", "5.", "1,5", "", "+1")),
        Gen.OneOf<string>("in", "mm", "deg", "lbf", "lbf in", "N m", "degC", "", "N/mm", "%", "furlong"),
        Gen.OneOf<string>("", " ± 1", " ± 200 %", " +1/-2", " ± 1 mm", " normal", " ± NaN"),
        (number, unit, limits) => $"\"{number} {unit}{limits}\"");

    private static Gen<string> Json(int depth)
    {
        var names = Gen.OneOf<string>("format", "aircraft", "name", "runs", "points", "id", "leverEnd", "cable", "swivel", "at", "bench", "a", "");
        var text = Gen.OneOf<string>(Gen.String[0, 8].Select(s => System.Text.Json.JsonSerializer.Serialize(s)), QuantityLike);
        var scalar = Gen.OneOf<string>(text, Gen.Double.Select(d => d.ToString("R")), Gen.OneOf<string>("true", "false", "null", "1", "0", "-1", "1e999"));
        if (depth == 0)
            return scalar;
        var inner = Json(depth - 1);
        var list = inner.Array[0, 3].Select(items => $"[{string.Join(',', items)}]");
        var members = Gen.Select(names, inner).Array[0, 4].Select(m => $"{{{string.Join(',', m.Select(p => $"\"{p.Item1}\":{p.Item2}"))}}}");
        return Gen.OneOf<string>(scalar, list, members);
    }

    /// <summary>Places of all values that are no objects or lists.</summary>
    private static List<(int Start, int End)> Values(string text)
    {
        var places = new List<(int, int)>();
        Walk(Throwright.Files.Json.JsonText.Parse(text).Root!);
        return places;

        void Walk(Throwright.Files.Json.Node node)
        {
            if (node.Kind is not (Throwright.Files.Json.NodeKind.Object or Throwright.Files.Json.NodeKind.List))
                places.Add((node.Start, node.End));
            node.Items.ForEach(Walk);
        }
    }

    /// <summary>What must be true of every reading.</summary>
    private void Holds(AircraftFileResult result)
    {
        if (!result.IsSound && result.Text.Length > 0)
            Assert.Equal(SaveOutcome.TextAtFault, AircraftFile.Save(Path.Combine(folder.FullName, "a.throwright.json"), result.Text, readAs: null).Outcome);
        Assert.True(result.Aircraft is not null || result.Problems.Count > 0);
        Assert.True(result.IsSound == (result.Problems.Count == 0 && result.RunsLeftOut.Count == 0));
        foreach (var problem in result.Problems)
        {
            Assert.True(problem.Found.Length > 0 && problem.Expected.Length > 0 && problem.JsonPath.StartsWith('$'));
            Assert.True(problem.Line >= 0 && problem.Column >= 0 && problem.MarkStart >= 0 && problem.MarkLength >= 0);
            Assert.True(problem.MarkStart + problem.MarkLength <= problem.LineText.Length, $"{problem}");
        }

        foreach (var run in result.Aircraft?.Runs ?? [])
            Sensible(run);
    }

    /// <summary>What reaches the engine makes sense.</summary>
    private static void Sensible(Run run)
    {
        Assert.Matches("^[a-z0-9-]+$", run.Id);
        if (run.LeverEnd is { } end)
        {
            Assert.True(end.Radius is null or { Least: > 0, Most: <= 2 });
            Assert.True(end.From is null || (end.From.Value.Most < end.To!.Value.Least && end.To.Value.Most - end.From.Value.Least < 6.2832));
            Assert.True(end.Bench is null || end.Placed is null);
            Assert.All(end.Holes, h => Assert.InRange(h.Metres, 0.001, 2));
            Assert.False(end.Swivel.At is not null && end.Swivel.Rigged is not null);
            Assert.False(end.Load?.Torque is not null && end.Load.TorqueTable.Count > 0);
        }

        if (run.Cable is { } cable)
        {
            Assert.True(cable.Friction is null or { Least: >= 0, Most: <= 1.5 });
            Assert.False(cable.BendTotal is not null && cable.Bends.Count > 0);
            Assert.True(cable.Core is null || cable.Conduit?.Bore is not { } bore || bore.Least > cable.Core.Diameter.Most);
        }

        Assert.True(run.CockpitEnd?.Stroke is null or { Least: > 0, Most: <= 2 });
    }
}
