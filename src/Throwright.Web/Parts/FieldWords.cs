using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Throwright.Engine.Model;
using Throwright.Files.Form;
using Throwright.Shapes.Quantities;

namespace Throwright.Web.Parts;

/// <summary>Short names of fields, and how the value in one is stepped.</summary>
public static partial class FieldWords
{
    private static readonly Dictionary<string, string> Names = new()
    {
        ["leverEnd.arm.radius"] = "pivot to hole",
        ["leverEnd.arm.holes"] = "holes of the arm",
        ["leverEnd.arm.zero"] = "arm at angle 0 points",
        ["leverEnd.arm.alongAxis"] = "swivel along the axis",
        ["leverEnd.sweep"] = "sweep",
        ["leverEnd.sweep.from"] = "sweep from",
        ["leverEnd.sweep.to"] = "sweep to",
        ["leverEnd.pivot"] = "pivot at",
        ["leverEnd.axis"] = "axis of the arm",
        ["leverEnd.bench.distance"] = "anchor to swivel",
        ["leverEnd.bench.rule"] = "line of the wire",
        ["leverEnd.bench.offset"] = "pivot to line of the wire",
        ["leverEnd.anchor.at"] = "anchor at",
        ["leverEnd.anchor.along"] = "conduit's end points",
        ["leverEnd.anchor.tip"] = "end tube",
        ["leverEnd.anchor.swivels"] = "end tube swivels",
        ["leverEnd.anchor.stiffness"] = "bracket stiffness",
        ["leverEnd.swivel.length"] = "swivel, pin to end",
        ["leverEnd.swivel.play"] = "play of the swivel",
        ["leverEnd.swivel.rigged"] = "rigged",
        ["leverEnd.swivel.at"] = "anchor to pin, knob in",
        ["leverEnd.swivel.rigged.stop"] = "rigged with the device on its stop",
        ["leverEnd.swivel.rigged.knobOut"] = "knob then stands out",
        ["leverEnd.swivel.holdsBy"] = "holds by",
        ["leverEnd.load.torque"] = "torque of the device",
        ["leverEnd.load.measured"] = "measured",
        ["leverEnd.load.bias.torque"] = "steady torque",
        ["leverEnd.load.bias.toward"] = "steady torque toward",
        ["leverEnd.zone"] = "where it sits",
        ["cable.core.diameter"] = "core wire",
        ["cable.core.kind"] = "core is",
        ["cable.core.material"] = "core material",
        ["cable.conduit.bore"] = "bore",
        ["cable.conduit.material"] = "conduit material",
        ["cable.conduit.minRadius"] = "least bend radius",
        ["cable.conduit.pullStiffness"] = "stiffness, pulling",
        ["cable.conduit.pushStiffness"] = "stiffness, pushing",
        ["cable.friction"] = "friction",
        ["cable.length"] = "length",
        ["cable.bendTotal"] = "bend total",
        ["cable.longestStraight"] = "longest straight",
        ["cable.bends.angle"] = "turns",
        ["cable.bends.radius"] = "radius",
        ["cable.limits.pull"] = "most pull",
        ["cable.limits.push"] = "most push",
        ["cable.drag.knob"] = "drag at the knob",
        ["cable.drag.device"] = "drag at the device",
        ["cable.source"] = "figures from",
        ["cable.ends.inBushing"] = "conduit inside the bushing",
        ["cable.ends.inAnchor"] = "conduit beyond the anchor",
        ["cable.ends.wireInKnob"] = "wire inside the shank",
        ["cable.ends.wireBeyondPin"] = "wire beyond the pin",
        ["cable.conduit.outside"] = "conduit outside",
        ["cockpitEnd.stroke"] = "stroke",
        ["cockpitEnd.pushMeans"] = "push means",
        ["cockpitEnd.pullMeans"] = "pull means",
        ["cockpitEnd.knob.shape"] = "shape",
        ["cockpitEnd.knob.colour"] = "colour",
        ["cockpitEnd.lockHolds"] = "lock holds",
        ["cockpitEnd.play"] = "play of the knob",
        ["cockpitEnd.sheet"] = "in the sheet",
        ["cockpitEnd.hole"] = "hole at",
        ["cockpitEnd.clear"] = "clearance wanted",
        ["cockpitEnd.shank.out"] = "shank stands out",
        ["cushion.wanted"] = "cushion wanted",
        ["cushion.most"] = "cushion at most",
        ["handForceMost"] = "hand force at most",
        ["safeEnd"] = "safe end",
        ["how"] = "how it is worked",
        ["label"] = "name on the placard",
        ["id"] = "short name",
        ["aircraft.name"] = "aircraft",
        ["display.length"] = "lengths in",
        ["display.force"] = "forces in",
        ["display.fraction"] = "fractions of an inch to 1 /",
        ["environment.engineBay"] = "engine bay",
    };

