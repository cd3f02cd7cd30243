using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>Parts that the builder makes: wedges, bracket.</summary>
internal static partial class AircraftDescription
{
    /// <summary>Corner of a bracket when none is given, m: as the engine has it.</summary>
    private const double UsualCorner = 0.004;

    private static class WedgeShape
    {
        public static readonly Member<WedgeStock> Stock = Optional(
            "stock", new WordShape<WedgeStock>(new("metal", WedgeStock.Metal), new("printed", WedgeStock.Printed, "plastic from a printer: a test piece")), "What the wedges are made of.", WedgeStock.Metal);
        public static readonly Member<WedgeKey> Key = Optional(
            "key",
            new WordShape<WedgeKey>(
                new("none", WedgeKey.None, "nothing"),
                new("pin", WedgeKey.Pin, "a pin through both wedges and the sheet"),
                new("flat", WedgeKey.Flat, "a D-shaped bore on a bushing with a flat")),
            "What keeps the wedges from turning against each other.",
            WedgeKey.Pin);
        public static readonly Member<string> Material = Words("material", new TextShape(40), "Alloy or plastic, e.g. \"6061-T6\".");
        public static readonly Member<string> Finish = Words("finish", Line, "Finish, for the drawing.");
        public static readonly Member<Length> Outside = Optional("outside", new ExactShape<Length>("5 mm", "200 mm"), "Outside diameter. Left out: the nut's corners and a margin.");
        public static readonly Member<Length> ThinEdge = Optional("thinEdge", new ExactShape<Length>("0.2 mm", "20 mm"), "Thickness at the thin edge. Left out: the least of the stock.");
        public static readonly Member<Length> Chamfer = Optional("chamfer", new ExactShape<Length>("0 mm", "5 mm"), "Chamfer of 45 deg on both rims of the square face. Left out: none.");
        public static readonly Member<Length> PinDiameter = Optional("pinDiameter", new ExactShape<Length>("0.5 mm", "20 mm"), "Diameter of the pin. Left out: 3 mm.");
        public static readonly Member<Length> PinDepth = Optional("pinDepth", new ExactShape<Length>("0.5 mm", "20 mm"), "How far the pin reaches into each wedge. Left out: 2 mm.");
        public static readonly Member<Length> FlatAt = Optional("flatAt", new ExactShape<Length>("0.5 mm", "50 mm"), "Only with the key `flat`: from the bushing's axis to its flat.");
        public static readonly Member<Length> Kerf = Optional("kerf", new ExactShape<Length>("0 mm", "20 mm"), "Saw cut and clean-up of both cut faces. Left out: 2 mm.");
        public static readonly Member<Length> Washers = Optional("washers", new ExactShape<Length>("0 mm", "20 mm"), "Washers in the stack besides the wedges, together. Left out: none.");

        public static readonly ObjectShape<WedgeWanted> Shape = new(
            "wedge",
            "the wedge pair",
            [Stock, Key, Material, Finish, Outside, ThinEdge, Chamfer, PinDiameter, PinDepth, FlatAt, Kerf, Washers],
            g => new()
            {
                Stock = g.Or(Stock),
                Key = g.Or(Key),
                Material = g.Or(Material),
                Finish = g.Or(Finish),
                Outside = g.Maybe(Outside),
                ThinEdge = g.Maybe(ThinEdge),
                Chamfer = g.Maybe(Chamfer),
                PinDiameter = g.Maybe(PinDiameter),
                PinDepth = g.Maybe(PinDepth),
                FlatAt = g.Maybe(FlatAt),
                Kerf = g.Maybe(Kerf),
                Washers = g.Maybe(Washers),
            },
            new Rule(
                "`key` \"flat\" needs `flatAt`.",
                g =>
                {
                    if (g.Or(Key) == WedgeKey.Flat && !g.Has(FlatAt))
                        g.Missing("flatAt", $"\"flatAt\", which the key \"flat\" needs. {FlatAt.Meaning}");
                }));
    }

    private static class BracketOpeningShape
    {
        public static readonly Member<Length> At = Needed("at", new ExactShape<Length>("0 mm", "500 mm"), "Its centre from the outside corner of the bend, along its leg.");
        public static readonly Member<Length> Across = Optional("across", new ExactShape<Length>("-250 mm", "250 mm"), "Its centre from the middle of the width.", Length.Zero, "0 mm");
        public static readonly Member<Length> Diameter = Needed("diameter", new ExactShape<Length>("0.5 mm", "100 mm"), "Its diameter.");
        public static readonly ObjectShape<BracketOpening> Shape = new("bracketHole", "a hole of the bracket", [At, Across, Diameter], g => new(g.Must(At), g.Or(Across), g.Must(Diameter)));
    }

