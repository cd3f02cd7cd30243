using System.Text.Json.Nodes;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>Arm angles at the device's two stops.</summary>
internal sealed record SweepEnds(Toleranced<Angle> From, Toleranced<Angle> To)
{
    /// <summary>A whole sweep lies half to each side of angle 0, and each end has half of the tolerance.</summary>
    public static SweepEnds Halved(Toleranced<Angle> whole)
    {
        var half = 0.5 * whole.Nominal.Radians;
        return new(
            new(new(-half), 0.5 * whole.Plus, 0.5 * whole.Minus, whole.Spread),
            new(new(half), 0.5 * whole.Minus, 0.5 * whole.Plus, whole.Spread));
    }
}

/// <summary>The aircraft file, member by member. Reader, schema and reference page all follow from this description.</summary>
/// <remarks>
/// The ranges are no engineering limits: they catch slips of unit and of keyboard (30 m for 30 mm), and every control
/// of a light aircraft lies far inside. They are the project's own choice.
/// </remarks>
internal static partial class AircraftDescription
{
    /// <summary>An axis and a zero direction closer than this leave the zero of the arm angle uncertain.</summary>
    private const double LeastAngleToAxis = Math.PI / 180;

    private static readonly TextShape Line = new(60);
    private static readonly TextShape Note = new(2000, manyLines: true);
    private static readonly FlagShape Flag = new();

    private static readonly RowShape<PointAt> Point = new(
        "[station, buttline, waterline]",
        "point",
        "[\"12 in\", \"-3 in ± 1/16 in\", \"4 in\"]",
        [.. ((string[])["station (aft)", "buttline (right)", "waterline (up)"]).Select(n => (n, (Shape)new TolerancedShape<Length>("-100 m", "100 m")))],
        c => new((Toleranced<Length>)c[0], (Toleranced<Length>)c[1], (Toleranced<Length>)c[2]));

    private static readonly ShortOrLongShape<PointAt> PointOrName = new(new PointNameShape(), Point);

    private static readonly RowShape<DirectionAt> Direction = new(
        "direction [aft, right, up]",
        "direction",
        "[1, 0, -0.5]",
        [.. ((string[])["aft", "right", "up"]).Select(n => (n, (Shape)new ComponentShape()))],
        c => new((double)c[0], (double)c[1], (double)c[2]),
        c => new Vector3((double)c[0], (double)c[1], (double)c[2]).Size < 1e-9 ? "a direction without length" : null);

    private static readonly WordShape<DeviceStop> Stop = new(
        new("push", DeviceStop.Push, "the stop to which pushing the knob takes the device"),
        new("pull", DeviceStop.Pull, "the stop to which pulling the knob takes the device"));

    public static ObjectShape<Aircraft> File => FileShape.Shape;

    private static Member<T> Needed<T>(string name, Shape<T> shape, string meaning)
        where T : notnull => new(name, shape, required: true, meaning);

    private static Member<T> Optional<T>(string name, Shape<T> shape, string meaning)
        where T : notnull => new(name, shape, required: false, meaning);

    private static Member<T> Optional<T>(string name, Shape<T> shape, string meaning, T otherwise, string shown)
        where T : notnull => new(name, shape, required: false, meaning) { Fallback = otherwise, Otherwise = shown, HasFallback = true };

    private static Member<T> Optional<T>(string name, WordShape<T> shape, string meaning, T otherwise)
        where T : struct, Enum => Optional(name, shape, meaning, otherwise, $"`{shape.TextOf(otherwise)}`");

    private static Member<string> Words(string name, TextShape shape, string meaning) => Optional(name, shape, meaning, "", "");

    private static Member<bool> Yes(string name, string meaning) => Optional(name, Flag, meaning, false, "`false`");

    private static class NameShape
    {
        public static readonly Member<string> Name = Needed("name", new TextShape(100, mayBeEmpty: false), "Name of the aircraft, as it shall stand on the papers.");
        public static readonly Member<string> Builder = Words("builder", new TextShape(100), "Who builds it, for the papers.");
        public static readonly Member<string> AboutIt = Words("note", Note, "Anything worth keeping with the aircraft.");
        public static readonly ObjectShape<Given> Shape = new("aircraft", "the aircraft", [Name, Builder, AboutIt], g => g);
    }

    private static class DisplayShape
    {
        private static readonly Display Usual = new();
        public static readonly Member<LengthUnit> LengthIn = Optional(
            "length", new WordShape<LengthUnit>(new("in", LengthUnit.Inch, "inches"), new("mm", LengthUnit.Millimetre, "millimetres")), "Unit in which lengths are shown.", Usual.Length);
        public static readonly Member<ForceUnit> ForceIn = Optional(
            "force", new WordShape<ForceUnit>(new("lbf", ForceUnit.PoundForce, "pounds"), new("N", ForceUnit.Newton, "newtons")), "Unit in which forces are shown.", Usual.Force);
        public static readonly Member<int> Fraction = Optional(
            "fraction", new CountShape(16, 32, 64), "Smallest part of an inch on your tape: fractions are written to this denominator.", Usual.Fraction, $"{Usual.Fraction}");
        public static readonly ObjectShape<Display> Shape = new(
            "display", "the display of figures", [LengthIn, ForceIn, Fraction], g => new() { Length = g.Or(LengthIn), Force = g.Or(ForceIn), Fraction = g.Or(Fraction) });
    }

    private static class EnvironmentShape
    {
        public static readonly Member<AirframeMaterial> Airframe = Needed(
            "airframe",
            new WordShape<AirframeMaterial>(
                new("aluminium", AirframeMaterial.Aluminium),
                new("steelTube", AirframeMaterial.SteelTube),
                new("carbonComposite", AirframeMaterial.CarbonComposite),
                new("glassComposite", AirframeMaterial.GlassComposite),
                new("wood", AirframeMaterial.Wood)),
            "Material of the structure between knob and device: it grows with heat, and the wire grows differently.");

        public static readonly Member<Temperature> Rigged = Degrees("rigged", "Temperature in the shop when the controls are rigged.");
        public static readonly Member<Temperature> Coldest = Degrees("coldest", "Coldest morning the aircraft shall see.");
        public static readonly Member<Temperature> Cabin = Degrees("cabin", "Hottest the cabin gets, e.g. parked in the sun.");
        public static readonly Member<Temperature> EngineBay = Degrees("engineBay", "Hottest the air around the engine gets, also after shut-down.");
        public static readonly Member<Temperature> Elsewhere = Degrees("elsewhere", "Hottest anywhere else: wing, tail cone, float.");

        public static readonly ObjectShape<Surroundings> Shape = new(
            "environment",
            "the surroundings",
            [Airframe, Rigged, Coldest, Cabin, EngineBay, Elsewhere],
            g => new()
            {
                Airframe = g.Must(Airframe),
                Rigged = g.Must(Rigged),
                Coldest = g.Must(Coldest),
                Cabin = g.Must(Cabin),
                EngineBay = g.Must(EngineBay),
                Elsewhere = g.Must(Elsewhere),
            },
            Ordered(Coldest, Rigged),
            Ordered(Rigged, Cabin),
            Ordered(Rigged, EngineBay),
            Ordered(Rigged, Elsewhere));

