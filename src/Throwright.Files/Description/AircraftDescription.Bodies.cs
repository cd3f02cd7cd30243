using System.Text.Json.Nodes;
using Throwright.Engine.Model;
using Throwright.Files.Json;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>What handles must not meet.</summary>
internal static partial class AircraftDescription
{
    private static TolerancedShape<Length> Size(string least = "0.1 mm") => new(least, "20 m");

    private static ExactShape<Angle> Swing() => new("0 deg", "180 deg");

    private static class JointShape
    {
        public static readonly Member<string> Id = Needed("id", new TextShape(40, mayBeEmpty: false), "What you call it: \"push\", \"roll\".");
        public static readonly Member<DirectionAt> Slide = Optional("slide", Direction, "It slides this way.");
        public static readonly Member<DirectionAt> Turn = Optional("turn", Direction, "It turns about an axis of this direction, right-handed: thumb along it, fingers show the turn.");
        public static readonly Member<PointAt> About = Optional("about", PointOrName, "Only with turn: a point of the axis.");
        public static readonly Member<Travel> From = Needed("from", new TravelShape(), "Lower limit: a length for a slide, an angle for a turn.");
        public static readonly Member<Travel> To = Needed("to", new TravelShape(), "Upper limit.");
        public static readonly Member<string> Follows = Optional("follows", new TextShape(40, mayBeEmpty: false), "Joint that takes it along: at `from` when that one is at its own `from`, at `to` likewise, straight between. Left out: it moves by itself.");

        public static readonly ObjectShape<BodyJoint> Shape = new(
            "joint",
            "the joint",
            [Id, Slide, Turn, About, From, To, Follows],
            g => g.Item(Slide) is { } way
                ? new SlideJoint(g.Must(Id), way, new(g.Must(From).Si), new(g.Must(To).Si)) { Follows = g.Item(Follows) ?? "" }
                : new TurnJoint(g.Must(Id), g.Must(Turn), g.Must(About), new(g.Must(From).Si), new(g.Must(To).Si)) { Follows = g.Item(Follows) ?? "" },
            Rule.ExactlyOne("Either `slide` or `turn`.", Slide, Turn),
            new Rule(
                "`about` is given with `turn`, and only then.",
                g =>
                {
                    if (g.Has(Turn) && !g.Has(About))
                        g.Missing(About.Name, "\"about\": a point of the axis that it turns about");
                    if (g.Has(Slide) && g.Has(About))
                        g.RefuseName(About, "\"about\" with a slide", "a slide without \"about\": it has no axis");
                },
                () => new()
                {
                    ["if"] = new JsonObject { ["required"] = new JsonArray("turn") },
                    ["then"] = new JsonObject { ["required"] = new JsonArray("about") },
                    ["else"] = new JsonObject { ["properties"] = new JsonObject { ["about"] = false } },
                }),
            new Rule(
                "The limits of a slide are lengths, -10 m to 10 m; those of a turn angles, -360 deg to 360 deg.",
                g =>
                {
                    foreach (var limit in (Member<Travel>[])[From, To])
                    {
                        if (g.Maybe(limit) is not { } at || g.Has(Slide) == g.Has(Turn))
                            continue;
                        var kind = g.Has(Slide) ? QuantityKind.Length : QuantityKind.Angle;
                        if (at.Kind != kind)
                            g.RefuseValue(limit, $"{g.Shown(limit)} for a {(g.Has(Slide) ? "slide" : "turn")}", g.Has(Slide) ? "a length, e.g. \"7 in\"" : "an angle, e.g. \"75 deg\"");
                    }
                }),
            new Rule(
                "`from` is smaller than `to`, or with `follows` only another; a turn has at most 360 deg.",
                g =>
                {
                    if (g.Maybe(From) is not { } from || g.Maybe(To) is not { } to || from.Kind != to.Kind)
                        return;
                    if (g.Has(Follows) ? from.Si == to.Si : from.Si >= to.Si)
                        g.RefuseValue(From, $"{g.Shown(From)}: not {(g.Has(Follows) ? "another" : "smaller")} than to, {g.Shown(To)}", g.Has(Follows) ? "from and to that differ" : "from smaller than to");
                    else if (from.Kind == QuantityKind.Angle && Math.Abs(to.Si - from.Si) > 2 * Math.PI * (1 + 1e-12))
                        g.RefuseValue(To, $"{g.Shown(To)}: more than a full turn after from, {g.Shown(From)}", "a turn of at most 360 deg");
                }));
    }

    private static class GateShape
    {
        private static readonly TextShape JointName = new(40, mayBeEmpty: false);

        private static readonly RowShape<string[]> Two = new(
            "[one joint, other joint]", "gateJoints", "[\"pitch\", \"roll\"]", [("one joint", JointName), ("other joint", JointName)], c => [.. c.Cast<string>()]);

