using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Formats.Drawing;
using Throwright.Papers.Clearance;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Tests;

/// <summary>A round knob in a panel with a beam over it; invented.</summary>
public sealed class ClearanceMapTests
{
    private static readonly Display Millimetres = new() { Length = LengthUnit.Millimetre };

    private static Toleranced<Length> Mm(double mm) => Toleranced<Length>.Exact(Length.FromMillimetres(mm));

    private static PointAt At(double x, double y, double z) => new(Mm(x), Mm(y), Mm(z));

    private static Aircraft Scene(double beam, PointAt? eye)
    {
        var panel = new Sheet { Id = "panel", At = At(1000, 0, 700), Normal = new(1, 0, 0), Thickness = Mm(1.6) };
        var run = new Run
        {
            Id = "a",
            Label = "CABIN HEAT",
            CockpitEnd = new()
            {
                Stroke = Mm(60),
                Sheet = panel,
                Hole = At(1000, 0, 700),
                KnobSize = new() { Diameter = Mm(30), Length = Mm(20) },
                Shank = new() { Diameter = Mm(8), Out = Mm(30) },
            },
        };
        var body = new Body
        {
            Id = "beam",
            Parts = [new("beam", new BoxShape(At(1265, 0, beam + 50), Mm(400), Mm(400), Mm(100), new(1, 0, 0), new(0, 0, 1)))],
        };
        return new() { Name = "A", Sheets = [panel], Runs = [run], Bodies = [body], Pilot = new() { Eye = eye } };
    }

    private static MountMap Map(double beam, PointAt? eye = null, CancellationToken cancel = default)
    {
        var aircraft = Scene(beam, eye);
        var solve = new MountSolve(aircraft, aircraft.Runs[0], new(Millimetres), new() { Cancel = cancel }, finest: MountSolve.Quick);
        return solve.Map(cancel.IsCancellationRequested ? null : solve.Find(withOthers: false), 13);
    }

    private static readonly Lazy<MountMap> UnderTheBeam = new(() => Map(722, At(1600, 0, 800)));

    private static Picture Draw(MountMap map) => ClearanceMapDrawing.Page(map, "CABIN HEAT", Millimetres);

    private static string Words(Picture picture) => string.Join("\n", picture.Shapes.OfType<Lettering>().Select(l => string.Concat(l.Spans.Select(s => s.Text))));

    [Fact]
    public void Page_BeamOverTheKnob_IsAsApproved() =>
        Approved.Check("clearance-map.svg", SvgWriter.Write(Draw(UnderTheBeam.Value with { Facing = new(0.35, 0.15) }), Palettes.Screen));

    [Fact]
    public void Page_NamesTheThreeAnswers_TheChosenTilt_TheProofAndTheEye()
    {
        var map = UnderTheBeam.Value;
        var words = Words(Draw(map));
        Assert.Contains("keeps 12.7 mm at every tilt of the cell: proved", words);
        Assert.Contains("no tilt of the cell keeps 12.7 mm: proved", words);
        Assert.Contains("can't tell of the whole cell", words);
        var say = new FigureWriter(Millimetres);
        Assert.Contains($"chosen: {say.Angle(map.Chosen!.Value.Total)}", words);
        Assert.Contains($"no mount inside the circle, {say.Angle(map.NoneBelow!.Value, Rounding.Down)} from square", words);
        Assert.Contains("faces your eye at", words);
        Assert.DoesNotContain("off the map", words);
        // 100 mm up over 600.8 mm ahead, from the middle of the sheet; then 600 mm.
        Assert.Equal(100 / 600.8, map.Facing!.Value.Up, 1e-12);
        Assert.Contains("off the map", Words(Draw(map with { Facing = new(600 / 600.8, 0) })));
    }

    /// <summary>Hatch, dots and bare paper are three different things without any colour.</summary>
    [Fact]
    public void Page_WithoutColour_TellsTheThreeAnswersApart()
    {
        var map = UnderTheBeam.Value;
        var cells = Draw(map).Shapes.Where(s => s.Layer == "cells").ToList();
        Assert.All(Enum.GetValues<TiltCellAnswer>(), a => Assert.True(map.Count(a) > 0));
        Assert.Contains(cells, s => s is Dots);
        Assert.Contains(cells, s => s is Segments { Style.Width: var w } && w < 0.4);
        // The heavy line round what keeps it.
        Assert.Contains(cells, s => s is Segments { Style.Width: var w } && w > 0.7);
    }

    [Fact]
    public void Page_Stopped_SaysThatItIsNotWhole()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Contains("Stopped before all cells were looked at", Words(Draw(Map(722, null, stop.Token))));
    }

    [Fact]
    public void Map_OfARun_IsThereOnlyWhereTheHandleMeetsSomething()
    {
        MountMap? Of(double beam)
        {
            var aircraft = Scene(beam, null);
            return MountMap.Of(aircraft, RunCheck.Check(aircraft, aircraft.Runs[0], new(), new CockpitEffort { Cures = false }), new() { Tolerance = 1e-3 });
        }

        Assert.NotNull(Of(710));
        Assert.Null(Of(780));
    }
}