        private static Member<Temperature> Degrees(string name, string meaning) => Needed(name, new ExactShape<Temperature>("-90 degC", "400 degC"), meaning);

        private static Rule Ordered(Member<Temperature> colder, Member<Temperature> hotter) => new(
            $"`{colder.Name}` is not above `{hotter.Name}`.",
            g =>
            {
                if (g.Maybe(colder)?.Celsius > g.Maybe(hotter)?.Celsius)
                    g.RefuseValue(hotter, $"{g.Shown(hotter)}: below {colder.Name}, {g.Shown(colder)}", $"{hotter.Name} at least as hot as {colder.Name}");
            });
    }

    private static class CushionShape
    {
        public static readonly Member<Length> Wanted = Optional("wanted", new ExactShape<Length>("0 mm", "1 m"), "Travel you want left at each end of the knob, and between swivel and conduit tip. Left out: the published figure.");
        public static readonly Member<Length> Most = Optional("most", new ExactShape<Length>("0.1 mm", "1 m"), "Most travel you want left at either end of the knob. Left out: the published figure.");
        public static readonly ObjectShape<Given> Shape = new(
            "cushion",
            "the cushion",
            [Wanted, Most],
            g => g,
            new Rule(
                "`wanted` is not above `most`.",
                g =>
                {
                    if (g.Maybe(Wanted)?.Metres > g.Maybe(Most)?.Metres)
                        g.RefuseValue(Most, $"{g.Shown(Most)}: less than wanted, {g.Shown(Wanted)}", "most at least as large as wanted");
                }));
    }

    private static class KnobParts
    {
        private static readonly CockpitEnd Usual = new();
        public static readonly Member<KnobShape> Form = Optional(
            "shape",
            new WordShape<KnobShape>(
                new("round", KnobShape.Round, "pinched or pulled with fingers"),
                new("tHandle", KnobShape.THandle, "pulled with four fingers"),
                new("leverHandle", KnobShape.LeverHandle, "gripped by the hand")),
            "What the hand holds.",
            Usual.Knob);
        public static readonly Member<string> Colour = Words("colour", Line, "Colour of the knob or handle.");
        public static readonly Member<Toleranced<Length>> Diameter = Optional("diameter", new TolerancedShape<Length>("2 mm", "300 mm"), "Diameter of a round knob; of the bar of a T-handle; of a lever handle's grip.");
        public static readonly Member<Toleranced<Length>> Length = Optional("length", new TolerancedShape<Length>("1 mm", "300 mm"), "Along the shank, front to back. A T-handle needs none: its bar is as long as it is thick.");
        public static readonly Member<Toleranced<Length>> Width = Optional("width", new TolerancedShape<Length>("5 mm", "500 mm"), "Across the shank, end to end of a T-handle's bar, which lies level at turn zero: to the right in the sheet. Given with another shape, it counts in the same way.");
        public static readonly Member<Length> Hand = Optional("hand", new ExactShape<Length>("0 mm", "200 mm"), "Room for a hand all round the knob that must stay free in every position. Left out: the hand's room is told, not asked for.");
        public static readonly ObjectShape<Given> Shape = new("knob", "the knob", [Form, Colour, Diameter, Length, Width, Hand], g => g, Less(Diameter, Width, "the bar is shorter than it is thick"));
    }

    private static class CockpitEndShape
    {
        private static readonly CockpitEnd Usual = new();
        public static readonly Member<Toleranced<Length>> Stroke = Optional("stroke", new TolerancedShape<Length>("1 mm", "2 m"), "Travel of the knob from its IN stop to its OUT stop: pull it fully out and measure the shank.");
        public static readonly Member<string> PushMeans = Words("pushMeans", Line, "What the device does when the knob is pushed, e.g. \"open\".");
        public static readonly Member<string> PullMeans = Words("pullMeans", Line, "What the device does when the knob is pulled, e.g. \"shut\".");
        public static readonly Member<Given> Knob = Optional("knob", KnobParts.Shape, "Knob or handle.");
        public static readonly Member<LockKind> Lock = Optional(
            "lock",
            new WordShape<LockKind>(
                new("none", LockKind.None, "nothing holds the knob"),
                new("pressToRelease", LockKind.PressToRelease, "held until a button is pressed"),
                new("twist", LockKind.Twist, "held by turning the knob"),
                new("vernier", LockKind.Vernier, "fine setting by turning, coarse with a button"),
                new("friction", LockKind.Friction, "held by an adjustable friction nut")),
            "What holds the knob where it is set.",
            Usual.Lock);
        public static readonly Member<Force> LockHolds = Optional("lockHolds", new ExactShape<Force>("0 N", "1000000 N"), "Pull or push along the shank that the lock holds.");
        public static readonly Member<Toleranced<Length>> Play = Optional("play", new TolerancedShape<Length>("0 mm", "100 mm"), "Free play between knob and core wire along the travel: hold the wire and move the knob.");
        public static readonly Member<Sheet> Sheet = Optional("sheet", new SheetNameShape(), "The sheet that carries the bushing.");
        public static readonly Member<PointAt> Hole = Optional("hole", PointOrName, "Middle of the bushing's hole on the sheet's face toward you.");
        public static readonly Member<MountTilt> Tilt = Optional("tilt", MountTiltShape.Shape, "Lean of the shank against the sheet. Left out: square to it.");
        public static readonly Member<KnobTurn> Turns = Optional("turns", TurnsShape.Shape, "How far the knob turns about the shank. Left out: it does not; with a lock that works by turning, any turn.");
        public static readonly Member<Shank> Shank = Optional("shank", ShankShape.Shape, "The rod between knob and bushing.");
        public static readonly Member<Bushing> Bushing = Optional("bushing", BushingShape.Shape, "The threaded body through the sheet, with its nut.");
        public static readonly Member<WedgeWanted> Wedge = Optional("wedge", WedgeShape.Shape, "The wedge pair of a leaning shank, where it shall not be as usual.");
        public static readonly Member<Length> Clear = Optional("clear", new ExactShape<Length>("0 mm", "200 mm"), "Clearance you want all round the handle in every position. Left out: the usual figure.");

