namespace Throwright.Cli.Tests;

/// <summary>A release at the tail, its conduit along stringers farther apart than a clamp should be. Invented.</summary>
public class LongRunTests
{
    private const string InOrder = "{ \"at\": \"stringer-3\" }, { \"at\": \"stringer-2\" }, { \"at\": \"stringer-1\" }";
    private const string FromTheKnob = "{ \"at\": \"stringer-1\" }, { \"at\": \"stringer-2\" }, { \"at\": \"stringer-3\" }";

    [Fact]
    public void SolveRoute_PlacesTooFarApart_StillUsesThem_AndAsksForMore()
    {
        using var bench = new Workbench();
        var file = bench.Put("tail.throwright.json", Text("", "[1, 0, -0.2]"));
        var (code, text, _) = CommandLine.Run("solve", "route", file, "tow", "--plain", "--write");
        Assert.True(code == 0, text);
        var words = One(text);
        Assert.Contains("Hold the conduit at stringer-3 and stringer-2 and stringer-1", words, StringComparison.Ordinal);
        Assert.Contains("name more places", words, StringComparison.Ordinal);
        // The size of the clamp that it wrote is the one that check asks for.
        var check = One(CommandLine.Run("check", file, "--run", "tow", "--plain").Out);
        Assert.Contains("takes loop clamps of dash 4", check, StringComparison.Ordinal);
        Assert.DoesNotContain("larger than the conduit asks for", check, StringComparison.Ordinal);
        Assert.Contains("The longest stretch without a support is", check, StringComparison.Ordinal);
        // Three clamps and a spare, no guess from the bends.
        Assert.Contains("3 + 1  MS21919-4", CommandLine.Run("order", file, "--plain").Out, StringComparison.Ordinal);
        // Asked again there is nothing left to do.
        var again = One(CommandLine.Run("solve", "route", file, "tow", "--plain").Out);
        Assert.Contains("nothing to write", again, StringComparison.Ordinal);
    }

    [Fact]
    public void SolveRoute_NothingHoldsAllOfTheWay_RecommendsNothing_AndKeepsTheClamps()
    {
        using var bench = new Workbench();
        // It leaves forward and has to turn round behind the panel, where no place is permitted.
        var file = bench.Put("turn.throwright.json", Text(InOrder, "[-1, 0, 0]"));
        var before = File.ReadAllText(file);
        var (code, text, _) = CommandLine.Run("solve", "route", file, "tow", "--plain", "--write");
        Assert.Equal(1, code);
        var words = One(text);
        Assert.Contains("Nothing is recommended", words, StringComparison.Ordinal);
        Assert.DoesNotContain("> no support", words, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(file));
    }

    [Fact]
    public void Check_SupportsFromTheKnob_WithoutLength_TellsTheOrder()
    {
        using var bench = new Workbench();
        var wrong = CommandLine.Run("check", bench.Put("wrong.throwright.json", Text(FromTheKnob, "[-1, 0, 0]")), "--run", "tow", "--plain").Out;
        Assert.Contains("supports seem to be in the wrong order", One(wrong), StringComparison.Ordinal);
        Assert.Contains("Length of the conduit", One(wrong), StringComparison.Ordinal);
        var right = CommandLine.Run("check", bench.Put("right.throwright.json", Text(InOrder, "[-1, 0, 0]")), "--run", "tow", "--plain").Out;
        Assert.DoesNotContain("wrong order", One(right), StringComparison.Ordinal);
    }

    /// <summary>What was wrapped, in one line.</summary>
    private static string One(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Text(string supports, string leaves) => $$"""
        {
          "format": 1, "aircraft": { "name": "Tail" }, "display": { "length": "mm", "force": "N" },
          "points": {
            "stringer-1": ["1500 mm", "-260 mm", "560 mm"], "stringer-2": ["2100 mm", "-240 mm", "520 mm"], "stringer-3": ["2700 mm", "-160 mm", "540 mm"]
          },
          "runs": [ {
            "id": "tow", "label": "TOW RELEASE", "how": "PULL TO RELEASE",
            "cockpitEnd": { "stroke": "60 mm ± 0.8 mm", "pushMeans": "shut", "pullMeans": "open" },
            "cable": {
              "core": { "diameter": "1.6 mm ± 0.03 mm" },
              "conduit": { "outside": "5 mm", "bore": "2 mm ± 0.05 mm", "minRadius": "100 mm" },
              "friction": "0.12 ± 0.04",
              "supports": [{{supports}}], "places": ["stringer-1", "stringer-2", "stringer-3"],
              "ends": { "leaves": { "at": ["980 mm", "-220 mm", "700 mm"], "along": {{leaves}} }, "arrives": { "at": ["3300 mm", "-20 mm", "588 mm"], "along": [1, 0, 0] } }
            },
            "leverEnd": {
              "arm": { "radius": "28 mm ± 0.4 mm" }, "sweep": "75 deg ± 2 deg", "bench": { "distance": "110 mm ± 1 mm", "rule": "halfSagitta" },
              "anchor": { "tip": "10 mm", "swivels": "8 deg" }, "swivel": { "length": "8 mm" }
            }
          } ]
        }
        """;
}
