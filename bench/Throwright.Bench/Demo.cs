using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Shapes;

namespace Throwright.Bench;

/// <summary>What is measured: the invented amphibian of the examples.</summary>
internal static class Demo
{
    public static string Path { get; } = Find("examples/amphibian.throwright.json");

    public static Aircraft Amphibian { get; } = AircraftFile.Read(Path).Aircraft ?? throw new InvalidOperationException($"{Path} can't be read");

    /// <summary>Twelve runs: those of the amphibian twice over.</summary>
    public static Aircraft TwelveRuns { get; } = Repeat(Amphibian.Runs, 12);

    public static Aircraft Repeat(IEnumerable<Run> runs, int count)
    {
        var all = runs.ToList();
        return Amphibian with { Runs = Enumerable.Range(0, count).Select(i => all[i % all.Count] with { Id = $"run-{i}" }).ToEquatableList() };
    }

    /// <summary>The cowl flap: spatial, with bends, forces, heat and a bias.</summary>
    public static RunAnswer CowlFlap { get; } = RunCheck.Check(Repeat([Amphibian.Runs.First(r => r.Id == "cowl-flap")], 1), new()).Runs[0];

    /// <summary>A ladder with twelve toleranced inputs, the others exact.</summary>
    public static LadderCase TwelveInputs { get; } = WithTolerances(
        CowlFlap.LadderCase!,
        LadderInput.Stroke, LadderInput.Setting, LadderInput.Radius, LadderInput.PushAngle, LadderInput.PullAngle, LadderInput.AnchorX,
        LadderInput.AnchorZ, LadderInput.Clearance, LadderInput.BendTotal, LadderInput.TorqueFactor, LadderInput.PullGive, LadderInput.Tip);

    private static LadderCase WithTolerances(LadderCase of, params LadderInput[] kept)
    {
        var exact = of with { Values = of.Values.Select(v => kept.Contains(v.Input) ? v : v with { Minus = 0, Plus = 0 }).ToEquatableList() };
        var count = exact.Values.Count(v => !v.IsExact);
        return count == 12 ? exact : throw new InvalidOperationException($"{count} toleranced inputs, not 12");
    }

    private static string Find(string name)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = System.IO.Path.Combine(folder.FullName, name);
            if (File.Exists(path))
                return path;
        }

        throw new FileNotFoundException(name);
    }
}