        public static readonly ObjectShape<CockpitEnd> Shape = new(
            "cockpitEnd",
            "the cockpit end",
            [Stroke, PushMeans, PullMeans, Knob, Lock, LockHolds, Play, Sheet, Hole, Tilt, Turns, Shank, Bushing, Wedge, Clear],
            g => new()
            {
                Stroke = g.Maybe(Stroke),
                PushMeans = g.Or(PushMeans),
                PullMeans = g.Or(PullMeans),
                Knob = g.In(Knob).Or(KnobParts.Form),
                KnobColour = g.In(Knob).Or(KnobParts.Colour),
                Lock = g.Or(Lock),
                LockHolds = g.Maybe(LockHolds),
                Play = g.Maybe(Play),
                Sheet = g.Item(Sheet),
                Hole = g.Item(Hole),
                Tilt = g.Item(Tilt),
                KnobSize = new()
                {
                    Diameter = g.In(Knob).Maybe(KnobParts.Diameter),
                    Length = g.In(Knob).Maybe(KnobParts.Length),
                    Width = g.In(Knob).Maybe(KnobParts.Width),
                    Hand = g.In(Knob).Maybe(KnobParts.Hand),
                },
                Turns = g.Item(Turns),
                Shank = g.Item(Shank) ?? new(),
                Bushing = g.Item(Bushing),
                Wedge = g.Item(Wedge),
                Clear = g.Maybe(Clear),
            },
            new Rule(
                $"The hole lies in the sheet: at most {MostOffSheet * 1000:0} mm off it.",
                g =>
                {
                    if (g.Item(Sheet) is { } sheet && g.Item(Hole) is { } hole && OffSheet(hole, sheet.At, sheet.Normal) is var off && off > MostOffSheet)
                        g.RefuseValue(Hole, $"{g.Shown(Hole)}: {Inches(off)} off the sheet {sheet.Id}", $"a point of the sheet, at most {MostOffSheet * 1000:0} mm off its face");
                }),
            new Rule(
                "The shank goes through the bushing.",
                g =>
                {
                    Given shank = g.In(Shank), bushing = g.In(Bushing);
                    if (g.Has(Shank) && g.Has(Bushing) && shank.Maybe(ShankShape.Diameter)?.Least >= bushing.Maybe(BushingShape.Diameter)?.Most)
                        shank.RefuseValue(ShankShape.Diameter, $"{shank.Shown(ShankShape.Diameter)}: as thick as the thread round it, {bushing.Shown(BushingShape.Diameter)}", "a shank thinner than the bushing's thread");
                }));
    }

    private static class CoreShape
    {
        public static readonly Member<CoreKind> Kind = Optional(
            "kind",
            new WordShape<CoreKind>(
                new("solid", CoreKind.Solid, "one wire"),
                new("strand1x7", CoreKind.Strand1x7, "one strand of 7 wires"),
                new("strand1x19", CoreKind.Strand1x19, "one strand of 19 wires"),
                new("strand7x7", CoreKind.Strand7x7, "7 strands of 7 wires"),
                new("strand7x19", CoreKind.Strand7x19, "7 strands of 19 wires")),
            "How the core is made.",
            CoreKind.Solid);
        public static readonly Member<Toleranced<Length>> Diameter = Needed("diameter", new TolerancedShape<Length>("0.1 mm", "20 mm"), "Diameter of the core wire, with a micrometer or caliper.");
        public static readonly Member<CoreMaterial> Material = Optional(
            "material",
            new WordShape<CoreMaterial>(
                new("musicWire", CoreMaterial.MusicWire, "spring steel: a magnet holds it, and it rusts"),
                new("stainless302", CoreMaterial.Stainless302, "stainless spring steel")),
            "Material of the core.",
            CoreMaterial.MusicWire);
        public static readonly ObjectShape<Core> Shape = new(
            "core", "the core wire", [Kind, Diameter, Material], g => new() { Kind = g.Or(Kind), Diameter = g.Must(Diameter), Material = g.Or(Material) });
    }

    private static class ConduitShape
    {
        public static readonly Member<Toleranced<Length>> Bore = Optional("bore", new TolerancedShape<Length>("0.1 mm", "50 mm"), "Inside diameter of the conduit or of its liner, with drill shanks as gauges.");
        public static readonly Member<ConduitMaterial> Material = Optional(
            "material",
            new WordShape<ConduitMaterial>(
                new("carbonSteel", ConduitMaterial.CarbonSteel, "steel coil or braid"),
                new("stainless302", ConduitMaterial.Stainless302, "stainless coil or braid")),
            "Material that carries the load of the conduit.",
            ConduitMaterial.CarbonSteel);
        public static readonly Member<Toleranced<Length>> Outside = Optional("outside", new TolerancedShape<Length>("0.5 mm", "100 mm"), "Outside diameter of the conduit, with a caliper: clamps go by it.");
        public static readonly Member<Length> MinRadius = Optional("minRadius", new ExactShape<Length>("1 mm", "10 m"), "Smallest bend radius that the maker allows, to the conduit's centre line.");
        public static readonly Member<Toleranced<Stiffness>> PullStiffness = Optional("pullStiffness", new TolerancedShape<Stiffness>("1 N/m", "1e9 N/mm"), "Stiffness of the whole conduit along its length when the core is pulled and the conduit squeezed.");
        public static readonly Member<Toleranced<Stiffness>> PushStiffness = Optional("pushStiffness", new TolerancedShape<Stiffness>("1 N/m", "1e9 N/mm"), "The same when the core is pushed and the conduit drawn out; far softer for a plain coil.");
        public static readonly Member<Toleranced<BendingStiffness>> Bending = Optional("bending", new TolerancedShape<BendingStiffness>("1e-6 N m2", "1000 N m2"), "Stiffness against bending, core inside. Few makers say it: the table's edge gives it.");
        public static readonly Member<TableEdge> TableEdge = Optional("tableEdge", TableEdgeShape.Shape, "Instead of bending: a piece with its core held level at a table's edge. Needs weight too.");
        public static readonly Member<Toleranced<LineWeight>> Weight = Optional("weight", new TolerancedShape<LineWeight>("0.001 N/m", "1000 N/m"), "Weight of conduit and core per length, on a kitchen scale.");
        public static readonly ObjectShape<Conduit> Shape = new(
            "conduit",
            "the conduit",
            [Outside, Bore, Material, MinRadius, PullStiffness, PushStiffness, Bending, TableEdge, Weight],
            g => new()
            {
                Outside = g.Maybe(Outside),
                Bending = g.Maybe(Bending),
                TableEdge = g.Item(TableEdge),
                Weight = g.Maybe(Weight),
                Bore = g.Maybe(Bore),
                Material = g.Or(Material),
                MinRadius = g.Maybe(MinRadius),
                PullStiffness = g.Maybe(PullStiffness),
                PushStiffness = g.Maybe(PushStiffness),
            },
            Rule.NotBoth(Bending, TableEdge),
            new Rule(
                "The bore is smaller than the outside.",
                g =>
                {
                    if (g.Maybe(Bore)?.Nominal.Metres >= g.Maybe(Outside)?.Nominal.Metres)
                        g.RefuseValue(Outside, $"{g.Shown(Outside)}: not larger than the bore, {g.Shown(Bore)}", "an outside diameter larger than the bore");
                }));
    }

    private static class BendShape
    {
        public static readonly Member<Toleranced<Angle>> Turned = Needed("angle", new TolerancedShape<Angle>("0.1 deg", "360 deg"), "Angle by which the conduit turns.");
        public static readonly Member<Toleranced<Length>> Radius = Needed("radius", new TolerancedShape<Length>("1 mm", "100 m"), "Radius of the bend to the conduit's centre line.");
        public static readonly ObjectShape<Bend> Shape = new("bend", "a bend", [Turned, Radius], g => new(g.Must(Turned), g.Must(Radius)));
    }

    private static class CoreLimitsShape
    {
        public static readonly Member<Force> Pull = Optional("pull", new ExactShape<Force>("0.1 N", "1000000 N"), "Largest pull the maker allows.");
        public static readonly Member<Force> Push = Optional("push", new ExactShape<Force>("0.1 N", "1000000 N"), "Largest push the maker allows.");
        public static readonly ObjectShape<Given> Shape = new("coreLimits", "the limits of the core", [Pull, Push], g => g);
    }

