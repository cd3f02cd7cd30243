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
    private readonly Vector3 end;
    private readonly KeepOut[] keepOuts;
    private readonly Func<Vector3, double>[] distances;

    public FreeSpace(RoutePlanCase of, EndMove? move = null)
    {
        this.of = of;
        end = of.End + (move?.By ?? default);
        keepOuts = [.. of.KeepOuts];
        distances = [.. keepOuts.Select(k => move is not null && k.MovesWithEnd ? Moved(k.DistanceAt, of.End, move) : k.DistanceAt)];
    }

    public string NearestAt(Vector3 point)
    {
        return keepOuts.Length == 0 ? "" : keepOuts[Enumerable.Range(0, keepOuts.Length).MinBy(i => Of(i, point))].Name;
    }

    /// <summary>Room of a point of the centre line, by place: close to the ends structure and edges don't count.</summary>
    public double At(Vector3 point)
    {
        var free = 0.98 * of.FreeAtEnds;
        // Within the free end there is room at least up to where it stops being free.
        var within = free - Math.Min((point - of.Start).Size, (point - end).Size);
        var least = double.PositiveInfinity;
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var room = Of(k, point);
            least = Math.Min(least, within > 0 && FittingPasses(keepOuts[k].Kind) ? Math.Max(room, within) : room);
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
    public (double Room, double At) Along(ElasticCurve curve)
    {
        var (room, at) = (double.PositiveInfinity, 0.0);
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var (r, a) = Least(k, curve, room);
            if (r < room)
                (room, at) = (r, a);
        }

        return (room, at);
    }

    public IEnumerable<RouteGap> Gaps(ElasticCurve curve)
    {
        for (var k = 0; k < keepOuts.Length; k++)
        {
            var (room, at) = Least(k, curve, double.PositiveInfinity);
            yield return new(keepOuts[k].Name, keepOuts[k].Kind, room + keepOuts[k].Keep, at, keepOuts[k].Keep);
        }
    }

    private static bool FittingPasses(KeepOutKind kind) => kind is KeepOutKind.Structure or KeepOutKind.Edge;

    private double Of(int k, Vector3 point) => distances[k](point) - keepOuts[k].Keep - of.ConduitRadius;

    /// <summary>A value at each end proves (a + b - h)/2 between them, as none grows faster than the point moves.</summary>
    private (double Room, double At) Least(int k, ElasticCurve curve, double below)
    {
        double from = 0, to = curve.Length;
        if (FittingPasses(keepOuts[k].Kind))
            (from, to) = (of.FreeAtEnds, curve.Length - of.FreeAtEnds);
        var (proved, at) = (double.PositiveInfinity, 0.0);
        if (!(from < to))
            return (proved, at);
        var attained = below;
        double last = from, lastRoom = Of(k, curve.PointAt(from));
        attained = Math.Min(attained, lastRoom);
        // Coarse pieces first; those that may hold the least are halved.
        const int Pieces = 12;
        for (var i = 1; i <= Pieces; i++)
        {
            var next = from + ((to - from) * i / Pieces);
            var nextRoom = Of(k, curve.PointAt(next));
            attained = Math.Min(attained, nextRoom);
            Split(last, lastRoom, next, nextRoom);
            (last, lastRoom) = (next, nextRoom);
        }

        return (proved, at);

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
            var rm = Of(k, curve.PointAt(middle));
            attained = Math.Min(attained, rm);
            Split(a, ra, middle, rm);
            Split(middle, rm, b, rb);
        }
    }

    private static Func<Vector3, double> Moved(Func<Vector3, double> distance, Vector3 about, EndMove move)
    {
        var angle = move.Turn.Size;
        if (angle == 0)
            return p => distance(p - move.By);
        var back = Pose.TurnAbout(about, (1 / angle) * move.Turn, -angle);
        return p => distance(back * (p - move.By));
    }
}
