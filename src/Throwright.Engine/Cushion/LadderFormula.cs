using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Cushion;

/// <summary>Everything the ladder formula gives for one aircraft, m.</summary>
public readonly record struct LadderPlaces<T>(
    T PushStop, T PullStop, T CushionIn, T CushionOut, T TipAtPull, T TipAtPush, T Throw, T LostMotion, T StretchPull, T StretchPush, T LengthPush, T LengthPull)
    where T : struct, IReal<T>;

/// <summary>The travel ladder, written once for every kind of number. Theory: docs/theory/cushion.md.</summary>
/// <remarks>
/// Knob place x (from the IN stop, positive out) = wire length - conduit length - free wire length, so with the wire
/// length W set so that the pin is W from the anchor when the knob is in:
///   pushing:  x = W - L(phi) - e_push          pulling:  x = W - L(phi) + B + e_pull
///   p0 = x pushing at the push stop            p1 = x pulling at the pull stop
///   B = c Theta + plays                        lost motion: the core crosses its bore at every reversal
///   e = give x max(0, R/|m| + drag) + own      R torque against the arrival, m = dL/dphi, own the core's own drag
///   cushion in = p0,  cushion out = stroke - p1,  so stroke = in + B + e_pull + e_push + throw + out
/// Heat moves the knob by (a_wire - a_conduit) Lc dT_cable + (a_wire - a_bracket) L dT_lever: <see cref="LadderHeat"/>.
/// Lengths m, angles rad, forces N, a 1/K.
/// </remarks>
public static class LadderFormula
{
    public static LadderPlaces<T> Evaluate<T>(LadderCase of, ReadOnlySpan<T> x, LadderHeat.At temperature)
        where T : struct, IReal<T> => Warmed(LadderHeat.Of(of.Heat, temperature), x, Rigged(of, x));

    /// <summary>All places at rigging temperature.</summary>
    public static LadderPlaces<T> Rigged<T>(LadderCase of, ReadOnlySpan<T> x)
        where T : struct, IReal<T>
    {
        T stroke = x[(int)LadderInput.Stroke], setting = x[(int)LadderInput.Setting];
        T pushAngle = x[(int)LadderInput.PushAngle], pullAngle = x[(int)LadderInput.PullAngle];
        T dx = x[(int)LadderInput.AnchorX], dy = x[(int)LadderInput.AnchorY], dz = x[(int)LadderInput.AnchorZ];
        var (axisX, axisY, axisZ) = of.AnchorAxes;
        var circle = new CircleDistance<T>(
            x[(int)LadderInput.Radius],
            T.Of(of.Anchor.X) + (axisX.X * dx) + (axisY.X * dy) + (axisZ.X * dz),
            T.Of(of.Anchor.Y) + (axisX.Y * dx) + (axisY.Y * dy) + (axisZ.Y * dz),
            T.Of(of.Anchor.Z) + (axisX.Z * dx) + (axisY.Z * dy) + (axisZ.Z * dz) - x[(int)LadderInput.AlongAxis]);
        CirclePlace<T> atPush = circle.PlaceAt(pushAngle), atPull = circle.PlaceAt(pullAngle);
        T lengthPush = atPush.Distance, lengthPull = atPull.Distance;

        // L rises toward the push stop, so dL/dphi has the sign of (push angle - pull angle); both arms made positive.
        double sign = of[LadderInput.PushAngle].Nominal > of[LadderInput.PullAngle].Nominal ? 1 : -1;
        T torque = x[(int)LadderInput.TorqueFactor], own = x[(int)LadderInput.OwnTorque], drag = T.Of(of.DeviceDrag);
        T Force(CirclePlace<T> place, double t, double g, double opposes) => t == 0 && g == 0 && opposes == 0
            ? drag
            : T.AtLeastZero((((t * torque) + T.Of(g) + (opposes * own)) / (sign * circle.SlopeAt(place))) + drag);
        T forcePush = Force(atPush, of.TorqueAtPush, of.BiasAtPush, of.OwnTorqueOpposes.AtPush), forcePull = Force(atPull, of.TorqueAtPull, of.BiasAtPull, of.OwnTorqueOpposes.AtPull);
        T stretchPush = (x[(int)LadderInput.PushGive] * forcePush) + x[(int)LadderInput.OwnPush] + x[(int)LadderInput.PushSlack];
        T stretchPull = (x[(int)LadderInput.PullGive] * forcePull) + x[(int)LadderInput.OwnPull];

        T lost = (x[(int)LadderInput.Clearance] * x[(int)LadderInput.BendTotal]) + x[(int)LadderInput.PinPlay] + x[(int)LadderInput.KnobPlay];
        T wireThrow = circle.Difference(atPush, atPull);
        T used = wireThrow + lost + stretchPull + stretchPush;
        T pushStop, pullStop, cushionIn, cushionOut;
        switch (of.SettingKind)
        {
            case SettingKind.WireLength:
                pushStop = setting - lengthPush - stretchPush;
                pullStop = setting - lengthPull + lost + stretchPull;
                cushionIn = pushStop;
                cushionOut = stroke - pullStop;
                break;
            case SettingKind.AtPushStop:
                // Light hand: no stretch in the reading.
                pushStop = setting - stretchPush;
                pullStop = setting + wireThrow + lost + stretchPull;
                cushionIn = pushStop;
                cushionOut = stroke - pullStop;
                break;
            case SettingKind.AtPullStop:
                pullStop = setting + stretchPull;
                pushStop = setting - wireThrow - lost - stretchPush;
                cushionIn = pushStop;
                cushionOut = stroke - pullStop;
                break;
            default:
                // Gaps made equal on the aircraft, whatever the parts turned out to be; Setting is the error of that.
                cushionIn = (0.5 * (stroke - used)) + setting;
                cushionOut = (0.5 * (stroke - used)) - setting;
                pushStop = cushionIn;
                pullStop = stroke - cushionOut;
                break;
        }

        T hardware = Hardware(x);
        return new(
            pushStop, pullStop, cushionIn, cushionOut, lengthPull - hardware, lengthPush - hardware, wireThrow, lost, stretchPull, stretchPush, lengthPush, lengthPull);
    }

    /// <summary>The cushions of the same aircraft at another temperature, from its places at rigging.</summary>
    public static LadderPlaces<T> Warmed<T>(LadderHeat? heat, ReadOnlySpan<T> x, in LadderPlaces<T> rigged)
        where T : struct, IReal<T>
    {
        if (heat is null)
            return rigged;
        T conduit = x[(int)LadderInput.ConduitLength], hardware = Hardware(x);
        return rigged with
        {
            CushionIn = rigged.CushionIn + ((heat.AtPush.Cable * conduit) + (heat.AtPush.Lever * rigged.LengthPush)),
            CushionOut = rigged.CushionOut - ((heat.AtPull.Cable * conduit) + (heat.AtPull.Lever * rigged.LengthPull)),
            TipAtPull = (heat.Apart * rigged.LengthPull) - hardware,
            TipAtPush = (heat.Apart * rigged.LengthPush) - hardware,
        };
    }

    private static T Hardware<T>(ReadOnlySpan<T> x)
        where T : struct, IReal<T> => x[(int)LadderInput.Tip] + (0.5 * x[(int)LadderInput.SwivelLength]);
}
