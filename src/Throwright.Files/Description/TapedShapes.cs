using System.Text.Json.Nodes;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Files.Json;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>How far a reading may be off to either side: "± 1/16 in", or "1/16 in".</summary>
internal sealed class HalfShape(string low, string high) : Shape<Length>
{
    private readonly Bounds bounds = new(QuantityKind.Length, low, high);

    public override string Kind => "± length";
    public override string Limits => bounds.ToString();

    public override JsonObject Schema(JsonObject definitions) => new()
    {
        ["type"] = "string",
        ["pattern"] = QuantityPattern.Of(QuantityKind.Length, exact: true).Replace("^", "^\\s*(?:±|\\+/-|\\+-)?", StringComparison.Ordinal),
        ["examples"] = new JsonArray("± 1/16 in", "± 1 mm"),
    };

    public override bool TryRead(Node node, Reading reading, out Length value)
    {
        value = default;
        const string Expected = "how far it may be off to either side, e.g. \"± 1/16 in\", \"± 1 mm\"";
        if (node.Kind != NodeKind.Text)
        {
            reading.AtValue(node, node.Kind == NodeKind.Number ? $"{Reading.Shown(node)}: a bare number, its unit is not named" : Reading.Shown(node), Expected);
            return false;
        }

        var text = node.Text.TrimStart();
        foreach (var sign in (string[])["±", "+/-", "+-"])
        {
            if (!text.StartsWith(sign, StringComparison.Ordinal))
                continue;
            text = text[sign.Length..];
            break;
        }

        if (!UnitText.TryRead(QuantityKind.Length, text, out var read, out var problem))
            problem = $"{Reading.Shown(node)}: {problem}";
        else if (read.Minus != 0 || read.Plus != 0 || read.Spread != Spread.Uniform)
            problem = $"{Reading.Shown(node)}: one length only";
        else if (bounds.Refuse(read) is { } refusal)
            problem = $"{Reading.Shown(node)}: {refusal}";
        if (problem is not null)
        {
            reading.AtValue(node, problem, $"{Expected}; {bounds}");
            return false;
        }

        value = new(read.Nominal);
        return true;
    }
}

/// <summary>The name of a point within the points; whether it is there is seen when all are read.</summary>
internal sealed class OtherPointShape : Shape<string>
{
    public override string Kind => "name of a point";

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "string", ["minLength"] = 1 };

    public override bool TryRead(Node node, Reading reading, out string value)
    {
        value = node.Text;
        if (node.Kind != NodeKind.Text)
        {
            reading.AtValue(node, Reading.Shown(node), "a name from \"points\"");
            return false;
        }

        reading.PointNames.Add((node, value, false));
        return true;
    }
}

/// <summary>Distances by the name of the point they are measured from.</summary>
internal sealed class DistancesShape : Shape<EquatableList<TapeDistance>>
{
    private const int Most = 100;
    private readonly TolerancedShape<Length> distance = new("1 mm", "100 m");

    public override string Kind => "object: a point's name and the distance from it";
    public override string Limits => $"at most {Most} distances, each {distance.Limits}";

    public override JsonObject Schema(JsonObject definitions) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["minLength"] = 1 },
        ["additionalProperties"] = distance.Schema(definitions),
        ["maxProperties"] = Most,
    };

    public override bool TryRead(Node node, Reading reading, out EquatableList<TapeDistance> value)
    {
        value = [];
        if (node.Kind != NodeKind.Object)
        {
            reading.AtValue(node, Reading.Shown(node), "an object { \"name of a point\": \"31 1/8 in\", ... }");
            return false;
        }

        node.Title = "the distances";
        var count = reading.Count;
        if (node.Items.Count > Most)
            reading.AtValue(node, $"{node.Items.Count} distances", $"at most {Most}");
        var first = new Dictionary<string, Node>();
        var list = new List<TapeDistance>();
        foreach (var item in node.Items)
        {
            var name = item.Name!;
            if (!first.TryAdd(name, item))
                reading.AtRepeated(item, first[name]);
            reading.PointNames.Add((item, name, true));
            if (distance.TryRead(item, reading, out var read))
                list.Add(new(name, read));
        }

        value = list.ToEquatableList();
        return reading.Count == count;
    }
}

