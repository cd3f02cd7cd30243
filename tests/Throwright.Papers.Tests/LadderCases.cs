using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Papers.Ladder;
using Throwright.Shapes;
using Throwright.Shapes.Numerics;

namespace Throwright.Papers.Tests;

/// <summary>Ladders made by hand, one for each thing that can happen. Figures are invented.</summary>
internal static class LadderCases
{
    public static readonly LadderLabels Flap = new() { Run = "COWL FLAP", How = "PULL TO CLOSE", Device = "flap", PushMeans = "open", PullMeans = "shut" };

    public static IEnumerable<(string Name, LadderLayout Layout)> All =>
    [
        ("clear", Clear),
        ("worst-case-overrun", WorstCaseOverrun),
        ("nominal-overrun", NominalOverrun),
        ("zero-lost-motion", ZeroLostMotion),
        ("tiny-stroke", TinyStroke),
        ("tip-governs", TipGoverns),
        ("needs-input", NeedsInput),
        ("long-stroke", LongStroke),
        ("millimetres", Millimetres),
    ];

    public static LadderLayout Clear => LadderDrawing.Layout(
        Inches(3, 0.42, 0.065, 0.014, 0.006, 2.11, tip: 0.36, half: 0.09), Flap with { KnobIn = Verdict.Clear, KnobOut = Verdict.Clear, Tip = Verdict.Clear }, new());

    public static LadderLayout WorstCaseOverrun => LadderDrawing.Layout(
        Inches(3, 0.680, 0.065, 0.018, 0.012, 2.11, tip: 1.18, half: 0.11, halfOut: 0.1355, notCounted: ["play in the arm's pivot (needs the pivot's clearance)"]),
        Flap with { KnobIn = Verdict.Clear, KnobOut = Verdict.Fail, Tip = Verdict.Clear },
        new());

    /// <summary>The throw is longer than the stroke: both ends run over.</summary>
    public static LadderLayout NominalOverrun => LadderDrawing.Layout(
        Inches(2, -0.09, 0.05, 0.01, 0.01, 2.11, tip: 0.02, half: 0.06), Flap with { KnobIn = Verdict.Fail, KnobOut = Verdict.Fail, Tip = Verdict.Fail }, new());

    public static LadderLayout ZeroLostMotion => LadderDrawing.Layout(
        Inches(3, 0.30, 0, 0, 0, 2.40, tip: 0.9, half: 0.2, notCounted: ["lost motion in the bends (needs the sum of the bends)", "stretch (needs the device's torque)"]),
        Flap with { KnobOut = Verdict.Caution },
        new());

    public static LadderLayout TinyStroke => LadderDrawing.Layout(
        Inches(0.25, 0.03, 0.012, 0.001, 0.0005, 0.18, tip: 0.05, half: 0.012), Flap with { Device = "lock pin", PushMeans = "locked", PullMeans = "free" }, new());

    public static LadderLayout TipGoverns => LadderDrawing.Layout(
        Inches(3, 0.30, 0.04, 0.01, 0.01, 2.05, tip: 0.05, half: 0.08), Flap with { KnobIn = Verdict.Clear, KnobOut = Verdict.Clear, Tip = Verdict.Fail }, new());

    public static LadderLayout NeedsInput => LadderDrawing.Place(Flap, new(), ["arm, pivot to hole: opens throw, cushion, force and the rigging card"], 3 * 0.0254);

    public static LadderLayout LongStroke => LadderDrawing.Layout(
        Inches(12.5, 0.4, 0.11, 0.05, 0.08, 11.5, tip: 0.3, half: 0.16), Flap with { Device = "water rudder", PushMeans = "down", PullMeans = "up" }, new());

    public static LadderLayout Millimetres => LadderDrawing.Layout(
        Inches(3, 0.42, 0.065, 0.014, 0.006, 2.11, tip: 0.36, half: 0.09), Flap, new() { Length = LengthUnit.Millimetre, Force = ForceUnit.Newton });

    /// <summary>A ladder in inches; the out cushion is what is left.</summary>
    public static TravelLadder Inches(
        double stroke, double knobIn, double lost, double stretchPull, double stretchPush, double wireThrow, double tip, double half, double? halfOut = null, double wanted = 0.125, string[]? notCounted = null)
    {
        const double inch = 0.0254;
        var pullStop = knobIn + lost + stretchPull + stretchPush + wireThrow;
        return new()
        {
            Stroke = stroke * inch,
            Throw = wireThrow * inch,
            LostMotion = lost * inch,
            StretchPull = stretchPull * inch,
            StretchPush = stretchPush * inch,
            PushStopPlace = knobIn * inch,
            PullStopPlace = pullStop * inch,
            KnobIn = Range("knob in", knobIn, half),
            KnobOut = Range("knob out", stroke - pullStop, halfOut ?? half),
            TipAtPull = Range("tip at the pull stop", tip, half * 0.8),
            TipAtPush = Range("tip at the push stop", tip + wireThrow, half * 0.8),
            StrokeLeast = stroke * inch,
            TakenAtPush = stretchPush * inch,
            TakenAtPull = stretchPull * inch,
            HeatAtPush = default,
            HeatAtPull = default,
            Setting = new(SettingKind.Balanced, false, 0, knobIn * inch, pullStop * inch),
            Wanted = wanted * inch,
            NotCounted = (notCounted ?? []).ToEquatableList(),
            Samples = 0,
            Seed = 0,
        };
    }

    public static CushionRange Range(string name, double nominalInches, double half)
    {
        const double inch = 0.0254;
        return new(
            name, nominalInches * inch, (nominalInches - half) * inch, (nominalInches + half) * inch, (nominalInches - half) * inch, Outcome.Corner,
            (nominalInches - (0.45 * half)) * inch, (nominalInches + (0.45 * half)) * inch, 0.4 * half * inch, 0.05, new(0, 1), [], []);
    }
}
