using System.Globalization;
using System.Text.Json.Nodes;
using Throwright.Engine.Model;
using Throwright.Files.Json;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>A list of values of one shape.</summary>
internal sealed class ListShape<T>(Shape<T> entry, string entries, int most, int least = 0, bool noneTwice = false) : Shape<EquatableList<T>>
    where T : notnull
{
    public override string Kind => entry is IObject o ? $"list of [{entries}](#{o.Anchor})" : $"list of {entries}";

    public override string Limits
    {
        get
        {
            var count = least > 0 ? $"{least} to {most} entries" : $"at most {most} entries";
            var each = entry.Limits.Length > 0 ? $"; each {entry.Limits}" : "";
            return noneTwice ? $"{count}, none twice{each}" : count + each;
        }
    }

    public override IEnumerable<Shape> Inside => [entry];

    public override JsonObject Schema(JsonObject definitions)
    {
        var schema = new JsonObject { ["type"] = "array", ["items"] = entry.Schema(definitions) };
        if (least > 0)
            schema["minItems"] = least;
        schema["maxItems"] = most;
        if (noneTwice)
            schema["uniqueItems"] = true;
        return schema;
    }

    public override bool TryRead(Node node, Reading reading, out EquatableList<T> value)
    {
        value = [];
        if (node.Kind != NodeKind.List)
        {
            reading.AtValue(node, Reading.Shown(node), $"a list [ ... ] of {entries}");
            return false;
        }

        var count = reading.Count;
        if (node.Items.Count > most)
            reading.AtValue(node, $"{node.Items.Count} {entries}", $"at most {most}");
        if (node.Items.Count < least)
            reading.AtValue(node, $"{node.Items.Count} {entries}", $"at least {least}");
        var list = new List<T>();
        foreach (var item in node.Items)
        {
            if (!entry.TryRead(item, reading, out var read))
                continue;
            if (noneTwice && list.Contains(read))
                reading.AtValue(item, $"{Reading.Shown(item)} again", "each only once");
            list.Add(read);
        }

        value = list.ToEquatableList();
        return reading.Count == count && list.Count == node.Items.Count;
    }
}

/// <summary>A list of a fixed number of values, each with its own meaning: a point, a direction, a row of a table.</summary>
internal sealed class RowShape<T>(string kind, string definition, string example, (string Name, Shape Shape)[] cells, Func<object[], T> build, Func<object[], string?>? refuse = null) : Shape<T>
    where T : notnull
{
    public override string Kind => kind;
    public override string Limits => string.Join(", ", cells.Select(c => c.Shape.Limits).Where(l => l.Length > 0).Distinct());

    public override JsonObject Schema(JsonObject definitions)
    {
        if (!definitions.ContainsKey(definition))
        {
            definitions[definition] = new JsonObject
            {
                ["description"] = $"[{string.Join(", ", cells.Select(c => c.Name))}], e.g. {example}",
                ["type"] = "array",
                ["prefixItems"] = new JsonArray([.. cells.Select(c => c.Shape.Schema(definitions))]),
                ["items"] = false,
                ["minItems"] = cells.Length,
            };
        }

        return Reference(definition);
    }

    public override bool TryRead(Node node, Reading reading, out T value)
    {
        value = default!;
        if (node.Kind != NodeKind.List || node.Items.Count != cells.Length)
        {
            var found = node.Kind == NodeKind.List ? $"a list of {node.Items.Count}" : Reading.Shown(node);
            reading.AtValue(node, found, $"a list of {cells.Length}: {string.Join(", ", cells.Select(c => c.Name))}, e.g. {example}");
            return false;
        }

        var read = new object[cells.Length];
        var sound = true;
        for (var i = 0; i < cells.Length; i++)
        {
            sound &= cells[i].Shape.TryReadAny(node.Items[i], reading, out var cell);
            read[i] = cell!;
        }

        if (!sound)
            return false;
        if (refuse?.Invoke(read) is { } refusal)
        {
            reading.AtValue(node, $"[{string.Join(", ", node.Items.Select(Reading.Shown))}]: {refusal}", $"{kind}, e.g. {example}");
            return false;
        }

        value = build(read);
        return true;
    }
}

/// <summary>A pure number of a direction, with or without quotes: its unit can't be mistaken.</summary>
internal sealed class ComponentShape : Shape<double>
{
    private const double Most = 1e6;

    public override string Kind => "number";
    public override JsonObject Schema(JsonObject definitions) => new()
    {
        ["anyOf"] = new JsonArray(
            new JsonObject { ["type"] = "number", ["minimum"] = -Most, ["maximum"] = Most },
            new JsonObject { ["type"] = "string", ["pattern"] = QuantityPattern.Of(QuantityKind.Ratio, exact: true) }),
    };

    public override bool TryRead(Node node, Reading reading, out double value)
    {
        value = 0;
        string? problem = null;
        if (node.Kind == NodeKind.Number)
        {
            value = double.Parse(node.Text, NumberStyles.Float, CultureInfo.InvariantCulture);
        }
        else if (node.Kind == NodeKind.Text && UnitText.TryRead(QuantityKind.Ratio, node.Text, out var read, out problem))
        {
            value = read.Nominal;
            problem = read.Minus != 0 || read.Plus != 0 || read.Spread != Spread.Uniform ? "a tolerance has no meaning here" : null;
        }
        else
        {
            problem ??= "not a number";
        }

        if (problem is null && !(Math.Abs(value) <= Most))
            problem = $"not between {-Most} and {Most}";
        if (problem is null)
            return true;
        reading.AtValue(node, $"{Reading.Shown(node)}: {problem}", "a plain number without a unit, e.g. 0.4 or \"-1\"");
        return false;
    }
}