/// <summary>Which of two mirrored places is meant: "above", or "above datum".</summary>
internal sealed class SideShape : Shape<SideAt>, IWords
{
    private static readonly (string Text, Side Side)[] Known =
    [
        ("rightOf", Side.RightOf), ("leftOf", Side.LeftOf), ("above", Side.Above), ("below", Side.Below), ("forwardOf", Side.ForwardOf), ("aftOf", Side.AftOf),
    ];

    public override string Kind => "word, with or without a point's name behind it";
    public override string Limits => string.Join(", ", Known.Select(k => $"`{k.Text}`"));
    public bool IsComplete => Known.Select(k => k.Side).Order().SequenceEqual(Enum.GetValues<Side>().Order());
    public IEnumerable<(string Text, string Meaning)> Words => Known.Select(k => (k.Text, ""));

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "string", ["pattern"] = $"^(?:{string.Join('|', Known.Select(k => k.Text))})(?: .+)?$" };

    public override bool TryRead(Node node, Reading reading, out SideAt value)
    {
        value = null!;
        var words = node.Text.Split(' ', 2);
        if (node.Kind == NodeKind.Text && Array.FindIndex(Known, k => k.Text == words[0]) is >= 0 and var i && !(words.Length == 2 && string.IsNullOrWhiteSpace(words[1])))
        {
            value = new(Known[i].Side, words.Length == 2 ? words[1] : "");
            if (value.Of.Length > 0)
                reading.PointNames.Add((node, value.Of, false));
            return true;
        }

        var near = node.Kind == NodeKind.Text && reading.IsListing ? Likeness.Nearest(words[0], Known.Select(k => k.Text)) : null;
        reading.AtValue(node, Reading.Shown(node), $"one of {string.Join(", ", Known.Select(k => $"\"{k.Text}\""))}, alone (of the other place that fits) or with a point's name behind it{(near is null ? "" : $"; did you mean \"{near}\"?")}");
        return false;
    }
}

/// <summary>A place as coordinates, or as readings from other places.</summary>
internal sealed class PlaceShape(Shape<PointAt> point, Shape<TapedPlace> taped) : Shape<NamedPoint>
{
    public override string Kind => $"{point.Kind}, or {taped.Kind}";
    public override string Limits => point.Limits;
    public override IEnumerable<Shape> Inside => [point, taped];

    public override JsonObject Schema(JsonObject definitions) => new() { ["oneOf"] = new JsonArray(point.Schema(definitions), taped.Schema(definitions)) };

    public override bool TryRead(Node node, Reading reading, out NamedPoint value)
    {
        value = null!;
        var name = node.Name ?? "";
        if (node.Kind == NodeKind.Object)
        {
            if (!taped.TryRead(node, reading, out var readings))
                return false;
            value = new(name, PointAt.NotKnown(name), readings);
            return true;
        }

        if (!point.TryRead(node, reading, out var at))
            return false;
        value = new(name, at);
        return true;
    }
}

/// <summary>Measured places by name. Points at fault are left out; what refers to them can't be read.</summary>
internal sealed class PointsShape(PlaceShape place) : Shape<EquatableList<NamedPoint>>
{
    private const int Most = 1000;
    private const int MostName = 60;

    public override string Kind => "object: a name and a place for each";
    public override string Limits => $"at most {Most} points, names of 1 to {MostName} characters; each {place.Limits}";
    public override IEnumerable<Shape> Inside => [place];