    private static class DragShape
    {
        public static readonly Member<Force> Knob = Optional("knob", new ExactShape<Force>("0 N", "1000000 N"), "Drag of the seal or wiper at the knob.", Force.Zero, "0 N");
        public static readonly Member<Force> Device = Optional("device", new ExactShape<Force>("0 N", "1000000 N"), "Drag of the seal or wiper at the device.", Force.Zero, "0 N");
        public static readonly ObjectShape<Given> Shape = new("drag", "the drag of seals", [Knob, Device], g => g);
    }

    private static class CableShape
    {
        public static readonly Member<Core> Core = Optional("core", CoreShape.Shape, "Core wire.");
        public static readonly Member<Conduit> Conduit = Optional("conduit", ConduitShape.Shape, "Conduit.");
        public static readonly Member<Toleranced<Ratio>> Friction = Optional("friction", new TolerancedShape<Ratio>("0", "1.5"), "Coefficient of friction of the core in the conduit, with its band.");
        public static readonly Member<Toleranced<Length>> Length = Optional("length", new TolerancedShape<Length>("1 mm", "100 m"), "Length of the conduit, end to end.");
        public static readonly Member<Toleranced<Angle>> BendTotal = Optional("bendTotal", new TolerancedShape<Angle>("0 deg", "7200 deg"), "Sum of all the angles that the conduit turns on its way.");
        public static readonly Member<EquatableList<Bend>> Bends = Optional("bends", new ListShape<Bend>(BendShape.Shape, "bends", 200), "Bends one by one, from the device to the knob.", [], "");
        public static readonly Member<Length> LongestStraight = Optional("longestStraight", new ExactShape<Length>("0 mm", "100 m"), "Longest straight stretch of the conduit.");
        public static readonly Member<EquatableList<Support>> Supports = Optional("supports", new ListShape<Support>(SupportShape.Shape, "supports", 100), "What holds the conduit on its way, from the device to the knob.", [], "");
        public static readonly Member<EquatableList<PointAt>> Places = Optional("places", new ListShape<PointAt>(PointOrName, "points", 200), "Where a support may sit, for `throwright solve route`: frames and stringers within reach. Left out: anywhere.", [], "");
        public static readonly Member<CableEnds> Ends = Optional("ends", EndsShape.Shape, "Both ends of the cable: where it begins, and what to add for the order.");
        public static readonly Member<Toleranced<Length>> Ordered = Optional("ordered", new TolerancedShape<Length>("1 mm", "100 m"), "Length of the conduit as ordered or delivered, before it is cut.");
        public static readonly Member<Given> CoreLimits = Optional("limits", CoreLimitsShape.Shape, "What the maker of the cable allows.");
        public static readonly Member<Given> Drag = Optional("drag", DragShape.Shape, "Drag of seals and wipers.");
        public static readonly Member<string> Source = Words("source", new TextShape(200), "Where these figures come from.");

        public static readonly ObjectShape<Cable> Shape = new(
            "cable",
            "the cable",
            [Core, Conduit, Friction, Length, BendTotal, Bends, LongestStraight, Supports, Places, Ends, Ordered, CoreLimits, Drag, Source],
            g => new()
            {
                Core = g.Item(Core),
                Conduit = g.Item(Conduit),
                Friction = g.Maybe(Friction),
                Length = g.Maybe(Length),
                BendTotal = g.Maybe(BendTotal),
                Bends = g.Or(Bends),
                LongestStraight = g.Maybe(LongestStraight),
                Supports = g.Or(Supports),
                Places = g.Or(Places),
                Ends = g.Item(Ends),
                Ordered = g.Maybe(Ordered),
                PullLimit = g.In(CoreLimits).Maybe(CoreLimitsShape.Pull),
                PushLimit = g.In(CoreLimits).Maybe(CoreLimitsShape.Push),
                KnobDrag = g.In(Drag).Or(DragShape.Knob),
                DeviceDrag = g.In(Drag).Or(DragShape.Device),
                Source = g.Or(Source),
            },
            Rule.NotBoth(BendTotal, Bends),
            new Rule(
                "The bore is larger than the core, also with both tolerances against it.",
                g =>
                {
                    Given core = g.In(Core), conduit = g.In(Conduit);
                    if (conduit.Maybe(ConduitShape.Bore)?.Least <= core.Maybe(CoreShape.Diameter)?.Most)
                        conduit.RefuseValue(ConduitShape.Bore, $"{conduit.Shown(ConduitShape.Bore)}: the core, {core.Shown(CoreShape.Diameter)}, does not go in", "a bore larger than the core, also at the ends of both tolerances");
                }),
            new Rule(
                "The longest straight stretch is not longer than the conduit.",
                g =>
                {
                    if (g.Maybe(LongestStraight)?.Metres > g.Maybe(Length)?.Most)
                        g.RefuseValue(LongestStraight, $"{g.Shown(LongestStraight)}: longer than the conduit, {g.Shown(Length)}", "a stretch of the conduit");
                }));
    }

    private static class ArmShape
    {
        public static readonly Member<Toleranced<Length>> Radius = Optional("radius", new TolerancedShape<Length>("1 mm", "2 m"), "Centre of the pivot to the centre of the hole in use, with a caliper.");
        public static readonly Member<EquatableList<Length>> Holes = Optional("holes", new ListShape<Length>(new ExactShape<Length>("1 mm", "2 m"), "lengths", 50), "The same to every hole that the arm has: the tool may propose another.", [], "");
        public static readonly Member<Toleranced<Length>> AlongAxis = Optional("alongAxis", new TolerancedShape<Length>("-10 m", "10 m"), "Spatial form: distance of the swivel from the pivot point, along the axis.", default, "0 mm");
        public static readonly Member<DirectionAt> Zero = Optional("zero", Direction, "Spatial form: direction of the arm, pivot to hole, at arm angle 0. Its part along the axis does not count.");
        public static readonly Member<Toleranced<Length>> Width = Optional("width", new TolerancedShape<Length>("1 mm", "200 mm"), "Across the arm at its holes, for clearance. Left out: four pin diameters are taken.");
        public static readonly ObjectShape<Given> Shape = new("arm", "the arm at the lever end", [Radius, Holes, AlongAxis, Zero, Width], g => g);
    }

    private static class SweepShape
    {
        public static readonly Member<Toleranced<Angle>> From = Needed("from", new TolerancedShape<Angle>("-360 deg", "360 deg"), "Arm angle at one stop of the device.");
        public static readonly Member<Toleranced<Angle>> To = Needed("to", new TolerancedShape<Angle>("-360 deg", "360 deg"), "Arm angle at the other stop, the larger of the two.");
        public static readonly ObjectShape<SweepEnds> Ends = new(
            "sweep",
            "the sweep of the arm",
            [From, To],
            g => new(g.Must(From), g.Must(To)),
            new Rule(
                "`from` is smaller than `to`, also with both tolerances against it.",
                g =>
                {
                    if (g.Maybe(From)?.Most >= g.Maybe(To)?.Least)
                        g.RefuseValue(From, $"{g.Shown(From)}: not smaller than to, {g.Shown(To)}", "from smaller than to, also at the ends of both tolerances");
                }),
            new Rule(
                "The sweep is at most 360 deg, also with both tolerances.",
                g =>
                {
                    if (g.Maybe(To)?.Most - g.Maybe(From)?.Least > 2 * Math.PI * (1 + 1e-12))
                        g.RefuseValue(To, $"{g.Shown(To)}: more than a full turn after from, {g.Shown(From)}", "a sweep of at most 360 deg, also at the ends of both tolerances");
                }));

