using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Tests;

/// <summary>Points by tape in the file: placed where they are read, so that all who refer to them have coordinates.</summary>
public class TapedPointTests
{
    private static string With(string points, string runs = "") => "{ \"format\": 1, \"aircraft\": { \"name\": \"A\" }, \"points\": { " + points + " }, \"runs\": [" + runs + "] }";

    private const string Known = "\"A\": [\"0 in\", \"0 in\", \"0 in\"], \"B\": [\"30 in\", \"0 in\", \"0 in\"], \"C\": [\"0 in\", \"40 in\", \"0 in\"]";

    [Fact]
    public void Distances_WithASide_GiveCoordinatesWithLimits()
    {
        // (10, 15, 20): three exact distances; sqrt(725), sqrt(1025), sqrt(1125) in.
        var aircraft = Sound(With(Known + ", \"P\": { \"taped\": { \"A\": \"26.925824 in\", \"B\": \"32.015621 in\", \"C\": \"33.541020 in\" }, \"tape\": \"± 1/16 in\", \"side\": \"above\" }"));
        var at = aircraft.Points[3].At;
        Assert.Equal(10, at.Station.Nominal.Inches, 1e-5);
        Assert.Equal(15, at.Buttline.Nominal.Inches, 1e-5);
        Assert.Equal(20, at.Waterline.Nominal.Inches, 1e-5);
        Assert.Equal(Spread.Normal, at.Station.Spread);
        // Three standard deviations of readings good to 1/16 in: of the order of a tenth of an inch.
        Assert.InRange(at.Waterline.Plus / 0.0254, 0.05, 0.5);
        Assert.Equal(at.Waterline.Plus, at.Waterline.Minus);
    }

    [Fact]
    public void Point_ReferredTo_HasTheSolvedPlaceAndItsName()
    {
        const string Run = "{ \"id\": \"r\", \"leverEnd\": { \"arm\": { \"radius\": \"1 in\", \"zero\": [0, 0, 1] }, \"pivot\": \"P\", \"axis\": [0, 1, 0], \"anchor\": { \"at\": \"A\" } } }";
        var aircraft = Sound(With("\"P\": { \"taped\": { \"A\": \"26.925824 in\", \"B\": \"32.015621 in\", \"C\": \"33.541020 in\" }, \"side\": \"below A\" }, " + Known, Run));
        var pivot = aircraft.Runs[0].LeverEnd!.Placed!.Pivot;
        Assert.Equal("P", pivot.Name);
        Assert.Equal(-20, pivot.Waterline.Nominal.Inches, 1e-5);
    }

    [Fact]
    public void Mirrored_WithoutASide_IsNoFault_AndIsNotKnown()
    {
        var aircraft = Sound(With(Known + ", \"P\": { \"taped\": { \"A\": \"27 in\", \"B\": \"32 in\", \"C\": \"33 in\" } }"));
        Assert.False(aircraft.Points[3].At.IsKnown);
        // The coordinates noted before settle it.
        var noted = Sound(With(Known + ", \"P\": { \"taped\": { \"A\": \"27 in\", \"B\": \"32 in\", \"C\": \"33 in\" }, \"at\": [\"10 in\", \"15 in\", \"-20 in\"] }"));
        Assert.InRange(noted.Points[3].At.Waterline.Nominal.Inches, -21, -19);
    }

    [Fact]
    public void Chain_OfPoints_IsWorkedOutInAnyOrder_AndGrowsLessSure()
    {
        var aircraft = Sound(With(
            "\"Q\": { \"taped\": { \"P\": \"10 in\", \"B\": \"28.722813 in\" }, \"level\": \"P\", \"side\": \"aftOf\" }, "
            + "\"P\": { \"taped\": { \"A\": \"26.925824 in\", \"B\": \"32.015621 in\", \"C\": \"33.541020 in\" }, \"side\": \"above\" }, " + Known));
        Assert.True(aircraft.Points[0].At.IsKnown);
        Assert.Equal(20, aircraft.Points[0].At.Waterline.Nominal.Inches, 1e-4);
        Assert.True(aircraft.Points[0].At.Waterline.Plus > aircraft.Points[1].At.Waterline.Plus);
    }

    [Fact]
    public void Relations_Alone_GiveThePlace()
    {
        var at = Sound(With(Known + ", \"P\": { \"plumb\": \"B\", \"waterline\": \"12 in ± 1/16 in\" }, \"L\": { \"inLine\": [\"B\", \"C\"], \"taped\": { \"B\": \"25 in\" }, \"side\": \"rightOf\" }")).Points;
        Assert.Equal((30, 0, 12), Rounded(at[3].At));
        // Half way from B to C.
        Assert.Equal((15, 20, 0), Rounded(at[4].At));

        static (double, double, double) Rounded(PointAt p) => (Math.Round(p.Station.Nominal.Inches, 6) + 0, Math.Round(p.Buttline.Nominal.Inches, 6) + 0, Math.Round(p.Waterline.Nominal.Inches, 6) + 0);
    }

    [Fact]
    public void Points_MeasuredFromEachOther_AreRefusedByName()
    {
        var result = AircraftFile.Parse("a", With(Known + ", \"P\": { \"taped\": { \"Q\": \"1 in\" } }, \"Q\": { \"taped\": { \"P\": \"1 in\" } }"));
        Assert.Equal(["$.points.P", "$.points.Q"], result.Problems.Select(p => p.JsonPath));
        Assert.All(result.Problems, p => Assert.Contains("in turn wait for it", p.Found, StringComparison.Ordinal));
    }

    private static Aircraft Sound(string text)
    {
        var result = AircraftFile.Parse("a", text);
        Assert.Empty(result.Problems);
        return result.Aircraft!;
    }
}
