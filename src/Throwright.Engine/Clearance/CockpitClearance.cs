using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Clearance;

/// <summary>Least distance of two bodies over all positions of their joints.</summary>
/// <param name="Found">Lower bound proved, upper bound attained, where and with the joints how.</param>
/// <param name="Enclosure">Whether the surfaces' distance is a clearance at all.</param>
public sealed record PairClearance(CockpitBody First, CockpitBody Second, LeastDistanceResult Found, Enclosure Enclosure)
{
    /// <summary>Proved for all positions, m; 0 when they touch or one is inside the other.</summary>
    public double Lower => Enclosure == Enclosure.Inside ? 0 : Found.Lower;

    /// <summary>Attained at the positions given, m.</summary>
    public double Upper => Enclosure == Enclosure.Inside ? 0 : Found.Upper;

    /// <summary>Joints that others take along, where those stand.</summary>
    public IEnumerable<(Joint Joint, double At)> Taken =>
        First.Joints.Joints.Concat(Second.Joints.Joints).Where(j => j.Drive is not null).Distinct().Select(j => (j, JointChain.PositionOf(j, Found.Joints, Found.Positions)));

    public bool Hits => Enclosure == Enclosure.Inside || Found.Ended == SearchEnd.Hits;
}

/// <summary>Every pair of bodies that move against each other.</summary>
public sealed record CockpitClearance(CockpitCase Case, EquatableList<PairClearance> Pairs)
{
    /// <summary>The pair that comes closest as far as is proved; null when nothing moves against anything.</summary>
    public PairClearance? Closest => Pairs.Count == 0 ? null : Pairs.MinBy(p => (p.Lower, p.Upper));
}