        /// <summary>"90 deg ± 2 deg": half to each side of angle 0.</summary>
        public static readonly ShortOrLongShape<SweepEnds> Shape = new(new MadeShape<Toleranced<Angle>, SweepEnds>(new TolerancedShape<Angle>("0.1 deg", "360 deg"), SweepEnds.Halved), Ends);
    }

    private static class BenchShape
    {
        public static readonly Member<Toleranced<Length>> Distance = Needed("distance", new TolerancedShape<Length>("1 mm", "10 m"), "Anchor to swivel along the line of the wire, arm at mid travel (with the rule offset: arm at angle 0).");
        public static readonly Member<AnchorRule> Where = Needed(
            "rule",
            new WordShape<AnchorRule>(
                new("squareAtMid", AnchorRule.SquareAtMid, "the wire is square to the arm at mid travel"),
                new("chord", AnchorRule.Chord, "the anchor lies on the line through the swivel's two end places"),
                new("halfSagitta", AnchorRule.HalfSagitta, "half way between these two: the wire swings nearly the same to both sides"),
                new("offset", AnchorRule.Offset, "measured, see offset")),
            "Where the line of the wire lies.");
        public static readonly Member<Toleranced<Length>> Offset = Optional("offset", new TolerancedShape<Length>("-2 m", "2 m"), "Only with the rule offset: pivot to the line of the wire, along the arm at angle 0.");
        public static readonly ObjectShape<BenchAnchor> Shape = new(
            "bench",
            "the bench form of the lever end",
            [Distance, Where, Offset],
            g => new() { Distance = g.Must(Distance), Rule = g.Must(Where), Offset = g.Maybe(Offset) },
            new Rule(
                "`offset` is given with the rule `offset`, and only then.",
                g =>
                {
                    if (g.Maybe(Where) == AnchorRule.Offset && !g.Has(Offset))
                        g.Missing(Offset.Name, $"\"offset\": {Offset.Meaning}");
                    if (g.Maybe(Where) is { } rule && rule != AnchorRule.Offset && g.Has(Offset))
                        g.RefuseName(Offset, $"\"offset\" with the rule {g.Shown(Where)}", "the rule \"offset\", or no offset: the other rules work it out");
                },
                () => new()
                {
                    ["if"] = new JsonObject { ["properties"] = new JsonObject { ["rule"] = new JsonObject { ["const"] = "offset" } }, ["required"] = new JsonArray("rule") },
                    ["then"] = new JsonObject { ["required"] = new JsonArray("offset") },
                    ["else"] = new JsonObject { ["properties"] = new JsonObject { ["offset"] = false } },
                }));
    }

    private static class AnchorShape
    {
        public static readonly Member<PointAt> Place = Optional("at", PointOrName, "Spatial form: where the anchor holds the conduit.");
        public static readonly Member<DirectionAt> Along = Optional("along", Direction, "Spatial form: direction in which the conduit's end points, toward the arm. Left out: at the swivel at mid travel.");
        public static readonly Member<Toleranced<Length>> Tip = Optional("tip", new TolerancedShape<Length>("0 mm", "2 m"), "How far the conduit's end tube stands out of the anchor, toward the arm.", default, "0 mm");
        public static readonly Member<Angle> Swivels = Optional("swivels", new ExactShape<Angle>("0 deg", "90 deg"), "Angle by which the end tube can tilt to each side; 0 deg: it is fixed and the wire bends.", Angle.Zero, "0 deg");
        public static readonly Member<Toleranced<Stiffness>> Bracket = Optional("stiffness", new TolerancedShape<Stiffness>("1 N/m", "1e9 N/mm"), "Stiffness of the anchor's bracket along the wire: hang a weight on it and measure how far it gives.");
        public static readonly ObjectShape<Given> Shape = new("anchor", "the anchor", [Place, Along, Tip, Swivels, Bracket], g => g);
    }

    private static class RiggedShape
    {
        public static readonly Member<DeviceStop> AtStop = Needed("stop", Stop, "The stop that the device is held against, lightly.");
        public static readonly Member<Toleranced<Length>> KnobOut = Needed("knobOut", new TolerancedShape<Length>("0 mm", "2 m"), "Knob at that moment, measured from where it is pushed fully in.");
        public static readonly ObjectShape<RiggedPlace> Shape = new("rigged", "the rigged place of the swivel", [AtStop, KnobOut], g => new(g.Must(AtStop), g.Must(KnobOut)));
    }

    private static class SwivelShape
    {
        public static readonly Member<Toleranced<Length>> Length = Optional("length", new TolerancedShape<Length>("0 mm", "500 mm"), "Length of the fitting along the wire, centred on its pin.", default, "0 mm");
        public static readonly Member<Toleranced<Length>> Play = Optional("play", new TolerancedShape<Length>("0 mm", "20 mm"), "Clearance of the pin in the arm's hole: hole diameter less pin diameter.");
        public static readonly Member<Toleranced<Length>> OnWire = Optional("at", new TolerancedShape<Length>("1 mm", "10 m"), "Wire from the conduit's end at the anchor to the pin, knob pushed fully in. Left out with rigged: the balanced place is proposed.");
        public static readonly Member<RiggedPlace> Rigged = Optional("rigged", RiggedShape.Shape, "Instead of at: a knob place measured with the device against a stop, no more force on the knob than keeps it there: pushed lightly at the push stop, pulled lightly at the pull stop. Where a spring holds the device on one stop, rig at that stop.");
        public static readonly Member<EquatableList<WireHold>> HoldsBy = Optional(
            "holdsBy",
            new ListShape<WireHold>(
                new WordShape<WireHold>(
                    new("setScrew", WireHold.SetScrew, "a screw clamps the wire"),
                    new("threadlocker", WireHold.Threadlocker, "the screw is secured with threadlocker"),
                    new("bentTail", WireHold.BentTail, "the wire is bent over behind the fitting"),
                    new("crimp", WireHold.Crimp, "a crimped sleeve or end"),
                    new("loopedEye", WireHold.LoopedEye, "the wire is wound to an eye")),
                "words",
                5,
                noneTwice: true),
            "Everything that keeps the wire in the fitting.",
            [],
            "");
        public static readonly ObjectShape<Swivel> Shape = new(
            "swivel",
            "the swivel",
            [Length, Play, OnWire, Rigged, HoldsBy],
            g => new() { Length = g.Or(Length), Play = g.Maybe(Play), At = g.Maybe(OnWire), Rigged = g.Item(Rigged), HoldsBy = g.Or(HoldsBy) },
            Rule.NotBoth(OnWire, Rigged));
    }

