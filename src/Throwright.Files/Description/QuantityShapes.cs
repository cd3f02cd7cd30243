using System.Text.Json.Nodes;
using Throwright.Files.Json;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>Between which values a quantity makes sense at all; both ends count as sensible.</summary>
internal sealed class Bounds
{
    private readonly string low;
    private readonly string high;
    private readonly QuantityKind kind;

    public Bounds(QuantityKind kind, string low, string high)
    {
        (this.kind, this.low, this.high) = (kind, low, high);
        (Low, High) = (Read(low), Read(high));
    }

    public double Low { get; }
    public double High { get; }

    public override string ToString() => $"{low} to {high}";

    /// <summary>What is wrong with a value from least to most, or null.</summary>
    public string? Refuse(ReadQuantity value)
    {
        double least = value.Nominal - value.Minus, most = value.Nominal + value.Plus;
        if (!(double.IsFinite(least) && double.IsFinite(most)))
            return "not a finite number";
        if (Low > 0 && value.Nominal <= 0)
            return value.Nominal == 0 ? "zero" : "below zero";
        if (Low == 0 && value.Nominal < 0)
            return "below zero";
        if (value.Nominal < Low)
            return $"smaller than {low}";
        if (value.Nominal > High)
            return $"larger than {high}";
        if (least < Low)
            return Low >= 0 && least <= 0 ? "the tolerance is larger than the value" : $"the tolerance lets it fall below {low}";
        return most > High ? $"the tolerance lets it grow beyond {high}" : null;
    }

    /// <summary>"a length above zero (1 mm to 2 m)".</summary>
    public string Expected(bool exact)
    {
        var sign = Low > 0 ? " above zero" : "";
        var with = exact ? "" : ", also at the ends of its tolerance";
        return $"{UnitText.KindName(kind)}{sign}, {this}{with}";
    }

    private double Read(string text) =>
        UnitText.TryRead(kind, text, out var value, out var problem) ? value.Nominal : throw new InvalidOperationException($"Limit \"{text}\": {problem}.");
}

/// <summary>How a quantity is read, whether or not it may have a tolerance.</summary>
internal sealed class QuantityReader(QuantityKind kind, bool exact, Bounds bounds)
{
    /// <summary>Examples without tolerance; with tolerance they come from <see cref="UnitText.Expected"/>.</summary>
    private static readonly Dictionary<QuantityKind, string[]> ExactExamples = new()
    {
        [QuantityKind.Length] = ["1.5 in", "1 1/2 in", "38 mm"],
        [QuantityKind.Angle] = ["45 deg", "0.8 rad"],
        [QuantityKind.Force] = ["20 lbf", "90 N"],
        [QuantityKind.Torque] = ["6 lbf in", "0.7 N m"],
        [QuantityKind.Temperature] = ["20 degC", "-22 degF"],
        [QuantityKind.Ratio] = ["0.66"],
        [QuantityKind.Stiffness] = ["400 N/mm", "2000 lbf/in"],
        [QuantityKind.TorsionRate] = ["0.05 lbf in/deg", "0.3 N m/rad"],
        [QuantityKind.BendingStiffness] = ["0.2 N m2", "70 lbf in2"],
        [QuantityKind.LineWeight] = ["0.06 lbf/ft", "90 g/m"],
        [QuantityKind.Stress] = ["90 ksi", "600 MPa"],
    };

    private static readonly Dictionary<QuantityKind, string[]> TolerancedExamples = new()
    {
        [QuantityKind.Length] = ["1.5 in", "1 1/2 in ± 1/32 in", "38 mm ± 0.5 mm"],
        [QuantityKind.Angle] = ["45 deg", "92 deg +2/-1 deg"],
        [QuantityKind.Force] = ["20 lbf", "90 N ± 10 N"],
        [QuantityKind.Torque] = ["6 lbf in", "0.7 N m ± 20 %"],
        [QuantityKind.Ratio] = ["0.15", "0.15 ± 0.05"],
        [QuantityKind.Stiffness] = ["400 N/mm ± 10 %", "2000 lbf/in"],
        [QuantityKind.TorsionRate] = ["0.05 lbf in/deg", "0.3 N m/rad"],
        [QuantityKind.BendingStiffness] = ["0.2 N m2", "70 lbf in2"],
        [QuantityKind.LineWeight] = ["0.06 lbf/ft", "90 g/m"],
        [QuantityKind.Stress] = ["90 ksi", "600 MPa"],
    };

