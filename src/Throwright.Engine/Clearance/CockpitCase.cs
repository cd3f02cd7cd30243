using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Clearance;

/// <summary>A rigid body of the cockpit on its joints. Aircraft axes: x aft, y right, z up, m.</summary>
/// <param name="Joints">From the airframe outward, axes measured with all joints at zero; none: fixed to the airframe.</param>
/// <param name="Home">aircraftFromBody with all joints at zero.</param>
public sealed record CockpitBody(string Name, Solid Solid, JointChain Joints, Pose Home)
{
    public CockpitBody(string name, Solid solid)
        : this(name, solid, JointChain.Fixed, Pose.None)
    {
    }

    public CockpitBody(string name, Solid solid, JointChain joints)
        : this(name, solid, joints, Pose.None)
    {
    }

    internal MovingSolid Moving => new(Solid, Joints, Home);
}

/// <summary>Two named parts that may touch, and why: a shank in its bushing, a lever on its stop. Never a whole body pair.</summary>
public sealed record AllowedContact(string FirstBody, string FirstPart, string SecondBody, string SecondPart, string Reason);

/// <summary>What may not touch what.</summary>
/// <param name="Interest">Distances above this are not worked out closer, m: it is only proved that they are above it.</param>
/// <param name="Tolerance">Wanted width of each answer, m.</param>
/// <param name="MostBoxes">Budget of each pair, counted, so that the answer is the same on every machine.</param>
public sealed record CockpitCase(
    EquatableList<CockpitBody> Bodies,
    EquatableList<AllowedContact> Allowed,
    double Interest = 0.1,
    double Tolerance = 1e-4,
    long MostBoxes = 500_000)
{
    /// <summary>Names of the bodies that are asked about: only pairs with one of them are looked at. None: all pairs.</summary>
    public EquatableList<string> Watched { get; init; } = [];
}
