using System.Text.Json.Nodes;
using Throwright.Files.Json;

namespace Throwright.Files.Description;

/// <summary>A member of an object: its name, what it may be, what it means.</summary>
internal abstract class Member(string name, Shape shape, bool required, string meaning)
{
    public string Name => name;
    public Shape Shape => shape;
    public bool IsRequired => required;

    /// <summary>What it is and how it is found out, for the builder.</summary>
    public string Meaning => meaning;

    /// <summary>What holds when it is left out, for the reference page; empty: nothing is known.</summary>
    public string Otherwise { get; init; } = "";
}

/// <summary>A member whose values become <typeparamref name="T"/>.</summary>
internal sealed class Member<T>(string name, Shape<T> shape, bool required, string meaning) : Member(name, shape, required, meaning)
    where T : notnull
{
    public T? Fallback { get; init; }
    public bool HasFallback { get; init; }
}

/// <summary>A rule between the members of an object.</summary>
/// <param name="Text">For the reference page.</param>
/// <param name="Check">Reports to the reading what breaks the rule; looks only at members that were read soundly.</param>
/// <param name="Schema">The same for an editor, where a schema can say it.</param>
internal sealed record Rule(string Text, Action<Given> Check, Func<JsonObject>? Schema = null)
{
    /// <summary>Two members that say the same thing in two ways.</summary>
    public static Rule NotBoth(Member a, Member b) => new(
        $"Either `{a.Name}` or `{b.Name}`, not both.",
        given =>
        {
            if (given.Has(a) && given.Has(b))
                given.RefuseName(b, $"\"{b.Name}\" beside \"{a.Name}\"", $"either \"{a.Name}\" or \"{b.Name}\", not both");
        },
        () => new() { ["not"] = new JsonObject { ["required"] = new JsonArray(a.Name, b.Name) } });

    /// <summary>One of several members, no more and no less.</summary>
    public static Rule ExactlyOne(string text, params Member[] members) => new(
        text,
        given =>
        {
            var has = members.Where(given.Has).ToList();
            var list = string.Join(", ", members.Select(m => $"\"{m.Name}\""));
            if (has.Count == 0)
                given.RefuseSelf($"none of {list}", $"one of {list}");
            else if (has.Count > 1)
                given.RefuseName(has[1], $"\"{has[1].Name}\" beside \"{has[0].Name}\"", $"only one of {list}");
        },
        () => new() { ["oneOf"] = new JsonArray([.. members.Select(m => new JsonObject { ["required"] = new JsonArray(m.Name) })]) });
}

/// <summary>What the file gives of one object. Members at fault count as given, but have no value.</summary>
internal sealed class Given(Node node, Reading reading)
{
    private readonly Dictionary<Member, (Node Node, object? Value)> values = [];

    public void Add(Member member, Node value, object? read) => values[member] = (value, read);

    public bool Has(Member member) => values.ContainsKey(member);

    public Node? At(Member member) => values.TryGetValue(member, out var value) ? value.Node : null;

    public T? Maybe<T>(Member<T> member)
        where T : struct => Read(member) is T value ? value : null;

    public T? Item<T>(Member<T> member)
        where T : class => Read(member) as T;

    /// <summary>The value, or what holds when it is left out.</summary>
    public T Or<T>(Member<T> member)
        where T : notnull =>
        Read(member) is T value ? value : member.HasFallback ? member.Fallback! : throw new InvalidOperationException($"Nothing is said of {member.Name} left out.");

    /// <summary>The value of a required member of an object that was read soundly.</summary>
    public T Must<T>(Member<T> member)
        where T : notnull => (T)Read(member)!;

    /// <summary>The members of an object inside, also where some of them are at fault; empty if it is not there.</summary>
    public Given In(Member member) => At(member) is { } inside && reading.Givens.TryGetValue(inside, out var given) ? given : new(node, reading);

    public void RefuseValue(Member member, string found, string expected) => reading.AtValue(At(member)!, found, expected);

    public void RefuseName(Member member, string found, string expected) => reading.AtName(At(member)!, found, expected);

    /// <summary>A value in a row of a list is at fault.</summary>
    public void RefuseCell(Member list, int row, int cell, string problem, string expected)
    {
        var value = At(list)!.Items[row].Items[cell];
        reading.AtValue(value, $"{Reading.Shown(value)}: {problem}", expected);
    }

    /// <summary>The object itself is at fault.</summary>
    public void RefuseSelf(string found, string expected) => reading.AtValue(node, found, expected);

    /// <summary>An entry of a list is at fault.</summary>
    public void RefuseRow(Member list, int row, string problem, string expected) => reading.AtValue(At(list)!.Items[row], problem, expected);

    /// <summary>What the file gives of each object of a list, in its order.</summary>
    public IEnumerable<Given> Rows(Member list) =>
        At(list) is { Kind: NodeKind.List } items ? items.Items.Select(i => reading.Givens.TryGetValue(i, out var given) ? given : new(i, reading)) : [];