        private static readonly RowShape<Travel[]> Place = new(
            "[position of the one, of the other]",
            "gatePlace",
            "[\"20 deg\", \"10 deg\"]",
            [("position of the one", new TravelShape()), ("position of the other", new TravelShape())],
            c => [.. c.Cast<Travel>()]);

        public static readonly Member<string[]> Joints = Needed("joints", Two, "The two joints: of a stick \"pitch\" (aft is above zero) and \"roll\" (right is), of a yoke \"aft\" and \"turn\" (right wing down is).");
        public static readonly Member<EquatableList<Travel[]>> Limit = Needed("limit", new ListShape<Travel[]>(Place, "places", 2, least: 2), "Two places at the limit, each with the position of both joints.");

        public static readonly ObjectShape<BodyGate> Shape = new(
            "gate",
            "a gate",
            [Joints, Limit],
            g => new(g.Must(Joints)[0], g.Must(Joints)[1], At(g, 0), At(g, 1)),
            new Rule(
                "`joints` are two different ones, and the places of `limit` are two.",
                g =>
                {
                    if (g.Item(Joints) is { } joints && joints[0] == joints[1])
                        g.RefuseValue(Joints, $"\"{Reading.Short(joints[0])}\" twice", "two different joints");
                    if (g.Item(Limit) is { } limit && limit[0].SequenceEqual(limit[1]))
                        g.RefuseItem(Limit, 1, "the same place as the first", "another place at the limit");
                }));

        private static (double First, double Second) At(Given g, int place) => (g.Must(Limit)[place][0].Si, g.Must(Limit)[place][1].Si);

        /// <summary>What holds between a gate and the body's joints.</summary>
        public static void Check(Given body, Member list, EquatableList<JointRange> ranges)
        {
            foreach (var row in body.Rows(list))
            {
                if (row.Item(Joints) is not { } names)
                    continue;
                var known = names.Select(n => ranges.FirstOrDefault(r => r.Id == n)).ToList();
                for (var i = 0; i < 2; i++)
                {
                    if (known[i] is null)
                        row.RefuseValue(Joints, $"\"{Reading.Short(names[i])}\": the body has no such joint", ranges.Count == 0 ? "a body with joints" : $"two of {BodyShape.List(ranges.Select(r => r.Id))}");
                }

                if (known[0] is not { } one || known[1] is not { } other || row.Item(Limit) is not { } limit || names[0] == names[1])
                    continue;
                var sound = true;
                for (var p = 0; p < 2; p++)
                {
                    for (var i = 0; i < 2; i++)
                    {
                        var (range, at) = (known[i]!, limit[p][i]);
                        var wanted = range.IsTurn ? QuantityKind.Angle : QuantityKind.Length;
                        if (at.Kind != wanted)
                            row.RefuseCell(Limit, p, i, $"{range.Id} is a {(range.IsTurn ? "turn" : "slide")}", range.IsTurn ? "an angle" : "a length");
                        else if (at.Si < range.From - 1e-9 || at.Si > range.To + 1e-9)
                            row.RefuseCell(Limit, p, i, $"{range.Id} does not go there", "a position between the joint's own limits");
                        else
                            continue;
                        sound = false;
                    }
                }

                if (!sound || limit[0].SequenceEqual(limit[1]))
                    continue;
                var (a, b, c) = new BodyGate(one.Id, other.Id, (limit[0][0].Si, limit[0][1].Si), (limit[1][0].Si, limit[1][1].Si)).Line(one, other);
                var size = (Math.Abs(a) * (one.To - one.From)) + (Math.Abs(b) * (other.To - other.From));
                var farthest = Math.Max(a * one.From, a * one.To) + Math.Max(b * other.From, b * other.To);
                if (c - ((a * one.Rest) + (b * other.Rest)) < 1e-6 * size)
                    row.RefuseValue(Limit, "the line through both places passes through the joints' rest, so either side may be the free one", "a limit away from where both joints are at zero");
                else if (farthest - c < 1e-6 * size)
                    row.RefuseValue(Limit, "it keeps the joints from nothing that their own limits allow", "a limit that cuts off a corner of the two ranges");
            }
        }
    }

    private static class PartForms
    {
        private static readonly Member<PointAt> Centre = Needed("centre", PointOrName, "Its middle.");
        private static readonly Member<PointAt> From = Needed("from", PointOrName, "One end of its centre line.");
        private static readonly Member<PointAt> To = Needed("to", PointOrName, "The other end.");
        private static readonly Member<Toleranced<Length>> Radius = Needed("radius", Size(), "Half of its thickness.");
        private static readonly Member<Toleranced<Length>> EndRadius = Optional("endRadius", Size("0 mm"), "Radius at `to`; 0 mm: a point.", default, "0 mm");
        private static readonly RowShape<Toleranced<Length>[]> Sizes = new(
            "[length, width, height]",
            "sizes",
            "[\"12 in\", \"4 in\", \"3/4 in\"]",
            [.. ((string[])["length", "width", "height"]).Select(n => (n, (Shape)Size()))],
            c => [.. c.Cast<Toleranced<Length>>()]);
        private static readonly Member<Toleranced<Length>[]> BoxSize = Needed("size", Sizes, "Whole sizes: along, across, and up.");
        private static readonly Member<DirectionAt> Along = Optional("along", Direction, "Way of its length; what of it goes along up does not count.", new DirectionAt(1, 0, 0), "aft");
        private static readonly Member<DirectionAt> BoxUp = Optional("up", Direction, "Way of its height.", new DirectionAt(0, 0, 1), "up");
        private static readonly Member<PointAt> OnPlane = Needed("at", PointOrName, "A point of the plane.");
        private static readonly Member<DirectionAt> Normal = Needed("normal", Direction, "Square to it, away from the solid side.");

