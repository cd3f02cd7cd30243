using System.Globalization;
using System.Text.RegularExpressions;
using Throwright.Engine.HandForce;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>The parts of a run that have to be made, as the file describes them.</summary>
public static partial class MadeParts
{
    /// <summary>Lean up to which a plain washer under the nut does, rad.</summary>
    public static double NoWedge => Published.Get("mount/no-wedge").Value;

    private static readonly Need Thickness = new("sheets", "thickness of the sheet", "with a caliper, e.g. \"0.063 in\", in \"sheets\"", "wedges, drill template");
    private static readonly Need Sheet = new("cockpitEnd.sheet", "sheet that carries the bushing", "the id of one of \"sheets\"", "wedges, drill template");
    private static readonly Need Diameter = new("cockpitEnd.bushing.diameter", "diameter of the bushing's thread", "with a caliper, e.g. \"1/2 in\"", "wedges, drill template");
    private static readonly Need Nut = new("cockpitEnd.bushing.nut", "nut of the bushing across its flats", "with a caliper, e.g. \"3/4 in\"", "wedges");

    /// <summary>How the shank leans; null: square to the sheet.</summary>
    public static Tilt? TiltOf(Run run) => run.CockpitEnd?.Tilt is { } tilt && (tilt.Up.Radians != 0 || tilt.Right.Radians != 0)
        ? Tilt.FromSlopes(tilt.Right.Radians, tilt.Up.Radians)
        : null;

    /// <summary>The wedge pair of a run, or what is lacking for it; neither: the shank needs none.</summary>
    public static (WedgePair? Pair, EquatableList<Need> Needs) Wedges(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (TiltOf(run) is not { } tilt || tilt.Angle <= NoWedge)
            return (null, []);
        var end = run.CockpitEnd!;
        var needs = new List<Need>();
        if (end.Sheet is null)
            needs.Add(Sheet);
        else if (end.Sheet.Thickness is null)
            needs.Add(Thickness);
        if (end.Bushing?.Diameter is null)
            needs.Add(Diameter);
        if (end.Bushing?.Nut is null)
            needs.Add(Nut);
        if (needs.Count > 0 || tilt.Angle > Math.PI / 6)
            return (null, needs.ToEquatableList());
        var bushing = end.Bushing!;
        var wanted = end.Wedge ?? new();
        var usual = new WedgePairCase(tilt, bushing.Diameter!.Value.Nominal.Metres, end.Sheet!.Thickness!.Value.Nominal.Metres, 0);
        return (WedgePairSolver.Solve(usual with
        {
            // A hexagon across its corners.
            NutSeat = bushing.Nut!.Value.Nominal.Metres * 2 / Math.Sqrt(3),
            Outside = wanted.Outside?.Metres,
            ThinEdge = wanted.ThinEdge?.Metres,
            Stock = wanted.Stock,
            Key = wanted.Key == WedgeKey.Flat && wanted.FlatAt is null ? WedgeKey.None : wanted.Key,
            Chamfer = wanted.Chamfer?.Metres ?? usual.Chamfer,
            PinDiameter = wanted.PinDiameter?.Metres ?? usual.PinDiameter,
            PinDepth = wanted.PinDepth?.Metres ?? usual.PinDepth,
            ShankFlat = wanted.FlatAt?.Metres ?? 0,
            Kerf = wanted.Kerf?.Metres ?? usual.Kerf,
            Washers = wanted.Washers?.Metres ?? 0,
            NutHeight = bushing.NutHeight?.Nominal.Metres ?? 0,
            ThreadPitch = PitchOf(bushing.Thread) ?? 0,
            UsableLength = bushing.Length?.Least,
            Curved = CurveOf(run),
        }), []);
    }

