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

    private static class BracketTopForm
    {
        public static readonly Member<BracketShape> Shape = Needed(
            "shape",
            new WordShape<BracketShape>(new("z", BracketShape.Z, "the second bend goes the other way"), new("u", BracketShape.U, "a channel: both bends go the same way, the top leg lies over the base")),
            "Which way the second bend goes.");
        public static readonly Member<Length> Long = Needed("length", new ExactShape<Length>("5 mm", "500 mm"), "Outside length of the top leg, to the corner.");
        public static readonly Member<Angle> Bend = Optional("bend", new ExactShape<Angle>("5 deg", "150 deg"), "Angle bent through.", new(Math.PI / 2), "90 deg");
        public static readonly Member<Length> Radius = Optional("radius", new ExactShape<Length>("0.1 mm", "50 mm"), "Inside radius of the second bend. Left out: as the first.");
        public static readonly ObjectShape<BracketTop> Object = new("bracketTop", "the bracket's top leg", [Shape, Long, Bend, Radius], g => new(g.Must(Shape), g.Must(Long), g.Or(Bend), g.Maybe(Radius)));
    }

    private static class BracketForm
    {
        public static readonly Member<string> Material = Needed("material", new TextShape(40, mayBeEmpty: false), "Alloy and temper as the table of bend radii has it, e.g. \"6061-T6\".");
        public static readonly Member<Length> Thickness = Needed("thickness", new ExactShape<Length>("0.2 mm", "10 mm"), "Thickness of the sheet.");
        public static readonly Member<Angle> Bend = Optional("bend", new ExactShape<Angle>("5 deg", "150 deg"), "Angle bent through.", new(Math.PI / 2), "90 deg");
        public static readonly Member<Length> Radius = Needed("radius", new ExactShape<Length>("0.1 mm", "50 mm"), "Inside radius of the bend.");
        public static readonly Member<Length> Base = Needed("base", new ExactShape<Length>("5 mm", "500 mm"), "Outside length of the leg that is fastened down, to the corner.");
        public static readonly Member<Length> Standing = Needed("standing", new ExactShape<Length>("5 mm", "500 mm"), "Outside length of the leg that stands on the base, to the corner; with a top leg from corner to corner.");
        public static readonly Member<Length> Width = Needed("width", new ExactShape<Length>("5 mm", "500 mm"), "Width of the strip.");
        public static readonly Member<Length> Corner = Optional("corner", new ExactShape<Length>("0.5 mm", "50 mm"), "Radius of the four corners. Left out: 4 mm.");
        public static readonly Member<Ratio> Neutral = Optional("neutral", new ExactShape<Ratio>("0.2", "0.5"), "Place of the neutral line over the thickness, from your own test bend. Left out: 0.447.");
        public static readonly Member<BracketOpening> Conduit = Needed("conduit", BracketOpeningShape.Shape, "The hole that holds the conduit, or the clamp of one that lies along its leg.");
        public static readonly Member<BracketTop> Top = Optional("top", BracketTopForm.Object, "A second bend and the leg beyond it: a Z or a channel. Left out: one bend.");
        public static readonly Member<ConduitLeg> ConduitIn = Optional("conduitIn", new WordShape<ConduitLeg>(new("standing", ConduitLeg.Standing), new("top", ConduitLeg.Top)), "Leg that holds the conduit.", ConduitLeg.Standing);
        public static readonly Member<Length> ConduitAbove = Optional("conduitAbove", new ExactShape<Length>("-100 mm", "100 mm"), "The conduit lies along its leg in a clamp: its axis from the leg's face, away from the base (of a standing leg over it; less than 0: on the other face). Left out: it goes through the leg square.");
        public static readonly Member<EquatableList<BracketOpening>> Fasteners = Optional("fasteners", new ListShape<BracketOpening>(BracketOpeningShape.Shape, "holes", 20), "Holes for rivets or bolts in the base leg.", [], "");
        public static readonly Member<string> Fastener = Words("fastener", new TextShape(20), "What goes into them, as the table of fasteners names it, e.g. \"AD4\" or \"AN3\".");

        public static readonly ObjectShape<AnchorBracket> Shape = new(
            "bracket",
            "the anchor's bracket",
            [Material, Thickness, Bend, Radius, Base, Standing, Top, Width, Corner, Neutral, Conduit, ConduitIn, ConduitAbove, Fasteners, Fastener],
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
                Top = g.Item(Top),
                Conduit = g.Must(Conduit),
                ConduitIn = g.Or(ConduitIn),
                ConduitAbove = g.Maybe(ConduitAbove),
                Fasteners = g.Or(Fasteners),
                Fastener = g.Or(Fastener),
            },
            new Rule("Each leg is longer than its bends' setbacks and, at an end, the corner; the corners fit the width; the legs of a channel do not meet.", Fits),
            new Rule("Only with a `top` is the conduit in it.", g =>
            {
                if (g.Or(ConduitIn) == ConduitLeg.Top && !g.Has(Top))
                    g.RefuseName(ConduitIn, "\"conduitIn\": \"top\" without a top leg", "`top` with its shape and length");
            }),
            new Rule("Each hole lies whole on its leg, beyond the bend.", HolesFit));

        private static double Setback(Given g) => g.Maybe(Radius) is { } r ? Setback(g, g.Or(Bend), r) : double.NaN;

        /// <summary>Of the second bend; 0: there is none.</summary>
        private static double SecondSetback(Given g) => g.Item(Top) is not { } top ? 0 : (top.Radius ?? g.Maybe(Radius)) is { } r ? Setback(g, top.Bend, r) : double.NaN;

        private static double Setback(Given g, Angle bend, Length radius) => g.Maybe(Thickness) is { } t ? Math.Tan(0.5 * bend.Radians) * (radius.Metres + t.Metres) : double.NaN;

        private static void Fits(Given g)
        {
            var corner = g.Maybe(Corner)?.Metres ?? UsualCorner;
            var top = g.Item(Top);
            Leg(Base, Setback(g), corner);
            Leg(Standing, Setback(g) + SecondSetback(g), top is null ? corner : 0);
            if (top is not null && top.Length.Metres <= SecondSetback(g) + corner)
                g.RefuseValue(Top, $"a top leg of {top.Length.Metres * 1000:0.0} mm, of which the bend takes {SecondSetback(g) * 1000:0.0} mm and the corner {corner * 1000:0.0} mm", "a longer leg");
            if (g.Maybe(Width) is { } width && width.Metres <= 2 * corner)
                g.RefuseValue(Width, $"{g.Shown(Width)}, with corners of {corner * 1000:0.0} mm", "wider than two corners");
            if (top is { Shape: BracketShape.U } && g.Or(Bend).Radians + top.Bend.Radians > (Math.PI * 190 / 180))
                g.RefuseValue(Top, $"bends of {(g.Or(Bend).Radians + top.Bend.Radians) * 180 / Math.PI:0} deg together: the top leg runs into the base", "190 deg together or less");

            void Leg(Member<Length> leg, double bends, double corner)
            {
                if (g.Maybe(leg) is { } length && length.Metres <= bends + corner)
                    g.RefuseValue(leg, $"{g.Shown(leg)}, of which the bend takes {bends * 1000:0.0} mm and the corner {corner * 1000:0.0} mm", "a longer leg");
            }
        }

        private static void HolesFit(Given g)
        {
            if (g.Maybe(Width) is not { } width)
                return;
            bool Off(BracketOpening hole, Length leg, double before, double after) => hole.At.Metres - (0.5 * hole.Diameter.Metres) <= before
                || hole.At.Metres + (0.5 * hole.Diameter.Metres) >= leg.Metres - after
                || Math.Abs(hole.Across.Metres) + (0.5 * hole.Diameter.Metres) >= 0.5 * width.Metres;
            if (g.Item(Conduit) is { } conduit)
            {
                if (g.Or(ConduitIn) == ConduitLeg.Top && g.Item(Top) is { } top && Off(conduit, top.Length, SecondSetback(g), 0))
                    g.RefuseValue(Conduit, "a hole that meets the bend or an edge of the top leg", "a hole that lies whole on it");
                else if (g.Or(ConduitIn) == ConduitLeg.Standing && g.Maybe(Standing) is { } standing && Off(conduit, standing, Setback(g), SecondSetback(g)))
                    g.RefuseValue(Conduit, "a hole that meets the bend or an edge of the standing leg", "a hole that lies whole on it");
            }

            if (g.Item(Fasteners) is not { } holes || g.Maybe(Base) is not { } foot)
                return;
            for (var i = 0; i < holes.Count; i++)
            {
                if (Off(holes[i], foot, Setback(g), 0))
                    g.RefuseRow(Fasteners, i, "a hole that meets the bend or an edge of the base leg", "a hole that lies whole on it");
            }
        }
    }
}