        private static Rule HasLength() => new(
            "`from` and `to` are two places.",
            g =>
            {
                if (g.Item(From) is { } a && g.Item(To) is { } b && (Place(a) - Place(b)).Size < 1e-6)
                    g.RefuseValue(To, "the same place as from", "another place than from; for a ball take \"sphere\"");
            });

        private static readonly ObjectShape<SphereShape> SphereForm = new("sphere", "the sphere", [Centre, Radius], g => new(g.Must(Centre), g.Must(Radius)));
        private static readonly ObjectShape<CapsuleShape> CapsuleForm = new("capsule", "the capsule", [From, To, Radius], g => new(g.Must(From), g.Must(To), g.Must(Radius)), HasLength());
        private static readonly ObjectShape<ConeShape> CylinderForm = new("cylinder", "the cylinder", [From, To, Radius], g => new(g.Must(From), g.Must(To), g.Must(Radius), g.Must(Radius)), HasLength());
        private static readonly ObjectShape<ConeShape> ConeForm = new("cone", "the cone", [From, To, Radius, EndRadius], g => new(g.Must(From), g.Must(To), g.Must(Radius), g.Or(EndRadius)), HasLength());
        private static readonly ObjectShape<BoxShape> BoxForm = new(
            "box",
            "the box",
            [Centre, BoxSize, Along, BoxUp],
            g => new(g.Must(Centre), g.Must(BoxSize)[0], g.Must(BoxSize)[1], g.Must(BoxSize)[2], g.Or(Along), g.Or(BoxUp)),
            new Rule(
                "`along` and `up` are at least 1 deg from parallel.",
                g =>
                {
                    if (IsAlong(g.Item(Along) ?? Along.Fallback!, g.Item(BoxUp) ?? BoxUp.Fallback!))
                        g.RefuseSelf("along and up are the same way", "two ways that differ");
                }));

        private static readonly ObjectShape<PlaneShape> PlaneForm = new("plane", "the plane", [OnPlane, Normal], g => new(g.Must(OnPlane), g.Must(Normal)));

        public static readonly Member<string> Name = Words("name", new TextShape(40), "What a report calls it: \"grip\". Left out: its shape.");
        public static readonly Member<SphereShape> Sphere = Optional("sphere", SphereForm, "A ball.");
        public static readonly Member<CapsuleShape> Capsule = Optional("capsule", CapsuleForm, "A bar with round ends beyond `from` and `to`.");
        public static readonly Member<ConeShape> Cylinder = Optional("cylinder", CylinderForm, "A bar with square ends.");
        public static readonly Member<ConeShape> Cone = Optional("cone", ConeForm, "A round bar that gets thinner.");
        public static readonly Member<BoxShape> Box = Optional("box", BoxForm, "A box.");
        public static readonly Member<PlaneShape> Plane = Optional("plane", PlaneForm, "Everything behind a plane: floor, wall.");
        public static readonly Member<MeshShape> Mesh = Optional("mesh", MeshForm.Shape, "A scan or an export in a file of its own.");

        public static readonly ObjectShape<BodyPart> Shape = new(
            "part",
            "the part of a body",
            [Name, Sphere, Capsule, Cylinder, Cone, Box, Plane, Mesh],
            g => new(g.Or(Name), ((PartShape?[])[g.Item(Sphere), g.Item(Capsule), g.Item(Cylinder), g.Item(Cone), g.Item(Box), g.Item(Plane), g.Item(Mesh)]).Single(s => s is not null)!),
            Rule.ExactlyOne("Exactly one shape.", Sphere, Capsule, Cylinder, Cone, Box, Plane, Mesh));

        /// <summary>Parts without a name are called after their shape, and counted where there are more.</summary>
        public static EquatableList<BodyPart> Named(EquatableList<BodyPart> parts)
        {
            var count = new Dictionary<string, int>(StringComparer.Ordinal);
            return parts.Select(part =>
            {
                if (part.Name.Length > 0)
                    return part;
                var shape = part.Shape switch
                {
                    SphereShape => "sphere",
                    CapsuleShape => "capsule",
                    ConeShape cone => cone.Radius == cone.EndRadius ? "cylinder" : "cone",
                    BoxShape => "box",
                    PlaneShape => "plane",
                    _ => "mesh",
                };
                var number = count[shape] = count.GetValueOrDefault(shape) + 1;
                return part with { Name = number == 1 ? shape : $"{shape} {number}" };
            }).ToEquatableList();
        }
    }

