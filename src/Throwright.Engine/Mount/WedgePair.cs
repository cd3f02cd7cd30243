namespace Throwright.Engine.Mount;

/// <summary>Two equal wedge washers, one each side of the sheet, cut so that bushing and nut seat square. m, rad.</summary>
/// <remarks>
/// Both are round about the shank axis, diameter D; m is the thin edge along the axis, at the outer rim:
///   height on the axis      h0 = m + (D/2) tan a          thick edge   m + D tan a
///   stack along the axis    2 h0 + t / cos a = 2 m + D tan a + t / cos a
///   volume                  pi (R^2 - r^2) h0             contact on the sheet  pi (R^2 - r^2) / cos a, half axes R / cos a and R
/// The two are the same part, turned half round about the tilt line. Derived in docs/theory/mount.md.
/// </remarks>
/// <param name="Diameter">Outer diameter D.</param>
/// <param name="Bore">Diameter of the bore.</param>
/// <param name="ThinEdge">m, at the outer rim.</param>
/// <param name="Sheet">Thickness t.</param>
/// <param name="Tilt">Total tilt a.</param>
public sealed record WedgePair(double Diameter, double Bore, double ThinEdge, double Sheet, double Tilt)
{
    private double Tan => Math.Tan(Tilt);

    public double CentreHeight => ThinEdge + (0.5 * Diameter * Tan);

    public double ThickEdge => ThinEdge + (Diameter * Tan);

    /// <summary>Both wedges and the sheet, along the shank axis.</summary>
    public double Stack => (2 * CentreHeight) + (Sheet / Math.Cos(Tilt));

    /// <summary>How much longer than a bushing straight through the sheet.</summary>
    public double ExtraGrip => Stack - Sheet;

    /// <summary>Of one washer, m^3.</summary>
    public double Volume => 0.25 * Math.PI * ((Diameter * Diameter) - (Bore * Bore)) * CentreHeight;

    public double ContactHalfLength => 0.5 * Diameter / Math.Cos(Tilt);

    /// <summary>Area on the sheet, hole of the bore off, m^2.</summary>
    public double ContactArea => 0.25 * Math.PI * ((Diameter * Diameter) - (Bore * Bore)) / Math.Cos(Tilt);

    /// <summary>Shift of the axis on each face of the sheet along the tilt, against its middle.</summary>
    public double PiercingShift => 0.5 * Sheet * Tan;

    /// <summary>Length of spacer from which one cut makes both: two heights and the saw's kerf along the axis.</summary>
    public double SpacerLength(double kerf) => (2 * CentreHeight) + (kerf / Math.Cos(Tilt));

    /// <summary>Sheet left under the washer beyond the slot, along the tilt.</summary>
    public double CoverBeyond(SheetHole hole) => ContactHalfLength - PiercingShift - (0.5 * hole.Length);

    /// <summary>Largest tilt that a bushing still holds, rad.</summary>
    /// <param name="spare">Usable thread less both thin edges, washers, nut and the thread that must show.</param>
    /// <remarks>S = D tan a + t / cos a, so S cos a - D sin a = t: a = acos(t / sqrt(S^2 + D^2)) - atan2(D, S). NaN: not even straight.</remarks>
    public static double LargestTilt(double spare, double diameter, double sheet)
    {
        var a = Math.Acos(sheet / Math.Sqrt((spare * spare) + (diameter * diameter))) - Math.Atan2(diameter, spare);
        return spare >= sheet && a >= 0 ? a : double.NaN;
    }
}

