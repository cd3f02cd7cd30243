using Throwright.Engine.Chain;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Curves;

/// <summary>An upright scale: its ends and the few figures at it.</summary>
internal sealed record Axis(double Low, double High, IReadOnlyList<(double Value, string Name)> Figures)
{
    /// <summary>Arm angle in rad, figures in degrees: both stops, and 0 where it lies well between them.</summary>
    public static Axis ForAngle(TravelCurve curve)
    {
        double low = curve.Points.Min(p => p.ArmAngle) * 180 / Math.PI, high = curve.Points.Max(p => p.ArmAngle) * 180 / Math.PI;
        if (high - low < 0.5)
            (low, high) = (low - 0.5, high + 0.5);
        double[] named = Math.Min(-low, high) > 0.3 * (high - low) ? [low, 0, high] : [low, high];
        return new(low * Math.PI / 180, high * Math.PI / 180, [.. named.Select(d => (d * Math.PI / 180, Degrees(d)))]);

        static string Degrees(double d) => FigureText.Plain(d, Math.Abs(d - Math.Round(d)) < 0.005 ? 0 : 1) + "°";
    }

    /// <summary>From 0 (or the lowest force, if the hand has to hold back) to the highest force or the limit.</summary>
    public static Axis ForForce(IReadOnlyList<CurveDrawing.ForceAt> points, double? limit)
    {
        var high = Math.Max(points.Count == 0 ? 0 : points.Max(p => Math.Max(p.Most, p.Nominal)), limit ?? 0);
        var low = Math.Min(0, points.Count == 0 ? 0 : points.Min(p => Math.Min(p.Least, p.Nominal)));
        if (high - low <= 0)
            high = low + 1;
        var step = Step((high - low) / 3.6);
        low = Math.Floor(low / step) * step;
        high *= 1.04;
        var figures = new List<(double, string)>();
        for (var i = (int)Math.Round(low / step); i * step <= high; i++)
            figures.Add((i * step, FigureText.Plain(i * step, step < 1 ? 1 : 0)));
        return new(low, high, figures);
    }

    /// <summary>1, 2 or 5 times a power of ten, at least <paramref name="least"/> and at least 0.1.</summary>
    private static double Step(double least)
    {
        for (var power = 0.1; ; power *= 10)
        {
            foreach (var digit in (double[])[1, 2, 5])
            {
                if (digit * power >= least)
                    return digit * power;
            }
        }
    }
}
