using CsCheck;
using Throwright.Files.Json;

namespace Throwright.Files.Tests;

public class TextEditTests
{
    private const string Small = "{\n  // top\n  \"a\": 1, // one\n  \"b\": { \"c\": [1, 2], \"d\": {} },\n  \"e\": \"x\" /* two\n  lines */ // three\n}\n";

    [Theory]
    [InlineData("$.a", "2", "{\n  // top\n  \"a\": 2, // one")]
    [InlineData("$.b.c[1]", "\"9 mm\"", "\"c\": [1, \"9 mm\"]")]
    [InlineData("$['e']", "{ \"f\": 1 }", "\"e\": { \"f\": 1 } /* two\n  lines */ // three")]
    public void Replace_OneValue_LeavesTheRest(string path, string value, string part)
    {
        Assert.True(TextEdit.TryReplace(Small, path, value, out var edited, out _));
        Assert.Contains(part, edited, StringComparison.Ordinal);
    }

    [Theory]
    // Behind the last member, past its comments; the comma goes right behind the value before.
    [InlineData("$.n", "1", "  \"e\": \"x\", /* two\n  lines */ // three\n  \"n\": 1\n}\n")]
    // In an object on one line.
    [InlineData("$.b.n", "1", "  \"b\": { \"c\": [1, 2], \"d\": {}, \"n\": 1 },\n")]
    // In an empty object, with the objects that are missing.
    [InlineData("$.b.d.n.m", "1", "\"d\": { \"n\": { \"m\": 1 } } },\n")]
    [InlineData("$.b['odd \"name\"']", "1", "\"d\": {}, \"odd \\\"name\\\"\": 1 },\n")]
    public void Set_MissingMember_IsPutIn(string path, string value, string part)
    {
        Assert.True(TextEdit.TrySet(Small, path, value, out var edited, out _));
        Assert.Contains(part, edited, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}", "$.a", "{ \"a\": 1 }")]
    [InlineData("{ }", "$.a", "{ \"a\": 1 }")]
    [InlineData("{ // none\n}", "$.a", "{\n  \"a\": 1\n // none\n}")]
    [InlineData("{\r\n  // none\r\n}", "$.a", "{\r\n  \"a\": 1\r\n  // none\r\n}")]
    [InlineData("{\n\t\"b\": 1,\n}", "$.a", "{\n\t\"b\": 1,\n\t\"a\": 1,\n}")]
    [InlineData("{ \"b\": 1, }", "$.a", "{ \"b\": 1, \"a\": 1, }")]
    [InlineData("{\r\n  \"b\": 1\r\n}", "$.a", "{\r\n  \"b\": 1,\r\n  \"a\": 1\r\n}")]
    [InlineData("{ \"b\": 1 /* c */ }", "$.a", "{ \"b\": 1, \"a\": 1 /* c */ }")]
    [InlineData("\uFEFF{\"b\":1}", "$.a", "\uFEFF{\"b\":1, \"a\": 1}")]
    public void Set_KeepsTheLayout(string text, string path, string expected)
    {
        Assert.True(TextEdit.TrySet(text, path, "1", out var edited, out _));
        Assert.Equal(expected, edited);
    }

    [Theory]
    [InlineData("$.a", "{\n  // top\n  // one\n  \"b\"")]
    [InlineData("$.b", "  \"a\": 1, // one\n  \"e\"")]
    [InlineData("$.b.c[0]", "\"c\": [2]")]
    [InlineData("$.b.c[1]", "\"c\": [1 ]")]
    [InlineData("$.b.d", "\"b\": { \"c\": [1, 2] },")]
    [InlineData("$.e", "\"d\": {} }\n  /* two\n  lines */ // three\n}\n")]
    public void Remove_TakesTheCommaAndLeavesComments(string path, string part)
    {
        Assert.True(TextEdit.TryRemove(Small, path, out var edited, out _));
        Assert.Contains(part, edited, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"a\":1}", "a", "1", "starts with $")]
    [InlineData("{\"a\":1}", "$.", "1", "character 2 is not understood")]
    [InlineData("{\"a\":1}", "$['a", "1", "not a path")]
    [InlineData("{\"a\":1}", "$[-1]", "1", "not a path")]
    [InlineData("{\"a\":[1]}", "$.a[1]", "1", "there is no $.a[1]")]
    [InlineData("{\"a\":1}", "$.a.b", "1", "there is no $.a.b")]
    [InlineData("{\"a\":1}", "$.a", "1,", "no JSON")]
    [InlineData("{\"a\":1}", "$.a", "1 in", "no JSON: 1 in")]
    [InlineData("{\"a\":1}", "$.a", "", "no JSON")]
    [InlineData("{\"a\":1}", "$.a", "1 // c", "a comment around it")]
    [InlineData("{\"a\":1}", "$.a", "/**/1", "a comment around it")]
    [InlineData("{\"a\":1\n\"b\":2}", "$.a", "1", "the text is at fault in line 1: no comma")]
    public void Edit_ThatCantBe_SaysWhy(string text, string path, string value, string problem)
    {
        Assert.False(TextEdit.TrySet(text, path, value, out var edited, out var why));
        Assert.Null(edited);
        Assert.Contains(problem, why, StringComparison.Ordinal);
    }

    [Fact]
    public void Replace_WhatIsNotThere_IsRefused()
    {
        Assert.False(TextEdit.TryReplace("{}", "$.a", "1", out _, out var problem));
        Assert.Equal("there is no $.a", problem);
        Assert.False(TextEdit.TryRemove("{}", "$.a", out _, out _));
        Assert.False(TextEdit.TryRemove("{}", "$", out _, out problem));
        Assert.Equal("the whole file can't be taken out", problem);
    }

