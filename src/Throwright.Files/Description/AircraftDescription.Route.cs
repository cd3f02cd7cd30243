using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

internal static partial class AircraftDescription
{
    private static class SupportShape
    {
        public static readonly Member<PointAt> Place = Needed("at", PointOrName, "Where it holds the conduit's centre line.");
        public static readonly Member<DirectionAt> Along = Optional("along", Direction, "The line of the conduit through a clamp, either way round. Left out: the clamp turns with the conduit until it is tightened.");
        public static readonly Member<SupportHold> Kind = Optional(
            "kind",
            new WordShape<SupportHold>(
                new("tightClamp", SupportHold.TightClamp, "grips the conduit"),
                new("slidingClamp", SupportHold.SlidingClamp, "holds place and direction, the conduit slides along"),
                new("grommet", SupportHold.Grommet, "holds the place only")),
            "How it holds.",
            SupportHold.TightClamp);
        public static readonly Member<Length> Size = Optional("size", new ExactShape<Length>("1 mm", "100 mm"), "Inside diameter of the clamp or grommet.");
        public static readonly Member<Toleranced<Length>> FromAnchor = Optional("fromAnchor", new TolerancedShape<Length>("1 mm", "100 m"), "Tight clamp closed at a mark: conduit from the anchor to here. Left out: closed where the conduit settled by itself.");
        public static readonly Member<bool> Stays = Optional("stays", Flag, "Whether throwright solve route keeps it. Left out: a grommet stays, since a hole does not move, and a clamp may go.");
        public static readonly ObjectShape<Support> Shape = new(
            "support",
            "a support of the conduit",
            [Place, Along, Kind, Size, FromAnchor, Stays],
            g => new() { Place = g.Must(Place), Along = g.Item(Along), Kind = g.Or(Kind), Size = g.Maybe(Size), FromAnchor = g.Maybe(FromAnchor), Stays = g.Maybe(Stays) },
            new Rule(
                "`fromAnchor` goes with a tight clamp only, and needs `along`.",
                g =>
                {
                    if (g.Has(FromAnchor) && g.Maybe(Kind) is { } kind && kind != SupportHold.TightClamp)
                        g.RefuseName(FromAnchor, $"\"fromAnchor\" with the kind {g.Shown(Kind)}", "a tight clamp, or no fromAnchor: the conduit slides through the others");
                    else if (g.Has(FromAnchor) && !g.Has(Along))
                        g.Missing(Along.Name, $"\"along\", which a clamp closed at a mark needs. {Along.Meaning}");
                }));
    }

    private static class LeavesShape
    {
        public static readonly Member<PointAt> Place = Needed("at", PointOrName, "Where the free conduit begins, behind the sheet.");
        public static readonly Member<DirectionAt> Along = Needed("along", Direction, "The way it leaves, toward the device.");
        public static readonly ObjectShape<Given> Shape = new("leaves", "the conduit's beginning at the cockpit end", [Place, Along], g => g);
    }

    private static class ArrivesShape
    {
        public static readonly Member<PointAt> Place = Needed("at", PointOrName, "Where the anchor holds the conduit.");
        public static readonly Member<DirectionAt> Along = Needed("along", Direction, "The way it arrives, toward the arm.");
        public static readonly ObjectShape<Given> Shape = new("arrives", "the conduit's arrival at the anchor", [Place, Along], g => g);
    }

    private static class AnchorMoveShape
    {
        private static readonly ExactShape<Length> Shift = new("-300 mm", "300 mm");
        public static readonly Member<string> Name = Needed("name", new TextShape(40, mayBeEmpty: false), "What it is called: \"engine down\".");
        public static readonly Member<Length> Aft = Optional("aft", Shift, "How far the anchor goes aft; minus: forward.", Length.Zero, "0 mm");
        public static readonly Member<Length> Right = Optional("right", Shift, "How far it goes to the right; minus: to the left.", Length.Zero, "0 mm");
        public static readonly Member<Length> Up = Optional("up", Shift, "How far it goes up; minus: down.", Length.Zero, "0 mm");
        public static readonly Member<Angle> Turn = Optional("turn", new ExactShape<Angle>("-45 deg", "45 deg"), "How far it turns, right-handed about the line given.", new Angle(0), "0 deg");
        public static readonly Member<DirectionAt> About = Optional("about", Direction, "The line about which it turns: aft, right, up.");
        public static readonly ObjectShape<AnchorMove> Shape = new(
            "anchorMove",
            "an extreme place of the anchor",
            [Name, Aft, Right, Up, Turn, About],
            g => new(g.Must(Name), g.Or(Aft), g.Or(Right), g.Or(Up), g.Or(Turn), g.Item(About)),
            new Rule(
                "`turn` and `about` go together.",
                g =>
                {
                    if (g.Has(Turn) && !g.Has(About))
                        g.Missing(About.Name, $"\"about\", which a turn needs. {About.Meaning}");
                    else if (g.Has(About) && !g.Has(Turn))
                        g.Missing(Turn.Name, $"\"turn\" beside about. {Turn.Meaning}");
                }));
    }

