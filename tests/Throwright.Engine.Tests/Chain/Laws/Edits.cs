using System.Text.Json;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain.Laws;

/// <summary>Puts a remedy's change into the model, member by member as the file would take it.</summary>
internal static class Edits
{
    public static Run Apply(Run run, IEnumerable<string> tries) => tries.Aggregate(run, (now, change) =>
    {
        int slash = change.IndexOf('/', StringComparison.Ordinal), equals = change.IndexOf('=', StringComparison.Ordinal);
        Assert.Equal(run.Id, change[..slash]);
        return Apply(now, change[(slash + 1)..equals], change[(equals + 1)..]);
    });

    private static Toleranced<T> Read<T>(string text)
        where T : struct, IQuantity<T>
    {
        Assert.True(UnitText.TryRead<T>(text, out var value, out var problem), $"\"{text}\": {problem}");
        return value;
    }

    private static Run Apply(Run run, string path, string value)
    {
        Run Lever(Func<LeverEnd, LeverEnd> change) => run with { LeverEnd = change(run.LeverEnd!) };
        Run Swivel(Func<Swivel, Swivel> change) => Lever(e => e with { Swivel = change(e.Swivel) });
        Run Bench(Func<BenchAnchor, BenchAnchor> change) => Lever(e => e with { Bench = change(e.Bench!) });
        switch (path)
        {
            case "leverEnd.arm.radius":
                return Lever(e => e with { Radius = Read<Length>(value) });
            case "cockpitEnd.stroke":
                return run with { CockpitEnd = run.CockpitEnd! with { Stroke = Read<Length>(value) } };
            case "leverEnd.swivel.at":
                Assert.Null(run.LeverEnd!.Swivel.Rigged);
                return Swivel(s => s with { At = Read<Length>(value) });
            case "leverEnd.swivel.rigged.knobOut":
                return Swivel(s => s with { Rigged = s.Rigged! with { KnobOut = Read<Length>(value) } });
            case "leverEnd.swivel.rigged":
                {
                    Assert.Null(run.LeverEnd!.Swivel.At);
                    using var json = JsonDocument.Parse(value);
                    Assert.Equal("push", json.RootElement.GetProperty("stop").GetString());
                    return Swivel(s => s with { Rigged = new(DeviceStop.Push, Read<Length>(json.RootElement.GetProperty("knobOut").GetString()!)) });
                }

            case "leverEnd.sweep":
                {
                    using var json = JsonDocument.Parse(value);
                    return Lever(e => e with { From = Read<Angle>(json.RootElement.GetProperty("from").GetString()!), To = Read<Angle>(json.RootElement.GetProperty("to").GetString()!) });
                }

            case "leverEnd.bench.distance":
                return Bench(b => b with { Distance = Read<Length>(value) });
            case "leverEnd.bench.offset":
                return Bench(b => b with { Offset = Read<Length>(value) });
            case "leverEnd.bench.rule":
                return Bench(b => b with { Rule = Enum.Parse<AnchorRule>(value, ignoreCase: true) });
            case "leverEnd.anchor.at":
                {
                    using var json = JsonDocument.Parse(value);
                    var at = json.RootElement.EnumerateArray().Select(x => Read<Length>(x.GetString()!)).ToArray();
                    return Lever(e => e with { Placed = e.Placed! with { Anchor = new(at[0], at[1], at[2]) } });
                }
        }

        var row = int.Parse(path.Split('[', ']')[1], System.Globalization.CultureInfo.InvariantCulture);
        var angle = Read<Angle>(value).Nominal;
        if (path == $"leverEnd.load.torqueTable[{row}][0]")
            return Lever(e => e with { Load = e.Load! with { TorqueTable = [.. e.Load.TorqueTable.Select((r, i) => i == row ? r with { Arm = angle } : r)] } });
        Assert.Equal($"leverEnd.load.detents[{row}].at", path);
        return Lever(e => e with { Load = e.Load! with { Detents = [.. e.Load.Detents.Select((d, i) => i == row ? d with { At = angle } : d)] } });
    }

    /// <summary>The change of a trial, written and read back.</summary>
    public static Run Apply(Run run, Trial trial) => Apply(run, trial.Edits.Select(e => $"{run.Id}/{e.Path}={e.Value}"));
}
