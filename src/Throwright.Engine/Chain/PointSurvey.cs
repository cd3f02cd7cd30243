using Throwright.Engine.Measure;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>One named point, worked out from its readings where it has some.</summary>
/// <param name="Point">With the place found; the place as typed where there are no readings.</param>
/// <param name="Case">What was solved; null: typed as coordinates, or its known points are not known.</param>
/// <param name="WaitsFor">Names of points that it is measured from and that are not known themselves.</param>
public sealed record SurveyedPoint(NamedPoint Point, TapeCase? Case, TapeAnswer? Answer, EquatableList<string> WaitsFor);

/// <summary>Works out every point of an aircraft that was measured by tape, each after those it is measured from.</summary>
public static class PointSurvey
{
    /// <summary>A uniform range of half-width h has a standard deviation of h / sqrt 3; a normal one's limit is three of them.</summary>
    private static readonly double Uniform = 1 / Math.Sqrt(3);

    /// <summary>Where coordinates typed by themselves count from.</summary>
    internal const string Datum = "datum";

    private static readonly Vector3 Aft = new(1, 0, 0), Right = new(0, 1, 0), Up = new(0, 0, 1);

    /// <summary>All points in the order of the file.</summary>
    public static EquatableList<SurveyedPoint> Of(EquatableList<NamedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        var found = new Dictionary<string, SurveyedPoint>();
        foreach (var point in points.Where(p => p.Taped is null))
            found[point.Name] = new(point, null, null, []);
        var left = points.Where(p => p.Taped is not null).ToList();
        while (left.Count > 0)
        {
            var ready = left.Where(p => NamesIn(p.Taped!).All(found.ContainsKey)).ToList();
            // What is measured from itself, or from a name that is not there, stays unknown.
            if (ready.Count == 0)
                break;
            foreach (var point in ready)
                found[point.Name] = One(point, found);
            left.RemoveAll(ready.Contains);
        }

        return points.Select(p => found.TryGetValue(p.Name, out var f) ? f : Unknown(p, NamesIn(p.Taped!).Where(n => !found.ContainsKey(n)))).ToEquatableList();
    }

    /// <summary>Every point that a taped place refers to.</summary>
    public static IEnumerable<string> NamesIn(TapedPlace taped)
    {
        ArgumentNullException.ThrowIfNull(taped);
        return taped.Distances.Select(d => d.From)
            .Concat([taped.Level, taped.Plumb, taped.SameStation, taped.SameButtline, taped.Side?.Of ?? ""])
            .Concat(taped.InLine)
            .Where(n => n.Length > 0)
            .Distinct();
    }

    public static Vector3 Place(PointAt at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return new(at.Station.Nominal.Metres, at.Buttline.Nominal.Metres, at.Waterline.Nominal.Metres);
    }

    private static SurveyedPoint Unknown(NamedPoint point, IEnumerable<string> waits) =>
        new(point with { At = PointAt.NotKnown(point.Name) }, null, null, waits.ToEquatableList());

    private static SurveyedPoint One(NamedPoint point, Dictionary<string, SurveyedPoint> found)
    {
        var taped = point.Taped!;
        var waits = NamesIn(taped).Where(n => !found[n].Point.At.IsKnown).ToList();
        if (waits.Count > 0)
            return Unknown(point, waits);
        var spare = found.Values.Where(f => f.Point.At.IsKnown && f.Point.Taped is null && taped.Distances.All(d => d.From != f.Point.Name)).Select(f => Known(f.Point)).ToEquatableList();
        TapeCase Case(Vector3? at) => new(Readings(taped, found, at), taped.Side is { Of: "" } side ? side.Side : null, spare, taped.Noted is { IsKnown: true } noted ? Place(noted) : null);
        var of = Case(null);
        var answer = Solve(of, taped, found);
        // Known points are off too, by different amounts in different directions: weighed again from the place found.
        if (answer.Point is { } first)
        {
            of = Case(first.Place) with { Near = first.Place, Hint = null };
            answer = TapeSolver.Solve(of);
        }

        if (answer.Point is not { } solved)
            return new(point with { At = PointAt.NotKnown(point.Name) }, of, answer, []);
        static Toleranced<Length> Coordinate(double value, double off) => new(new(value), off, off, Spread.Normal);
        var at = new PointAt(Coordinate(solved.Place.X, solved.Off.X), Coordinate(solved.Place.Y, solved.Off.Y), Coordinate(solved.Place.Z, solved.Off.Z));
        return new(point with { At = at }, of, answer, []);
    }

