using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Throw;

/// <summary>From the lever end's geometry to what the wire does. Theory: docs/theory/throw.md.</summary>
public static class SweepSolver
{
    /// <summary>Places less one of a full answer.</summary>
    public const int Steps = 64;

    /// <summary>The sweep; null when there is none (the wire's length does not depend on the arm angle).</summary>
    /// <remarks>
    /// L^2 = C - D cos(phi - phi0), see <see cref="CircleDistance{T}"/>. Dead centres are at phi0 (wire shortest) and
    /// phi0 + pi (longest). Between two of them L rises or falls all the way, so the stops are its ends, and the
    /// moment arm, which rises from zero to a single crest, is least at one of the stops.
    /// </remarks>
    public static Sweep? Solve(SweepCase of) => Solve(of, Steps, refine: true);

    /// <summary>The same at fewer places, and the largest swing only as these show it: for a search that looks at the stops or at the places.</summary>
    /// <param name="steps">Places less one; 2 are enough for the stops.</param>
    public static Sweep? Scan(SweepCase of, int steps = Steps) => Solve(of, steps, refine: false);

    private static Sweep? Solve(SweepCase of, int steps, bool refine)
    {
        ArgumentNullException.ThrowIfNull(of);
        if (!(of.Radius > 0) || !(of.To > of.From) || of.To - of.From > (2 * Math.PI) + 1e-9)
            throw new ArgumentOutOfRangeException(nameof(of), of, "radius > 0 and 0 < to - from <= 360 deg");
        var (r, a, b, c) = (of.Radius, of.Anchor.X, of.Anchor.Y, of.Anchor.Z);
        var reach = Math.Sqrt((a * a) + (b * b));
        // Anchor on the lever's axis to within a billionth of the arm: there is no throw.
        if (reach < 1e-9 * r)
            return null;
        var phi0 = Math.Atan2(b, a);
        var dead = DeadCentres(phi0, of.From, of.To);
        var sweep = new Sweep
        {
            Case = of,
            C = (r * r) + (a * a) + (b * b) + (c * c),
            D = 2 * r * reach,
            Phi0 = phi0,
            PushAngle = of.To,
            PullAngle = of.From,
            Throw = 0,
            DeadCentresInside = dead.Inside,
            ToDeadCentre = dead.Outside,
            Places = [],
            LeastTransmission = 0,
            MostSwing = 0,
            MostSwingAngle = of.From,
        };
        double atFrom = sweep.LengthAt(of.From), atTo = sweep.LengthAt(of.To);
        var (push, pull) = atTo >= atFrom ? (of.To, of.From) : (of.From, of.To);
        var places = Enumerable.Range(0, steps + 1).Select(i => sweep.PlaceAt(push + ((pull - push) * i / steps))).ToEquatableList();
        var leastArm = dead.Inside.Count > 0 ? 0 : Math.Min(places[0].MomentArm, places[^1].MomentArm);
        var (swing, swingAt) = refine ? MostSwing(places, of.SwingAt) : places.Select(p => (p.Swing, p.Angle)).Max();
        return sweep with
        {
            PushAngle = push,
            PullAngle = pull,
            Throw = Math.Abs(atTo - atFrom),
            Places = places,
            LeastTransmission = Math.Asin(Math.Min(1, leastArm / r)),
            MostSwing = swing,
            MostSwingAngle = swingAt,
        };
    }

    /// <summary>Dead centres within the sweep, and the angle from a stop to the nearest one outside.</summary>
    private static (EquatableList<double> Inside, double Outside) DeadCentres(double phi0, double from, double to)
    {
        var inside = new List<double>();
        var outside = double.PositiveInfinity;
        for (var k = (int)Math.Floor((from - phi0) / Math.PI) - 1; phi0 + (k * Math.PI) <= to + Math.PI; k++)
        {
            var at = phi0 + (k * Math.PI);
            if (at >= from && at <= to)
                inside.Add(at);
            else
                outside = Math.Min(outside, at < from ? from - at : at - to);
        }

        return (inside.ToEquatableList(), outside);
    }

    /// <summary>The largest swing: each place not below its neighbours, refined between them by golden section.</summary>
    private static (double Swing, double At) MostSwing(EquatableList<SweepPlace> places, Func<double, double> swingAt)
    {
        var last = places.Count - 1;
        var most = (places[0].Swing, At: places[0].Angle);
        for (var i = 0; i <= last; i++)
        {
            SweepPlace before = places[Math.Max(0, i - 1)], here = places[i], after = places[Math.Min(last, i + 1)];
            if (here.Swing < before.Swing || here.Swing < after.Swing)
                continue;
            var at = Crest(before.Angle, after.Angle, swingAt);
            var swing = swingAt(at);
            if (Math.Max(swing, here.Swing) > most.Swing)
                most = swing > here.Swing ? (swing, at) : (here.Swing, here.Angle);
        }

        return most;
    }

    /// <summary>Where a function that rises and then falls is greatest.</summary>
    private static double Crest(double a, double b, Func<double, double> f)
    {
        var golden = (Math.Sqrt(5) - 1) / 2;
        for (var i = 0; i < 40; i++)
        {
            double p = b - (golden * (b - a)), q = a + (golden * (b - a));
            if (f(p) >= f(q))
                b = q;
            else
                a = p;
        }

        return 0.5 * (a + b);
    }
}