    private static class BiasShape
    {
        public static readonly Member<DeviceStop> Toward = Needed("toward", Stop, "The stop to which the device moves by itself.");
        public static readonly Member<Toleranced<Torque>> AtStop = Needed("torque", new TolerancedShape<Torque>("0 N m", "100000 N m"), "Torque at that stop.");
        public static readonly Member<TorsionRate> Rate = Optional("rate", new ExactShape<TorsionRate>("0 N m/rad", "100000 N m/rad"), "Torque added for each degree away from that stop.", default, "0 N m/rad");
        public static readonly Member<bool> Spring = Yes("spring", "A spring does it: it can break, weight and pressure can't.");
        public static readonly ObjectShape<DeviceBias> Shape = new(
            "bias", "the bias of the device", [Toward, AtStop, Rate, Spring], g => new() { Toward = g.Must(Toward), Torque = g.Must(AtStop), Rate = g.Or(Rate), Spring = g.Or(Spring) });
    }

    private static class DetentShape
    {
        public static readonly Member<Angle> Rest = Needed("at", new ExactShape<Angle>("-360 deg", "360 deg"), "Arm angle at which the device wants to rest.");
        public static readonly Member<Torque> Most = Needed("torque", new ExactShape<Torque>("0 N m", "100000 N m"), "Largest torque toward it.");
        public static readonly Member<Angle> Within = Needed("within", new ExactShape<Angle>("0.1 deg", "180 deg"), "How far to each side it is felt; the torque is largest half way.");
        public static readonly ObjectShape<Detent> Shape = new("detent", "a detent of the device", [Rest, Most, Within], g => new(g.Must(Rest), g.Must(Most), g.Must(Within)));
    }

    private static class LoadShape
    {
        private static readonly RowShape<TorqueAt> Row = new(
            "[arm angle, torque]",
            "torqueAt",
            "[\"-45 deg\", \"4 lbf in ± 20 %\"]",
            [("arm angle", new ExactShape<Angle>("-360 deg", "360 deg")), ("torque", new TolerancedShape<Torque>("0 N m", "100000 N m"))],
            c => new((Angle)c[0], (Toleranced<Torque>)c[1]));

        public static readonly Member<Toleranced<Torque>> Torque = Optional("torque", new TolerancedShape<Torque>("0 N m", "100000 N m"), "Torque that resists motion both ways, like friction: pull the arm square with a spring scale, force times radius.");
        public static readonly Member<EquatableList<TorqueAt>> Table = Optional("torqueTable", new ListShape<TorqueAt>(Row, "rows [arm angle, torque]", 200, least: 2), "The same where it changes over the arm angle, in rising angles.", [], "");
        public static readonly Member<bool> Measured = Yes("measured", "The torque was measured on the device, and is no estimate.");
        public static readonly Member<DeviceBias> Bias = Optional("bias", BiasShape.Shape, "Torque by which the device moves by itself: spring, weight, pressure.");
        public static readonly Member<EquatableList<Detent>> Detents = Optional("detents", new ListShape<Detent>(DetentShape.Shape, "detents", 50), "Places where the device wants to rest.", [], "");
        public static readonly ObjectShape<DeviceLoad> Shape = new(
            "load",
            "the load of the device",
            [Torque, Table, Measured, Bias, Detents],
            g => new() { Torque = g.Maybe(Torque), TorqueTable = g.Or(Table), Measured = g.Or(Measured), Bias = g.Item(Bias), Detents = g.Or(Detents) },
            Rule.NotBoth(Torque, Table),
            new Rule(
                "The angles of `torqueTable` rise from row to row.",
                g =>
                {
                    if (g.Item(Table) is not { } rows)
                        return;
                    for (var i = 1; i < rows.Count; i++)
                    {
                        if (rows[i].Arm.Radians <= rows[i - 1].Arm.Radians)
                            g.RefuseCell(Table, i, 0, "not above the angle of the row before", "arm angles that rise from row to row");
                    }
                }));
    }

    private static class ValveShape
    {
        public static readonly Member<Ratio> BoreRatio = Needed("boreRatio", new ExactShape<Ratio>("0.01", "0.707"), "Radius of the bore over radius of the ball.");
        public static readonly Member<DeviceStop> Open = Needed("open", Stop, "The stop at which it is fully open.");
        public static readonly Member<Ratio> LineLoss = Optional("lineLoss", new ExactShape<Ratio>("0", "10000"), "Loss coefficient of the rest of the line, on the velocity in the bore.", new(5), "5");
        public static readonly ObjectShape<QuarterTurnValve> Shape = new(
            "valve", "the valve", [BoreRatio, Open, LineLoss], g => new() { BoreRatio = g.Must(BoreRatio).Value, Open = g.Must(Open), LineLoss = g.Or(LineLoss).Value });
    }

    private static class LeverEndShape
    {
        public static readonly Member<Given> Arm = Optional("arm", ArmShape.Shape, "The arm on the device.");
        public static readonly Member<SweepEnds> Sweep = Optional("sweep", SweepShape.Shape, "Arm angle from stop to stop. One angle lies half to each side of arm angle 0 and gives each stop half of its tolerance.");
        public static readonly Member<BenchAnchor> Bench = Optional("bench", BenchShape.Shape, "Bench form, no coordinates: where the anchor stands, seen from the arm. The arm's angle grows as it turns away from the anchor. With the rule offset, angle 0 is the arm square to the line of the wire.");
        public static readonly Member<PointAt> Pivot = Optional("pivot", PointOrName, "Spatial form: a point on the axis of the arm.");
        public static readonly Member<DirectionAt> Axis = Optional("axis", Direction, "Spatial form: axis of the arm; arm angles turn right-handed about it.");
        public static readonly Member<Given> Anchor = Optional("anchor", AnchorShape.Shape, "What holds the conduit's end at the device.");
        public static readonly Member<AnchorBracket> Bracket = Optional("bracket", BracketForm.Shape, "The bracket of bent sheet that carries the anchor, if you make one: flat pattern and its stiffness follow.");
        public static readonly Member<Swivel> Swivel = Optional("swivel", SwivelShape.Shape, "The wire-end fitting in the arm's hole.");
        public static readonly Member<DeviceLoad> Load = Optional("load", LoadShape.Shape, "What the device asks of the arm.");
        public static readonly Member<HeatZone> Zone = Optional(
            "zone",
            new WordShape<HeatZone>(new("cabin", HeatZone.Cabin), new("engineBay", HeatZone.EngineBay), new("elsewhere", HeatZone.Elsewhere)),
            "Where the device sits, for the heat.",
            HeatZone.Elsewhere);
        public static readonly Member<QuarterTurnValve> Valve = Optional("valve", ValveShape.Shape, "Only for a ball or plug valve: tells a shortfall of angle in flow.");