    private static class MeshForm
    {
        private static readonly WordShape<MeshAxis> Axes = new(
            new("x", MeshAxis.X),
            new("y", MeshAxis.Y),
            new("z", MeshAxis.Z),
            new("-x", MeshAxis.MinusX),
            new("-y", MeshAxis.MinusY),
            new("-z", MeshAxis.MinusZ));

        private static readonly RowShape<double[]> InMesh = new(
            "[x, y, z] in the mesh",
            "inMesh",
            "[12.5, 0, 130]",
            [.. ((string[])["x", "y", "z"]).Select(n => (n, (Shape)new ComponentShape()))],
            c => [.. c.Cast<double>()]);

        private static readonly Member<double[]> There = Needed("mesh", InMesh, "The place in the mesh, in the mesh's own unit and axes.");
        private static readonly Member<PointAt> Here = Needed("aircraft", PointOrName, "The same place in the aircraft.");
        private static readonly ObjectShape<MeshMatch> Match = new("matched", "a matched point", [There, Here], g => new(g.Must(There)[0], g.Must(There)[1], g.Must(There)[2], g.Must(Here)));

        public static readonly Member<string> File = Needed("file", new TextShape(200, mayBeEmpty: false), "File of the mesh beside this file, with / between folders.");
        public static readonly Member<MeshUnit> Unit = Needed(
            "unit",
            new WordShape<MeshUnit>(new("mm", MeshUnit.Millimetre), new("cm", MeshUnit.Centimetre), new("m", MeshUnit.Metre), new("in", MeshUnit.Inch), new("ft", MeshUnit.Foot)),
            "Unit of the numbers in the mesh; most files don't say it.");
        public static readonly Member<MeshAxis> Upward = Optional("up", Axes, "With at: the mesh's axis that points up in the aircraft.", MeshAxis.Z);
        public static readonly Member<MeshAxis> Aft = Optional("aft", Axes, "With at: the mesh's axis that points aft.", MeshAxis.X);
        public static readonly Member<PointAt> At = Optional("at", PointOrName, "Where the origin of the mesh lies in the aircraft.");
        public static readonly Member<EquatableList<MeshMatch>> Matched = Optional("matched", new ListShape<MeshMatch>(Match, "matched points", 50, least: 3), "Instead of at: three or more places that you can find in the mesh and in the aircraft.", [], "");
        public static readonly Member<Length> Accuracy = Optional("accuracy", new ExactShape<Length>("0 mm", "100 mm"), "Error of the scan or of its chords; added all round.", Length.Zero, "0 mm");

        public static readonly ObjectShape<MeshShape> Shape = new(
            "mesh",
            "the mesh",
            [File, Unit, Upward, Aft, At, Matched, Accuracy],
            g => new()
            {
                File = g.Must(File),
                Unit = g.Must(Unit),
                Up = g.Or(Upward),
                Aft = g.Or(Aft),
                At = g.Item(At),
                Matched = g.Or(Matched),
                Accuracy = g.Or(Accuracy),
            },
            Rule.ExactlyOne("Either `at` or `matched`.", At, Matched),
            new Rule(
                "`up` and `aft` are two different axes.",
                g =>
                {
                    MeshAxis up = g.Has(Upward) ? g.Maybe(Upward) ?? MeshAxis.Z : MeshAxis.Z, aft = g.Has(Aft) ? g.Maybe(Aft) ?? MeshAxis.X : MeshAxis.X;
                    if ((int)up % 3 == (int)aft % 3)
                        g.RefuseSelf("up and aft are the same axis of the mesh", "two different axes");
                }),
            new Rule(
                "`file` is relative, and does not leave the folder of the aircraft file.",
                g =>
                {
                    if (g.Item(File) is { } file && (file.StartsWith('/') || file.Contains('\\', StringComparison.Ordinal) || file.Contains(':', StringComparison.Ordinal) || file.Split('/').Contains("..")))
                        g.RefuseValue(File, $"{g.Shown(File)}", "a file beside the aircraft file, e.g. \"meshes/grip.stl\"");
                }));
    }

    private static class ReadyMadeForms
    {
        private static readonly Member<PointAt> Pivot = Needed("pivot", PointOrName, "Where its axes of pitch and roll meet.");
        private static readonly Member<Toleranced<Length>> StickLength = Needed("length", Size(), "Pivot to the top of the grip.");
        private static readonly Member<Toleranced<Length>> Grip = Needed("grip", Size(), "Length of the grip.");
        private static readonly Member<Toleranced<Length>> ShaftDiameter = Needed("shaftDiameter", Size(), "Thickness of the shaft.");
        private static readonly Member<Toleranced<Length>> GripDiameter = Needed("gripDiameter", Size(), "Thickness of the grip at its thickest.");
        private static readonly Member<Angle> Forward = Needed("forward", Swing(), "Full forward, from upright.");
        private static readonly Member<Angle> Aft = Needed("aft", Swing(), "Full aft.");
        private static readonly Member<Angle> ToLeft = Needed("left", Swing(), "Full left.");
        private static readonly Member<Angle> ToRight = Needed("right", Swing(), "Full right.");

