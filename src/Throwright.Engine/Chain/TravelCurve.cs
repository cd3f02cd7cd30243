using Throwright.Shapes;

namespace Throwright.Engine.Chain;

/// <summary>Lever angle and hand force against the knob's place: what the curves under the ladder show.</summary>
/// <param name="Points">From the push stop to the pull stop.</param>
public sealed record TravelCurve(EquatableList<TravelPoint> Points);

/// <summary>One device position. Knob places in m from the IN stop; angle in rad; forces in N at the knob, NaN where not known.</summary>
/// <param name="KnobPulling">Knob place when the device is moved by pulling.</param>
/// <param name="KnobPushing">Knob place when it is moved by pushing.</param>
/// <param name="Pull">Force to pull through this place (negative: the hand must hold back), with its worst-case band.</param>
/// <param name="Push">The same for pushing.</param>
public sealed record TravelPoint(
    double ArmAngle, double KnobPulling, double KnobPushing, ForceBand Pull, ForceBand Push);

/// <summary>A hand force: nominal and worst-case limits, N.</summary>
public readonly record struct ForceBand(double Nominal, double Least, double Most)
{
    public static ForceBand Unknown => new(double.NaN, double.NaN, double.NaN);
}