/// <summary>The opening for a shank that passes a sheet at a tilt: a slot with half-round ends, drilled square to the sheet.</summary>
/// <param name="Width">Across the tilt.</param>
/// <param name="Length">Along the tilt, over all.</param>
public readonly record struct SheetHole(double Width, double Length)
{
    /// <summary>Width d + c, length d / cos a + t tan a + c.</summary>
    public static SheetHole For(double shank, double sheet, double tilt, double play = 0) =>
        new(shank + play, (shank / Math.Cos(tilt)) + (sheet * Math.Tan(tilt)) + play);

    /// <summary>How deep an ellipse of the slot's length and width would cut into the shank: why the hole is a slot.</summary>
    /// <remarks>
    /// The shank fills, seen square to the sheet, an ellipse (d / cos a by d) pushed along the tilt by t tan a. Greatest
    /// distance of that outline outside the ellipse of the same over-all size, found on the outline. Derived in docs/theory/mount.md.
    /// </remarks>
    public static double EllipseCuts(double shank, double sheet, double tilt)
    {
        double b = 0.5 * shank, a = b / Math.Cos(tilt), shift = 0.5 * sheet * Math.Tan(tilt), big = a + shift;
        double From(double f) => OutsideEllipse(shift + (a * Math.Cos(f)), b * Math.Sin(f), big, b);
        // One hump between the tip and the flank: found coarsely, then narrowed.
        const int Steps = 256;
        var best = Enumerable.Range(0, Steps + 1).MaxBy(i => From(0.5 * Math.PI * i / Steps));
        double low = 0.5 * Math.PI * Math.Max(0, best - 1) / Steps, high = 0.5 * Math.PI * Math.Min(Steps, best + 1) / Steps;
        for (var i = 0; i < 60; i++)
        {
            double p = low + (0.381966011250105 * (high - low)), q = high - (0.381966011250105 * (high - low));
            if (From(p) < From(q))
                low = p;
            else
                high = q;
        }

        return Math.Max(0, From(0.5 * (low + high)));
    }

    /// <summary>Distance of a point of the first quadrant from the ellipse, 0 inside.</summary>
    /// <remarks>
    /// The foot is (A^2 x / (A^2 + s), B^2 y / (B^2 + s)) with s >= 0 where (A x / (A^2 + s))^2 + (B y / (B^2 + s))^2 = 1: falling
    /// in s, so halving finds it.
    /// </remarks>
    private static double OutsideEllipse(double x, double y, double a, double b)
    {
        double Excess(double s) => Math.Pow(a * x / ((a * a) + s), 2) + Math.Pow(b * y / ((b * b) + s), 2) - 1;
        if (Excess(0) <= 0)
            return 0;
        double low = 0, high = Math.Sqrt((a * a * x * x) + (b * b * y * y)) + 1e-12;
        for (var i = 0; i < 100; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Excess(middle) > 0 ? (middle, high) : (low, middle);
        }

        double fx = a * a * x / ((a * a) + low), fy = b * b * y / ((b * b) + low);
        return Math.Sqrt(((x - fx) * (x - fx)) + ((y - fy) * (y - fy)));
    }
}

/// <summary>How a wedge pair seats. N, m, rad, Pa.</summary>
public static class WedgeSeat
{
    /// <summary>Steepest wedge that friction alone holds: tan a = mu.</summary>
    public static double SelfHolding(double friction) => Math.Atan(friction);

    /// <summary>What the shank must carry sideways: F tan(a - atan mu), 0 below the self-holding angle.</summary>
    public static double SideLoad(double clamp, double tilt, double friction) => Math.Max(0, clamp * Math.Tan(tilt - Math.Atan(friction)));

    /// <summary>Clamp force of a nut: T / (K d). K is a nut factor, about 0.2 dry (common practice).</summary>
    public static double Clamp(double torque, double nutFactor, double thread) => torque / (nutFactor * thread);

    /// <summary>Mean pressure on a ring.</summary>
    public static double Pressure(double force, double outer, double inner) => force / (0.25 * Math.PI * ((outer * outer) - (inner * inner)));

    /// <summary>Angle between the two seats when one wedge is clocked against the other: sin(e/2) = sin a sin(psi/2).</summary>
    public static double SeatError(double tilt, double clocked) => 2 * Math.Asin(Math.Sin(tilt) * Math.Abs(Math.Sin(0.5 * clocked)));

    /// <summary>Gap at the rim of a nut on a seat that is off square.</summary>
    public static double Gap(double nut, double error) => nut * Math.Tan(error);

    /// <summary>Bending stress in a shank clamped off square by e over a grip l: E e d / (2 l).</summary>
    public static double BendingStress(double modulus, double error, double thread, double grip) => modulus * error * thread / (2 * grip);

    /// <summary>Gap under a flat wedge of half length w on a sheet bent to radius P: P - sqrt(P^2 - w^2).</summary>
    public static double CurvedSheetGap(double radius, double halfLength) =>
        // Written so that a nearly flat sheet loses no digits.
        halfLength * halfLength / (radius + Math.Sqrt((radius * radius) - (halfLength * halfLength)));
}