        public static readonly Member<Stick> Stick = Optional(
            "stick",
            new ObjectShape<Stick>(
                "stick",
                "the stick",
                [Pivot, StickLength, Grip, ShaftDiameter, GripDiameter, Forward, Aft, ToLeft, ToRight],
                g => new()
                {
                    Pivot = g.Must(Pivot),
                    Length = g.Must(StickLength),
                    Grip = g.Must(Grip),
                    ShaftDiameter = g.Must(ShaftDiameter),
                    GripDiameter = g.Must(GripDiameter),
                    Forward = g.Must(Forward),
                    Aft = g.Must(Aft),
                    Left = g.Must(ToLeft),
                    Right = g.Must(ToRight),
                },
                Less(Grip, StickLength, "the grip is longer than the stick"),
                Less(GripDiameter, Grip, "the grip is thicker than it is long")),
            "Ready-made: a centre stick that leans forward, aft and to both sides.");

        private static readonly Member<PointAt> Hub = Needed("hub", PointOrName, "Middle of the wheel on its shaft, pushed fully forward.");
        private static readonly Member<Toleranced<Length>> ShaftLength = Needed("shaftLength", Size(), "Shaft forward of the hub that can meet something.");
        private static readonly Member<Toleranced<Length>> YokeWidth = Needed("width", Size(), "Over both horns.");
        private static readonly Member<Toleranced<Length>> Horn = Needed("horn", Size(), "Height of the horns above the hub.");
        private static readonly Member<Toleranced<Length>> RimDiameter = Needed("rimDiameter", Size(), "Thickness of bar and horns.");
        private static readonly Member<Length> Travel = Needed("travel", new ExactShape<Length>("1 mm", "2 m"), "Fully forward to fully aft.");
        private static readonly Member<Angle> YokeTurn = Needed("turn", Swing(), "To each side.");

        public static readonly Member<Yoke> Yoke = Optional(
            "yoke",
            new ObjectShape<Yoke>(
                "yoke",
                "the yoke",
                [Hub, ShaftLength, ShaftDiameter, YokeWidth, Horn, RimDiameter, Travel, YokeTurn],
                g => new()
                {
                    Hub = g.Must(Hub),
                    ShaftLength = g.Must(ShaftLength),
                    ShaftDiameter = g.Must(ShaftDiameter),
                    Width = g.Must(YokeWidth),
                    Horn = g.Must(Horn),
                    RimDiameter = g.Must(RimDiameter),
                    Travel = g.Must(Travel),
                    Turn = g.Must(YokeTurn),
                },
                Less(RimDiameter, Horn, "the horns are shorter than they are thick"),
                Less(RimDiameter, YokeWidth, "the bar is shorter than it is thick")),
            "Ready-made: a yoke that slides aft and turns.");

        private static readonly Member<PointAt> LeftHinge = Needed("left", PointOrName, "Middle of the left pedal's hinge at the floor.");
        private static readonly Member<PointAt> RightHinge = Needed("right", PointOrName, "Middle of the right pedal's hinge.");
        private static readonly Member<Toleranced<Length>> PedalWidth = Needed("width", Size(), "Width of one pedal or of the shoe on it.");
        private static readonly Member<Toleranced<Length>> PedalLength = Needed("length", Size(), "Hinge up to the toe of the shoe.");
        private static readonly Member<Toleranced<Length>> PedalThickness = Needed("thickness", Size(), "Pedal and shoe, forward to aft.");
        private static readonly Member<Angle> PedalSwing = Needed("swing", Swing(), "Forward and aft from upright.");

        public static readonly Member<Pedals> Pedals = Optional(
            "pedals",
            new ObjectShape<Pedals>(
                "pedals",
                "the pedals",
                [LeftHinge, RightHinge, PedalWidth, PedalLength, PedalThickness, PedalSwing],
                g => new()
                {
                    Left = g.Must(LeftHinge),
                    Right = g.Must(RightHinge),
                    Width = g.Must(PedalWidth),
                    Length = g.Must(PedalLength),
                    Thickness = g.Must(PedalThickness),
                    Swing = g.Must(PedalSwing),
                }),
            "Ready-made: two pedals with feet on them.");

