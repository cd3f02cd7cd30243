using System.Text;
using Throwright.Files;
using Throwright.Files.Form;

namespace Throwright.Web.Parts;

/// <summary>What a builder answers about a new control, bench form: no coordinates.</summary>
public sealed record NewRunAnswers
{
    public string Label { get; set; } = "";
    public string Function { get; set; } = "other";
    public string PullMeans { get; set; } = "";
    public string PushMeans { get; set; } = "";
    public string Shape { get; set; } = "round";
    public string Colour { get; set; } = "black";
    public string Stroke { get; set; } = "";
    public string Radius { get; set; } = "";
    public string Sweep { get; set; } = "";
    public string Distance { get; set; } = "";
    public bool Emergency { get; set; }
}

/// <summary>Writes a new run from the answers of the guided form. What was not answered is left out, and asked for later.</summary>
public static class NewRun
{
    /// <summary>"COWL FLAP" as "cowl-flap".</summary>
    public static string IdOf(string label)
    {
        ArgumentNullException.ThrowIfNull(label);
        var id = new StringBuilder();
        foreach (var c in label.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(c))
                id.Append(c);
            else if (id.Length > 0 && id[^1] != '-')
                id.Append('-');
        }

        var text = id.ToString().Trim('-');
        return text.Length == 0 ? "run" : text.Length > 36 ? text[..36].Trim('-') : text;
    }

    /// <summary>An id that no run of the file has.</summary>
    public static string FreeId(string text, string label)
    {
        var stem = IdOf(label);
        for (var i = 1; ; i++)
        {
            var id = i == 1 ? stem : $"{stem}-{i}";
            if (AircraftFile.RunIndex(text, id) is null)
                return id;
        }
    }

    /// <summary>The run as it goes into the file.</summary>
    public static string Json(string id, NewRunAnswers a)
    {
        ArgumentNullException.ThrowIfNull(a);
        var run = new List<string> { Member("id", id), Member("label", a.Label.Trim()) };
        var how = a.PullMeans.Trim().Length > 0 ? $"PULL = {a.PullMeans.Trim()}".ToUpperInvariant() : "";
        if (how.Length > 0)
            run.Add(Member("how", how));
        run.Add(Member("function", a.Function));
        if (a.Emergency)
            run.Add("\"emergency\": true");
        var end = new List<string>();
        Put(end, "stroke", a.Stroke);
        Put(end, "pushMeans", a.PushMeans);
        Put(end, "pullMeans", a.PullMeans);
        end.Add($"\"knob\": {{ {Member("shape", a.Shape)}, {Member("colour", a.Colour)} }}");
        run.Add($"\"cockpitEnd\": {{ {string.Join(", ", end)} }}");
        var lever = new List<string>();
        if (a.Radius.Trim().Length > 0)
            lever.Add($"\"arm\": {{ {Member("radius", a.Radius.Trim())} }}");
        Put(lever, "sweep", a.Sweep);
        if (a.Distance.Trim().Length > 0)
            lever.Add($"\"bench\": {{ {Member("distance", a.Distance.Trim())}, {Member("rule", "squareAtMid")} }}");
        if (lever.Count > 0)
            run.Add($"\"leverEnd\": {{ {string.Join(", ", lever)} }}");
        return "{\n      " + string.Join(",\n      ", run) + "\n    }";
    }

    /// <summary>A whole file with one control; the text, or what is wrong with an answer.</summary>
    public static (string? Text, string? Problem) FirstFile(string name, string radius, string sweep, string stroke)
    {
        var mm = stroke.Contains("mm", StringComparison.Ordinal) || radius.Contains("mm", StringComparison.Ordinal) || stroke.Contains("cm", StringComparison.Ordinal);
        var run = Json("first-control", new() { Label = "FIRST CONTROL", Radius = radius, Sweep = sweep, Stroke = stroke, Distance = mm ? "100 mm" : "4 in" });
        var text = $$"""
            // Written by Throwright. All that stands behind // is for you; the program skips it.
            // The anchor's distance below is a guess to begin with: measure it.
            {
              "format": {{AircraftFile.Format}},
              "aircraft": { "name": {{FileValues.Quoted(name.Trim().Length == 0 ? "My aircraft" : name.Trim())}} },
              "display": { "length": "{{(mm ? "mm" : "in")}}", "force": "{{(mm ? "N" : "lbf")}}" },
              "runs": [
                {{run}}
              ]
            }

            """.ReplaceLineEndings("\n");
        return AircraftFile.Parse("new", text).Problems is [var first, ..] ? (null, $"{first.Found}. Expected: {first.Expected}.") : (text, null);
    }

    private static string Member(string name, string value) => $"\"{name}\": {FileValues.Quoted(value)}";

    private static void Put(List<string> into, string name, string value)
    {
        if (value.Trim().Length > 0)
            into.Add(Member(name, value.Trim()));
    }
}
