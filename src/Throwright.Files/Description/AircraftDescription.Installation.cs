using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

internal static partial class AircraftDescription
{
    private static readonly WordShape<Basis> BasisWords = new(
        new("amateurBuilt", Basis.AmateurBuilt, "amateur-built: operating limitations bind, certification rules are published good practice"),
        new("part23", Basis.Part23, "type-certificated to 14 CFR Part 23 in the text before Amendment 64"),
        new("car3", Basis.Car3, "type-certificated to Civil Air Regulations, Part 3: take the paragraph from your edition, its text is not in the program"));

    private static class SwivelJointShape
    {
        public static readonly Member<PinKind> Kind = Optional(
            "kind", new WordShape<PinKind>(new("bolt", PinKind.Bolt, "bolt and nut"), new("clevisPin", PinKind.ClevisPin, "headed pin without thread")), "What joins swivel and arm.", PinKind.Bolt);
        public static readonly Member<bool> Turns = Yes("turns", "The bolt or pin turns when the control is worked.");
        public static readonly Member<Length> Diameter = Optional("diameter", new ExactShape<Length>("0.5 mm", "30 mm"), "Diameter of the bolt or pin, with a caliper.");
        public static readonly Member<Length> Arm = Optional("arm", new ExactShape<Length>("0.2 mm", "50 mm"), "Thickness of the arm at the hole.");
        public static readonly Member<Length> Fitting = Optional("swivel", new ExactShape<Length>("0.2 mm", "50 mm"), "Length of the swivel's bearing on the pin.");
        public static readonly Member<Stress> Bearing = Optional("bearing", new ExactShape<Stress>("1 MPa", "5000 MPa"), "Ultimate bearing strength of the softer of the two, from its material data.");
        public static readonly Member<string> Material = Words("material", Line, "The softer material, for the papers.");
        public static readonly Member<EquatableList<JointLock>> HeldBy = Optional(
            "heldBy",
            new ListShape<JointLock>(
                new WordShape<JointLock>(
                    new("cotter", JointLock.Cotter, "cotter pin"),
                    new("selfLockingNut", JointLock.SelfLockingNut, "fibre or nylon lock nut"),
                    new("allMetalNut", JointLock.AllMetalNut, "all-metal lock nut"),
                    new("castleNut", JointLock.CastleNut, "castle nut"),
                    new("selfLockingCastleNut", JointLock.SelfLockingCastleNut, "self-locking castle nut"),
                    new("lockwire", JointLock.Lockwire, "safety wire"),
                    new("lockWasher", JointLock.LockWasher, "lock washer"),
                    new("checkNut", JointLock.CheckNut, "second nut"),
                    new("threadlocker", JointLock.Threadlocker, "liquid threadlocker"),
                    new("springClip", JointLock.SpringClip, "spring clip"),
                    new("structure", JointLock.Structure, "structure beside it keeps it in")),
                "words",
                11,
                noneTwice: true),
            "Everything that keeps the bolt or pin in.",
            [],
            "");
        public static readonly ObjectShape<Joint> Shape = new(
            "swivelJoint",
            "the joint of swivel and arm",
            [Kind, Turns, Diameter, Arm, Fitting, Bearing, Material, HeldBy],
            g => new()
            {
                Kind = g.Or(Kind),
                Turns = g.Or(Turns),
                Diameter = g.Maybe(Diameter),
                Arm = g.Maybe(Arm),
                Swivel = g.Maybe(Fitting),
                Bearing = g.Maybe(Bearing),
                Material = g.Or(Material),
                HeldBy = g.Or(HeldBy),
            });
    }

    private static class LegendShape
    {
        public static readonly Member<Length> Height = Needed("height", new ExactShape<Length>("0.2 mm", "100 mm"), "Height of its capital letters.");
        public static readonly Member<Length> Distance = Needed("distance", new ExactShape<Length>("50 mm", "5 m"), "Eye to lettering.");
        public static readonly Member<bool> Light = Yes("lightOnDark", "Light letters on a dark ground.");
        public static readonly ObjectShape<Legend> Shape = new("legend", "the lettering", [Height, Distance, Light], g => new(g.Must(Height), g.Must(Distance), g.Or(Light)));
    }