        private static readonly Member<BodySide> Side = Needed("side", TurnsShape.Sides, "Which leg.");
        private static readonly Member<PointAt> Hip = Needed("hip", PointOrName, "Middle of the hip joint, seated.");
        private static readonly Member<PointAt> Heel = Needed("heel", PointOrName, "Where the heel rests.");
        private static readonly Member<PilotSize> LegSize = Optional("size", PilotShape.Sizes, "Whose leg it is. Left out: the largest pilot's.");
        private static readonly Member<Length> Thigh = Optional("thigh", new ExactShape<Length>("200 mm", "1 m"), "Hip to middle of the knee, of the person who flies.");
        private static readonly Member<Length> Shin = Optional("shin", new ExactShape<Length>("200 mm", "1 m"), "Middle of the knee to the heel.");
        private static readonly Member<Length> ThighDiameter = Optional("thighDiameter", new ExactShape<Length>("50 mm", "500 mm"), "Thickness of the clothed thigh above the knee.");
        private static readonly Member<Length> ShinDiameter = Optional("shinDiameter", new ExactShape<Length>("50 mm", "500 mm"), "Thickness of the clothed shin.");
        private static readonly Member<Angle> Outward = Optional("outward", Swing(), "How far the knee falls outward about the line from hip to heel.", Angle.Zero, "0 deg");
        private static readonly Member<Angle> Inward = Optional("inward", Swing(), "How far it swings toward the middle.", Angle.Zero, "0 deg");

        public static readonly Member<SeatedLeg> Leg = Optional(
            "leg",
            new ObjectShape<SeatedLeg>(
                "leg",
                "the leg",
                [Side, Hip, Heel, LegSize, Thigh, Shin, ThighDiameter, ShinDiameter, Outward, Inward],
                g => new()
                {
                    Side = g.Must(Side),
                    Hip = g.Must(Hip),
                    Heel = g.Must(Heel),
                    Size = g.Maybe(LegSize),
                    Thigh = g.Maybe(Thigh),
                    Shin = g.Maybe(Shin),
                    ThighDiameter = g.Maybe(ThighDiameter),
                    ShinDiameter = g.Maybe(ShinDiameter),
                    Outward = g.Or(Outward),
                    Inward = g.Or(Inward),
                },
                new Rule(
                    "Thigh and shin span the way from `hip` to `heel`.",
                    g =>
                    {
                        if (g.Item(Hip) is not { } hip || g.Item(Heel) is not { } heel)
                            return;
                        var apart = (Place(hip) - Place(heel)).Size;
                        if (apart < 0.05)
                            g.RefuseValue(Heel, $"{Inches(apart)} from the hip", "a heel farther from the hip");
                        else if (g.Maybe(Thigh)?.Metres + g.Maybe(Shin)?.Metres <= apart)
                            g.RefuseValue(Heel, $"{Inches(apart)} from the hip: farther than thigh {g.Shown(Thigh)} and shin {g.Shown(Shin)} reach", "a heel that the leg reaches with a bent knee");
                    })),
            "Ready-made: a seated leg, thigh and shin.");

        private static readonly Member<EquatableList<PointAt>> Line = Needed("line", new ListShape<PointAt>(PointOrName, "points", 100, least: 2), "Its centre line, point after point.");
        private static readonly Member<Toleranced<Length>> TubeDiameter = Needed("diameter", Size(), "Its thickness.");

        public static readonly Member<TubeFrame> Frame = Optional(
            "frame",
            new ObjectShape<TubeFrame>("frame", "the frame", [Line, TubeDiameter], g => new() { Line = g.Must(Line), Diameter = g.Must(TubeDiameter) }),
            "Ready-made: a tube along points, e.g. a canopy bow. It may have joints.");
    }

    private static class TouchShape
    {
        public static readonly Member<string> Part = Needed("part", new TextShape(40, mayBeEmpty: false), "Part of this body.");
        public static readonly Member<string> With = Needed("with", new IdShape(), "The other body, the run whose handle it is, or a sheet.");
        public static readonly Member<string> WithPart = Needed("withPart", new TextShape(40, mayBeEmpty: false), "Part of the other; of a handle \"shank\", \"knob\" or \"hand\", of a sheet \"sheet\".");
        public static readonly Member<string> Why = Needed("why", new TextShape(200, mayBeEmpty: false), "Why they may touch. It stands in every report.");
        public static readonly ObjectShape<Touch> Shape = new("touch", "an allowed contact", [Part, With, WithPart, Why], g => new(g.Must(Part), g.Must(With), g.Must(WithPart), g.Must(Why)));
    }

    private static class KeepAwayShape
    {
        public static readonly Member<Length> Distance = Needed("distance", new ExactShape<Length>("0 mm", "2 m"), "What every conduit keeps from it, surface to surface.");
        public static readonly Member<KeepAwayCause> Because = Optional(
            "because",
            new WordShape<KeepAwayCause>(
                new("heat", KeepAwayCause.Heat, "it is hot: by the kit's plans or the maker's figure"),
                new("edge", KeepAwayCause.Edge, "it has an edge that chafes"),
                new("other", KeepAwayCause.Other, "another reason")),
            "Why.",
            KeepAwayCause.Other);
        public static readonly ObjectShape<KeepAway> Shape = new("keepAway", "the distance that conduits keep", [Distance, Because], g => new(g.Must(Distance), g.Or(Because)));
        public static readonly Member<KeepAway> InBody = Optional("keepAway", Shape, "Distance that conduits keep from it. Left out: the published one.");
    }

