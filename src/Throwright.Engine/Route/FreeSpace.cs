using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>Room of the centre line: distance to everything kept out less what is wanted, least over all.</summary>
internal sealed class FreeSpace
{
    // Pieces of the lie shorter than this are not split: what is proved is below what is there by half of it at most.
    private const double Finest = 5e-4;
    private const double Tolerance = 2e-4;
    private readonly RoutePlanCase of;
    private readonly CancellationToken stop;
    private readonly Zone[] zones;
    private readonly bool[] near;
    private readonly KeepOut[] keepOuts;
    private readonly Func<Vector3, double>[] distances;

    /// <param name="stop">Looked at with every distance asked: a search that asks for it ends within one.</param>
    public FreeSpace(RoutePlanCase of, EndMove? move = null, CancellationToken stop = default)
    {
        (this.of, this.stop) = (of, stop);
        // Places count as clamps, whichever are used: what lies there is what they are fixed to.
        zones =
        [
            new(of.Start, true), new(of.End + (move?.By ?? default), true),
            .. of.Passes.Select(p => new Zone(p.Support.Point, p.Support.Kind == SupportKind.Grommet)),
            .. of.Places.Select(p => new Zone(p.Point, false)),
        ];
        keepOuts = [.. of.KeepOuts];
        distances = [.. keepOuts.Select(k => move is not null && k.MovesWithEnd ? Moved(k.DistanceAt, of.End, move) : k.DistanceAt)];
        near = [.. Enumerable.Range(0, keepOuts.Length).Select(k => zones.Any(z => !z.Passes && Of(k, z.Middle) < 0))];
    }

    public string NearestAt(Vector3 point)
    {
        return keepOuts.Length == 0 ? "" : keepOuts[Enumerable.Range(0, keepOuts.Length).MinBy(i => Of(i, point))].Name;
    }

    /// <summary>Room of a point of the centre line, by place: close to the ends and to holds structure and edges don't count.</summary>
    public double At(Vector3 point)
    {
        stop.ThrowIfCancellationRequested();
        if (keepOuts.Length == 0)
            return double.PositiveInfinity;
        // Within a zone there is room at least up to where it ends.
        double through = 0, beside = 0, free = 0.98 * of.FreeAtEnds;
        foreach (var zone in zones)
        {
            var within = free - (point - zone.Middle).Size;
            if (zone.Passes)
                through = Math.Max(through, within);
            else
                beside = Math.Max(beside, within);
        }

        var least = double.PositiveInfinity;
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var room = Of(k, point);
            if (FittingPasses(keepOuts[k].Kind))
            {
                if (beside > 0 && near[k])
                    room = Math.Max(room, Math.Min(beside, room + keepOuts[k].Keep));
                if (through > 0)
                    room = Math.Max(room, through);
            }

            least = Math.Min(least, room);
        }