    public override JsonObject Schema(JsonObject definitions) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["minLength"] = 1, ["maxLength"] = MostName },
        ["additionalProperties"] = place.Schema(definitions),
        ["maxProperties"] = Most,
    };

    public override bool TryRead(Node node, Reading reading, out EquatableList<NamedPoint> value)
    {
        value = [];
        if (node.Kind != NodeKind.Object)
        {
            reading.AtValue(node, Reading.Shown(node), "an object { \"name\": [station, buttline, waterline], ... }");
            return false;
        }

        node.Title = "the points";
        var count = reading.Count;
        if (node.Items.Count > Most)
            reading.AtValue(node, $"{node.Items.Count} points", $"at most {Most}");
        var tooMany = reading.Count != count;
        var first = new Dictionary<string, Node>();
        var sound = new Dictionary<string, NamedPoint>();
        var isNamed = new Dictionary<Node, bool>();
        foreach (var item in node.Items)
        {
            var name = item.Name!;
            var isNew = first.TryAdd(name, item);
            if (!isNew)
                reading.AtRepeated(item, first[name]);
            var named = !string.IsNullOrWhiteSpace(name) && name.Length <= MostName && !name.Any(Reading.IsUnseen);
            if (!named)
                reading.AtName(item, $"the name \"{Reading.Short(name)}\"", $"a name of 1 to {MostName} printable characters");
            isNamed[item] = named;
            if (place.TryRead(item, reading, out var read) && isNew && named)
                sound[name] = read;
            else
                sound.Remove(name);
        }

        RefuseStrangers(reading, first, sound);
        RefuseCircles(reading, first, sound);
        var survey = PointSurvey.Of(sound.Values.ToEquatableList());
        foreach (var name in first.Keys)
            reading.Points[name] = null;
        foreach (var found in survey)
            reading.Points[found.Point.Name] = found.Point.At with { Name = found.Point.Name };
        value = survey.Select(f => f.Point).ToEquatableList();
        return !tooMany;
    }

    /// <summary>A point that is measured from a name that is not there, or from itself, is left out.</summary>
    private static void RefuseStrangers(Reading reading, Dictionary<string, Node> first, Dictionary<string, NamedPoint> sound)
    {
        foreach (var (node, name, isMember) in reading.PointNames)
        {
            var owner = OwnerOf(node);
            if (first.ContainsKey(name) && name != owner)
                continue;
            var near = reading.IsListing && name != owner ? Likeness.Nearest(name, first.Keys) : null;
            var expected = near is null ? "the name of another point of this file" : $"the name of another point; did you mean \"{near}\"?";
            var found = name == owner ? $"\"{Reading.Short(name)}\": the point itself" : $"\"{Reading.Short(name)}\": no point has this name";
            if (isMember)
                reading.AtName(node, found, expected);
            else
                reading.AtValue(node, found, expected);
            sound.Remove(owner);
        }
    }

    /// <summary>Points that are measured from each other have nothing to begin with.</summary>
    private static void RefuseCircles(Reading reading, Dictionary<string, Node> first, Dictionary<string, NamedPoint> sound)
    {
        // Whatever can be worked out is taken away; what is left and not waiting for a point at fault goes in circles.
        var done = sound.Values.Where(p => p.Taped is null).Select(p => p.Name).Concat(first.Keys.Except(sound.Keys)).ToHashSet();
        var left = sound.Values.Where(p => p.Taped is not null).ToList();
        while (left.RemoveAll(p => PointSurvey.NamesIn(p.Taped!).All(done.Contains) && done.Add(p.Name)) > 0)
        {
        }

        foreach (var point in left)
        {
            var from = PointSurvey.NamesIn(point.Taped!).Where(n => !done.Contains(n));
            reading.AtName(first[point.Name], $"\"{Reading.Short(point.Name)}\" is measured from {string.Join(", ", from.Select(n => $"\"{Reading.Short(n)}\""))}, which in turn wait for it", "points measured from points whose place is known: give one of them coordinates");
            sound.Remove(point.Name);
        }
    }

    private static string OwnerOf(Node node)
    {
        while (node.Parent is { Parent.Parent: not null } parent)
            node = parent;
        return node.Name ?? "";
    }
}