    /// <summary>How the sheet is bent where the run's bushing sits, the sharpest that its tolerance allows; null: flat, or not known where the hole is.</summary>
    public static CurvedSheet? CurveOf(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.CockpitEnd?.Sheet is not { Curve: { } curve } sheet)
            return null;
        var normal = HandleMount.Vector(sheet.Normal).Unit();
        var up = HandleMount.UpOf(sheet, normal);
        up = (up - (Vector3.Dot(up, normal) * normal)).Unit();
        var straight = HandleMount.Vector(curve.Straight);
        return new(curve.Radius.Least, Math.Atan2(Vector3.Dot(straight, up), Vector3.Dot(straight, Vector3.Cross(up, normal))), curve.Bulges == SheetBulge.Toward);
    }

    /// <summary>Nut of a bushing across its corners, where it stands without wedges; null: wedges carry it, or it is not known.</summary>
    public static double? SquareSeat(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return Wedges(run).Pair is null && (TiltOf(run) is not { } tilt || tilt.Angle <= NoWedge) ? run.CockpitEnd?.Bushing?.Nut?.Nominal.Metres * 2 / Math.Sqrt(3) : null;
    }

    /// <summary>Metal wedges with a pin through the sheet: the usual pair, where the file says nothing else.</summary>
    public static bool IsPinned(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return (run.CockpitEnd?.Wedge ?? new()) is { Key: WedgeKey.Pin, Stock: WedgeStock.Metal };
    }

    /// <summary>Pitch of a thread by its name, m: "1/2-20 UNF" has 20 to the inch, "M12x1.5" states it; null: neither.</summary>
    public static double? PitchOf(string thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        if (PerInch().Match(thread) is { Success: true } inch)
            return Length.MetresPerInch / double.Parse(inch.Groups[1].Value, CultureInfo.InvariantCulture);
        return Metric().Match(thread) is { Success: true } metric ? double.Parse(metric.Groups[1].Value, CultureInfo.InvariantCulture) / 1000 : null;
    }

    /// <summary>From the hole's middle to the nearest edge of its sheet, m; null: not known.</summary>
    public static double? ToSheetEdge(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.CockpitEnd is not { Hole: { } hole, Sheet.Outline: { Count: >= 3 } outline })
            return null;
        var at = Place(hole);
        var least = double.PositiveInfinity;
        for (var i = 0; i < outline.Count; i++)
        {
            Vector3 a = Place(outline[i]), along = Place(outline[(i + 1) % outline.Count]) - a;
            var share = Math.Clamp(Vector3.Dot(at - a, along) / Vector3.Dot(along, along), 0, 1);
            least = Math.Min(least, (a + (share * along) - at).Size);
        }

        return least;
    }

    /// <summary>The bracket that carries the anchor; null: not described.</summary>
    public static BracketCase? BracketOf(Run run)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (run.LeverEnd?.Bracket is not { } of)
            return null;
        BracketHole Hole(BracketLeg leg, BracketOpening o) => new(leg, o.At.Metres, o.Across.Metres, o.Diameter.Metres);
        var usual = new BracketCase(
            of.Material, of.Thickness.Metres, of.Bend.Radians, of.Radius.Metres, of.Base.Metres, of.Standing.Metres, of.Width.Metres,
            of.Fasteners.Select(f => Hole(BracketLeg.Base, f)).Append(Hole(of is { ConduitIn: ConduitLeg.Top, Top: not null } ? BracketLeg.Top : BracketLeg.Standing, of.Conduit)).ToEquatableList());
        return usual with
        {
            Then = of.Top is { } top ? new(top.Bend.Radians, top.Radius?.Metres ?? of.Radius.Metres, top.Shape == BracketShape.Z, top.Length.Metres) : null,
            ConduitAbove = of.ConduitAbove?.Metres,
            Corner = of.Corner?.Metres ?? usual.Corner,
            Neutral = of.Neutral,
        };
    }

    /// <summary>The bracket under the largest force of the wire at the device; null: bracket, fasteners or force not known.</summary>
    public static BracketLoad? LoadOf(RunAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (BracketOf(answer.Run) is not { } bracket || answer.Run.LeverEnd!.Bracket!.Fasteners.Count == 0 || answer.Forces is not { } forces)
            return null;
        var most = forces.Places.Max(p => Math.Max(Finite(p.WirePull.Most), Finite(p.WirePush.Most)));
        return most > 0 ? new(bracket, most) : null;

        static double Finite(double force) => double.IsFinite(force) ? force : 0;
    }

    /// <summary>Its stiffness with its band, N/m; null: not described.</summary>
    internal static Spread3? BracketStiffness(Run run)
    {
        if (BracketOf(run) is not { } bracket || run.LeverEnd!.Bracket!.Fasteners.Count == 0)
            return null;
        var (nominal, least, most) = BracketBending.Stiffness(bracket);
        return new(nominal, least, most);
    }

    private static Vector3 Place(PointAt point) => new(point.Station.Nominal.Metres, point.Buttline.Nominal.Metres, point.Waterline.Nominal.Metres);

    [GeneratedRegex(@"(?:^|[\d\s#])-(\d{1,3})(?:\D|$)")]
    private static partial Regex PerInch();

    [GeneratedRegex(@"^\s*M\d+(?:\.\d+)?\s*[x×]\s*(\d+(?:\.\d+)?)", RegexOptions.IgnoreCase)]
    private static partial Regex Metric();
}
