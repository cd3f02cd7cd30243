using System.Globalization;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Make;

/// <summary>The parts that one run needs made, as files for the shop.</summary>
public static class RunParts
{
    /// <param name="part">wedge, template, guide, bracket, marking or all.</param>
    /// <param name="lacks">Gets what is not made, and why.</param>
    public static IReadOnlyList<ShopSet> Of(Aircraft aircraft, RunAnswer answer, string part, FigureWriter say, ShopChoice choice, ICollection<string> lacks)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(lacks);
        var (run, id) = (answer.Run, answer.Run.Id);
        bool Is(string name) => part == "all" || part == name;
        ShopTitle Title(string what, string letter) => new(aircraft.Name, $"{what} for {answer.Words.Name}", $"{id}-{letter}") { Drawn = aircraft.Builder, Date = choice.Dated.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Hold = HoldOf(answer) };
        var sets = new List<ShopSet>();
        if (Is("wedge") || Is("template") || Is("guide"))
        {
            var (pair, needs) = MadeParts.Wedges(run);
            if (pair is null)
            {
                lacks.Add(WhyNoWedge(run, needs, say));
            }
            else if (pair.Washer.Fault is { } fault)
            {
                lacks.Add($"wedge, template, guide: the wedge can't be made as described: {fault}.");
            }
            else
            {
                var wanted = run.CockpitEnd?.Wedge ?? new();
                if (Is("wedge"))
                    sets.Add(ShopFiles.Wedge(pair, id, Title("Wedge", "W") with { Material = wanted.Material, Finish = wanted.Finish, Mass = MassOf(pair.Washer.Volume, wanted.Material) }, say, choice));
                if (Is("template"))
                    sets.Add(ShopFiles.Template(pair, id, Title("Hole", "H"), say, choice));
                if (Is("guide"))
                    sets.Add(ShopFiles.Guide(pair, id, Title("Drill guide", "G"), say, choice));
            }
        }

        if (Is("bracket"))
        {
            if (MadeParts.BracketOf(run) is { } of)
            {
                var bracket = BracketSolver.Solve(of);
                sets.Add(ShopFiles.Bracket(bracket, id, Title("Bracket", "B") with { Material = of.Alloy, Mass = MassOf(bracket.Part.Volume, of.Alloy) }, say, choice));
            }
            else
            {
                lacks.Add("bracket: the file does not describe one (leverEnd.bracket).");
            }
        }

        if (Is("marking"))
        {
            var legend = run.Installation?.Legend;
            var marking = new Marking(run.Label, run.How, legend?.Distance.Metres ?? Marking.UsualDistance, legend?.LightOnDark ?? true, legend?.Height.Metres);
            if (run.Label.Length == 0)
                lacks.Add("marking: the run has no label (label, how).");
            else if (StrokeLetters.Lacking(run.Label + run.How) is { Length: > 0 } lacking)
                lacks.Add($"marking: no single-stroke letter for {string.Join(' ', lacking.ToCharArray())}.");
            else
                sets.Add(ShopFiles.Mark(marking, id, Title("Marking", "M"), say, choice));
        }

        return sets;
    }

    /// <summary>A part that is right does not make a run that works: its drawing says so where it goes to the shop alone.</summary>
    internal static string HoldOf(RunAnswer answer) => answer.Findings.Any(f => f.Verdict == Verdict.Fail) ? ShopTitle.NotYet : "";

    /// <summary>Empty where the material is not in the table.</summary>
    private static string MassOf(double volume, string material) =>
        ShopMaterial.Find(material) is { } found ? $"{FigureText.Plain(volume * found.Density * 1000, 1)} g" : "";

    private static string WhyNoWedge(Run run, IReadOnlyList<Need> needs, FigureWriter say)
    {
        const string parts = "wedge, template, guide";
        if (needs.Count > 0)
            return $"{parts}: needs {string.Join("; ", needs.Select(n => $"{n.Name} ({n.Path})"))}.";
        return MadeParts.TiltOf(run) switch
        {
            null => $"{parts}: the shank stands square to its sheet (cockpitEnd.tilt).",
            { } tilt when tilt.Angle <= MadeParts.NoWedge => $"{parts}: the shank leans {say.Angle(tilt.Angle)}; up to {say.Angle(MadeParts.NoWedge)} a plain washer does.",
            { } tilt => $"{parts}: the shank leans {say.Angle(tilt.Angle)}; wedges are worked out up to 30°.",
        };
    }
}
