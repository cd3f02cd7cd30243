using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Make;

/// <summary>What a curved sheet does to what sits flat on it, and what to do about it.</summary>
public static class CurveRules
{
    private static readonly SourceRef Derived = new("project", "docs/theory/make.md", Evidence.Derived);

    public static Finding Of(WedgePair pair, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(pair);
        ArgumentNullException.ThrowIfNull(say);
        var (of, curved) = (pair.Case, pair.Case.Curved!);
        var most = Published.Get("make/panel-gap").Value;
        var radius = curved.Sharper(of.Sheet);
        var remedies = new List<Remedy>();
        // In the direction across the curve the seat is narrower than the outside by the same share at any size.
        var share = pair.SheetHalfWidth / (0.5 * pair.Washer.Outside);
        var widest = 2 * CurvedSheet.WidestFor(radius, most) / share;
        if (widest >= of.NutSeat)
            remedies.Add(new($"Take wedges of {say.Length(widest, Rounding.Down)} outside: they stand off by no more than {say.Length(most)}."));
        if (double.IsFinite(pair.SheetGap))
        {
            var (front, behind) = curved.IsTowardPilot ? ("hollow", "bulging") : ("bulging", "hollow");
            var other = curved.IsTowardPilot ? curved.Radius - of.Sheet : curved.Radius + of.Sheet;
            remedies.Add(new($"Cut a saddle: the front wedge's seat {front} to {say.Length(curved.Radius)}, the rear one's {behind} to {say.Length(other)}, straight along the sheet's straight lines; leave the thin edge {say.Length(pair.SheetGap, Rounding.Up)} thicker before."));
            remedies.Add(new($"Or rivet a flat doubler of {say.Length(2 * pair.FootprintAlong, Rounding.Up)} or more to each face, bedded on filler {say.Length(pair.SheetGap, Rounding.Up)} deep: the wedges then sit on the doublers, and they count as sheet."));
        }

        return With("the wedge", pair.SheetHalfWidth, curved, of.Sheet, say) is var finding && finding.Verdict == Verdict.Clear ? finding : finding with { Remedies = [.. remedies] };
    }

    /// <summary>A bushing that stands square in a curved sheet: its nut, flat, over its corners.</summary>
    public static Finding OfSquare(CurvedSheet curved, double sheet, double nutSeat, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(curved);
        ArgumentNullException.ThrowIfNull(say);
        var finding = With("the bushing's nut or shoulder", 0.5 * nutSeat, curved, sheet, say);
        return finding.Verdict == Verdict.Clear ? finding : finding with
        {
            Remedies =
            [
                new($"Bed a washer cut to the sheet's radius under it on each face, or rivet a flat doubler of {say.Length(nutSeat, Rounding.Up)} or more to each face, bedded on filler."),
            ],
        };
    }

    private static Finding With(string seat, double halfWidth, CurvedSheet curved, double sheet, FigureWriter say)
    {
        var most = Published.Get("make/panel-gap");
        var radius = curved.Sharper(sheet);
        double gap = CurvedSheet.Gap(radius, halfWidth), rock = CurvedSheet.Rock(radius, halfWidth);
        var (bulging, hollow) = curved.IsTowardPilot ? ("in front", "behind") : ("behind", "in front");
        return new()
        {
            Rule = MakeRules.Curve,
            // Written so that a figure that is no number is never clear.
            Verdict = !double.IsFinite(gap) ? Verdict.Fail : gap <= most.Value ? Verdict.Clear : Verdict.Caution,
            Sentence = double.IsFinite(gap)
                ? gap <= most.Value
                    ? $"On the sheet's curve of {say.Length(curved.Radius)} {seat} stands off by {say.Length(gap, Rounding.Up)}; up to {say.Length(most.Value)} counts as flat."
                    : $"On the sheet's curve of {say.Length(curved.Radius)} {seat} can't seat flat: it stands off by {say.Length(gap, Rounding.Up)}, up to {say.Length(most.Value)} counts as flat."
                : $"{char.ToUpperInvariant(seat[0])}{seat[1..]} is wider than the sheet's curve of {say.Length(curved.Radius)}: it can't seat at all.",
            Figure = "sheet-gap",
            Limit = new(most.Value, QuantityKind.Length, false),
            Sources = [Derived, most.Source],
            Why = gap <= most.Value ? "" : $"{char.ToUpperInvariant(bulging[0])}{bulging[1..]} it rocks on a line, up to {say.Angle(rock, Rounding.Up)} to either side, and the shank leans by as much more or less; {hollow} it bridges two edges, and tightening dents the sheet.",
        };
    }
}