    private static class BodyShape
    {
        public static readonly Member<string> Id = Needed("id", new IdShape(), "Short name of the body.");
        public static readonly Member<EquatableList<BodyJoint>> Joints = Optional("joints", new ListShape<BodyJoint>(JointShape.Shape, "joints", 6), "How it moves, from the airframe outward: the first joint moves everything after it. None: it stands still.", [], "");
        public static readonly Member<EquatableList<BodyPart>> Parts = Optional("shapes", new ListShape<BodyPart>(PartForms.Shape, "parts", 200, least: 1), "Its parts, with all joints at zero.", [], "");
        public static readonly Member<EquatableList<BodyGate>> Gates = Optional("gates", new ListShape<BodyGate>(GateShape.Shape, "gates", 10), "Joints that limit one another: a stick that does not reach the corner of full aft and full right. Positions beyond are not counted, so measure them on the finished stops.", [], "");
        public static readonly Member<Length> Allow = Optional("allow", new ExactShape<Length>("0 mm", "300 mm"), "Clothing and soft edges: added all round.", Length.Zero, "0 mm");
        public static readonly Member<EquatableList<Touch>> Touches = Optional("touches", new ListShape<Touch>(TouchShape.Shape, "allowed contacts", 50), "Parts that may touch. Nothing is proved about them.", [], "");
        public static readonly Member<string> AboutIt = Words("note", Note, "Anything worth keeping with the body.");

        private static readonly Member[] ReadyMade = [ReadyMadeForms.Stick, ReadyMadeForms.Yoke, ReadyMadeForms.Pedals, ReadyMadeForms.Leg, ReadyMadeForms.Frame];

        public static readonly ObjectShape<Body> Shape = new(
            "body",
            "the body",
            [Id, Joints, Gates, Parts, .. ReadyMade, Allow, KeepAwayShape.InBody, Touches, AboutIt],
            g => new()
            {
                Id = g.Must(Id),
                Joints = g.Or(Joints),
                Parts = PartForms.Named(g.Or(Parts)),
                ReadyMade = ReadyMadeOf(g),
                Allow = g.Or(Allow),
                KeepAway = g.Item(KeepAwayShape.InBody),
                Touches = g.Or(Touches),
                Gates = g.Or(Gates),
                Note = g.Or(AboutIt),
            },
            Rule.ExactlyOne("Either `shapes` or one ready-made body.", [Parts, .. ReadyMade]),
            new Rule(
                "`joints` go with `shapes` or `frame`; the other ready-made bodies bring their own.",
                g =>
                {
                    if (g.Has(Joints) && ReadyMade.FirstOrDefault(m => m != ReadyMadeForms.Frame && g.Has(m)) is { } own)
                        g.RefuseName(Joints, $"\"joints\" beside \"{own.Name}\"", $"no joints: the {own.Name} brings its own");
                }),
            new Rule("Joints and parts of a body have different names.", DifferentNames),
            new Rule("`follows` names another joint of the body, one that follows none itself.", Followers),
            new Rule("A gate names two joints of the body, stick or yoke, and cuts a corner off their ranges.", g =>
            {
                // What is at fault itself was told.
                if (g.Item(Joints) is { } joints ? joints.DistinctBy(j => j.Id).Count() == joints.Count : !g.Has(Joints) && (ReadyMadeOf(g) is not null || !ReadyMade.Any(g.Has)))
                    GateShape.Check(g, Gates, Ranges(g));
            }),
            new Rule(
                "An allowed contact names a part that the body has.",
                g =>
                {
                    if (g.Item(Touches) is not { } touches || Names(g) is not { Count: > 0 } parts)
                        return;
                    foreach (var (touch, row) in touches.Zip(g.Rows(Touches)))
                    {
                        if (!parts.Contains(touch.Part))
                            row.RefuseValue(TouchShape.Part, $"{row.Shown(TouchShape.Part)}: the body has no such part", $"one of {List(parts)}");
                    }
                }));

        public static string List(IEnumerable<string> names) => string.Join(", ", names.Select(n => $"\"{n}\""));

        private static ReadyMade? ReadyMadeOf(Given g) =>
            ((ReadyMade?[])[g.Item(ReadyMadeForms.Stick), g.Item(ReadyMadeForms.Yoke), g.Item(ReadyMadeForms.Pedals), g.Item(ReadyMadeForms.Leg), g.Item(ReadyMadeForms.Frame)])
                .FirstOrDefault(r => r is not null);

        private static EquatableList<string> Names(Given g) =>
            ReadyMadeOf(g)?.PartNames ?? (g.Item(Parts) is { } parts ? PartForms.Named(parts).Select(p => p.Name).ToEquatableList() : []);