    public static IReadOnlyList<string> Examples(QuantityKind kind, bool exact) => (exact ? ExactExamples : TolerancedExamples)[kind];

    public string KindText
    {
        get
        {
            var name = Words(kind);
            return exact ? name : name + " ± tolerance";
        }
    }

    public string LimitsText => bounds.ToString();

    /// <summary>"length", "torsional rate": without the article.</summary>
    public static string Words(QuantityKind kind)
    {
        var name = UnitText.KindName(kind);
        return kind == QuantityKind.Ratio ? "ratio" : name[(name.IndexOf(' ', StringComparison.Ordinal) + 1)..];
    }

    public JsonObject Schema(JsonObject definitions)
    {
        var name = kind + (exact ? "Exact" : "Toleranced");
        name = char.ToLowerInvariant(name[0]) + name[1..];
        if (!definitions.ContainsKey(name))
        {
            definitions[name] = new JsonObject
            {
                ["description"] = $"{UnitText.KindName(kind)}{(exact ? "" : ", with or without a tolerance")}",
                ["type"] = "string",
                ["pattern"] = QuantityPattern.Of(kind, exact),
                ["examples"] = new JsonArray([.. Examples(kind, exact).Select(e => JsonValue.Create(e))]),
            };
        }

        return new() { ["$ref"] = "#/$defs/" + name };
    }

    public bool TryRead(Node node, Reading reading, out ReadQuantity value)
    {
        value = default;
        var shown = Reading.Shown(node);
        if (node.Kind != NodeKind.Text)
        {
            var found = node.Kind switch
            {
                NodeKind.Number => kind == QuantityKind.Ratio ? $"{shown}: a bare number" : $"{shown}: a bare number, its unit is not named",
                NodeKind.Word => $"{shown}: not in quotes",
                NodeKind.Null => "null: a member that is not known is left out",
                _ => shown,
            };
            reading.AtValue(node, found, Expected());
            return false;
        }

        if (!UnitText.TryRead(kind, node.Text, out value, out var problem))
        {
            reading.AtValue(node, $"{shown}: {problem}", Expected());
            return false;
        }

        if (exact && (value.Minus != 0 || value.Plus != 0 || value.Spread != Spread.Uniform))
        {
            reading.AtValue(node, $"{shown}: a tolerance has no meaning here", Expected());
            return false;
        }

        if (bounds.Refuse(value) is not { } refusal)
            return true;
        reading.AtValue(node, $"{shown}: {refusal}", bounds.Expected(exact));
        return false;
    }

    private string Expected() =>
        $"{UnitText.KindName(kind)}, e.g. {string.Join(", ", Examples(kind, exact).Select(e => $"\"{e}\""))}";
}

/// <summary>A quantity with or without a tolerance.</summary>
internal sealed class TolerancedShape<T>(string low, string high) : Shape<Toleranced<T>>
    where T : struct, IQuantity<T>
{
    private readonly QuantityReader reader = new(T.Kind, exact: false, new(T.Kind, low, high));

    public override string Kind => reader.KindText;
    public override string Limits => reader.LimitsText;

    public override JsonObject Schema(JsonObject definitions) => reader.Schema(definitions);

    public override bool TryRead(Node node, Reading reading, out Toleranced<T> value)
    {
        var read = reader.TryRead(node, reading, out var q);
        value = new(T.FromSi(q.Nominal), q.Minus, q.Plus, q.Spread);
        return read;
    }
}

/// <summary>A quantity that has no tolerance: a limit, a choice, an angle in a table.</summary>
internal sealed class ExactShape<T>(string low, string high) : Shape<T>
    where T : struct, IQuantity<T>
{
    private readonly QuantityReader reader = new(T.Kind, exact: true, new(T.Kind, low, high));

    public override string Kind => reader.KindText;
    public override string Limits => reader.LimitsText;

    public override JsonObject Schema(JsonObject definitions) => reader.Schema(definitions);

    public override bool TryRead(Node node, Reading reading, out T value)
    {
        var read = reader.TryRead(node, reading, out var q);
        value = T.FromSi(q.Nominal);
        return read;
    }
}