    /// <summary>Refuses every object of a list whose name an earlier one has.</summary>
    public void RefuseAgain(Member list, Member name, string expected)
    {
        var first = new Dictionary<string, Node>(StringComparer.Ordinal);
        foreach (var row in Rows(list))
        {
            if (row.At(name) is { Kind: NodeKind.Text } text && !first.TryAdd(text.Text, text))
                reading.AtAgain(text, first[text.Text], expected);
        }
    }

    /// <summary>An entry of a list is at fault as a whole.</summary>
    public void RefuseItem(Member list, int row, string found, string expected) => reading.AtValue(At(list)!.Items[row], found, expected);

    public void Missing(string member, string expected) => reading.AtMissing(node, member, expected);

    /// <summary>The member as written, for a message.</summary>
    public string Shown(Member member) => At(member) is { } value ? Reading.Shown(value) : "";

    private object? Read(Member member) => values.TryGetValue(member, out var value) ? value.Value : null;
}

/// <summary>An object: its members, the rules between them, and what it becomes in the model.</summary>
internal sealed class ObjectShape<T>(string definition, string title, Member[] members, Func<Given, T> build, params Rule[] rules) : Shape<T>, IObject
    where T : notnull
{
    public override string Kind => $"object, see [{title}](#{Anchor})";
    public override IEnumerable<Shape> Inside => members.Select(m => m.Shape);
    public string Definition => definition;
    public string Title => title;
    public string Anchor => title.Replace(' ', '-').Replace("'", "", StringComparison.Ordinal);
    public IReadOnlyList<Member> Members => members;
    public IReadOnlyList<Rule> Rules => rules;

    public override JsonObject Schema(JsonObject definitions)
    {
        if (!definitions.ContainsKey(definition))
        {
            definitions[definition] = null;
            definitions[definition] = Whole(definitions);
        }

        return Reference(definition);
    }

    /// <summary>The schema of the object itself, without a reference.</summary>
    public JsonObject Whole(JsonObject definitions)
    {
        var properties = new JsonObject();
        foreach (var member in members)
        {
            var schema = member.Shape.Schema(definitions);
            schema["description"] = Description(member);
            properties[member.Name] = schema;
        }

        var whole = new JsonObject { ["description"] = title, ["type"] = "object", ["properties"] = properties };
        if (members.Any(m => m.IsRequired))
            whole["required"] = new JsonArray([.. members.Where(m => m.IsRequired).Select(m => JsonValue.Create(m.Name))]);
        whole["additionalProperties"] = false;
        if (rules.Any(r => r.Schema is not null))
            whole["allOf"] = new JsonArray([.. rules.Where(r => r.Schema is not null).Select(r => r.Schema!())]);
        return whole;
    }

    public override bool TryRead(Node node, Reading reading, out T value)
    {
        value = default!;
        if (node.Kind != NodeKind.Object)
        {
            reading.AtValue(node, Reading.Shown(node), $"an object {{ ... }} for {title}");
            return false;
        }

        node.Title = title;
        var sound = true;
        var given = new Given(node, reading);
        reading.Givens[node] = given;
        var first = new Dictionary<string, Node>();
        foreach (var item in node.Items)
        {
            if (!first.TryAdd(item.Name!, item))
                reading.AtRepeated(item, first[item.Name!]);
            else if (!Array.Exists(members, m => m.Name == item.Name))
                Unknown(item, reading);
            else
                continue;
            sound = false;
        }

        // In the order of the description: points are known before what refers to them.
        foreach (var member in members)
        {
            if (first.TryGetValue(member.Name, out var item))
            {
                sound &= member.Shape.TryReadAny(item, reading, out var read);
                given.Add(member, item, read);
            }
            else if (member.IsRequired)
            {
                sound = false;
                reading.AtMissing(node, member.Name, $"\"{member.Name}\": {member.Meaning}");
            }
        }

        var count = reading.Count;
        foreach (var rule in rules)
            rule.Check(given);
        if (!sound || reading.Count != count)
            return false;
        value = build(given);
        return true;
    }

    private static string Description(Member member)
    {
        var limits = member.Shape.Limits.Length > 0 && member.Shape is not IWords ? $" ({member.Shape.Limits.Replace("`", "", StringComparison.Ordinal)})" : "";
        var words = member.Shape is IWords w && w.Words.Any(x => x.Meaning.Length > 0) ? " " + string.Join("; ", w.Words.Where(x => x.Meaning.Length > 0).Select(x => $"{x.Text}: {x.Meaning}")) + "." : "";
        return member.Meaning + limits + words;
    }

    private void Unknown(Node item, Reading reading)
    {
        if (!reading.IsListing)
        {
            reading.AtName(item, "", "");
            return;
        }

        var near = Likeness.Nearest(item.Name!, members.Select(m => m.Name));
        var known = string.Join(", ", members.Select(m => $"\"{m.Name}\""));
        reading.AtName(item, $"\"{Reading.Short(item.Name!)}\" is not known in {title}", near is null ? $"one of {known}" : $"did you mean \"{near}\"? Known here: {known}");
    }
}

/// <summary>An object of the file, whatever it becomes.</summary>
internal interface IObject
{
    string Definition { get; }
    string Title { get; }
    string Anchor { get; }
    IReadOnlyList<Member> Members { get; }
    IReadOnlyList<Rule> Rules { get; }
}
