using Throwright.Shapes;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Throw;

/// <summary>What the wire does over the device's whole sweep.</summary>
public sealed record Sweep
{
    public required SweepCase Case { get; init; }

    /// <summary>L^2 = C - D cos(phi - Phi0), m^2 and rad.</summary>
    public required double C { get; init; }
    public required double D { get; init; }
    public required double Phi0 { get; init; }

    /// <summary>Arm angle at the stop where the free wire is longest: pushing the knob takes it there.</summary>
    public required double PushAngle { get; init; }

    /// <summary>Arm angle at the stop where the free wire is shortest.</summary>
    public required double PullAngle { get; init; }

    /// <summary>Wire travel from stop to stop, m, when no dead centre lies between them.</summary>
    public required double Throw { get; init; }

    /// <summary>Dead centres inside the sweep; empty for a usable one.</summary>
    public required EquatableList<double> DeadCentresInside { get; init; }

    /// <summary>Angle from the nearer stop to the nearest dead centre outside the sweep, rad.</summary>
    public required double ToDeadCentre { get; init; }

    /// <summary>Places from the push stop to the pull stop, equal steps of arm angle.</summary>
    public required EquatableList<SweepPlace> Places { get; init; }

    /// <summary>Least angle between wire and arm (out of plane: 90 deg less the pressure angle), rad.</summary>
    public required double LeastTransmission { get; init; }

    /// <summary>Largest angle of the free wire against the conduit's end, rad, and the arm angle at which it occurs.</summary>
    public required double MostSwing { get; init; }
    public required double MostSwingAngle { get; init; }

    public SweepPlace AtPush => Places[0];
    public SweepPlace AtPull => Places[^1];
    public SweepPlace AtMid => Places[Places.Count / 2];
    public bool IsMonotone => DeadCentresInside.Count == 0;

    /// <summary>Does the wire turn the arm all the way, given the least moment arm at a stop over all limits (m/rad)? A micrometre counts as none.</summary>
    public bool IsDriven(double leastArmAtStops) => IsMonotone && leastArmAtStops > 1.000001e-6;

    /// <summary>Pushing turns the arm the way its angles count; a change that turns this round reverses the control.</summary>
    public bool PushTurnsUp => PushAngle == Case.To;

    /// <summary>Free wire length, m, at an arm angle.</summary>
    public double LengthAt(double phi) => Geometry.At(new(phi)).Value;

    /// <summary>dL/dphi, m/rad, signed.</summary>
    public double MomentArmAt(double phi) => Geometry.SlopeAt(new(phi), Geometry.At(new(phi))).Value;

    public SweepPlace PlaceAt(double phi)
    {
        var (length, slope) = Geometry.LengthAndSlopeAt(new(phi));
        return new(phi, length.Value, Math.Abs(slope.Value), Case.SwingAt(phi));
    }

    /// <summary>
    /// Arm angle at which the free wire has this length: the branch of the arc cosine on which the sweep lies.
    /// phi = phi0 +/- acos((C - L^2) / D). Lengths beyond a stop by rounding give the stop.
    /// </summary>
    public double AngleAt(double length)
    {
        var turn = Math.Acos(Math.Clamp((C - (length * length)) / D, -1, 1));
        var middle = Case.Mid;
        double a = Nearest(Phi0 + turn, middle), b = Nearest(Phi0 - turn, middle);
        var half = 0.5 * (Case.To - Case.From);
        double offA = Math.Abs(a - middle) - half, offB = Math.Abs(b - middle) - half;
        return Math.Clamp(offA < offB ? a : b, Case.From, Case.To);
    }

    private CircleDistanceReal Geometry => new(Case);

    private static double Nearest(double angle, double to) => angle - (2 * Math.PI * Math.Round((angle - to) / (2 * Math.PI)));

    private readonly struct CircleDistanceReal(SweepCase of)
    {
        private readonly Shapes.Frames.CircleDistance<Real> circle = new(new(of.Radius), new(of.Anchor.X), new(of.Anchor.Y), new(of.Anchor.Z));

        public Real At(Real phi) => circle.At(phi);

        public Real SlopeAt(Real phi, Real length) => circle.SlopeAt(phi, length);

        public (Real Length, Real Slope) LengthAndSlopeAt(Real phi)
        {
            var place = circle.PlaceAt(phi);
            return (place.Distance, circle.SlopeAt(place));
        }
    }
}

/// <summary>One place of the sweep.</summary>
/// <param name="Angle">Arm angle, rad.</param>
/// <param name="Length">Free wire, anchor to swivel, m.</param>
/// <param name="MomentArm">|dL/dphi|, m/rad.</param>
/// <param name="Swing">Angle of the wire against the conduit's end, rad.</param>
public sealed record SweepPlace(double Angle, double Length, double MomentArm, double Swing);
