using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Formats.Gltf;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Solids;

namespace Throwright.Web.Making;

/// <summary>A part that is made, to be turned on the screen: the same bodies that go to the shop, and every figure that the picture shows.</summary>
/// <param name="Parts">Bodies with their places, m; those to be made are drawn in blue.</param>
/// <param name="Facts">Name and figure.</param>
/// <param name="Says">What one looks at, in a sentence.</param>
public sealed record PartScene(string Name, string Says, IReadOnlyList<ScenePart> Parts, IReadOnlyList<(string Name, string Figure)> Facts)
{
    private const double Chord = 0.05e-3;

    // The page gives its own tones; these stand in the file only.
    private static readonly Colour Grey = new(0xB8, 0xC0, 0xC4);

    /// <summary>Null: the run needs none, or it can't be made as described.</summary>
    /// <param name="which">wedge, guide or bracket.</param>
    public static PartScene? Of(Run run, string which, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(say);
        if (which == "bracket")
            return MadeParts.BracketOf(run) is { } of ? Bracket(of, say) : null;
        return MadeParts.Wedges(run).Pair is { Washer.Fault: null } pair ? which == "wedge" ? Wedge(pair, say) : which == "guide" ? Guide(pair, say) : null : null;
    }

    public byte[] Glb() => GlbWriter.Write(Parts, Chord);

    private static PartScene Wedge(WedgePair pair, FigureWriter say)
    {
        var (washer, place) = (pair.Washer, PairInPlace.Of(pair));
        var solid = washer.Build();
        List<(string, string)> facts =
        [
            ("tilt of the shank", say.Angle(pair.Case.Tilt.Angle)),
            ("outside", $"⌀ {say.Length(washer.Outside)}"),
            ("bore, square to the seat of the nut", $"⌀ {say.Length(washer.Bore)}"),
            ("thin edge", say.Length(washer.ThinEdge)),
            ("thick edge", say.Length(washer.ThickEdge)),
            ("hole in the sheet, across and along the lean", $"{say.Length(pair.SlotWidth)} × {say.Length(pair.SlotLength)}"),
            ("cover beyond the end of the hole", say.Length(pair.Cover, Rounding.Down)),
            ("sheet", say.Length(pair.Case.Sheet)),
            ("sheet, wedges and washers along the shank", say.Length(pair.Grip, Rounding.Up)),
            ("thread beyond the nut", pair.ThreadBeyondNut is { } beyond ? say.Length(beyond, Rounding.Down) : "not known: the bushing's length is not said"),
        ];
        if (washer.Pin is { } pin)
            facts.Add(("pin hole", $"⌀ {say.Length(pin.Diameter)}, {say.Length(pin.Depth)} deep"));
        return new(
            "wedge",
            "Two wedges, both the same part, one on each side of the sheet: the nut on one and the bushing on the other seat square to the leaning shank.",
            [new("wedge, pilot's side", solid, Grey, [place.Front]), new("wedge, behind", solid, Grey, [place.Back]), new("sheet", place.Sheet.Build(), Grey, [place.SheetAxes])],
            facts);
    }

    private static PartScene Guide(WedgePair pair, FigureWriter say)
    {
        var guide = DrillGuide.Of(pair);
        var box = guide.Block.Build();
        var (least, most) = (box.Vertices.Aggregate(Least), box.Vertices.Aggregate(Most));
        return new(
            "guide",
            "A block that leads the drill along the lean. Its lower face lies on the sheet's side toward the pilot, its long way along the lean.",
            [new("drill guide", box, Grey, [Axes.World])],
            [
                ("tilt of the hole", say.Angle(pair.Case.Tilt.Angle)),
                ("drill that is led", $"⌀ {say.Length(guide.Drill)}"),
                ("height", say.Length(guide.Height)),
                ("along and across the lean", $"{say.Length(most.X - least.X)} × {say.Length(most.Y - least.Y)}"),
                ("material round the holes, at least", say.Length(guide.Margin)),
                ("holes", FigureText.Plain(guide.Block.Holes.Count, 0)),
            ]);

        static Shapes.Frames.Vector3 Least(Shapes.Frames.Vector3 a, Shapes.Frames.Vector3 b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));
        static Shapes.Frames.Vector3 Most(Shapes.Frames.Vector3 a, Shapes.Frames.Vector3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
    }

    private static PartScene Bracket(BracketCase of, FigureWriter say)
    {
        var bracket = BracketSolver.Solve(of);
        List<(string, string)> facts =
        [
            ("sheet", $"{say.Length(of.Thickness)}, {of.Alloy}"),
            .. bracket.Bends.Select((b, i) => (bracket.Bends.Count == 1 ? "bend" : $"bend {i + 1}, {(b.Of.IsBack ? "down" : "up")}", $"{say.Angle(b.Of.Angle)}, inside radius {say.Length(b.Of.Radius)}, allowance {say.Length(b.Allowance)}")),
            ("base leg to the mould line", say.Length(of.First)),
            ("standing leg to the mould line", say.Length(of.Second)),
            .. of.Then is { } then ? [("top leg to the mould line", say.Length(then.Top))] : (List<(string, string)>)[],
            ("width", say.Length(of.Width)),
            ("flat pattern, long", say.Length(bracket.Flat.Length)),
        ];
        facts.AddRange(of.Holes.Select((h, i) => ($"hole {i + 1}, {h.Leg.ToString().ToLowerInvariant()} leg", $"⌀ {say.Length(h.Diameter)}, {say.Length(h.FromMouldLine)} from the mould line, {say.Length(h.Across)} across")));
        return new("bracket", "The bracket bent, as it carries the anchor.", [new("bracket", bracket.Part.Build(), Grey, [Axes.World])], facts);
    }
}
