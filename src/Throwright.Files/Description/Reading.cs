using System.Globalization;
using Throwright.Engine.Model;
using Throwright.Files.Json;

namespace Throwright.Files.Description;

/// <summary>One reading of one file: collects what is at fault and remembers the points that others refer to.</summary>
internal sealed class Reading(string file, JsonText json)
{
    private const int MostProblems = 1000;
    private const int MostLineText = 160;
    private readonly List<FileProblem> problems = [];

    /// <summary>All faults so far, listed or not.</summary>
    public int Count { get; private set; }

    /// <summary>False: did-you-mean and the like are not worth their time any more.</summary>
    public bool IsListing => problems.Count < MostProblems;
    public int Unlisted => Count - problems.Count;

    /// <summary>Points by name; null: named in the file, but at fault there.</summary>
    public Dictionary<string, PointAt?> Points { get; } = [];

    /// <summary>Sheets by id; null: named in the file, but at fault there.</summary>
    public Dictionary<string, Sheet?> Sheets { get; } = [];

    /// <summary>Names of points within the points, as value or as member name; checked when all are read.</summary>
    public List<(Node Node, string Name, bool IsMember)> PointNames { get; } = [];
    public List<RunLeftOut> RunsLeftOut { get; } = [];

    /// <summary>What each object gives, for rules that look into objects inside.</summary>
    public Dictionary<Node, Given> Givens { get; } = [];

    public IEnumerable<FileProblem> InOrder() => problems.OrderBy(p => p.Line).ThenBy(p => p.Column);

    /// <summary>The value itself is at fault.</summary>
    public void AtValue(Node node, string found, string expected)
    {
        if (node.HasSlip)
            return;
        var end = node.Kind is NodeKind.Object or NodeKind.List ? node.Start + 1 : node.End;
        Add(node, node.Path(), node.Start, end, found, expected);
    }

    /// <summary>The name of a member is at fault.</summary>
    public void AtName(Node member, string found, string expected) => Add(member, member.Path(), member.NameStart, member.NameEnd, found, expected);

    /// <summary>A member (or a member of a member: "arm.zero") is not there; the place is where the object begins, the path is the member's.</summary>
    public void AtMissing(Node parent, string member, string expected) =>
        Add(parent, parent.Path() + string.Concat(member.Split('.').Select(JsonPath.Step)), parent.Start, parent.Start + 1, $"no \"{member}\" in {TitleOf(parent)}", expected);

    /// <summary>A member's name stands twice in its object.</summary>
    public void AtRepeated(Node member, Node first) =>
        AtName(member, $"\"{Short(member.Name!)}\" again (first on line {json.PlaceOf(first.NameStart).Line})", "each member only once");

    /// <summary>A value that must be unique stands a second time.</summary>
    public void AtAgain(Node value, Node first, string expected) =>
        AtValue(value, $"{Shown(value)} again (first on line {json.PlaceOf(first.Start).Line})", expected);

    public void AtSyntax(SyntaxProblem problem) =>
        Add(problem.In, problem.In?.Path() ?? "$", problem.Start, problem.End, problem.Found, problem.Expected);

    /// <summary>What a value is, for a person: its text in quotes, or "a list".</summary>
    public static string Shown(Node node) => node.Kind switch
    {
        NodeKind.Object => "an object { ... }",
        NodeKind.List => "a list [ ... ]",
        NodeKind.Text => $"\"{Short(node.Text)}\"",
        _ => Short(node.Text),
    };

    public static string Short(string text) => text.Length > 60 ? text[..60] + "…" : text;

    /// <summary>Label of the run that holds the value, or its id.</summary>
    public static string RunOf(Node? node)
    {
        for (; node is not null; node = node.Parent)
        {
            if (node.Parent is { Name: "runs", Parent: { Parent: null } })
                return RunName(node);
        }

        return "";
    }

    public static string RunName(Node run)
    {
        foreach (var name in (ReadOnlySpan<string>)["label", "id"])
        {
            if (run.Member(name) is { Kind: NodeKind.Text, Text.Length: > 0 } value)
                return Plain(Short(value.Text));
        }

        return "";
    }

    private static string TitleOf(Node? node)
    {
        for (; node is not null; node = node.Parent)
        {
            if (node.Title.Length > 0)
                return node.Title;
        }

        return "";
    }

    private void Add(Node? node, string path, int start, int end, string found, string expected)
    {
        Count++;
        if (!IsListing)
            return;
        var (line, column) = json.PlaceOf(start);
        var (from, to) = json.LineOf(line);
        while (from < start && char.IsWhiteSpace(json.Text[from]))
            from++;
        while (to > Math.Max(start, from) && char.IsWhiteSpace(json.Text[to - 1]))
            to--;
        // A file on one long line: what stands around the fault.
        if (to - from > MostLineText)
        {
            from = Math.Max(from, Math.Min(start - (MostLineText / 2), to - MostLineText));
            to = Math.Min(to, from + MostLineText);
        }

        problems.Add(new(file, line, column, path, RunOf(node), Plain(json.Text[from..to]), Plain(found), Plain(expected))
        {
            Part = TitleOf(node),
            MarkStart = Math.Clamp(start - from, 0, to - from),
            MarkLength = Math.Clamp(Math.Min(end, to) - start, 0, to - from),
        });
    }

    /// <summary>Control and invisible characters replaced: a file's text must not steer a terminal.</summary>
    private static string Plain(string text)
    {
        foreach (var c in text)
        {
            if (IsUnseen(c))
                return string.Create(text.Length, text, static (plain, from) =>
                {
                    for (var i = 0; i < from.Length; i++)
                        plain[i] = IsUnseen(from[i]) ? '·' : from[i];
                });
        }

        return text;
    }

    /// <summary>Characters that a text must not hold: a plain blank is fine, and so is a no-break space.</summary>
    public static bool IsUnseen(char c) => JsonText.IsUnseen(c) && CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.SpaceSeparator;
}