    [Fact]
    public void PathOfAProblem_CanBeEdited()
    {
        var text = SoundFiles.Spatial.Replace("\"5.5 in\"", "5.5", StringComparison.Ordinal);
        var path = Assert.Single(AircraftFile.Parse("x", text).Problems).JsonPath;
        Assert.True(TextEdit.TryReplace(text, path, "\"5.5 in\"", out var edited, out _));
        Assert.Equal(SoundFiles.Spatial, edited);
    }

    /// <summary>
    /// A file of random layout, comments and names: after an edit, the tree is the old one with that one change, all
    /// comments are there in their order, and taking the change back gives the text before.
    /// </summary>
    [Fact]
    public void Edits_OfAnyFile_ChangeOneValueAndNothingElse() =>
        Gen.Select(Written(3), Gen.Int[0, 10_000], Gen.OneOf<string>("1", "\"1 3/4 in\"", "[1, 2]", "{ \"q\": null }"), Gen.OneOf<string>("new", "", "odd 'name' \\ \"", "ü")).Sample(
            (text, pick, value, name) =>
            {
                var json = JsonText.Parse(text);
                Assert.Empty(json.Problems);
                var nodes = All(json.Root!).ToList();
                var node = nodes[pick % nodes.Count];
                var path = node.Path();

                Assert.True(TextEdit.TryReplace(text, path, value, out var replaced, out _));
                Assert.Equal(Told(json.Root!, node, value), Told(replaced));
                Assert.Equal(Comments(text[..node.Start] + text[node.End..]), Comments(replaced));
                Assert.True(TextEdit.TryReplace(replaced, path, text[node.Start..node.End], out var back, out _));
                Assert.Equal(text, back);

                if (node.Kind == NodeKind.Object && node.Member(name) is null)
                {
                    var at = path + JsonPath.Step(name);
                    Assert.True(TextEdit.TrySet(text, at, value, out var set, out var problem), problem);
                    Assert.Equal(Comments(text), Comments(set));
                    Assert.True(TextEdit.TryRemove(set, at, out var without, out problem), problem);
                    Assert.Equal(Told(text), Told(without));
                    var added = JsonText.Parse(set);
                    Assert.Empty(added.Problems);
                    Assert.Equal(value, All(added.Root!).Where(n => n.Path() == at).Select(n => set[n.Start..n.End]).Single());
                }

                if (node.Parent is not null)
                {
                    Assert.True(TextEdit.TryRemove(text, path, out var removed, out _));
                    Assert.Equal(Told(json.Root!, node, null), Told(removed));
                    Assert.Equal(Comments(text[..node.Start] + text[node.End..]), Comments(removed));
                }
            },
            iter: 20_000);

    private static Gen<string> Written(int depth)
    {
        var blank = Gen.OneOf<string>("", "", " ", "\n", "\n  ", " // c1\n", "/* c2 */", " /* c3\n */ ", "\r\n", "\t// c4 \"{[,\n");
        var scalar = Gen.OneOf<string>("1", "true", "\"x\"", "\"// no comment\"", "\"a\\\"b\"", "null", "-1.5e3");
        if (depth == 0)
            return scalar;
        var inner = Gen.Select(blank, Written(depth - 1), blank, (a, v, b) => a + v + b);
        var last = Gen.OneOf<string>("", ",", ", // c5\n", ",\n");
        var list = Gen.Select(inner.Array[0, 3], blank, last, (items, empty, end) => $"[{(items.Length == 0 ? empty : string.Join(',', items) + end)}]");
        var names = Gen.OneOf<string>("a", "b'", "c \\\"d", "é", "e1", "f").Array[0, 4].Select(n => n.Distinct().ToArray());
        var members = Gen.Select(names, inner.Array[4], blank.Array[4], last).Select(
            (n, values, blanks, end) => n.Length == 0 ? $"{{{blanks[0]}}}" : $"{{{string.Join(',', n.Select((name, i) => $"{blanks[i]}\"{name}\"{blanks[(i + 1) % 4]}:{values[i]}"))}{end}}}");
        return Gen.OneOf<string>(list, members, members);
    }

    private static IEnumerable<Node> All(Node node) => node.Items.SelectMany(All).Prepend(node);

    private static string Told(string text)
    {
        var json = JsonText.Parse(text);
        Assert.True(json.Problems.Count == 0, text);
        return Told(json.Root!);
    }

    /// <summary>The tree without layout; one node replaced, or left out where <paramref name="value"/> is null.</summary>
    private static string Told(Node node, Node? changed = null, string? value = null)
    {
        if (node == changed && value is not null)
            return Told(value);
        var items = node.Items.Where(i => i != changed || value is not null).Select(i => (i.Name is null ? "" : JsonText.Quoted(i.Name) + ":") + Told(i, changed, value));
        return node.Kind switch
        {
            NodeKind.Object => $"{{{string.Join(',', items)}}}",
            NodeKind.List => $"[{string.Join(',', items)}]",
            NodeKind.Text => JsonText.Quoted(node.Text),
            _ => node.Text,
        };
    }

    /// <summary>The comments by their names c1, c2, ...: an oracle that knows nothing of JSON.</summary>
    private static string Comments(string text) => string.Join(' ', System.Text.RegularExpressions.Regex.Matches(text, "c[1-5]").Select(m => m.Value));
}
