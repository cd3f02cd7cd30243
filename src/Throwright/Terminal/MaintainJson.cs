using System.Text.Json;
using Throwright.Engine.Chain;
using Throwright.Engine.Maintain;
using static Throwright.Cli.Terminal.AnswerJson;

namespace Throwright.Cli.Terminal;

/// <summary>Inspection list and drift for other programs: docs/reference/maintain-json.md. SI units throughout.</summary>
/// <remarks>A member is only ever added; when one changes its meaning or goes, <see cref="Version"/> rises.</remarks>
internal static class MaintainJson
{
    public const int Version = 1;

    public static string Of(string path, string aircraft, IEnumerable<(RunAnswer Run, MaintainAnswer Upkeep)> all) => Write(json =>
    {
        json.WriteNumber("throwrightMaintain", Version);
        json.WriteString("file", path);
        json.WriteString("aircraft", aircraft);
        json.WriteStartArray("runs");
        foreach (var (run, upkeep) in all)
            Run(json, run, upkeep);
        json.WriteEndArray();
    }) + "\n";

    private static void Run(Utf8JsonWriter json, RunAnswer run, MaintainAnswer upkeep)
    {
        json.WriteStartObject();
        json.WriteString("id", run.Run.Id);
        json.WriteString("label", run.Run.Label);
        json.WriteStartArray("items");
        foreach (var item in upkeep.Items)
        {
            json.WriteStartObject();
            json.WriteString("what", item.What);
            json.WriteString("limit", item.Limit);
            json.WriteString("when", item.When);
            json.WriteString("act", item.Act);
            json.WriteStartArray("sources");
            foreach (var source in item.Sources)
                Source(json, source);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("history");
        foreach (var entry in upkeep.History)
        {
            json.WriteStartObject();
            json.WriteString("date", entry.Date);
            json.WriteString("by", entry.By);
            json.WriteString("note", entry.Note);
            json.WriteBoolean("rerigged", entry.Rerigged);
            json.WriteStartArray("readings");
            foreach (var change in entry.Changes)
            {
                json.WriteStartObject();
                json.WriteString("reading", change.Reading);
                Number(json, "value", change.Value);
                Number(json, "change", change.Change);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("drifts");
        foreach (var drift in upkeep.Drifts)
        {
            json.WriteStartObject();
            json.WriteString("reading", drift.Reading);
            json.WriteString("state", Word(drift.State));
            json.WriteString("unit", drift.Reading == "pull" ? "N" : "m");
            Number(json, "least", drift.Least);
            Number(json, "most", drift.Most);
            Number(json, "perYear", drift.PerYear);
            Number(json, "perYearError", drift.PerYearError);
            Number(json, "reachesLimit", drift.ReachesLimit);
            json.WriteNumber("lineFrom", drift.From);
            json.WriteStartArray("points");
            foreach (var (year, value) in drift.Points)
            {
                json.WriteStartObject();
                Number(json, "year", year);
                Number(json, "value", value);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
