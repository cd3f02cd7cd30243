using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Sources;

/// <summary>The published rules that touch a cable control, typed a second time: each is in the data, or says why not.</summary>
public sealed class RuleListTests
{
    /// <summary>Rules held in data/rules. A number behind the colon must stand in what the rule says.</summary>
    private static readonly string[] Held =
    [
        "23.143(c): 50 lbf", "23.305", "23.395(a): 125 %", "23.603", "23.605", "23.607(a)", "23.607(c)", "23.625: 1.15", "23.655(a)", "23.675",
        "23.681", "23.683", "23.685(a)", "23.689(c): 3 deg", "23.689(d)", "23.689(e)", "23.693: 3.33", "23.777(a)", "23.777(b)", "23.777(d): 8 in", "23.779",
        "23.781", "23.853(a)", "23.995(a)", "23.995(b)", "23.995(c)", "23.995(d)", "23.995(e)", "23.999(b)(2)", "23.1093(a)", "23.1141(b)",
        "23.1141(c)", "23.1141(d)", "23.1141(f)", "23.1141(g)(1)", "23.1143(g)", "23.1147(a)", "23.1147(b)", "23.1555(a)", "23.1555(e)(2)",
        "25.405", "25.777(e): 10 in", "25.1149(d): 1 in", "27.397(b)", "27.1189(c)", "cs-22.711(e): 120 mm", "1472e-5.4.3.1.8.7: 18 N",
        "43-d(c)(5)", "ol-controls", "ac-43-13-1b-7-37", "ac-43-13-1b-7-38", "ac-43-13-1b-7-64(a)", "ac-43-13-1b-7-64(f)",
        "ac-43-13-1b-7-147(a)", "ac-43-13-1b-7-149(b)", "ac-43-13-1b-7-149(n)",
    ];

    /// <summary>Rules held as a figure or a table: the number is the rule.</summary>
    private static readonly (string Cite, string Figure)[] AsFigures =
    [
        ("AC 43.13-1B Table 7-1", "order/torque"), ("AC 43.13-1B Table 4-6", "make/bend-radius"), ("AC 43.13-1B 4-57, edge", "make/edge-distance"),
        ("AC 43.13-1B 4-57, pitch", "make/pitch"), ("AC 43.13-1B 11-125", "joint/wiring-distance"), ("14 CFR 23.303", "joint/ultimate-factor"),
        ("14 CFR 23.693, cable", "joint/cable-factor"),
    ];

    /// <summary>Rules left out, each with the reason.</summary>
    private static readonly (string Id, string Why)[] LeftOut =
    [
        ("23.619", "the highest factor counts: the joint's is the higher by itself"),
        ("23.621", "castings are made by no stage"),
        ("23.657", "hinges of control surfaces are outside what is worked out"),
        ("23.1189", "binds multiengine aeroplanes; 27.1189(c) is the comparison held"),
        ("25.1141(a)", "no sweep of a person getting in or out is described"),
        ("25.1189(d)", "same sense as 27.1189(c), which is held"),
        ("25.1555(d)(1)", "same sense as 23.1555(e)(2), which is held"),
        ("25.777(c)", "statures: people are measured from surveys"),
        ("27.777(b)", "statures: people are measured from surveys"),
        ("29.1141(b)", "same sense as 25.1141(a)"),
        ("ac-43-13-1b-7-41", "written for primary structure"),
    ];

    [Fact]
    public void Held_EachRule_IsInTheDataWithItsNumber() => Assert.All(Held, line =>
    {
        var (id, number) = line.Split(": ") is [var first, var second] ? (first, second) : (line, "");
        var rule = Published.Rule(id);
        Assert.Contains(number, $"{rule.Says} {rule.Note}", StringComparison.Ordinal);
    });

    [Fact]
    public void AsFigures_EachRule_IsAFigureOrATable() =>
        Assert.All(AsFigures, f => Assert.True(Published.All.ContainsKey(f.Figure) || Published.Tables.ContainsKey(f.Figure), $"{f.Cite}: {f.Figure}"));

    [Fact]
    public void LeftOut_EachRule_IsNotInTheData()
    {
        Assert.All(LeftOut, l => Assert.NotEmpty(l.Why));
        Assert.Equal([], LeftOut.Select(l => l.Id).Intersect(Published.Rules.Keys));
    }
}