        public static readonly ObjectShape<LeverEnd> Shape = new(
            "leverEnd",
            "the lever end",
            [Arm, Sweep, Bench, Pivot, Axis, Anchor, Bracket, Swivel, Load, Zone, Valve],
            Build,
            new Rule("Either the bench form (`bench`) or the spatial form (`pivot`, `axis`, `arm.zero`, `anchor.at`; also `arm.alongAxis`, `anchor.along`), not both.", OneForm, () => new() { ["not"] = new JsonObject { ["required"] = new JsonArray("bench"), ["anyOf"] = SpatialSchemas() } }),
            new Rule(
                "The spatial form needs `pivot`, `axis`, `arm.zero` and `anchor.at` together.",
                WholeForm,
                () => new()
                {
                    ["if"] = new JsonObject { ["anyOf"] = SpatialSchemas() },
                    ["then"] = new JsonObject { ["allOf"] = new JsonArray([.. SpatialSchemas().Take(4).Select(s => s!.DeepClone())]) },
                }),
            new Rule("`axis` and `arm.zero` are at least 1 deg from parallel.", NotParallel));

        private static LeverEnd Build(Given g)
        {
            Given arm = g.In(Arm), anchor = g.In(Anchor);
            var sweep = g.Item(Sweep);
            return new()
            {
                Radius = arm.Maybe(ArmShape.Radius),
                Holes = arm.Or(ArmShape.Holes),
                ArmWidth = arm.Maybe(ArmShape.Width),
                From = sweep?.From,
                To = sweep?.To,
                Bench = g.Item(Bench),
                Placed = g.Has(Pivot)
                    ? new()
                    {
                        Pivot = g.Must(Pivot),
                        Axis = g.Must(Axis),
                        Zero = arm.Must(ArmShape.Zero),
                        AlongAxis = arm.Or(ArmShape.AlongAxis),
                        Anchor = anchor.Must(AnchorShape.Place),
                        Along = anchor.Item(AnchorShape.Along),
                    }
                    : null,
                Tip = anchor.Or(AnchorShape.Tip),
                TipSwivels = anchor.Or(AnchorShape.Swivels),
                BracketStiffness = anchor.Maybe(AnchorShape.Bracket),
                Bracket = g.Item(Bracket),
                Swivel = g.Item(Swivel) ?? new(),
                Load = g.Item(Load),
                Zone = g.Or(Zone),
                Valve = g.Item(Valve),
            };
        }

        /// <summary>Members of the spatial form: those it needs, and those it may have.</summary>
        private static (Given Owner, Member Member, string Name, bool Needed)[] Spatial(Given g) =>
        [
            (g, Pivot, "pivot", true),
            (g, Axis, "axis", true),
            (g.In(Arm), ArmShape.Zero, "arm.zero", true),
            (g.In(Anchor), AnchorShape.Place, "anchor.at", true),
            (g.In(Arm), ArmShape.AlongAxis, "arm.alongAxis", false),
            (g.In(Anchor), AnchorShape.Along, "anchor.along", false),
        ];

        /// <summary>A schema for each member of the spatial form: "it is there", in the order of <see cref="Spatial"/>.</summary>
        private static JsonArray SpatialSchemas() =>
        [
            There(Pivot), There(Axis), There(Arm, ArmShape.Zero), There(Anchor, AnchorShape.Place), There(Arm, ArmShape.AlongAxis), There(Anchor, AnchorShape.Along),
        ];

        private static JsonObject There(Member member) => new() { ["required"] = new JsonArray(member.Name) };

        private static JsonObject There(Member owner, Member member) => new()
        {
            ["properties"] = new JsonObject { [owner.Name] = There(member) },
            ["required"] = new JsonArray(owner.Name),
        };

        private static void OneForm(Given g)
        {
            var spatial = Spatial(g).Where(m => m.Owner.Has(m.Member)).Select(m => $"\"{m.Name}\"").ToList();
            if (g.Has(Bench) && spatial.Count > 0)
                g.RefuseName(Bench, $"\"bench\" beside {string.Join(", ", spatial)}", "either the bench form (bench) or the spatial form (pivot, axis, arm.zero, anchor.at), not both");
        }

        private static void WholeForm(Given g)
        {
            var spatial = Spatial(g);
            if (g.Has(Bench) || !Array.Exists(spatial, m => m.Owner.Has(m.Member)))
                return;
            foreach (var (owner, member, name, needed) in spatial)
            {
                if (needed && !owner.Has(member))
                    g.Missing(name, $"\"{name}\", which the spatial form needs. {member.Meaning}");
            }
        }

        private static void NotParallel(Given g)
        {
            var arm = g.In(Arm);
            if (g.Item(Axis) is not { } axis || arm.Item(ArmShape.Zero) is not { } zero)
                return;
            var angle = Vector3.AngleBetween(new(axis.Aft, axis.Right, axis.Up), new(zero.Aft, zero.Right, zero.Up));
            if (Math.Min(angle, Math.PI - angle) < LeastAngleToAxis)
                arm.RefuseValue(ArmShape.Zero, "the arm at angle 0 lies along its axis", "a direction across the axis, from the pivot to the hole");
        }
    }

    private static class RunShape
    {
        private static readonly WordShape<ControlFunction> Functions = new(
            new("other", ControlFunction.Other),
            new("throttle", ControlFunction.Throttle),
            new("mixture", ControlFunction.Mixture),
            new("propeller", ControlFunction.Propeller),
            new("carburettorHeat", ControlFunction.CarburettorHeat),
            new("alternateAir", ControlFunction.AlternateAir),
            new("cowlFlap", ControlFunction.CowlFlap),
            new("cabinHeat", ControlFunction.CabinHeat),
            new("cabinAir", ControlFunction.CabinAir),
            new("fuelShutoff", ControlFunction.FuelShutoff),
            new("parkingBrake", ControlFunction.ParkingBrake),
            new("tailwheelLock", ControlFunction.TailwheelLock),
            new("waterRudder", ControlFunction.WaterRudder),
            new("canopyLatch", ControlFunction.CanopyLatch),
            new("baggageLatch", ControlFunction.BaggageLatch),
            new("emergencyGear", ControlFunction.EmergencyGear),
            new("choke", ControlFunction.Choke),
            new("primer", ControlFunction.Primer));

        public static readonly Member<string> Id = Needed("id", new IdShape(), "Short name for files and commands.");
        public static readonly Member<string> Label = Words("label", Line, "The name as it will be engraved.");
        public static readonly Member<string> How = Words("how", Line, "How it is worked, as it will be engraved, e.g. \"PULL TO CLOSE\".");
        public static readonly Member<ControlFunction> Function = Optional("function", Functions, "What the control does; some have rules of their own.", ControlFunction.Other);
        public static readonly Member<bool> Emergency = Yes("emergency", "It is used in an emergency.");
        public static readonly Member<string> SafeEnd = Words("safeEnd", Line, "Where the device should be if the run fails, in the words of pushMeans or pullMeans, e.g. \"open\"; \"as set\": it shall stay.");
        public static readonly Member<string> AboutIt = Words("note", Note, "Anything worth keeping with the run.");
        public static readonly Member<Given> Cushion = Optional("cushion", CushionShape.Shape, "Travel to be left at the stops.");
        public static readonly Member<Force> HandForceMost = Optional("handForceMost", new ExactShape<Force>("0.1 N", "1000000 N"), "Your own limit for the force at the knob. Left out: the yardstick's.");
        public static readonly Member<CockpitEnd> CockpitEnd = Optional("cockpitEnd", CockpitEndShape.Shape, "Knob, shank, bushing and lock.");
        public static readonly Member<Cable> Cable = Optional("cable", CableShape.Shape, "Core wire and conduit.");
        public static readonly Member<LeverEnd> LeverEnd = Optional("leverEnd", LeverEndShape.Shape, "Anchor, swivel, arm and device.");
        public static readonly Member<Installation> Installation = Optional("installation", InstallationShape.Shape, "What rules of installation ask beyond the geometry: guard, joint, marking, fire side, heat.");
        public static readonly Member<EquatableList<AsBuilt>> AsBuilt = Optional("asBuilt", new ListShape<AsBuilt>(AsBuiltShape.Shape, "sets of readings", 500), "What was measured on the aircraft, one entry for each rigging or inspection.", [], "");

