using System.Text.Json.Nodes;
using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>Pilot, sheets, and what a cockpit end measures.</summary>
internal static partial class AircraftDescription
{
    /// <summary>A point that belongs to a sheet may lie this far off it, m: more is a slip, not a bump. Own choice.</summary>
    private const double MostOffSheet = 0.025;

    /// <summary>A wedge is worked out up to 30 deg; a lean typed beyond it, both ways together, is a slip or no installation. deg. Own choice.</summary>
    private const double MostLean = 45;

    private static Vector3 Place(PointAt point) => new(point.Station.Nominal.Metres, point.Buttline.Nominal.Metres, point.Waterline.Nominal.Metres);

    private static Vector3 Way(DirectionAt direction) => new Vector3(direction.Aft, direction.Right, direction.Up).Unit();

    /// <summary>How far a point lies off the sheet's face, m.</summary>
    private static double OffSheet(PointAt point, PointAt at, DirectionAt normal) => Math.Abs(Vector3.Dot(Place(point) - Place(at), Way(normal)));

    private static string Inches(double metres) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{metres / Shapes.Quantities.Length.MetresPerInch:0.##} in");

    private static readonly Word<PilotSize>[] PilotSizes =
    [
        new("woman5", PilotSize.Woman5, "only 5 of 100 women are smaller"),
        new("woman50", PilotSize.Woman50, "half of all women are smaller"),
        new("woman95", PilotSize.Woman95, "95 of 100 women are smaller"),
        new("man5", PilotSize.Man5, "only 5 of 100 men are smaller"),
        new("man50", PilotSize.Man50, "half of all men are smaller"),
        new("man95", PilotSize.Man95, "95 of 100 men are smaller"),
    ];

    private static class StrengthShape
    {
        private static ExactShape<Force> Hand => new("1 N", "2000 N");
        public static readonly Member<Force> Pull = Optional("pull", Hand, "Largest pull aft of one hand at a handle where the controls are, for a moment.");
        public static readonly Member<Force> Push = Optional("push", Hand, "Largest push forward.");
        public static readonly Member<Force> Pinch = Optional("pinch", Hand, "Largest pull at a round knob held by finger and thumb.");
        public static readonly ObjectShape<PilotStrength> Shape = new("pilotStrength", "what the pilot's hand gives", [Pull, Push, Pinch], g => new(g.Maybe(Pull), g.Maybe(Push), g.Maybe(Pinch)));
    }

    private static class PilotShape
    {
        public static readonly WordShape<PilotSize> Sizes = new(PilotSizes);
        public static readonly Member<PointAt> Eye = Optional("eye", PointOrName, "Between your eyes, seated as in flight: have someone drop a plumb line.");
        public static readonly Member<PointAt> Shoulder = Optional("shoulder", PointOrName, "The point of your shoulder on the side that works the controls, harness locked.");
        public static readonly Member<Length> Reach = Optional("reach", new ExactShape<Length>("200 mm", "1200 mm"), "Point of the shoulder to the middle of a stick held in the fist, arm stretched. Left out: the published figure of the smallest.");
        public static readonly Member<PilotSize> Largest = Optional("largest", Sizes, "The largest person whose legs must find room. Left out: the largest that is published.");
        public static readonly Member<PilotSize> Smallest = Optional("smallest", Sizes, "The smallest person who must reach. Left out: the smallest that is published.");
        public static readonly Member<PilotStrength> Strength = Optional("strength", StrengthShape.Shape, "What your own hand gives, with a spring scale from the seat, belted. Left out: published figures of the smallest.");
        public static readonly ObjectShape<Pilot> Shape = new(
            "pilot",
            "the pilot",
            [Eye, Shoulder, Reach, Largest, Smallest, Strength],
            g => new() { Eye = g.Item(Eye), Shoulder = g.Item(Shoulder), Reach = g.Maybe(Reach), Largest = g.Maybe(Largest), Smallest = g.Maybe(Smallest), Strength = g.Item(Strength) });
    }

    private static class SheetHoleShape
    {
        public static readonly Member<PointAt> At = Needed("at", PointOrName, "Its middle.");
        public static readonly Member<Toleranced<Length>> Diameter = Needed("diameter", new TolerancedShape<Length>("1 mm", "1 m"), "Clear opening, grommet in it.");
        public static readonly ObjectShape<SheetHole> Shape = new("sheetHole", "a hole of the sheet", [At, Diameter], g => new(g.Must(At), g.Must(Diameter)));
    }

    private static class SheetCurveForm
    {
        public static readonly Member<Toleranced<Length>> Radius = Needed("radius", new TolerancedShape<Length>("20 mm", "50 m"), "Of the face toward the pilot. Lay a straight edge of length s across the curve and measure the gap g at its middle (hollow) or at both ends (bulging): s²/(8 g) + g/2.");
        public static readonly Member<DirectionAt> Straight = Needed("straight", Direction, "Direction in which a straight edge lies on the sheet.");
        public static readonly Member<SheetBulge> Bulges = Optional(
            "bulges", new WordShape<SheetBulge>(new("toward", SheetBulge.Toward, "toward the pilot"), new("away", SheetBulge.Away, "away from the pilot: hollow where the hand is")), "Which way it bulges.", SheetBulge.Toward);
        public static readonly ObjectShape<SheetCurve> Shape = new("sheetCurve", "the sheet's curve", [Radius, Straight, Bulges], g => new(g.Must(Radius), g.Must(Straight), g.Or(Bulges)));
    }

    private static class SheetShape
    {
        public static readonly Member<string> Id = Needed("id", new IdShape(), "Short name; runs refer to it.");
        public static readonly Member<PointAt> At = Needed("at", PointOrName, "A point on the face toward the pilot.");
        public static readonly Member<DirectionAt> Normal = Needed("normal", Direction, "Square to the sheet, toward the pilot.");
        public static readonly Member<DirectionAt> Upward = Optional("up", Direction, "What you call up in the sheet. Left out: up in the aircraft; forward where the sheet lies flat.");
        public static readonly Member<Toleranced<Length>> Thickness = Optional("thickness", new TolerancedShape<Length>("0.1 mm", "100 mm"), "Thickness of the sheet, with a caliper.");
        public static readonly Member<string> Material = Words("material", new TextShape(40), "Alloy and temper, or what else it is, e.g. \"2024-T3\".");
        public static readonly Member<EquatableList<PointAt>> Outline = Optional("outline", new ListShape<PointAt>(PointOrName, "points", 100, least: 3), "Corners of the flat, one after the other, on the face toward the pilot: how far a hole may move.", [], "");

        public static readonly Member<EquatableList<SheetHole>> Holes = Optional("holes", new ListShape<SheetHole>(SheetHoleShape.Shape, "holes", 100), "Holes that a conduit may pass, with a grommet in them. Those of the cockpit ends need not be named.", [], "");

        public static readonly Member<SheetCurve> Curve = Optional("curve", SheetCurveForm.Shape, "How it is bent where the bushings sit, one way only. `normal` is then square to it at the hole: give holes far apart on the curve a sheet each. Left out: flat.");

        public static readonly ObjectShape<Sheet> Shape = new(
            "sheet",
            "the sheet",
            [Id, At, Normal, Upward, Thickness, Material, Curve, Outline, Holes],
            g => new()
            {
                Id = g.Must(Id),
                At = g.Must(At),
                Normal = g.Must(Normal),
                Up = g.Item(Upward),
                Thickness = g.Maybe(Thickness),
                Material = g.Or(Material),
                Curve = g.Item(Curve),
                Outline = g.Or(Outline),
                Holes = g.Or(Holes),
            },
            new Rule(
                "The straight lines of a `curve` lie in the sheet, at most 2 deg off.",
                g =>
                {
                    if (g.Item(Normal) is { } normal && g.Item(Curve) is { } curve && Math.Abs(Vector3.Dot(Way(normal), Way(curve.Straight))) > Math.Sin(2 * Math.PI / 180))
                        g.RefuseValue(Curve, "straight lines that do not lie in the sheet", "\"straight\" square to \"normal\"");
                }),
            new Rule(
                "`up` is at least 1 deg from parallel to `normal`.",
                g =>
                {
                    if (g.Item(Normal) is { } normal && g.Item(Upward) is { } up && IsAlong(up, normal))
                        g.RefuseValue(Upward, "up lies along the normal", "a direction in the sheet");
                }),
            new Rule(
                $"The corners of `outline` lie in the sheet: at most {MostOffSheet * 1000:0} mm off the plane through `at`.",
                g =>
                {
                    if (g.Item(At) is not { } at || g.Item(Normal) is not { } normal || g.Item(Outline) is not { } corners)
                        return;
                    for (var i = 0; i < corners.Count; i++)
                    {
                        if (OffSheet(corners[i], at, normal) is var off && off > MostOffSheet)
                            g.RefuseRow(Outline, i, $"{Inches(off)} off the sheet", $"a point of the sheet, at most {MostOffSheet * 1000:0} mm off the plane through \"at\"");
                    }
                }),
            new Rule(
                $"The holes of `holes` lie in the sheet: at most {MostOffSheet * 1000:0} mm off the plane through `at`.",
                g =>
                {
                    if (g.Item(At) is not { } at || g.Item(Normal) is not { } normal || g.Item(Holes) is not { } holes)
                        return;
                    for (var i = 0; i < holes.Count; i++)
                    {
                        if (OffSheet(holes[i].At, at, normal) is var off && off > MostOffSheet)
                            g.RefuseRow(Holes, i, $"{Inches(off)} off the sheet", $"a hole of the sheet, at most {MostOffSheet * 1000:0} mm off the plane through \"at\"");
                    }
                }));
    }

    /// <summary>Two directions that nowhere differ by a degree, either way round.</summary>
    private static bool IsAlong(DirectionAt a, DirectionAt b)
    {
        var angle = Vector3.AngleBetween(Way(a), Way(b));
        return Math.Min(angle, Math.PI - angle) < LeastAngleToAxis;
    }

    private static class MountTiltShape
    {
        public static readonly Member<Angle> Upward = Optional("up", new ExactShape<Angle>("-45 deg", "45 deg"), "Lean toward up in the sheet, seen from the side.", Angle.Zero, "0 deg");
        public static readonly Member<Angle> Rightward = Optional("right", new ExactShape<Angle>("-45 deg", "45 deg"), "Lean toward the pilot's right, seen from above.", Angle.Zero, "0 deg");
        public static readonly ObjectShape<MountTilt> Shape = new("tilt", "the tilt of the shank", [Upward, Rightward], g => new(g.Or(Upward), g.Or(Rightward)),
            new Rule(
                $"Both leans together are at most {MostLean:0} deg from square to the sheet.",
                g =>
                {
                    double up = Math.Tan(g.Or(Upward).Radians), right = Math.Tan(g.Or(Rightward).Radians), lean = Math.Atan(Math.Sqrt((up * up) + (right * right))) * 180 / Math.PI;
                    if (lean > MostLean + 1e-9)
                        g.RefuseSelf(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"a lean of {lean:0.#} deg, both together"), $"at most {MostLean:0} deg: beyond it no wedge can be made and the bushing does not seat");
                }));
    }