    public static string NameOf(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        if (Names.TryGetValue(field.Path, out var name))
            return name;
        // "shank diameter", "turns left": the object is named with its member, where it is one of several.
        var steps = field.Path.Split('.');
        return steps.Length > 2 ? $"{Split(steps[^2])} {Split(field.Name)}" : Split(field.Name);
    }

    /// <summary>The name of a member in an entry of a list, whose own name stands before the entry: "kind", not "supports kind".</summary>
    public static string InList(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Names.TryGetValue(field.Path, out var name) ? name : Split(field.Name);
    }

    /// <summary>What may be typed here, in the units that are shown: "e.g. 1 1/2 in"; empty: nothing to show.</summary>
    public static string Example(FormField field, Display display)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(display);
        bool inch = display.Length == LengthUnit.Inch, pound = display.Force == ForceUnit.PoundForce;
        var example = field.Form == FieldForm.Quantity
            ? field.Quantity switch
            {
                QuantityKind.Length => inch ? "1 1/2 in" : "38 mm",
                QuantityKind.Force => pound ? "20 lbf" : "90 N",
                QuantityKind.Torque => pound ? "6 lbf in" : "0.7 N m",
                QuantityKind.Stiffness => pound ? "2000 lbf/in" : "400 N/mm",
                QuantityKind.TorsionRate => pound ? "0.05 lbf in/deg" : "0.3 N m/rad",
                QuantityKind.BendingStiffness => pound ? "70 lbf in2" : "0.2 N m2",
                QuantityKind.LineWeight => pound ? "0.06 lbf/ft" : "90 g/m",
                QuantityKind.Stress => pound ? "90 ksi" : "600 MPa",
                // A bare number of degrees is read in degC: shown so.
                QuantityKind.Temperature => "20 degC",
                _ => Nominal(field.Example),
            }
            : field.Example;
        return example.Length == 0 ? "" : "e.g. " + example;
    }

    /// <summary>An example without its tolerance.</summary>
    private static string Nominal(string example) => example.Split('±', '+')[0].Trim();

    /// <summary>"alongAxis" as "along axis", "musicWire" as "music wire".</summary>
    public static string Split(string word)
    {
        var text = new StringBuilder();
        foreach (var c in word)
        {
            if (char.IsAsciiLetterUpper(c) && text.Length > 0)
                text.Append(' ').Append(char.ToLowerInvariant(c));
            else
                text.Append(c);
        }

        return text.ToString();
    }

    /// <summary>A choice as it is read: "part23" as "14 CFR Part 23", "amateurBuilt" as "amateur built".</summary>
    public static string Choice(string word) => word switch
    {
        "mil1472" => "MIL-STD-1472E",
        "fac23" => "14 CFR 23.143",
        "part23" => "14 CFR Part 23",
        "car3" => "CAR Part 3",
        _ => Split(word),
    };

    /// <summary>A sentence that ends in the path of a member, and that path; null: it ends in none.</summary>
    public static (string Said, string? Path) WithoutPath(string sentence)
    {
        var match = PathAtEnd().Match(sentence);
        return match.Success ? (sentence[..match.Index].TrimEnd() + ".", match.Groups[1].Value) : (sentence, null);
    }

    private static readonly (string Word, string Json)[] Ways = [("aft", "[1, 0, 0]"), ("forward", "[-1, 0, 0]"), ("right", "[0, 1, 0]"), ("left", "[0, -1, 0]"), ("up", "[0, 0, 1]"), ("down", "[0, 0, -1]")];

    /// <summary>Is it a direction in the aircraft: [aft, right, up]?</summary>
    public static bool IsWay(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field.Form == FieldForm.Json && field.Name is "axis" or "zero" or "along" or "normal" or "up" or "slide" or "turn";
    }

    /// <summary>"[0, 0, 1]" as "up"; null: no way of the aircraft alone.</summary>
    public static string? WayOf(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var plain = json.Replace(" ", "", StringComparison.Ordinal);
        return Ways.FirstOrDefault(w => w.Json.Replace(" ", "", StringComparison.Ordinal) == plain).Word;
    }

    /// <summary>"up" as "[0, 0, 1]"; null: no such word.</summary>
    public static string? JsonOfWay(string typed) => Ways.FirstOrDefault(w => string.Equals(w.Word, typed.Trim(), StringComparison.OrdinalIgnoreCase)).Json;

    /// <summary>A list of three figures without its brackets and quotes: "71 in, -10 in, 50 in"; null: it is none.</summary>
    public static string? ThreeOf(string json)
    {
        try
        {
            using var read = JsonDocument.Parse(json);
            return read.RootElement.ValueKind == JsonValueKind.Array && read.RootElement.GetArrayLength() == 3 && read.RootElement.EnumerateArray().All(e => e.ValueKind is JsonValueKind.Number or JsonValueKind.String && !e.ToString().Contains(',', StringComparison.Ordinal))
                ? string.Join(", ", read.RootElement.EnumerateArray().Select(e => e.ToString()))
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The list that three figures between commas are; null: they are not three.</summary>
    public static string? JsonOfThree(string typed, bool numbers)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var parts = typed.Split(',', StringSplitOptions.TrimEntries);
        if (parts.Length != 3 || parts.Any(p => p.Length == 0) || typed[0] is '[' or '{' or '"')
            return null;
        return numbers
            ? parts.All(p => double.TryParse(p, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out _)) ? $"[{string.Join(", ", parts)}]" : null
            : $"[{string.Join(", ", parts.Select(FileValues.Quoted))}]";
    }

    /// <summary>Id of a field's input, from its path in the file.</summary>
    public static string IdOf(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return "f-" + NotLetters().Replace(path, "-").Trim('-');
    }

    /// <summary>The value one step up or down, its unit and tolerance kept; null: it can't be stepped.</summary>
    /// <param name="fine">A quarter of the step.</param>
    public static string? Stepped(string typed, QuantityKind kind, int steps, bool fine)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var cut = typed.AsSpan().IndexOfAny('±', '+');
        var (value, rest) = cut > 0 ? (typed[..cut].TrimEnd(), " " + typed[cut..]) : (typed.Trim(), "");
        if (!UnitText.TryRead(kind, value, out var read, out _))
            return null;
        var (si, written) = kind switch
        {
            QuantityKind.Length when read.Unit is "in" or "ft" => (0.0254 / (fine ? 64 : 16), (Func<double, string?>)Inches),
            QuantityKind.Length => (fine ? 0.0001 : 0.0005, m => $"{Plain(m * 1000)} mm"),
            QuantityKind.Angle => (Math.PI / 180 / (fine ? 10 : 1), r => $"{Plain(r * 180 / Math.PI)} deg"),
            QuantityKind.Ratio => (fine ? 0.001 : 0.01, Plain),
            QuantityKind.Force when read.Unit == "N" => (fine ? 0.1 : 1, n => $"{Plain(n)} N"),
            QuantityKind.Force => (Force.NewtonsPerPoundForce / (fine ? 10 : 1), n => $"{Plain(n / Force.NewtonsPerPoundForce)} lbf"),
            QuantityKind.Torque when read.Unit.StartsWith('N') => (fine ? 0.001 : 0.01, t => $"{Plain(t)} N m"),
            QuantityKind.Torque => (Torque.NewtonMetresPerPoundForceInch / (fine ? 100 : 10), t => $"{Plain(t / Torque.NewtonMetresPerPoundForceInch)} lbf in"),
            QuantityKind.Temperature when read.Unit == "degC" => (fine ? 0.1 : 1, t => $"{Plain(t)} degC"),
            _ => (0, _ => null),
        };
        if (si == 0)
            return null;
        // To the next whole step in that direction, so that odd values come onto the scale.
        var at = read.Nominal / si;
        var next = steps > 0 ? Math.Floor(at + 1e-6) + steps : Math.Ceiling(at - 1e-6) + steps;
        return written(next * si) is { } text ? text + rest : null;

        static string? Inches(double metres) => FigureText.FractionOfInch(new(metres), 64, 1e-7)?.Replace('−', '-');
        static string Plain(double v) => Math.Round(v, 6).ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>A bare number gets the unit that the field had, or that this builder uses.</summary>
    public static string WithUnit(string typed, FormField field, string? before, Display display)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(display);
        if (field.Quantity is not { } kind || kind == QuantityKind.Ratio || !BareNumber().IsMatch(typed))
            return typed;
        var unit = before is not null && UnitText.TryRead(kind, before, out var read, out _) && read.Unit.Length > 0 ? read.Unit
            : kind switch
            {
                QuantityKind.Length => display.Length == LengthUnit.Inch ? "in" : "mm",
                QuantityKind.Angle => "deg",
                QuantityKind.Force => display.Force == ForceUnit.PoundForce ? "lbf" : "N",
                QuantityKind.Torque => display.Force == ForceUnit.PoundForce ? "lbf in" : "N m",
                QuantityKind.Temperature => "degC",
                _ => "",
            };
        return unit.Length == 0 ? typed : $"{typed.Trim()} {unit}";
    }

    [GeneratedRegex("\\s*\\(([a-z][A-Za-z]*(?:\\.[A-Za-z]+)+)\\)\\.?$")]
    private static partial Regex PathAtEnd();

    [GeneratedRegex("[^A-Za-z0-9]+")]
    private static partial Regex NotLetters();

    [GeneratedRegex("^\\s*[+-]?(\\d+(\\.\\d+)?|\\d+/\\d+|\\d+ \\d+/\\d+)\\s*$")]
    private static partial Regex BareNumber();
}
