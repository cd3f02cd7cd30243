using Throwright.Engine.Findings;
using Throwright.Engine.Maintain;
using Throwright.Engine.Model;
using Throwright.Engine.Order;
using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>Inspection list and drift of one run, by the limits of its rigging card.</summary>
public static class Upkeep
{
    public static MaintainAnswer Of(Aircraft aircraft, RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        var card = Rigging.CardOf(aircraft, Rigging.ToRig(aircraft, answer));
        (double, double)? Limits(string reading) => card.Steps.FirstOrDefault(s => s.Reading == reading) is { Least: { } least, Most: { } most } ? (least, most) : null;
        return MaintainSolver.Solve(
            new()
            {
                Run = answer.Run,
                KnobAtPush = Limits("knobAtPush"),
                KnobAtPull = Limits("knobAtPull"),
                LostMotion = Limits("lostMotion"),
                Pull = Limits("pull"),
                LengthError = Sources.Published.Get("rig/tape").Value / Math.Sqrt(3),
                ForceError = Sources.Published.Get("rig/scale").Value / Math.Sqrt(3),
                History = answer.Run.AsBuilt,
            },
            new(aircraft.Display));
    }
}

/// <summary>Order sheet and hardware of one run.</summary>
public static class Purchase
{
    public const string NotYet = "do not order yet";
    public const string MeasureFirst = "measure before ordering";

    public static OrderAnswer Of(Aircraft aircraft, RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        // The cable that counts: with bends and length of its lie, where the way is known.
        var run = answer.Run with { Cable = answer.Cable };
        var at = aircraft.Environment;
        var zone = run.LeverEnd?.Zone ?? HeatZone.Elsewhere;
        var order = OrderSolver.Solve(
            new()
            {
                Run = run,
                Name = answer.Words.Name,
                Conduit = answer.Route?.Order?.ConduitOrdered ?? run.Cable?.Length?.Nominal.Metres,
                Wire = answer.Route?.Order?.WireOrdered,
                // All that the whole length leaves at the device, or else to the pin and the tail behind it.
                BareWire = answer.Ladder is null ? null
                    : answer.Route?.Order is { } lengths ? lengths.WireOrdered - lengths.ConduitOrdered - (run.Cable?.Ends?.WireInKnob.Metres ?? 0)
                    : answer.Ladder.Setting.WireLength + (run.Cable?.Ends?.WireBeyondPin.Metres ?? 0),
                Coldest = at?.Coldest.Celsius,
                Hottest = at is null ? null : Math.Max(at.Cabin.Celsius, Proof.Hottest(at, zone)),
                EngineBay = at?.EngineBay.Celsius,
                Pull = answer.Forces?.CoreTension,
                Push = answer.Forces?.CoreCompression,
                // Where hand and tape are off, the conduit bends tighter than in its planned lie.
                TightestBend = run.Cable?.Bends is { Count: > 0 } bends ? Math.Min(bends.Min(b => b.Radius.Least), answer.Route?.CountedSpread is { LeastRadius: > 0 and < double.PositiveInfinity } spread ? spread.LeastRadius : double.PositiveInfinity) : null,
                LetterHeight = run.Installation?.Legend is { } legend ? Sources.Published.Get("marking/good-height").Value * legend.Distance.Metres : null,
                Made = MadeFrom(run, new(aircraft.Display)).ToEquatableList(),
                KnobStation = run.CockpitEnd?.Hole?.Station.Nominal.Metres,
                DeviceStation = run.LeverEnd?.Placed?.Pivot.Station.Nominal.Metres,
            },
            new FigureWriter(aircraft.Display));
        // Cables are made to length and do not come back: whoever reads the sheet, here or in a spreadsheet, reads this first.
        var first = Doubts(answer).ToList();
        if (answer.Findings.FirstOrDefault(f => f.Verdict == Verdict.Fail) is { } fault)
            first.Insert(0, new(NotYet, "this run does not work", true, fault.Sentence));
        return order with { Cable = first.Concat(order.Cable).ToEquatableList() };
    }

    /// <summary>What the lengths rest on and nothing checks: a gross error of one tape reading is a cable too short.</summary>
    private static IEnumerable<OrderLine> Doubts(RunAnswer answer)
    {
        foreach (var finding in answer.Findings.Where(f => f.Rule == Measure.TapeRules.Readings && f.Verdict == Verdict.Caution))
            yield return new(MeasureFirst, "a place it hangs on is not sure", true, string.Join(" ", finding.Remedies.Select(r => r.Text).Prepend(finding.Sentence)) + " A cable cut to a wrong length does not come back.");
        // Places and directions drawn within their limits: 2.5 % of the lays are left out at either end.
        if (answer.Route is { Lie: not null, Spread: { } spread })
        {
            var least = answer.Cable?.Conduit?.MinRadius?.Metres;
            if (spread.Without > 0 || spread.LeastRadius < least)
            {
                yield return new(
                    MeasureFirst, "the bows can't take up what may be off", true,
                    (spread.Without > 0 ? $"In {spread.Without} of {spread.Lays} lays within what may be off the conduit is too short." : "Within what may be off the conduit bends tighter than its maker allows.")
                    + " Measure the places better, lay a rope along the way, or order a step more.");
            }
        }
    }

    /// <summary>Blanks of the parts that the file describes: bracket from sheet, wedge pair from rod.</summary>
    private static IEnumerable<CutLine> MadeFrom(Run run, FigureWriter say)
    {
        if (MadeParts.BracketOf(run) is { } bracket)
        {
            var flat = Make.BracketSolver.Solve(bracket).Flat;
            yield return new(
                "anchor's bracket, flat", $"{bracket.Alloy} sheet, {say.Length(bracket.Thickness)}", $"{say.Length(flat.Length, Shapes.Quantities.Rounding.Up)} by {say.Length(bracket.Width, Shapes.Quantities.Rounding.Up)}; grain across the bend",
                CutKind.Sheet, flat.Length, bracket.Width, bracket.Thickness);
        }

        if (MadeParts.Wedges(run).Pair is { Washer.Fault: null, Recipe: var rod })
        {
            var material = run.CockpitEnd?.Wedge is { Material.Length: > 0 } wedge ? wedge.Material : "metal";
            yield return new(
                "wedge pair, one blank cut in two", $"{material} rod, {say.Length(rod.Outside)}",
                $"{say.Length(rod.Length, Shapes.Quantities.Rounding.Up)} between its faces, bored {say.Length(rod.Bore)}, cut at {say.Angle(rod.CutAngle)}; saw cut and clean-up of {say.Length(rod.Kerf)} counted",
                CutKind.Rod, rod.Length, rod.Outside);
        }
    }
}