    private static class EndTwistShape
    {
        public static readonly Member<Angle> Turn = Needed("turn", new ExactShape<Angle>("1 deg", "720 deg"), "Turn of the end about its own axis.");
        public static readonly Member<Ratio> Torsion = Optional("torsion", new ExactShape<Ratio>("0.01", "10"), "Torsion stiffness over bending stiffness, measured on the conduit. Left out: 0.77, a solid round steel bar; a wound conduit has another.");
        public static readonly ObjectShape<EndTwist> Shape = new("endTwist", "twist locked in", [Turn, Torsion], g => new(g.Must(Turn), g.Maybe(Torsion)?.Value));
    }

    private static class EndsShape
    {
        public static readonly Member<Given> Leaves = Optional("leaves", LeavesShape.Shape, "Where the conduit leaves the cockpit end, and which way.");
        public static readonly Member<Given> Arrives = Optional("arrives", ArrivesShape.Shape, "Only with the bench form of the lever end: where the conduit arrives at the anchor, and which way. The spatial form says it by itself.");
        public static readonly Member<Length> InBushing = Optional("inBushing", new ExactShape<Length>("0 mm", "1 m"), "Conduit inside the bushing: from where it leaves to its own end.", Length.Zero, "0 mm");
        public static readonly Member<Length> InAnchor = Optional("inAnchor", new ExactShape<Length>("0 mm", "2 m"), "Conduit beyond the place that the anchor holds, to its own end.", Length.Zero, "0 mm");
        public static readonly Member<Length> WireInKnob = Optional("wireInKnob", new ExactShape<Length>("0 mm", "2 m"), "Wire inside the shank of the knob, beyond the conduit's end.", Length.Zero, "0 mm");
        public static readonly Member<Length> WireBeyondPin = Optional("wireBeyondPin", new ExactShape<Length>("0 mm", "1 m"), "Wire beyond the pin of the swivel: its hold and its bent tail.", Length.Zero, "0 mm");
        public static readonly Member<Length> Trimming = Optional("trimming", new ExactShape<Length>("0 mm", "2 m"), "Wire to cut off at fitting. Left out: the published figure.");
        public static readonly Member<Length> OrderStep = Optional("orderStep", new ExactShape<Length>("0.1 mm", "1 m"), "Cables are ordered in whole multiples of this. Left out: the published figure.");
        public static readonly Member<EquatableList<AnchorMove>> Moves = Optional("moves", new ListShape<AnchorMove>(AnchorMoveShape.Shape, "moves", 12), "Extreme places of the anchor when what carries it moves, e.g. the engine on its mounts.", [], "");
        public static readonly Member<EndTwist> Twist = Optional("twist", EndTwistShape.Shape, "What if the conduit's end was turned by a wrench after the clamps were closed? Left out: not asked.");
        public static readonly ObjectShape<CableEnds> Shape = new(
            "cableEnds",
            "the ends of the cable",
            [Leaves, Arrives, InBushing, InAnchor, WireInKnob, WireBeyondPin, Trimming, OrderStep, Moves, Twist],
            g => new()
            {
                Leaves = g.In(Leaves).Item(LeavesShape.Place),
                LeavesAlong = g.In(Leaves).Item(LeavesShape.Along),
                Arrives = g.In(Arrives).Item(ArrivesShape.Place),
                ArrivesAlong = g.In(Arrives).Item(ArrivesShape.Along),
                InBushing = g.Or(InBushing),
                InAnchor = g.Or(InAnchor),
                WireInKnob = g.Or(WireInKnob),
                WireBeyondPin = g.Or(WireBeyondPin),
                Trimming = g.Maybe(Trimming),
                OrderStep = g.Maybe(OrderStep),
                Moves = g.Or(Moves),
                Twist = g.Item(Twist),
            });
    }

    private static class TableEdgeShape
    {
        public static readonly Member<Toleranced<Length>> Overhang = Needed("overhang", new TolerancedShape<Length>("10 mm", "3 m"), "Conduit standing out over the edge.");
        public static readonly Member<Toleranced<Length>> Droop = Needed("droop", new TolerancedShape<Length>("0.1 mm", "3 m"), "How far its tip hangs below the edge.");
        public static readonly ObjectShape<TableEdge> Shape = new(
            "tableEdge",
            "the table-edge test",
            [Overhang, Droop],
            g => new(g.Must(Overhang), g.Must(Droop)),
            new Rule(
                "The tip hangs down less than eight tenths of the overhang, also with both tolerances.",
                g =>
                {
                    if (g.Maybe(Droop)?.Most >= 0.8 * g.Maybe(Overhang)?.Least)
                        g.RefuseValue(Droop, $"{g.Shown(Droop)}: too much for an overhang of {g.Shown(Overhang)}", "a droop below eight tenths of the overhang: take a shorter overhang, the figure comes out better");
                }));
    }
}
