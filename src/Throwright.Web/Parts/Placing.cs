using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Files.Description;
using Throwright.Files.Form;
using Throwright.Web.Editing;

namespace Throwright.Web.Parts;

/// <summary>One answer of the coordinates' form.</summary>
/// <param name="Key">Short name: "pivot".</param>
/// <param name="Path">Where it goes, under its run, e.g. "leverEnd.pivot".</param>
public sealed record PlaceAsk(string Key, string Path, string Label, string Example, string Meaning, PlaceKind Kind, bool IsRequired = true);

/// <summary>How an answer is read.</summary>
public enum PlaceKind
{
    /// <summary>A point's name, or station, buttline, waterline.</summary>
    Point,

    /// <summary>A way of the aircraft: aft, up, ..., or three numbers.</summary>
    Way,

    /// <summary>A text with its unit.</summary>
    Quantity,
}

/// <summary>From the bench to the aircraft: what the answers of the coordinates' form change in the file.</summary>
public static class Placing
{
    /// <summary>Arm and anchor in the aircraft; together, or not at all.</summary>
    public static IReadOnlyList<PlaceAsk> Arm { get; } =
    [
        new("pivot", "leverEnd.pivot", "arm's pivot", "valve-pivot", "The middle of the shaft that the arm turns on.", PlaceKind.Point),
        new("axis", "leverEnd.axis", "it turns about", "left", "Which way the shaft points: left, aft, up. Looked at from there, the arm's angle grows against the clock.", PlaceKind.Way),
        new("zero", "leverEnd.arm.zero", "at angle zero the arm points", "up", "From the pivot to the hole in use, with the arm where you call its angle zero.", PlaceKind.Way),
        new("from", "leverEnd.sweep.from", "arm's angle, knob pushed", "0 deg ± 1 deg", "Counted from angle zero, with the knob pushed in.", PlaceKind.Quantity),
        new("to", "leverEnd.sweep.to", "arm's angle, knob pulled", "85 deg ± 1 deg", "Counted from angle zero, with the knob pulled out.", PlaceKind.Quantity),
        new("anchor", "leverEnd.anchor.at", "conduit's anchor", "valve-anchor", "Where the conduit is held beside the device, on its centre line.", PlaceKind.Point),
        new("along", "leverEnd.anchor.along", "the conduit's end points", "aft", "Toward the arm. Left out: at the swivel at mid travel.", PlaceKind.Way, IsRequired: false),
    ];

    /// <summary>A new sheet.</summary>
    public static IReadOnlyList<PlaceAsk> Sheet { get; } =
    [
        new("sheet-at", "at", "a point on its face", "52 in, 0 in, 38 in", "On the face toward the pilot; or station, buttline, waterline of one.", PlaceKind.Point),
        new("sheet-normal", "normal", "its face looks", "aft", "Square to the sheet, toward the pilot.", PlaceKind.Way),
        new("sheet-thickness", "thickness", "its thickness", "0.063 in", "With a caliper.", PlaceKind.Quantity, IsRequired: false),
    ];

    public static PlaceAsk Hole { get; } = new("hole", "cockpitEnd.hole", "middle of the hole", "heat-hole", "On the face toward the pilot: a point's name, or station, buttline, waterline.", PlaceKind.Point);

    /// <summary>An answer as it goes into the file.</summary>
    public static string Json(PlaceAsk ask, string typed, Display display)
    {
        ArgumentNullException.ThrowIfNull(ask);
        ArgumentNullException.ThrowIfNull(typed);
        var plain = typed.Trim();
        return ask.Kind switch
        {
            PlaceKind.Way => FieldWords.JsonOfWay(plain) ?? FieldWords.JsonOfThree(plain, numbers: true) ?? FileValues.Quoted(plain),
            PlaceKind.Point => Three(plain, display) ?? FileValues.Quoted(plain),
            _ => FileValues.Quoted(ask.Key is "from" or "to" ? AngleOf(plain) : LengthOf(plain, display)),
        };
    }