    private static class TurnsShape
    {
        public static readonly Member<Angle> Left = Optional("left", new ExactShape<Angle>("0 deg", "180 deg"), "To the left, as the pilot sees it.", Angle.Zero, "0 deg");
        public static readonly Member<Angle> Right = Optional("right", new ExactShape<Angle>("0 deg", "180 deg"), "To the right.", Angle.Zero, "0 deg");
        public static readonly WordShape<BodySide> Sides = new(new("left", BodySide.Left), new("right", BodySide.Right));
        public static readonly Member<BodySide> Winds = Optional("winds", Sides, "The shank is a screw: pulled out over its stroke, the knob goes over its whole turn this way. Left out: it turns freely.");
        public static readonly ObjectShape<KnobTurn> Shape = new(
            "turns",
            "the turn of the knob",
            [Left, Right, Winds],
            g => new(g.Or(Left), g.Or(Right)) { Winds = g.Maybe(Winds) },
            new Rule(
                "A screw turns: with `winds`, `left` or `right` is above zero.",
                g =>
                {
                    if (g.Has(Winds) && g.Or(Left).Radians + g.Or(Right).Radians == 0)
                        g.RefuseValue(Winds, $"{g.Shown(Winds)} with no turn", "left or right above 0 deg");
                }));
    }