        private static EquatableList<JointRange> Ranges(Given g) =>
            ReadyMadeOf(g)?.Ranges() is { Count: > 0 } ready ? ready : g.Item(Joints) is { } joints ? joints.Select(j => j.Range).ToEquatableList() : [];

        private static void Followers(Given g)
        {
            if (g.Item(Joints) is not { } joints)
                return;
            foreach (var (joint, row) in joints.Zip(g.Rows(Joints)))
            {
                if (joint.Follows.Length == 0)
                    continue;
                var free = joints.Where(j => j.Follows.Length == 0).Select(j => j.Id).ToList();
                if (!free.Contains(joint.Follows))
                    row.RefuseValue(JointShape.Follows, $"{row.Shown(JointShape.Follows)}: {(joint.Follows == joint.Id ? "the joint itself" : joints.Any(j => j.Id == joint.Follows) ? "follows another itself" : "the body has no such joint")}", free.Count == 0 ? "a joint that moves by itself" : $"one of {List(free)}");
            }
        }

        private static void DifferentNames(Given g)
        {
            g.RefuseAgain(Joints, JointShape.Id, "a different name for each joint");
            if (g.Item(Parts) is not { } parts)
                return;
            var first = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (part, row) in PartForms.Named(parts).Zip(g.Rows(Parts)))
            {
                if (!first.Add(part.Name))
                    row.RefuseSelf($"a second part called \"{Reading.Short(part.Name)}\"", "a different name for each part");
            }
        }
    }

    /// <summary>Ids of bodies, sheets and what allowed contacts name hold together over the whole file.</summary>
    private static void BodiesHoldTogether(Given file)
    {
        file.RefuseAgain(FileShape.Sheets, SheetShape.Id, "a different id for each sheet");
        file.RefuseAgain(FileShape.Bodies, BodyShape.Id, "a different id for each body");
        if (file.Item(FileShape.Bodies) is not { } bodies)
            return;
        var sheets = file.Item(FileShape.Sheets) ?? [];
        var runs = file.At(FileShape.Runs) is { Kind: NodeKind.List } list ? list.Items.Select(r => r.Member("id")?.Text ?? "").ToHashSet(StringComparer.Ordinal) : [];
        foreach (var (body, row) in bodies.Zip(file.Rows(FileShape.Bodies)))
        {
            if (runs.Contains(body.Id))
                row.RefuseValue(BodyShape.Id, $"{row.Shown(BodyShape.Id)}: a run has this id too", "an id that no run has");
            foreach (var (touch, at) in body.Touches.Zip(row.Rows(BodyShape.Touches)))
            {
                var other = runs.Contains(touch.With) ? null : bodies.FirstOrDefault(b => b.Id == touch.With);
                var isSheet = other is null && !runs.Contains(touch.With) && sheets.Any(s => s.Id == touch.With);
                if (other is null && !isSheet && !runs.Contains(touch.With))
                    at.RefuseValue(TouchShape.With, $"{at.Shown(TouchShape.With)}: no body, no run and no sheet has this id", $"one of {BodyShape.List(bodies.Select(b => b.Id).Concat(runs).Concat(sheets.Select(s => s.Id)).Where(i => i != body.Id).Take(12))}");
                else if (other is not null && other.Id == body.Id)
                    at.RefuseValue(TouchShape.With, $"{at.Shown(TouchShape.With)}: the body itself", "another body, a run or a sheet");
                else if ((other?.PartNames ?? (isSheet ? [Sheet.PartName] : Touch.HandleParts)) is var names && !names.Contains(touch.WithPart))
                    at.RefuseValue(TouchShape.WithPart, $"{at.Shown(TouchShape.WithPart)}: {touch.With} has no such part", $"one of {BodyShape.List(names)}");
            }
        }
    }
}

/// <summary>A joint's limit: a length or an angle, m or rad.</summary>
internal readonly record struct Travel(QuantityKind Kind, double Si);

internal sealed class TravelShape : Shape<Travel>
{
    private static readonly QuantityReader Lengths = new(QuantityKind.Length, exact: true, new(QuantityKind.Length, "-10 m", "10 m"));
    private static readonly QuantityReader Angles = new(QuantityKind.Angle, exact: true, new(QuantityKind.Angle, "-360 deg", "360 deg"));

    public override string Kind => "length or angle";
    public override string Limits => $"{Lengths.LimitsText}, or {Angles.LimitsText}";

    public override JsonObject Schema(JsonObject definitions) => new() { ["anyOf"] = new JsonArray(Lengths.Schema(definitions), Angles.Schema(definitions)) };

    public override bool TryRead(Node node, Reading reading, out Travel value)
    {
        var kind = node.Kind == NodeKind.Text && UnitText.TryRead(QuantityKind.Angle, node.Text, out _, out _) ? QuantityKind.Angle : QuantityKind.Length;
        var read = (kind == QuantityKind.Angle ? Angles : Lengths).TryRead(node, reading, out var q);
        value = new(kind, q.Nominal);
        return read;
    }
}