/// <summary>A text for the short form, anything else for the long form.</summary>
internal sealed class ShortOrLongShape<T>(Shape<T> shortForm, Shape<T> longForm) : Shape<T>
    where T : notnull
{
    public override string Kind => $"{shortForm.Kind}, or {longForm.Kind}";
    public override string Limits => shortForm.Limits;
    public override IEnumerable<Shape> Inside => [shortForm, longForm];

    public override JsonObject Schema(JsonObject definitions) => new() { ["oneOf"] = new JsonArray(shortForm.Schema(definitions), longForm.Schema(definitions)) };

    public override bool TryRead(Node node, Reading reading, out T value) =>
        node.Kind is NodeKind.Text or NodeKind.Number or NodeKind.Word or NodeKind.Null
            ? shortForm.TryRead(node, reading, out value)
            : longForm.TryRead(node, reading, out value);
}

/// <summary>A value made of another, e.g. both ends of a sweep from its whole angle.</summary>
internal sealed class MadeShape<TFrom, T>(Shape<TFrom> from, Func<TFrom, T> make) : Shape<T>
    where TFrom : notnull
    where T : notnull
{
    public override string Kind => from.Kind;
    public override string Limits => from.Limits;
    public override IEnumerable<Shape> Inside => [from];

    public override JsonObject Schema(JsonObject definitions) => from.Schema(definitions);

    public override bool TryRead(Node node, Reading reading, out T value)
    {
        var read = from.TryRead(node, reading, out var given);
        value = read ? make(given) : default!;
        return read;
    }
}

/// <summary>The name of a measured place.</summary>
internal sealed class PointNameShape : Shape<PointAt>
{
    public override string Kind => "name of a point";

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "string", ["minLength"] = 1 };

    public override bool TryRead(Node node, Reading reading, out PointAt value)
    {
        value = null!;
        if (node.Kind == NodeKind.Text && reading.Points.TryGetValue(node.Text, out var point))
        {
            // At fault where it is measured, and reported there; the run still can't be worked out.
            value = point!;
            return point is not null;
        }

        var near = node.Kind == NodeKind.Text && reading.IsListing ? Likeness.Nearest(node.Text, reading.Points.Keys) : null;
        var known = reading.Points.Count == 0 ? "a name from \"points\" (there are none in this file)"
            : $"a name from \"points\": {string.Join(", ", reading.Points.Keys.Take(8).Select(k => $"\"{Reading.Short(k)}\""))}{(reading.Points.Count > 8 ? ", ..." : "")}";
        if (near is not null)
            known = $"a name from \"points\"; did you mean \"{near}\"?";
        reading.AtValue(node, node.Kind == NodeKind.Text ? $"{Reading.Shown(node)}: no point has this name" : Reading.Shown(node), $"{known}; or [station, buttline, waterline]");
        return false;
    }
}

/// <summary>The runs. A run at fault is left out and told; the others are read.</summary>
internal sealed class RunsShape(Shape<Run> run) : Shape<EquatableList<Run>>
{
    private const int Most = 1000;

    public override string Kind => run is IObject o ? $"list of [runs](#{o.Anchor})" : "list of runs";
    public override string Limits => $"at most {Most} runs";
    public override IEnumerable<Shape> Inside => [run];

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "array", ["items"] = run.Schema(definitions), ["maxItems"] = Most };

    public override bool TryRead(Node node, Reading reading, out EquatableList<Run> value)
    {
        value = [];
        if (node.Kind != NodeKind.List)
        {
            reading.AtValue(node, Reading.Shown(node), "a list [ ... ] of runs");
            return false;
        }

        if (node.Items.Count > Most)
        {
            reading.AtValue(node, $"{node.Items.Count} runs", $"at most {Most}");
            return false;
        }

        var read = new Run?[node.Items.Count];
        var first = new Dictionary<string, int>();
        for (var i = 0; i < read.Length; i++)
        {
            if (run.TryRead(node.Items[i], reading, out var sound))
                read[i] = sound;
        }

        // Two runs of one id: which of them a command or a paper means is not certain, so neither is read.
        for (var i = 0; i < read.Length; i++)
        {
            if (node.Items[i].Member("id") is not { Kind: NodeKind.Text } id || first.TryAdd(id.Text, i))
                continue;
            reading.AtAgain(id, node.Items[first[id.Text]].Member("id")!, "a different id for each run");
            read[first[id.Text]] = null;
            read[i] = null;
        }

        for (var i = 0; i < read.Length; i++)
        {
            if (read[i] is null)
                reading.RunsLeftOut.Add(new(i, Reading.RunName(node.Items[i]) is { Length: > 0 } name ? name : $"run {i + 1}"));
        }

        value = read.OfType<Run>().ToEquatableList();
        return true;
    }
}
