using System.Text.RegularExpressions;
using Throwright.Files.Description;

namespace Throwright.Files.Tests;

public partial class StarterFileTests
{
    [Fact]
    public void Starter_AsWritten_ReadsWithoutProblems()
    {
        var result = AircraftFile.Parse("x", StarterFile.Text("Demo"));
        Assert.Empty(result.Problems);
        Assert.Equal("Demo", result.Aircraft!.Name);
        Assert.NotNull(result.Aircraft.Runs[0].LeverEnd!.Bench);
        Assert.True(PublishedSchema.Accepts(StarterFile.Text("Demo")));
    }

    [Theory]
    [InlineData("Quote \" and \\ backslash")]
    [InlineData("Möwe 🛩 ± @ \"@\"")]
    public void Name_WithAnyCharacters_IsKept(string name) => Assert.Equal(name, AircraftFile.Parse("x", StarterFile.Text(name)).Aircraft!.Name);

    [Fact]
    public void NameThatCantBe_IsToldByTheReader() => Assert.Equal("$.aircraft.name", Assert.Single(AircraftFile.Parse("x", StarterFile.Text("two\nlines")).Problems).JsonPath);

    [Fact]
    public void Starter_NamesEveryMember()
    {
        var text = StarterFile.Text("Demo");
        foreach (var shape in ReferencePageWriter.Objects(AircraftDescription.File))
            Assert.All(shape.Members, m => Assert.Contains($"\"{m.Name}\"", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Starter_NamesEveryWord()
    {
        var text = StarterFile.Text("Demo");
        Walk(AircraftDescription.File);

        void Walk(Shape shape)
        {
            if (shape is IWords words)
                Assert.All(words.Words, w => Assert.Contains($"\"{w.Text}\"", text, StringComparison.Ordinal));
            foreach (var inside in shape.Inside)
                Walk(inside);
        }
    }

    /// <summary>A line such as // "play": "0.01 in", can be put in, or it takes the place of the one the comment names.</summary>
    [Fact]
    public void CommentedMember_PutIn_ReadsWithoutProblems()
    {
        var text = StarterFile.Text("Demo");
        var found = 0;
        foreach (var match in CommentedMember().EnumerateMatches(text))
        {
            var line = text.Substring(match.Index, match.Length);
            var name = line.Split('"')[1];
            if (name is "sheet" or "zero" or "alongAxis" or "pivot" or "axis" or "along" || line.Contains("mixture-anchor\",", StringComparison.Ordinal))
                continue;
            found++;
            var edited = text.Remove(match.Index, match.Length).Insert(match.Index, line.Replace("// ", "", StringComparison.Ordinal));
            var instead = name switch { "bends" => "$.runs[0].cable.bendTotal", "torqueTable" => "$.runs[0].leverEnd.load.torque", _ => null };
            if (instead is not null)
                Assert.True(TextEdit.TryRemove(edited, instead, out edited, out _));
            var problems = AircraftFile.Parse("x", edited!).Problems;
            Assert.True(problems.Count == 0, $"{line}: {(problems.Count > 0 ? problems[0].Found : "")}");
        }

        Assert.Equal(54, found);
    }

    /// <summary>A line such as //   { "id": "yoke", ... }, is a body that can be put in.</summary>
    [Fact]
    public void CommentedBody_PutIn_ReadsWithoutProblems()
    {
        var text = StarterFile.Text("Demo");
        var bodies = CommentedBody().Matches(text).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(12, bodies.Count);
        text = CommentedMember().Replace(text, line => line.Value.Contains("// \"bodies\"", StringComparison.Ordinal) ? $"\"bodies\": [ {string.Join(' ', bodies)} ]," : line.Value);
        var result = AircraftFile.Parse("x", text);
        Assert.Empty(result.Problems);
        Assert.Equal(12, result.Aircraft!.Bodies.Count);
        Assert.True(PublishedSchema.Accepts(text));
    }

    [Fact]
    public void SpatialForm_PutIn_ReadsWithoutProblems()
    {
        var text = CommentedMember().Replace(StarterFile.Text("Demo"), line =>
            line.Value.Split('"')[1] is "points" or "zero" or "alongAxis" or "pivot" or "axis" or "along" || line.Value.Contains("\"mixture-anchor\",", StringComparison.Ordinal)
                ? line.Value.Replace("// ", "", StringComparison.Ordinal)
                : line.Value);
        Assert.True(TextEdit.TryRemove(text, "$.runs[0].leverEnd.bench", out text, out _));
        var result = AircraftFile.Parse("x", text);
        Assert.Empty(result.Problems);
        var placed = result.Aircraft!.Runs[0].LeverEnd!.Placed!;
        Assert.Equal(result.Aircraft.Points[0].At with { Name = "mixture-pivot" }, placed.Pivot);
        Assert.Equal(result.Aircraft.Points[1].At with { Name = "mixture-anchor" }, placed.Anchor);
        Assert.NotNull(placed.Along);
    }

    [GeneratedRegex("^ *//   ({ \"id\": .*},)$", RegexOptions.Multiline)]
    private static partial Regex CommentedBody();

    [GeneratedRegex("^ *// \"[a-zA-Z$]+\": .*,$", RegexOptions.Multiline)]
    private static partial Regex CommentedMember();
}