    private static class NeighbourShape
    {
        public static readonly Member<NeighbourKind> What = Needed(
            "what",
            new WordShape<NeighbourKind>(
                new("wiring", NeighbourKind.Wiring, "a wire bundle, pushed toward the cable by a light hand"),
                new("fuelLine", NeighbourKind.FuelLine),
                new("exhaust", NeighbourKind.Exhaust),
                new("controlCable", NeighbourKind.ControlCable, "a cable of another control"),
                new("other", NeighbourKind.Other)),
            "What it is.");
        public static readonly Member<Length> Distance = Needed("distance", new ExactShape<Length>("0 mm", "10 m"), "Smallest distance to the cable or its parts, over the whole travel.");
        public static readonly ObjectShape<Neighbour> Shape = new("neighbour", "a neighbour of the cable", [What, Distance], g => new(g.Must(What), g.Must(Distance)));
    }

    private static class InstalledPartShape
    {
        public static readonly Member<string> Name = Needed("name", new TextShape(60, mayBeEmpty: false), "What it is, e.g. \"wedge washer\".");
        public static readonly Member<string> Material = Needed("material", new TextShape(60, mayBeEmpty: false), "Its material as the table of plastics names it (docs/reference/sources.md), e.g. \"PETG\"; a metal by its name.");
        public static readonly Member<PartPlace> Place = Needed(
            "place",
            new WordShape<PartPlace>(
                new("cabin", PartPlace.Cabin, "in the cabin, in shade"),
                new("sunlit", PartPlace.Sunlit, "panel face, glareshield: in the sun"),
                new("engineBay", PartPlace.EngineBay),
                new("elsewhere", PartPlace.Elsewhere)),
            "Where it sits.");
        public static readonly Member<bool> Clamped = Yes("clamped", "A nut clamps it, or it carries load: it must not creep.");
        public static readonly ObjectShape<InstalledPart> Shape = new("installedPart", "a part held against heat", [Name, Material, Place, Clamped], g => new(g.Must(Name), g.Must(Material), g.Must(Place), g.Or(Clamped)));
    }

    private static class PartStrengthsShape
    {
        private static ExactShape<Stress> Strength => new("1 MPa", "5000 MPa");
        public static readonly Member<bool> Forked = Yes("forked", "Arm or fitting is a fork, so that the pin is held on both sides.");
        public static readonly Member<Stress> PinShear = Optional("pinShear", Strength, "Ultimate shear strength of the pin, by its specification. Left out: the published one of the AN bolt of its diameter.");
        public static readonly Member<Length> ArmWidth = Optional("armWidth", new ExactShape<Length>("1 mm", "200 mm"), "Width of the arm, in the plane it turns in, where it meets its hub.");
        public static readonly Member<Length> ArmEdge = Optional("armEdge", new ExactShape<Length>("0.5 mm", "200 mm"), "Middle of the hole in use to the arm's nearest edge.");
        public static readonly Member<Stress> ArmYield = Optional("armYield", Strength, "Yield strength of the arm's material, by its specification.");
        public static readonly Member<Stress> BracketYield = Optional("bracketYield", Strength, "Yield strength of the bracket's sheet, by its specification.");
        public static readonly Member<Stress> ShankYield = Optional("shankYield", Strength, "Yield strength of the knob's shank.");
        public static readonly ObjectShape<PartStrengths> Shape = new(
            "strength",
            "what the parts stand",
            [Forked, PinShear, ArmWidth, ArmEdge, ArmYield, BracketYield, ShankYield],
            g => new()
            {
                Forked = g.Or(Forked),
                PinShear = g.Maybe(PinShear),
                ArmWidth = g.Maybe(ArmWidth),
                ArmEdge = g.Maybe(ArmEdge),
                ArmYield = g.Maybe(ArmYield),
                BracketYield = g.Maybe(BracketYield),
                ShankYield = g.Maybe(ShankYield),
            });
    }