        return least;
    }

    public Vector3 Slope(Vector3 p)
    {
        const double E = 1e-5;
        Vector3 x = new(E, 0, 0), y = new(0, E, 0), z = new(0, 0, E);
        return (0.5 / E) * new Vector3(At(p + x) - At(p - x), At(p + y) - At(p - y), At(p + z) - At(p - z));
    }

    /// <summary>Whether the straight way between two points has more than this room all along: proved by steps no longer than the room.</summary>
    public bool IsClear(Vector3 from, Vector3 to, double room)
    {
        var d = to - from;
        var length = d.Size;
        if (length == 0)
            return At(from) > room;
        for (double s = 0; ;)
        {
            var here = At(from + ((s / length) * d)) - room;
            if (here <= 0)
                return false;
            if (s >= length)
                return true;
            s = Math.Min(length, s + Math.Max(here, 1e-3));
        }
    }

    /// <summary>Least room along a lie: proved, and where.</summary>
    public (double Room, double At) Along(ElasticCurve curve, EquatableList<LieSupport> supports)
    {
        var (room, at) = (double.PositiveInfinity, 0.0);
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var (r, a) = Least(k, curve, supports, room);
            if (r < room)
                (room, at) = (r, a);
        }

        return (room, at);
    }

    public IEnumerable<RouteGap> Gaps(ElasticCurve curve, EquatableList<LieSupport> supports)
    {
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var (room, at) = Least(k, curve, supports, double.PositiveInfinity);
            yield return new(keepOuts[k].Name, keepOuts[k].Kind, room + keepOuts[k].Keep, at, keepOuts[k].Keep);
        }
    }

    private static bool FittingPasses(KeepOutKind kind) => kind is KeepOutKind.Structure or KeepOutKind.Edge;

    private double Of(int k, Vector3 point) => distances[k](point) - keepOuts[k].Keep - of.ConduitRadius;

    /// <summary>A value at each end proves (a + b - h)/2 between them, as none grows faster than the point moves.</summary>
    private (double Room, double At) Least(int k, ElasticCurve curve, EquatableList<LieSupport> supports, double below)
    {
        var (proved, at) = (double.PositiveInfinity, 0.0);
        var attained = below;
        // Close to a clamp: what is wanted there is less.
        var less = 0.0;
        if (!FittingPasses(keepOuts[k].Kind))
        {
            Pieces(0, curve.Length);
            return (proved, at);
        }

        // Conduit that goes through things, and conduit close to a clamp that is so near to the thing that it is fixed to it.
        var free = of.FreeAtEnds;
        var cuts = new List<(double From, double To, bool Passes)> { (0, free, true), (curve.Length - free, curve.Length, true) };
        for (var i = 0; i < supports.Count; i++)
        {
            var s = curve.Nodes[curve.Holds[i + 1]].At;
            var passes = supports[i].Kind == SupportKind.Grommet && of.Passes.Any(p => p.Support.Point == supports[i].Point);
            if (passes || Of(k, supports[i].Point) < 0)
                cuts.Add((s - free, s + free, passes));
        }

        double done = 0;
        foreach (var cut in cuts.OrderBy(c => c.From))
        {
            Pieces(done, cut.From);
            done = Math.Max(done, cut.To);
        }

        Pieces(done, curve.Length);
        var (elsewhere, elsewhereAt) = (proved, at);
        (proved, attained, less) = (double.PositiveInfinity, 0, keepOuts[k].Keep);
        foreach (var cut in cuts.Where(c => !c.Passes))
        {
            var clamped = (From: Math.Max(0, cut.From), To: Math.Min(curve.Length, cut.To));
            foreach (var pass in cuts.Where(c => c.Passes))
                clamped = pass.From <= clamped.From ? (Math.Max(clamped.From, pass.To), clamped.To) : (clamped.From, Math.Min(clamped.To, pass.From));
            Pieces(clamped.From, clamped.To);
        }

        // Only a touch counts there.
        return proved < 0 && proved - less < elsewhere ? (proved - less, at) : (elsewhere, elsewhereAt);

        double Room(double s) => Of(k, curve.PointAt(s)) + less;

        // Coarse pieces first; those that may hold the least are halved.
        void Pieces(double from, double to)
        {
            if (!(from < to))
                return;
            var pieces = Math.Clamp((int)Math.Ceiling(12 * (to - from) / curve.Length), 1, 12);
            double last = from, lastRoom = Room(from);
            attained = Math.Min(attained, lastRoom);
            for (var i = 1; i <= pieces; i++)
            {
                var next = from + ((to - from) * i / pieces);
                var nextRoom = Room(next);
                attained = Math.Min(attained, nextRoom);
                Split(last, lastRoom, next, nextRoom);
                (last, lastRoom) = (next, nextRoom);
            }
        }

        void Split(double a, double ra, double b, double rb)
        {
            var bound = 0.5 * (ra + rb - (b - a));
            if (bound >= attained - Tolerance || b - a <= Finest)
            {
                if (bound < proved)
                    (proved, at) = (bound, ra < rb ? a : b);
                return;
            }

            var middle = 0.5 * (a + b);
            var rm = Room(middle);
            attained = Math.Min(attained, rm);
            Split(a, ra, middle, rm);
            Split(middle, rm, b, rb);
        }
    }

    /// <summary>Round an end or a hold.</summary>
    /// <param name="Passes">The conduit goes through things there; else it may only be near them.</param>
    private readonly record struct Zone(Vector3 Middle, bool Passes);

    private static Func<Vector3, double> Moved(Func<Vector3, double> distance, Vector3 about, EndMove move)
    {
        var angle = move.Turn.Size;
        if (angle == 0)
            return p => distance(p - move.By);
        var back = Pose.TurnAbout(about, (1 / angle) * move.Turn, -angle);
        return p => distance(back * (p - move.By));
    }
}
