using System.CommandLine;
using System.Text;
using System.Text.Json;
using Throwright.Cli.Terminal;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Measure;
using Throwright.Files;
using Throwright.Papers.Marks;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Cli.Commands;

/// <summary>throwright measure: coordinates of every taped point, how sure they are, and which reading is wrong.</summary>
internal static class MeasureCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = "Aircraft file." };
        var plain = new Option<bool>("--plain") { Description = "Plain characters, no colour." };
        var write = new Option<bool>("--write") { Description = "Note the coordinates beside the readings; readings and comments stay." };
        var json = new Option<bool>("--json") { Description = "Print the answer as JSON, SI units." };
        var command = new Command("measure", "Work out points from tape distances, level, plumb line and string.") { file, plain, write, json };
        command.SetAction(parsed => Measure(parsed.GetValue(file)!, parsed.GetValue(plain), parsed.GetValue(write), parsed.GetValue(json)));
        return command;
    }

    private static int Measure(string path, bool plain, bool write, bool asJson)
    {
        var result = AircraftFile.Read(path);
        var screen = new Screen(plain);
        if (!result.IsSound)
        {
            ProblemScreen.Show(screen, result, "Nothing was written. Exit 2.");
            Console.Error.Write(screen);
            return ExitCode.Unusable;
        }

        var aircraft = result.Aircraft!;
        var say = new FigureWriter(aircraft.Display);
        var all = PointSurvey.Of(aircraft.Points);
        var points = all.Where(p => p.Point.Taped is not null).ToList();
        if (asJson)
        {
            Console.Out.Write(Json(path, points, all, say));
            return ExitCode.Clear;
        }

        if (points.Count == 0)
        {
            screen.Wrapped("", "No point of this file was measured by tape. docs/howto/measure-with-a-tape.md shows how to write one down.");
            Console.Out.Write(screen);
            return ExitCode.Clear;
        }

        Show(screen, path, points, all, say);
        var code = ExitCode.Clear;
        if (write)
            code = Write(screen, path, result, points, say);
        Console.Out.Write(screen);
        return code;
    }

    private static void Show(Screen screen, string path, List<SurveyedPoint> points, EquatableList<SurveyedPoint> all, FigureWriter say)
    {
        var unit = say.LengthUnitName;
        var rows = new List<string[]> { (string[])["", $"station {unit}", "buttline", "waterline", "± each way", "worst axis", "readings"] };
        foreach (var point in points)
        {
            if (point.Answer?.Point is not { } solved)
            {
                rows.Add([point.Point.Name, "-", "-", "-", "", "", $"{point.Case?.Readings.Count ?? 0}"]);
                continue;
            }

            var sigma = solved.Sigma;
            rows.Add(
            [
                point.Point.Name, say.LengthNumber(solved.Place.X), say.LengthNumber(solved.Place.Y), say.LengthNumber(solved.Place.Z),
                $"{Up(sigma.X)} {Up(sigma.Y)} {Up(sigma.Z)}", Up(solved.Axes[0].Sigma), solved.Widened > 1 ? $"{point.Case!.Readings.Count} disagree" : $"{point.Case!.Readings.Count}",
            ]);
        }

        var widths = Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        foreach (var row in rows)
            screen.Line("  " + string.Join("  ", row.Select((cell, c) => c == 0 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c]))).TrimEnd());
        screen.Line().Line($"  ± and worst axis: two standard deviations{(points.Any(p => p.Answer?.Point?.Widened > 1) ? ", widened where the readings disagree" : "")}.");
        foreach (var point in points)
        {
            var findings = PointFindings.Of(point, all, say).ToList();
            screen.Line().Line(point.Point.Name, bold: true);
            foreach (var finding in findings)
                CheckScreen.Finding(screen, path, "", finding);
            foreach (var r in point.Answer?.Point?.Residuals ?? [])
                screen.Line($"          {say.LengthNumber(r.Reading.Distance),10}  left {say.LengthNumber(r.Residual),8} {unit}  {Checked(r.Checked)}  {r.Reading.Name}");
            if (point.Answer?.Point?.Next is { } next && findings.Any(f => f.Rule == TapeRules.Point && f.Verdict != Verdict.Clear))
                screen.Wrapped("          next  ", $"Of the known points, {next.From.Name} helps most: worst axis then {say.Length(2 * next.Sigma, Rounding.Up)}.");
        }

        string Up(double sigma) => say.LengthNumber(2 * sigma, Rounding.Up);
    }

    private static string Checked(double part) => part < 0.05 ? "unchecked    " : $"checked {FigureText.Plain(100 * part, 0),3} %";

    private static int Write(Screen screen, string path, AircraftFileResult result, List<SurveyedPoint> points, FigureWriter say)
    {
        var text = result.Text;
        var written = new List<string>();
        foreach (var point in points.Where(p => p.Answer?.Point is not null))
        {
            var place = point.Answer!.Point!.Place;
            var coordinates = $"[\"{say.Typed(place.X)}\", \"{say.Typed(place.Y)}\", \"{say.Typed(place.Z)}\"]";
            if (!TextEdit.TrySet(text, AircraftFile.PointPath(point.Point.Name) + ".at", coordinates, out var changed, out var problem))
            {
                screen.Line().Line($"Not written: {problem}.");
                return ExitCode.Unusable;
            }

            text = changed;
            written.Add(point.Point.Name);
        }

        if (written.Count == 0)
        {
            screen.Line().Line("Not written: no point has a place yet.");
            return ExitCode.Clear;
        }

        var saved = AircraftFile.Save(path, text, result.Stamp);
        screen.Line().Wrapped("  ", saved.IsSaved
            ? $"Written to {path}, beside the readings: {string.Join(", ", written)}. The file before it is kept beside it as a backup."
            : saved.Message);
        return saved.IsSaved ? ExitCode.Clear : ExitCode.Unusable;
    }

    private static string Json(string path, List<SurveyedPoint> points, EquatableList<SurveyedPoint> all, FigureWriter say)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new() { Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            json.WriteNumber("throwrightMeasure", 1);
            json.WriteString("file", path);
            json.WriteStartArray("points");
            foreach (var point in points)
            {
                json.WriteStartObject();
                json.WriteString("name", point.Point.Name);
                if (point.Answer?.Point is { } solved)
                {
                    Row("place", solved.Place);
                    Row("sigma", solved.Sigma);
                    Row("limits", solved.Off);
                    Number("worstSigma", solved.Axes[0].Sigma);
                    Number("widened", solved.Widened);
                    json.WriteStartArray("readings");
                    foreach (var r in solved.Residuals)
                    {
                        json.WriteStartObject();
                        json.WriteString("name", r.Reading.Name);
                        Number("distance", r.Reading.Distance);
                        Number("sigma", r.Reading.Sigma);
                        Number("residual", r.Residual);
                        Number("checked", r.Checked);
                        json.WriteBoolean("suspect", solved.Suspects.Any(s => s.Reading == r.Reading));
                        json.WriteEndObject();
                    }

                    json.WriteEndArray();
                }

                json.WriteStartArray("findings");
                foreach (var finding in PointFindings.Of(point, all, say))
                {
                    json.WriteStartObject();
                    json.WriteString("rule", finding.Rule);
                    json.WriteString("verdict", GapMark.Word(finding.Verdict));
                    json.WriteString("sentence", finding.Sentence);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();

            void Row(string name, Vector3 v)
            {
                json.WriteStartArray(name);
                foreach (var c in (double[])[v.X, v.Y, v.Z])
                    json.WriteNumberValue(Rounded(c));
                json.WriteEndArray();
            }

            void Number(string name, double value) => json.WriteNumber(name, Rounded(value));
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static double Rounded(double value) => Math.Round(value, 12);
}