    private static class InstallationShape
    {
        public static readonly Member<bool> Critical = new("critical", Flag, required: false, "Losing this control would prevent continued safe flight and landing: every joint then needs two retaining devices.");
        public static readonly Member<GuardKind> Guard = new(
            "guard",
            new WordShape<GuardKind>(
                new("none", GuardKind.None, "nothing"),
                new("cover", GuardKind.Cover, "a cover to be lifted"),
                new("gate", GuardKind.Gate, "a gate or notch"),
                new("button", GuardKind.Button, "a button to be pressed"),
                new("twist", GuardKind.Twist, "a turn to be made first")),
            required: false,
            "What keeps the control from being worked by mistake.");
        public static readonly Member<Force> LimitForce = Optional("limitForce", new ExactShape<Force>("1 N", "10000 N"), "Force of the hand that the control is built to stand with the device jammed; the rules leave it to you. Left out: a published figure for comparison.");
        public static readonly Member<FirewallSide> Side = new(
            "side", new WordShape<FirewallSide>(new("cabin", FirewallSide.Cabin), new("engine", FirewallSide.Engine)), required: false, "Which side of the firewall the device sits on.");
        public static readonly Member<Joint> Joint = Optional("joint", SwivelJointShape.Shape, "Bolt or pin of swivel and arm.");
        public static readonly Member<Force> SwivelHeld = Optional("swivelHeld", new ExactShape<Force>("0.1 N", "100000 N"), "Pull that the wire stood in its fitting without creeping, when tested.");
        public static readonly Member<Force> AnchorHeld = Optional("anchorHeld", new ExactShape<Force>("0.1 N", "100000 N"), "Pull that the conduit stood in its anchor without creeping, when tested.");
        public static readonly Member<AnchorGround> AnchorOn = new(
            "anchorOn",
            new WordShape<AnchorGround>(
                new("structure", AnchorGround.Structure),
                new("deviceBracket", AnchorGround.DeviceBracket, "a bracket on the device itself"),
                new("fluidLine", AnchorGround.FluidLine, "a fuel, oil or brake line")),
            required: false,
            "What the anchor stands on.");
        public static readonly Member<FireClass> Fire = new(
            "conduitFire",
            new WordShape<FireClass>(new("notStated", FireClass.NotStated), new("fireResistant", FireClass.FireResistant), new("fireproof", FireClass.Fireproof)),
            required: false,
            "What its maker states of the conduit in a fire.");
        public static readonly Member<string> Liner = Words("liner", Line, "Material of the conduit's liner as the table of plastics names it, e.g. \"PTFE\".");
        public static readonly Member<Temperature> Hottest = Optional("cableHottest", new ExactShape<Temperature>("0 degC", "1000 degC"), "Highest temperature that its maker states for the cable.");
        public static readonly Member<Legend> Lettering = Optional("legend", LegendShape.Shape, "The lettering beside the knob.");
        public static readonly Member<EquatableList<Neighbour>> Near = Optional("near", new ListShape<Neighbour>(NeighbourShape.Shape, "neighbours", 50), "What the cable passes closely.", [], "");
        public static readonly Member<EquatableList<InstalledPart>> Parts = Optional("parts", new ListShape<InstalledPart>(InstalledPartShape.Shape, "parts", 50), "Plastic and other parts to be held against the heat of their place.", [], "");

        public static readonly Member<PartStrengths> Strength = Optional("strength", PartStrengthsShape.Shape, "Sizes and strengths by which pin, arm, bracket and shank are counted with the device jammed.");

        public static readonly ObjectShape<Installation> Shape = new(
            "installation",
            "the installation",
            [Critical, Guard, LimitForce, Side, Joint, SwivelHeld, AnchorHeld, AnchorOn, Fire, Liner, Hottest, Lettering, Near, Parts, Strength],
            g => new()
            {
                Critical = g.Maybe(Critical),
                Guard = g.Maybe(Guard),
                LimitForce = g.Maybe(LimitForce),
                Side = g.Maybe(Side),
                Joint = g.Item(Joint),
                SwivelHeld = g.Maybe(SwivelHeld),
                AnchorHeld = g.Maybe(AnchorHeld),
                AnchorOn = g.Maybe(AnchorOn),
                ConduitFire = g.Maybe(Fire),
                Liner = g.Or(Liner),
                CableHottest = g.Maybe(Hottest),
                Legend = g.Item(Lettering),
                Near = g.Or(Near),
                Parts = g.Or(Parts),
                Strength = g.Item(Strength),
            });
    }
}