        public static readonly ObjectShape<Run> Shape = new(
            "run",
            "the run",
            [Id, Label, How, Function, Emergency, SafeEnd, AboutIt, Cushion, HandForceMost, CockpitEnd, Cable, LeverEnd, Installation, AsBuilt],
            g => new()
            {
                Id = g.Must(Id),
                Label = g.Or(Label),
                How = g.Or(How),
                Function = g.Or(Function),
                Emergency = g.Or(Emergency),
                SafeEnd = g.Or(SafeEnd),
                Note = g.Or(AboutIt),
                CushionWanted = g.In(Cushion).Maybe(CushionShape.Wanted),
                CushionMost = g.In(Cushion).Maybe(CushionShape.Most),
                HandForceMost = g.Maybe(HandForceMost),
                CockpitEnd = g.Item(CockpitEnd),
                Cable = g.Item(Cable),
                LeverEnd = g.Item(LeverEnd),
                Installation = g.Item(Installation),
                AsBuilt = g.Or(AsBuilt),
            },
            new Rule(
                "`cable.ends.arrives` goes with the bench form of the lever end only.",
                g =>
                {
                    var ends = g.In(Cable).In(CableShape.Ends);
                    if (ends.Has(EndsShape.Arrives) && g.In(LeverEnd).Has(LeverEndShape.Pivot))
                        ends.RefuseName(EndsShape.Arrives, "\"arrives\" beside the anchor in coordinates", "one place for the anchor: leverEnd.anchor.at and along, or the bench form with arrives");
                }),
            new Rule(
                "The rigged knob place (`leverEnd.swivel.rigged.knobOut`) lies within the stroke (`cockpitEnd.stroke`).",
                g =>
                {
                    Given end = g.In(CockpitEnd), rigged = g.In(LeverEnd).In(LeverEndShape.Swivel).In(SwivelShape.Rigged);
                    if (rigged.Maybe(RiggedShape.KnobOut)?.Least > end.Maybe(CockpitEndShape.Stroke)?.Most)
                        rigged.RefuseValue(RiggedShape.KnobOut, $"{rigged.Shown(RiggedShape.KnobOut)}: farther out than the stroke, {end.Shown(CockpitEndShape.Stroke)}", "a knob place within the stroke");
                }),
            new Rule(
                "Knob places that were read (`asBuilt`) lie within the stroke.",
                g =>
                {
                    if (g.In(CockpitEnd).Maybe(CockpitEndShape.Stroke) is not { } stroke || g.Item(AsBuilt) is not { } read)
                        return;
                    for (var i = 0; i < read.Count; i++)
                    {
                        if (Math.Max(read[i].KnobAtPush?.Metres ?? 0, read[i].KnobAtPull?.Metres ?? 0) > stroke.Most + 0.003)
                            g.RefuseItem(AsBuilt, i, $"readings of {read[i].Date}: a knob place farther out than the stroke, {g.In(CockpitEnd).Shown(CockpitEndShape.Stroke)}", "knob places from the IN stop, within the stroke");
                    }
                }));
    }

    private static class FileShape
    {
        public static readonly Member<string> Schema = Words("$schema", new TextShape(500), "Where an editor finds the schema of this file, e.g. \"throwright.schema.json\".");
        public static readonly Member<int> Format = Needed("format", new CountShape(AircraftFile.Format), "Format of the file.");
        public static readonly Member<Given> Name = Needed("aircraft", NameShape.Shape, "Which aircraft this is.");
        public static readonly Member<Display> Display = Optional("display", DisplayShape.Shape, "How figures are shown.");
        public static readonly Member<Yardstick> Yardstick = Optional(
            "yardstick",
            new WordShape<Yardstick>(
                new("mil1472", Engine.Model.Yardstick.Mil1472, "MIL-STD-1472E 5.4.3.1.8.7, a guide for everybody"),
                new("fac23", Engine.Model.Yardstick.Fac23, "14 CFR 23.143(c) before Amendment 64, written for flight controls, for comparison"),
                new("user", Engine.Model.Yardstick.User, "your own limit, named at each run")),
            "List of hand forces that the aircraft is measured against.",
            Engine.Model.Yardstick.Mil1472);
        public static readonly Member<Basis> Basis = Optional("basis", BasisWords, "What the aircraft is built or certificated to: says of each rule whether it binds.", Engine.Model.Basis.AmateurBuilt);
        public static readonly Member<Surroundings> Environment = Optional("environment", EnvironmentShape.Shape, "Airframe material and temperatures.");
        public static readonly Member<EquatableList<NamedPoint>> Points = Optional("points", new PointsShape(new(Point, TapedShape.Shape)), "Measured places by name; others refer to them. Each as coordinates or by tape distances from others. Station counts aft, buttline right, waterline up.", [], "");
        public static readonly Member<Pilot> Pilot = Optional("pilot", PilotShape.Shape, "Who sits at the controls.");
        public static readonly Member<EquatableList<Sheet>> Sheets = Optional("sheets", new SheetsShape(SheetShape.Shape), "Panels and consoles that carry bushings.", [], "");
        public static readonly Member<EquatableList<Body>> Bodies = Optional("bodies", new ListShape<Body>(BodyShape.Shape, "bodies", 200), "What a handle must not meet: stick, yoke, knees, frames. Joints at zero as they are described.", [], "");
        public static readonly Member<EquatableList<Run>> Runs = Optional("runs", new RunsShape(RunShape.Shape), "The controls, one run each.", [], "");

        public static readonly ObjectShape<Aircraft> Shape = new(
            "file",
            "the aircraft file",
            [Schema, Format, Name, Display, Basis, Yardstick, Environment, Points, Pilot, Sheets, Bodies, Runs],
            g => new()
            {
                Name = g.In(Name).Must(NameShape.Name),
                Builder = g.In(Name).Or(NameShape.Builder),
                Note = g.In(Name).Or(NameShape.AboutIt),
                Display = g.Item(Display) ?? new(),
                Environment = g.Item(Environment),
                Basis = g.Or(Basis),
                Yardstick = g.Or(Yardstick),
                Points = g.Or(Points),
                Pilot = g.Item(Pilot),
                Sheets = g.Or(Sheets),
                Bodies = g.Or(Bodies),
                Runs = g.Or(Runs),
            },
            new Rule("Sheets and bodies have ids of their own, and allowed contacts name parts that are there.", BodiesHoldTogether));
    }
}