    private static class ShankShape
    {
        public static readonly Member<Toleranced<Length>> Diameter = Optional("diameter", new TolerancedShape<Length>("1 mm", "100 mm"), "Diameter of the shank.");
        public static readonly Member<Toleranced<Length>> Out = Optional("out", new TolerancedShape<Length>("0 mm", "1 m"), "From the sheet's face toward you to the back of the knob, along the shank, knob pushed in.");
        public static readonly ObjectShape<Shank> Shape = new("shank", "the shank", [Diameter, Out], g => new() { Diameter = g.Maybe(Diameter), Out = g.Maybe(Out) });
    }

    private static class BushingShape
    {
        public static readonly Member<string> Thread = Words("thread", new TextShape(40), "Thread as it is called, e.g. \"1/2-20 UNF\".");
        public static readonly Member<Toleranced<Length>> Length = Optional("length", new TolerancedShape<Length>("1 mm", "300 mm"), "Thread that can be used, from the shoulder to the end.");
        public static readonly Member<Toleranced<Length>> Diameter = Optional("diameter", new TolerancedShape<Length>("2 mm", "100 mm"), "Outside of the thread, with a caliper.");
        public static readonly Member<Toleranced<Length>> Nut = Optional("nut", new TolerancedShape<Length>("3 mm", "150 mm"), "Nut across its flats.");
        public static readonly Member<Toleranced<Length>> NutHeight = Optional("nutHeight", new TolerancedShape<Length>("0.5 mm", "100 mm"), "Height of the nut.");
        public static readonly Member<Toleranced<Length>> Hole = Optional("hole", new TolerancedShape<Length>("2 mm", "100 mm"), "Diameter of the hole in the sheet, bushing square to it.");
        public static readonly ObjectShape<Bushing> Shape = new(
            "bushing",
            "the bushing",
            [Thread, Length, Diameter, Nut, NutHeight, Hole],
            g => new()
            {
                Thread = g.Or(Thread),
                Length = g.Maybe(Length),
                Diameter = g.Maybe(Diameter),
                Nut = g.Maybe(Nut),
                NutHeight = g.Maybe(NutHeight),
                Hole = g.Maybe(Hole),
            },
            Less(Diameter, Nut, "the nut does not go over the thread"),
            Less(NutHeight, Length, "the thread is shorter than its nut"),
            Less(Diameter, Hole, "the thread does not go through", mayBeEqual: true));
    }

