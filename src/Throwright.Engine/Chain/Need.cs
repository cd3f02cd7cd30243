namespace Throwright.Engine.Chain;

/// <summary>An input that a stage lacks: where it goes in the file, how to get it, what it opens.</summary>
/// <param name="Path">JSON path within the run.</param>
/// <param name="Name">What it is called.</param>
/// <param name="How">How a builder finds it, and an example as it is typed.</param>
/// <param name="Opens">The stages that wait for it.</param>
public sealed record Need(string Path, string Name, string How, string Opens)
{
    public static readonly Need Radius = new("leverEnd.arm.radius", "arm radius", "pivot to hole with calipers, e.g. \"1 1/2 in ± 1/64 in\"", "throw, cushion, hand force");
    public static readonly Need Sweep = new("leverEnd.sweep", "sweep of the arm", "stop to stop with a protractor, e.g. \"90 deg ± 2 deg\"", "throw, cushion, hand force");
    public static readonly Need Anchor = new("leverEnd.bench", "place of the anchor", "distance along the wire from the swivel at mid travel, e.g. { \"distance\": \"4 in ± 1/16 in\", \"rule\": \"squareAtMid\" }", "throw, cushion, hand force");
    public static readonly Need Stroke = new("cockpitEnd.stroke", "stroke of the knob", "IN stop to OUT stop with a rule, e.g. \"3 in ± 1/32 in\"", "cushion");
    public static readonly Need Load = new("leverEnd.load.torque", "torque of the device", "spring scale at the arm's hole times its radius, e.g. \"6 lbf in ± 20 %\"", "hand force and stretch");
    public static readonly Need Friction = new("cable.friction", "friction of the core in the conduit", "a band, e.g. \"0.15 ± 0.05\"; a pull test on the finished run replaces it", "hand force and stretch");
    public static readonly Need BendTotal = new("cable.bendTotal", "sum of the angles the conduit turns", "add up the bends, e.g. \"270 deg ± 30 deg\", or list them under bends", "lost motion and hand force");
    public static readonly Need Bends = new("cable.bends", "bends one by one with their radii", "from the device to the knob, e.g. [ { \"angle\": \"90 deg ± 10 deg\", \"radius\": \"8 in ± 1 in\" } ], instead of bendTotal", "the drag of the stiff core in its bends, the least radius, the set of the core");
    public static readonly Need MinRadius = new("cable.conduit.minRadius", "least bend radius of the conduit", "from the maker's sheet, e.g. \"5 in\"", "the check of the bends");
    public static readonly Need Core = new("cable.core", "core wire", "diameter with a micrometer, e.g. { \"diameter\": \"0.062 in\", \"kind\": \"solid\" }", "lost motion, stretch, buckling");
    public static readonly Need Bore = new("cable.conduit.bore", "bore of the conduit", "the maker's figure, or the largest drill shank that slips in, e.g. \"0.078 in ± 0.002 in\"", "lost motion");
    public static readonly Need ConduitLength = new("cable.length", "length of the conduit", "a piece of rope laid along the way, e.g. \"62 in ± 1/2 in\"", "stretch and heat");
    public static readonly Need Leaves = new("cable.ends.leaves", "where the conduit leaves the cockpit end", "the end of the bushing behind the sheet and the way it points, e.g. { \"at\": [\"40 in\", \"-2 in\", \"8 in\"], \"along\": [-1, 0, 0] }; or sheet and hole of the cockpit end", "the lie of the conduit, its length and its bends");
    public static readonly Need Arrives = new("cable.ends.arrives", "where the conduit arrives at the anchor", "place and direction, e.g. { \"at\": [\"12 in\", \"-3 in\", \"4 in\"], \"along\": [-1, 0, 0] }; or the lever end in coordinates", "the lie of the conduit, its length and its bends");
    public static readonly Need RouteLength = new("cable.length", "length of the conduit", "no length comes to rest by itself between these ends: lay a rope along the way, e.g. \"62 in ± 1/2 in\"", "the lie of the conduit and its bends");
    public static readonly Need Environment = new("environment", "temperatures and airframe material", "see the starter file", "the part of the cushion that heat and cold take");
    public static readonly Need PullLimit = new("cable.limits.pull", "the maker's pull limit", "from the maker's sheet, e.g. \"50 lbf\"", "the check of the core in pull");
    public static readonly Need PushLimit = new("cable.limits.push", "the maker's push limit", "from the maker's sheet, e.g. \"20 lbf\"", "the check of the core in push");
    public static readonly Need UserForce = new("handForceMost", "your own limit for the hand force", "e.g. \"10 lbf\"", "the verdict on the hand force");

    /// <summary>A named point whose readings give no place.</summary>
    public static Need Point(string name, string opens) => new($"points.{name}", $"place of {name}", "its readings give no place yet: throwright measure says why", opens);
}
