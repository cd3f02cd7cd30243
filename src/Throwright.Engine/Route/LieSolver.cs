using Throwright.Shapes;
using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>From ends, supports and length to where the conduit lies. Theory: docs/theory/route.md.</summary>
public static class LieSolver
{
    /// <summary>A conduit this many times its straight way is refused.</summary>
    public const double MostSlack = 4;

    // A clamped bow of any slack below 70 % turns less; a ring turns 360 degrees.
    private const double LoopTurn = 1.5 * Math.PI;
    private const double Added = 0.01;

    // Segments that give a move, asked for to two digits, to five.
    private const int Rough = 32;

    public static LieAnswer Solve(LieCase of) => Solve(of, true);

    /// <summary>The lie with another length of conduit, laid anew: from a known one where the change is small, else looked for from the start.</summary>
    /// <returns>Its move per length is not worked out (NaN): that belongs to the length planned.</returns>
    internal static LieAnswer Again(LieCase of, Lie near, bool isSmall) => isSmall ? Follow(of, near, true) : Solve(of, false);

    private static LieAnswer Solve(LieCase of, bool moves)
    {
        ArgumentNullException.ThrowIfNull(of);
        Require(of);
        var straight = of.Straight;
        if (IsAtOnePlace(of))
            return Refused(NoLieReason.OnePlace, of.Length, 0);
        if (of.Length < straight)
            return Refused(NoLieReason.TooShort, of.Length, straight);
        if (of.Length > MostSlack * straight)
            return Refused(NoLieReason.TooSlack, of.Length, MostSlack * straight);
        var answer = ElasticCurveSolver.Solve(Problem(of, of.Length));
        if (answer.Curve is not { } curve)
        {
            var shortest = ShortestWay(of);
            return answer.Outcome switch
            {
                ElasticOutcome.OutOfOrder => Refused(NoLieReason.ClampOutOfPlace, of.Length, 0),
                ElasticOutcome.TooShort => Refused(NoLieReason.TooShort, of.Length, straight),
                _ when of.Length < shortest => Refused(NoLieReason.TooShortForRadius, of.Length, shortest),
                _ => Refused(NoLieReason.NotFound, of.Length, 0),
            };
        }

        return new(Read(of, curve, answer.Others, straight, moves), null);
    }

    /// <summary>
    /// The lie that a known one goes over into when the case is changed a little, and where its other lies go: what a hand
    /// that drags an end sees. Other lies that only the changed case has are not looked for. Where the way is not short
    /// and stable the case is solved from the start.
    /// </summary>
    /// <param name="near">A lie with the same number of supports.</param>
    public static LieAnswer Follow(LieCase of, Lie near) => Follow(of, near, false);