    private static class BracketShape
    {
        public static readonly Member<string> Material = Needed("material", new TextShape(40, mayBeEmpty: false), "Alloy and temper as the table of bend radii has it, e.g. \"6061-T6\".");
        public static readonly Member<Length> Thickness = Needed("thickness", new ExactShape<Length>("0.2 mm", "10 mm"), "Thickness of the sheet.");
        public static readonly Member<Angle> Bend = Optional("bend", new ExactShape<Angle>("5 deg", "150 deg"), "Angle bent through.", new(Math.PI / 2), "90 deg");
        public static readonly Member<Length> Radius = Needed("radius", new ExactShape<Length>("0.1 mm", "50 mm"), "Inside radius of the bend.");
        public static readonly Member<Length> Base = Needed("base", new ExactShape<Length>("5 mm", "500 mm"), "Outside length of the leg that is fastened down, to the corner.");
        public static readonly Member<Length> Standing = Needed("standing", new ExactShape<Length>("5 mm", "500 mm"), "Outside length of the leg that holds the conduit, to the corner.");
        public static readonly Member<Length> Width = Needed("width", new ExactShape<Length>("5 mm", "500 mm"), "Width of the strip.");
        public static readonly Member<Length> Corner = Optional("corner", new ExactShape<Length>("0.5 mm", "50 mm"), "Radius of the four corners. Left out: 4 mm.");
        public static readonly Member<Ratio> Neutral = Optional("neutral", new ExactShape<Ratio>("0.2", "0.5"), "Place of the neutral line over the thickness, from your own test bend. Left out: 0.447.");
        public static readonly Member<BracketOpening> Conduit = Needed("conduit", BracketOpeningShape.Shape, "The hole that holds the conduit, in the standing leg.");
        public static readonly Member<EquatableList<BracketOpening>> Fasteners = Optional("fasteners", new ListShape<BracketOpening>(BracketOpeningShape.Shape, "holes", 20), "Holes for rivets or bolts in the base leg.", [], "");
        public static readonly Member<string> Fastener = Words("fastener", new TextShape(20), "What goes into them, as the table of fasteners names it, e.g. \"AD4\" or \"AN3\".");

        public static readonly ObjectShape<AnchorBracket> Shape = new(
            "bracket",
            "the anchor's bracket",
            [Material, Thickness, Bend, Radius, Base, Standing, Width, Corner, Neutral, Conduit, Fasteners, Fastener],
            g => new()
            {
                Material = g.Must(Material),
                Thickness = g.Must(Thickness),
                Bend = g.Or(Bend),
                Radius = g.Must(Radius),
                Base = g.Must(Base),
                Standing = g.Must(Standing),
                Width = g.Must(Width),
                Corner = g.Maybe(Corner),
                Neutral = g.Maybe(Neutral)?.Value,
                Conduit = g.Must(Conduit),
                Fasteners = g.Or(Fasteners),
                Fastener = g.Or(Fastener),
            },
            new Rule("`base` and `standing` are longer than the bend's setback and the corner; the corners fit the width.", Fits),
            new Rule("Each hole lies whole on its leg, beyond the bend.", HolesFit));

        private static double Setback(Given g) => g.Maybe(Radius) is { } r && g.Maybe(Thickness) is { } t ? Math.Tan(0.5 * g.Or(Bend).Radians) * (r.Metres + t.Metres) : double.NaN;

        private static void Fits(Given g)
        {
            var corner = g.Maybe(Corner)?.Metres ?? UsualCorner;
            foreach (var leg in (Member<Length>[])[Base, Standing])
            {
                if (g.Maybe(leg) is { } length && length.Metres <= Setback(g) + corner)
                    g.RefuseValue(leg, $"{g.Shown(leg)}, of which the bend takes {Setback(g) * 1000:0.0} mm and the corner {corner * 1000:0.0} mm", "a longer leg");
            }

            if (g.Maybe(Width) is { } width && width.Metres <= 2 * corner)
                g.RefuseValue(Width, $"{g.Shown(Width)}, with corners of {corner * 1000:0.0} mm", "wider than two corners");
        }

        private static void HolesFit(Given g)
        {
            if (g.Maybe(Width) is not { } width)
                return;
            bool Off(BracketOpening hole, Length leg) => hole.At.Metres - (0.5 * hole.Diameter.Metres) <= Setback(g)
                || hole.At.Metres + (0.5 * hole.Diameter.Metres) >= leg.Metres
                || Math.Abs(hole.Across.Metres) + (0.5 * hole.Diameter.Metres) >= 0.5 * width.Metres;
            if (g.Item(Conduit) is { } conduit && g.Maybe(Standing) is { } standing && Off(conduit, standing))
                g.RefuseValue(Conduit, "a hole that meets the bend or an edge of the standing leg", "a hole that lies whole on it");
            if (g.Item(Fasteners) is not { } holes || g.Maybe(Base) is not { } foot)
                return;
            for (var i = 0; i < holes.Count; i++)
            {
                if (Off(holes[i], foot))
                    g.RefuseRow(Fasteners, i, "a hole that meets the bend or an edge of the base leg", "a hole that lies whole on it");
            }
        }
    }
}
