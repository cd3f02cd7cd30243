using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes.Solids;

namespace Throwright.Engine.Make;

/// <summary>From the tilt to the parts. Theory: docs/theory/make.md.</summary>
public static class WedgePairSolver
{
    /// <summary>Margin of the wedge round the nut's seat when no outside is given, m: common practice.</summary>
    private const double SeatMargin = 2e-3;

    /// <remarks>
    ///   height on the axis  h0 = m + (D/2) tan a          thick edge  m + D tan a
    ///   grip                G = 2 h0 + t / cos a + washers
    ///   hole                width d + c, length d / cos a + t tan a + c, along the tilt
    ///   cover               (D/2) / cos a - (t/2) tan a - length / 2
    ///   spacer              2 h0 + kerf / cos a, one cut at a
    ///   most tilt           acos(t / sqrt(S^2 + D^2)) - atan2(D, S), S = usable - 2m - washers - nut - thread shown
    /// a tilt, D outside, d shank, m thin edge, t sheet, c clearance. Derived in docs/theory/make.md.
    /// </remarks>
    public static WedgePair Solve(WedgePairCase of)
    {
        if (!(of.Tilt.Angle > 0 && of.Tilt.Angle <= Math.PI / 6))
            throw new ArgumentOutOfRangeException(nameof(of), of.Tilt, "a tilt above 0 and up to 30 deg");
        if (!(of.Shank > 0 && of.Sheet > 0 && of.NutSeat > of.Shank && of.Clearance >= 0))
            throw new ArgumentOutOfRangeException(nameof(of), of, "shank and sheet above zero, the nut wider than the shank");
        double tan = of.Tilt.Tangent, cos = of.Tilt.Cosine;
        var outside = of.Outside ?? of.NutSeat + (2 * SeatMargin);
        var thin = of.ThinEdge ?? LeastThinEdge(of.Stock).Value;
        var bore = of.Shank + of.Clearance;
        var washer = new WedgeWasher(of.Tilt.Angle, outside, bore, thin)
        {
            Chamfer = of.Key == WedgeKey.Flat ? 0 : of.Chamfer,
            BoreFlat = of.Key == WedgeKey.Flat ? of.ShankFlat + (0.5 * of.Clearance) : 0,
            // The flat across the tilt: half a turn about the tilt line keeps it for both wedges.
            FlatDirection = Math.PI / 2,
            // On the line of equal thickness one pin keys both; from each wedge's own bore it stands (t/2) tan a along the tilt.
            Pin = of.Key == WedgeKey.Pin ? new(0.5 * of.Sheet * tan, PinPlace(outside, bore), of.PinDiameter, of.PinDepth) : null,
        };
        double slotWidth = of.Shank + of.Clearance, slotLength = (of.Shank / cos) + (of.Sheet * tan) + of.Clearance;
        var grip = (2 * washer.Height) + (of.Sheet / cos) + of.Washers;
        double big = 0.5 * outside, small = 0.5 * bore;
        return new()
        {
            Case = of,
            Washer = washer,
            Recipe = new(outside, bore, (2 * washer.Height) + (of.Kerf / cos), of.Tilt.Angle, of.Kerf),
            FootprintAlong = big / cos,
            FootprintAcross = big,
            SeatArea = Math.PI * ((big * big) - (small * small)) / cos,
            SlotWidth = slotWidth,
            SlotLength = slotLength,
            Cover = (big / cos) - (0.5 * of.Sheet * tan) - (0.5 * slotLength),
            Grip = grip,
            GripSquare = of.Sheet + of.Washers,
            ThreadBeyondNut = of.UsableLength - grip - of.NutHeight,
            MostTilt = of.UsableLength is { } usable ? MostTilt(of, thin, outside, usable) : null,
            SheetHalfWidth = of.Curved is { } curved ? curved.HalfWidth(big / cos, big, of.Tilt.Azimuth) : 0,
        };
    }

    /// <summary>Thin edge that a wedge of this stock should keep.</summary>
    public static Sourced LeastThinEdge(WedgeStock stock) =>
        Sourced.From(Published.Get(stock == WedgeStock.Metal ? "make/thin-edge-metal" : "make/thin-edge-printed"));

    internal static double ThreadShown(WedgePairCase of) => Published.Get("make/threads-showing").Value * of.ThreadPitch;

    private static double? MostTilt(WedgePairCase of, double thin, double outside, double usable)
    {
        var room = usable - (2 * thin) - of.Washers - of.NutHeight - ThreadShown(of);
        var most = Math.Acos(Math.Min(1, of.Sheet / Math.Sqrt((room * room) + (outside * outside)))) - Math.Atan2(outside, room);
        return room > of.Sheet ? most : null;
    }

    /// <summary>Halfway between bore and rim.</summary>
    private static double PinPlace(double outside, double bore) => 0.25 * (outside + bore);
}