    /// <param name="anew">Of all the places that the known ones go over into, the one of least energy.</param>
    private static LieAnswer Follow(LieCase of, Lie near, bool anew)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(near);
        Require(of);
        var straight = of.Straight;
        if (of.Supports.Count != near.Case.Supports.Count || of.Length < straight || of.Length > MostSlack * straight)
            return Solve(of, !anew);
        var problem = Problem(of, of.Length);
        if (ElasticCurveSolver.Follow(problem, near.Shape) is not { } curve)
            return Solve(of, !anew);
        var others = near.Others.Select(o => ElasticCurveSolver.Follow(problem, o)).OfType<ElasticCurve>().OrderBy(c => c.Energy).ToList();
        if (anew && others.Count > 0 && others[0].Energy < curve.Energy)
            (curve, others) = (others[0], [.. others.Skip(1).Append(curve).OrderBy(c => c.Energy)]);
        return new(Read(of, curve, others.ToEquatableList(), straight, !anew), null);
    }

    /// <summary>
    /// The shape alone that a known lie goes over into, on a mesh that gives radius, bend and place to four digits: for a
    /// case drawn many times.
    /// </summary>
    public static ElasticCurve? Track(LieCase of, Lie near)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(near);
        return of.Length >= of.Straight && of.Length <= MostSlack * of.Straight && ElasticCurveSolver.Follow(Problem(of, of.Length) with { Segments = Rough }, near.Shape) is { } curve
            ? curve
            : Solve(of).Lie?.Shape;
    }

    /// <summary>
    /// The length at which a conduit that may slide in and out at both ends comes to rest; null where there is none, or
    /// where a tight clamp has a given place.
    /// </summary>
    public static double? NaturalLength(LieCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        Require(of);
        return IsAtOnePlace(of) || of.Supports.Any(s => s.At is not null) ? null : ElasticCurveSolver.Solve(Problem(of, null)).Curve?.Length;
    }

    /// <summary>Largest distance of one lie's nodes from another lie.</summary>
    public static double Apart(ElasticCurve moved, ElasticCurve from)
    {
        ArgumentNullException.ThrowIfNull(moved);
        ArgumentNullException.ThrowIfNull(from);
        // Few nodes first: most of the others are then known to be no farther by what is next to their neighbour.
        const int Few = 16;
        var (most, count) = (0.0, moved.Nodes.Count);
        for (var stride = Few; stride > 0; stride -= Few - 1)
        {
            var near = 0;
            for (var i = 0; i < count; i += stride)
            {
                var point = moved.Nodes[i].Point;
                if (!from.IsWithin(point, most, ref near))
                    most = Math.Max(most, from.DistanceFrom(point));
            }
        }

        return most;
    }

    /// <summary>A length below which no way from hold to hold keeps the conduit's least radius (0 radius: the straight way).</summary>
    /// <remarks>
    /// From a pose to a point the shortest way of curvature 1/R or less is plane: an arc of R, then a straight line
    /// (derived in docs/theory/route.md). Taken from either hold of each span; the larger counts. A point inside the
    /// turning circle gets its straight distance, which is a bound too.
    /// </remarks>
    public static double ShortestWay(LieCase of)
    {
        ArgumentNullException.ThrowIfNull(of);
        var radius = of.LeastRadius ?? 0;
        var (point, along) = (of.Start, (Vector3?)of.StartAlong);
        var sum = 0.0;
        foreach (var next in of.Supports.Select(s => (s.Point, Along: s.Kind == SupportKind.Grommet ? null : s.Along)).Append((of.End, of.EndAlong)))
        {
            sum += Math.Max(Route.ShortestWay.From(along, next.Point - point, radius), Route.ShortestWay.From(-next.Along, point - next.Point, radius));
            (point, along) = next;
        }

        return sum;
    }

    private static LieAnswer Refused(NoLieReason reason, double length, double bound) => new(null, new(reason, length, bound));

    private static bool IsAtOnePlace(LieCase of)
    {
        var last = of.Start;
        foreach (var next in of.Supports.Select(s => s.Point).Append(of.End))
        {
            if (!((next - last).Size > 1e-9 * of.Length))
                return true;
            last = next;
        }

        return false;
    }

    private static void Require(LieCase of)
    {
        static bool IsPlace(Vector3 v) => double.IsFinite(v.X + v.Y + v.Z);
        static bool IsWay(Vector3 v) => IsPlace(v) && v.Size > 0;
        if (!IsPlace(of.Start) || !IsPlace(of.End) || !IsPlace(of.Weight) || !IsWay(of.StartAlong) || !IsWay(of.EndAlong) || of.Supports.Any(s => !IsPlace(s.Point) || (s.Along is { } along && !IsWay(along)) || s.At is double.NaN))
            throw new ArgumentException("every place and direction needs numbers, and a direction a length", nameof(of));
        if (!(of.Length > 0) || !double.IsFinite(of.Length) || of.Stiffness is not (null or > 0) || of.LeastRadius is not (null or > 0))
            throw new ArgumentOutOfRangeException(nameof(of), of, "length, stiffness and least radius > 0");
        if (of.Supports.Any(s => s.Kind != SupportKind.Grommet && s.Along is null) || of.Supports.Any(s => s.Kind != SupportKind.Tight && s.At is not null))
            throw new ArgumentException("a clamp needs a direction, and only a tight one has a place along the conduit", nameof(of));
    }

    internal static ElasticProblem Problem(LieCase of, double? length) => new()
    {
        Start = of.Start,
        StartDirection = of.StartAlong,
        End = of.End,
        EndDirection = of.EndAlong,
        Length = length,
        Supports = of.Supports.Select(s => new ElasticSupport(s.Point, s.Kind == SupportKind.Grommet ? null : s.Along, s.At)).ToEquatableList(),
        Obstacles = of.Obstacles.Select(o => new ElasticObstacle(o.DistanceAt, of.ConduitRadius)).ToEquatableList(),
        Stiffness = of.Stiffness ?? 1,
        Load = of.Stiffness is null ? default : of.Weight,
    };

    private static Lie Read(LieCase of, ElasticCurve curve, EquatableList<ElasticCurve> others, double straight, bool moves)
    {
        Vector3[] holds = [of.Start, .. of.Supports.Select(s => s.Point), of.End];
        var spans = Enumerable.Range(0, holds.Length - 1).Select(k => new LieSpan(curve.SpanLength(k), (holds[k + 1] - holds[k]).Size)).ToEquatableList();
        var added = Added * Math.Max(straight, 0.1 * of.Length);
        return new()
        {
            Case = of,
            Shape = curve,
            Spans = spans,
            MovePerLength = moves ? Moves(of, curve, added) / added : double.NaN,
            Loads = of.Stiffness is null ? [] : curve.Reactions.Select(r => new SupportLoad(r.At, r.Force, r.Moment)).ToEquatableList(),
            Contacts = Contacts(of, curve),
            FallsToAnySide = curve.Stability == CurveStability.Neutral,
            IsLoop = Enumerable.Range(0, spans.Count).Any(k => TurnOf(curve, k) > LoopTurn),
            Others = others,
        };
    }

    /// <summary>Neighbouring nodes against the same thing are one contact.</summary>
    private static EquatableList<LieContact> Contacts(LieCase of, ElasticCurve curve)
    {
        var step = curve.Length / (curve.Nodes.Count - 1);
        var found = new List<LieContact>();
        foreach (var alike in curve.Contacts.GroupBy(c => c.Obstacle))
        {
            List<CurveContact> line = [];
            foreach (var contact in alike.OrderBy(c => c.At))
            {
                if (line.Count > 0 && contact.At - line[^1].At > 2.5 * step)
                    Close();
                line.Add(contact);
            }

            Close();

            void Close()
            {
                var force = line.Sum(c => c.Force.Size);
                var middle = line.Sum(c => c.Force.Size * c.At) / force;
                found.Add(new(of.Obstacles[alike.Key].Name, middle, line[^1].At - line[0].At, curve.PointAt(middle), of.Stiffness is null ? double.NaN : force));
                line.Clear();
            }
        }

        return found.OrderBy(c => c.At).ToEquatableList();
    }

    private static double Moves(LieCase of, ElasticCurve curve, double added)
    {
        // The lie it moves to is the nearest one, not a bow on the other side.
        var problem = Problem(of.WithLength(of.Length + added), of.Length + added);
        if (ElasticCurveSolver.Follow(problem with { Segments = Rough }, curve) is { } moved)
            return Apart(moved, curve);
        var longer = ElasticCurveSolver.Solve(problem);
        return longer.Curve is null ? double.NaN : longer.Others.Prepend(longer.Curve).Min(c => Apart(c, curve));
    }

    private static double TurnOf(ElasticCurve curve, int span) =>
        Polyline.BendTotal([.. Enumerable.Range(curve.Holds[span], curve.Holds[span + 1] - curve.Holds[span] + 1).Select(i => curve.Nodes[i].Point)]);
}