    /// <summary>A side of a named point tells two places apart only where just one of them lies there.</summary>
    private static TapeAnswer Solve(TapeCase of, TapedPlace taped, Dictionary<string, SurveyedPoint> found)
    {
        if (taped.Side is not { Of.Length: > 0 } side)
            return TapeSolver.Solve(of);
        var free = TapeSolver.Solve(of with { Hint = null, Near = null });
        if (free.Refusal is not { Reason: NoPointReason.Mirrored } two)
            return free;
        var axis = TapeSolver.AxisOf(side.Side);
        var there = two.Candidates.Where(c => Vector3.Dot(axis, c - Place(found[side.Of].Point.At)) > 0).ToList();
        return there.Count == 1
            ? TapeSolver.Solve(of with { Near = there[0] })
            : new(null, new(NoPointReason.HintDoesNotTell, two.Candidates));
    }

    private static KnownPoint Known(NamedPoint point) => new(point.Name, Place(point.At));

    private static EquatableList<TapeReading> Readings(TapedPlace taped, Dictionary<string, SurveyedPoint> found, Vector3? at)
    {
        var tape = taped.Tape?.Metres ?? Published.Get("measure/tape").Value;
        var within = (taped.Within?.Metres ?? Published.Get("measure/level").Value) * Uniform;
        var list = new List<TapeReading>();
        foreach (var d in taped.Distances)
        {
            var from = found[d.From].Point;
            var own = d.Distance.IsExact ? tape * Uniform : Sigma(d.Distance);
            list.Add(new(Known(from), d.Distance.Nominal.Metres, Both(own, OwnSigma(from.At, at is { } p ? p - Place(from.At) : null))));
        }

        void Along(string name, Vector3 direction, string words)
        {
            var from = found[name].Point;
            list.Add(new(Known(from), 0, Both(within, OwnSigma(from.At, direction)), direction, words));
        }

        void Typed(Toleranced<Length>? value, Vector3 direction, string words)
        {
            if (value is { } v)
                list.Add(new(new(Datum, default), v.Nominal.Metres, v.IsExact ? tape * Uniform : Sigma(v), direction, words));
        }

        if (taped.Level.Length > 0)
            Along(taped.Level, Up, $"the level with {taped.Level}");
        if (taped.Plumb.Length > 0)
        {
            Along(taped.Plumb, Aft, $"the plumb line of {taped.Plumb}, fore and aft");
            Along(taped.Plumb, Right, $"the plumb line of {taped.Plumb}, sideways");
        }

        if (taped.SameStation.Length > 0)
            Along(taped.SameStation, Aft, $"the station of {taped.SameStation}");
        if (taped.SameButtline.Length > 0)
            Along(taped.SameButtline, Right, $"the buttline of {taped.SameButtline}");
        Typed(taped.Station, Aft, "the station typed");
        Typed(taped.Buttline, Right, "the buttline typed");
        Typed(taped.Waterline, Up, "the waterline typed");
        if (taped.InLine is [var first, var second] && Place(found[second].Point.At) - Place(found[first].Point.At) is { Size: > 1e-3 } line)
        {
            var across = Vector3.Cross(line, Math.Abs(line.Unit().X) < 0.7 ? Aft : Right).Unit();
            Along(first, across, $"the line of {first} and {second}");
            Along(first, Vector3.Cross(line.Unit(), across), $"the line of {first} and {second}, the other way");
        }

        return list.ToEquatableList();
    }

    private static double Sigma(Toleranced<Length> value) => 0.5 * (value.Minus + value.Plus) * (value.Spread == Spread.Normal ? 1.0 / 3 : Uniform);

    /// <summary>A known point's own standard deviation along a direction; without one, the mean over all.</summary>
    private static double OwnSigma(PointAt at, Vector3? along)
    {
        double x = Sigma(at.Station), y = Sigma(at.Buttline), z = Sigma(at.Waterline);
        if (along is not { Size: > 0 } direction)
            return Math.Sqrt(((x * x) + (y * y) + (z * z)) / 3);
        var e = direction.Unit();
        return Math.Sqrt((e.X * e.X * x * x) + (e.Y * e.Y * y * y) + (e.Z * e.Z * z * z));
    }

    private static double Both(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