    /// <summary>Three coordinates; a number without a unit is in the units that the window shows.</summary>
    public static string? Three(string typed, Display display)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var parts = typed.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length == 3 && parts.All(p => p.Length > 0) ? $"[{string.Join(", ", parts.Select(p => FileValues.Quoted(LengthOf(p, display))))}]" : null;
    }

    /// <summary>A bare number with the unit of the window.</summary>
    public static string LengthOf(string typed, Display display)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(display);
        return IsBare(typed) ? $"{typed.Trim()} {(display.Length == LengthUnit.Inch ? "in" : "mm")}" : typed.Trim();
    }

    /// <summary>Edits that put the arm into the aircraft; the bench form goes. Of answers not given nothing is written.</summary>
    public static IReadOnlyList<Edit> ArmEdits(string text, int run, IReadOnlyDictionary<string, string> answers, Display display)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var values = FileValues.Of(text);
        var at = $"$.runs[{run}]";
        var edits = new List<Edit>();
        foreach (var path in (string[])[$"{at}.leverEnd.bench", $"{at}.cable.ends.arrives"])
        {
            if (values.At(path) is not null)
                edits.Add(new(path, null));
        }

        foreach (var ask in Arm.Where(a => a.Key is not ("from" or "to")))
        {
            if (answers.GetValueOrDefault(ask.Key, "").Trim() is { Length: > 0 } typed)
                edits.Add(new($"{at}.{ask.Path}", Json(ask, typed, display)));
        }

        // Both angles are one value of the file: a total from the bench becomes a pair.
        string From(string key) => Json(Arm.First(a => a.Key == key), answers.GetValueOrDefault(key, ""), display);
        if (answers.GetValueOrDefault("from", "").Trim().Length > 0 && answers.GetValueOrDefault("to", "").Trim().Length > 0)
            edits.Add(new($"{at}.leverEnd.sweep", $"{{ \"from\": {From("from")}, \"to\": {From("to")} }}"));
        return edits;
    }

    /// <summary>A new sheet as it goes into the list.</summary>
    public static string SheetJson(string id, IReadOnlyDictionary<string, string> answers, Display display)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var members = Sheet.Where(a => answers.GetValueOrDefault(a.Key, "").Trim().Length > 0).Select(a => $"{FileValues.Quoted(a.Path)}: {Json(a, answers[a.Key], display)}");
        return $"{{ \"id\": {FileValues.Quoted(id)}, {string.Join(", ", members)} }}";
    }

    /// <summary>A point by coordinates, or by what was read off the tape.</summary>
    /// <param name="distances">From which point, how far.</param>
    /// <param name="side">Which of two mirrored places is meant; may be empty.</param>
    public static string TapedJson(IEnumerable<(string From, string Distance)> distances, string side, Display display)
    {
        var rows = distances.Where(d => d.From.Length > 0 && d.Distance.Trim().Length > 0).Select(d => $"{FileValues.Quoted(d.From)}: {FileValues.Quoted(LengthOf(d.Distance, display))}");
        return $"{{ \"taped\": {{ {string.Join(", ", rows)} }}{(side.Length > 0 ? $", \"side\": {FileValues.Quoted(side)}" : "")} }}";
    }

    public static string PointPath(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return $"$.points['{name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal)}']";
    }

    /// <summary>What the file's reader says of the file with these edits, beyond what it said before.</summary>
    public static IReadOnlyList<FileProblem> Problems(EditingSession session, IReadOnlyList<Edit> edits, out string edited)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (!EditingSession.TryApply(session.Text, edits, out var text, out var why))
        {
            edited = session.Text;
            return [new(session.FileName, 0, 0, edits.Count > 0 ? edits[0].Path : "$", "", "", why, "")];
        }

        edited = text;
        return [.. AircraftFile.Parse(session.FileName, text).Problems.Where(p => !session.File.Problems.Any(b => b.JsonPath == p.JsonPath && b.Found == p.Found))];
    }

    /// <summary>Where a point would stand by its readings, and how sure; null: not in the text, or typed as coordinates.</summary>
    public static SurveyedPoint? Survey(string edited, string name)
    {
        if (AircraftFile.Parse("tried", edited).Aircraft is not { } aircraft)
            return null;
        return PointSurvey.Of(aircraft.Points).FirstOrDefault(p => p.Point.Name == name);
    }

    private static string AngleOf(string typed) => IsBare(typed) ? $"{typed.Trim()} deg" : typed.Trim();

    private static bool IsBare(string typed) => typed.Trim().Length > 0 && typed.Trim().All(c => char.IsAsciiDigit(c) || c is '.' or '-' or ' ' or '/');
}
