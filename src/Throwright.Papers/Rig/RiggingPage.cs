using System.Text;
using System.Text.Json.Nodes;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Rig;

namespace Throwright.Papers.Rig;

/// <summary>The rigging card for a phone: one file, no network, no server. Its numbers come from the engine; its script looks them up.</summary>
public static class RiggingPage
{
    private const string Mark = "/*CARD*/null";

    public static byte[] Write(Aircraft aircraft, RunAnswer answer, string fileId)
    {
        using var stream = typeof(RiggingPage).Assembly.GetManifestResourceStream("rigging-page.html")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var page = reader.ReadToEnd().ReplaceLineEndings("\n");
        // The usual encoder turns < and & into escapes, so nothing in a label can end the script.
        return Encoding.UTF8.GetBytes(page.Replace(Mark, CardOf(aircraft, answer, fileId).ToJsonString(), StringComparison.Ordinal));
    }

    /// <summary>What the page is told: steps, limits, and what each move does to each reading. SI units.</summary>
    public static JsonObject CardOf(Aircraft aircraft, RunAnswer answer, string fileId)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        answer = Rigging.ToRig(aircraft, answer);
        var card = Rigging.CardOf(aircraft, answer);
        var steps = new JsonArray();
        foreach (var step in card.Steps)
        {
            steps.Add((JsonNode)new JsonObject
            {
                ["do"] = step.Do,
                ["mustBe"] = step.MustBe,
                ["reading"] = step.Reading,
                ["kind"] = step.Reading switch { null => null, "pull" or "push" or "hold" => "force", _ => "length" },
                ["least"] = step.Least,
                ["most"] = step.Most,
            });
        }

        var data = new JsonObject
        {
            ["aircraft"] = aircraft.Name,
            ["file"] = fileId,
            ["run"] = answer.Run.Id,
            ["label"] = answer.Words.Name,
            ["how"] = answer.Run.How,
            ["colour"] = answer.Run.CockpitEnd?.KnobColour ?? "",
            ["warning"] = card.Warning,
            ["inches"] = aircraft.Display.Length == LengthUnit.Inch,
            ["pounds"] = aircraft.Display.Force == ForceUnit.PoundForce,
            ["fraction"] = aircraft.Display.Fraction,
            ["steps"] = steps,
            ["notes"] = new JsonArray([.. card.Notes.Select(n => (JsonNode)n)]),
        };
        if (Rigging.CaseOf(answer, new() { Date = "" }) is { } of)
        {
            var response = RigSolver.Response(of);
            JsonObject Moves(RigUnknown unknown)
            {
                var column = of.Unknowns.ToList().FindIndex(u => u.Unknown == unknown);
                double At(RigReading reading) => Math.Round(response[(int)reading][column], 9);
                return new() { ["knobAtPush"] = At(RigReading.KnobAtPush), ["knobAtPull"] = At(RigReading.KnobAtPull), ["tipGap"] = At(RigReading.TipGap) };
            }

            data["stroke"] = of.Stroke;
            data["wanted"] = of.Wanted;
            data["most"] = of.Most;
            data["takenAtPush"] = of.TakenAtPush;
            data["takenAtPull"] = of.TakenAtPull;
            // Per metre: the swivel away from the tip, the conduit's end away from the arm.
            data["response"] = new JsonObject { ["swivel"] = Moves(RigUnknown.Swivel), ["anchor"] = Moves(RigUnknown.Anchor) };
        }

        return data;
    }

}