    /// <summary>One length is smaller than another, also with both tolerances against it.</summary>
    private static Rule Less(Member<Toleranced<Length>> small, Member<Toleranced<Length>> large, string otherwise, bool mayBeEqual = false) => new(
        $"`{small.Name}` is {(mayBeEqual ? "not larger" : "smaller")} than `{large.Name}`.",
        g =>
        {
            if (g.Maybe(small) is { } s && g.Maybe(large) is { } l && (mayBeEqual ? s.Nominal.Metres > l.Nominal.Metres : s.Most >= l.Least))
                g.RefuseValue(large, $"{g.Shown(large)} with {small.Name} {g.Shown(small)}: {otherwise}", $"{large.Name} {(mayBeEqual ? "at least as large as" : "larger than")} {small.Name}");
        });
}

/// <summary>Sheets by name, for runs to refer to.</summary>
internal sealed class SheetsShape(Shape<Sheet> sheet) : Shape<EquatableList<Sheet>>
{
    private readonly ListShape<Sheet> list = new(sheet, "sheets", 100);

    public override string Kind => list.Kind;
    public override string Limits => list.Limits;
    public override IEnumerable<Shape> Inside => list.Inside;

    public override JsonObject Schema(JsonObject definitions) => list.Schema(definitions);

    public override bool TryRead(Json.Node node, Reading reading, out EquatableList<Sheet> value)
    {
        var count = reading.Count;
        var read = list.TryRead(node, reading, out value);
        foreach (var item in node.Kind == Json.NodeKind.List ? node.Items : [])
        {
            // Given twice: which one a run means is not certain.
            if (item.Member("id") is { Kind: Json.NodeKind.Text } id && !reading.Sheets.TryAdd(id.Text, value.FirstOrDefault(s => s.Id == id.Text)))
                reading.Sheets[id.Text] = null;
        }

        return read && reading.Count == count;
    }
}

/// <summary>The id of a sheet.</summary>
internal sealed class SheetNameShape : Shape<Sheet>
{
    public override string Kind => "id of a sheet";

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "string", ["minLength"] = 1 };

    public override bool TryRead(Json.Node node, Reading reading, out Sheet value)
    {
        value = null!;
        if (node.Kind == Json.NodeKind.Text && reading.Sheets.TryGetValue(node.Text, out var sheet))
        {
            // At fault where it is described, and reported there.
            value = sheet!;
            return sheet is not null;
        }

        var near = node.Kind == Json.NodeKind.Text && reading.IsListing ? Likeness.Nearest(node.Text, reading.Sheets.Keys) : null;
        var known = near is not null ? $"an id from \"sheets\"; did you mean \"{near}\"?"
            : reading.Sheets.Count == 0 ? "an id from \"sheets\" (there are none in this file)"
            : $"an id from \"sheets\": {string.Join(", ", reading.Sheets.Keys.Take(8).Select(k => $"\"{Reading.Short(k)}\""))}";
        reading.AtValue(node, node.Kind == Json.NodeKind.Text ? $"{Reading.Shown(node)}: no sheet has this id" : Reading.Shown(node), known);
        return false;
    }
}
