
namespace Throwright.Engine.Cushion;

/// <summary>A ball valve that stops short of its end: how much opening and flow that costs.</summary>
/// <remarks>
/// beta = asin(bore radius / ball radius); angle theta from fully open. Shut for theta &gt;= 2 beta, so the closed end has
/// a dead band of 90 deg - 2 beta. Opening: the part of the bore's mouth on the sphere that both bores share, two
/// equal caps of half-angle beta, centres theta apart:
///   A/A0 = { 2 [pi - acos((cos t - cos^2 b)/sin^2 b)] - 4 cos b acos(cos b (1 - cos t)/(sin b sin t)) } / (2 pi (1 - cos b))
/// Flow against fully open: Q/Q0 = sqrt((K_line + K(0)) / (K_line + K(t))), K on the velocity in the bore.
/// Derived in docs/theory/cushion.md; loss coefficients of a plug cock as published (see data).
/// </remarks>
public static class ValveOpening
{
    /// <summary>Half-angle of the bore's mouth, rad.</summary>
    public static double HalfAngle(double boreRatio) => Math.Asin(boreRatio);

    /// <summary>Angle at the closed end within which the valve stays shut, rad.</summary>
    public static double ClosedDeadBand(double boreRatio) => (Math.PI / 2) - (2 * HalfAngle(boreRatio));

    /// <summary>Share of the full opening at an angle from fully open; 0 when shut.</summary>
    public static double Share(double boreRatio, double fromOpen)
    {
        double b = HalfAngle(boreRatio), t = Math.Abs(fromOpen);
        if (t >= 2 * b)
            return 0;
        if (t < 1e-9)
            return 1;
        double cb = Math.Cos(b), sb = Math.Sin(b), ct = Math.Cos(t), st = Math.Sin(t);
        var outer = Math.Acos(Math.Clamp((ct - (cb * cb)) / (sb * sb), -1, 1));
        var inner = Math.Acos(Math.Clamp(cb * (1 - ct) / (sb * st), -1, 1));
        return ((2 * (Math.PI - outer)) - (4 * cb * inner)) / (2 * Math.PI * (1 - cb));
    }

    /// <summary>Flat estimate: two equal circles, centres x diameters apart: (2/pi)(acos x - x sqrt(1 - x^2)).</summary>
    public static double Lens(double x) => x >= 1 ? 0 : 2 / Math.PI * (Math.Acos(x) - (x * Math.Sqrt(1 - (x * x))));

    /// <summary>Flow against fully open, for a rest of the line with loss <paramref name="line"/>.</summary>
    public static double Flow(double line, double openLoss, double lossHere) => Math.Sqrt((line + openLoss) / (line + lossHere));

    /// <summary>
    /// Loss coefficient between the published angles: straight lines in log K against angle (losses grow by decades),
    /// and from the open value to the first row straight in K.
    /// </summary>
    public static double Loss(IReadOnlyList<(double Angle, double Loss)> table, double openLoss, double fromOpen)
    {
        ArgumentNullException.ThrowIfNull(table);
        if (fromOpen <= 0)
            return openLoss;
        if (fromOpen <= table[0].Angle)
            return openLoss + ((table[0].Loss - openLoss) * fromOpen / table[0].Angle);
        for (var i = 1; i < table.Count; i++)
        {
            if (fromOpen > table[i].Angle)
                continue;
            var share = (fromOpen - table[i - 1].Angle) / (table[i].Angle - table[i - 1].Angle);
            return table[i - 1].Loss * Math.Pow(table[i].Loss / table[i - 1].Loss, share);
        }

        return double.PositiveInfinity;
    }

}
