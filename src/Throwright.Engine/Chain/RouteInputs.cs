using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Engine.Route;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>From the file's ends and supports to the lie of the conduit.</summary>
internal static class RouteInputs
{
    /// <summary>Lays drawn within what may be off: enough for the 97.5th percentile to a few per cent.</summary>
    private const int Lays = 80;

    /// <summary>The route; null with the missing inputs named. A file that says nothing of the way asks for nothing.</summary>
    /// <param name="like">The route of a run already worked out: the same case has the same lie.</param>
    /// <param name="known">Lies that serve again, and to which this one is added.</param>
    public static RunRoute? Of(Run run, LeverPlacement? placement, RunRoute? like, ICollection<Need> needs, KnownLies? known = null)
    {
        var cable = run.Cable;
        if (cable is null || (cable.Supports.Count == 0 && cable.Ends is not { Leaves: not null } and not { Arrives: not null }))
            return null;
        var start = StartOf(run, needs);
        var end = EndOf(run, placement, needs);
        var unknown = cable.Supports.Select(s => s.Place).Where(p => !p.IsKnown).Select(p => p.Name).ToList();
        foreach (var name in unknown)
            needs.Add(Need.Point(name, "the lie of the conduit"));
        if (start is not { } s0 || end is not { } e0 || unknown.Count > 0)
            return null;
        // Nothing else of the run decides the lie, so nothing else is at hand where it is worked out.
        var basis = new LieBasis(new() { Supports = cable.Supports, Ends = cable.Ends, Conduit = cable.Conduit, Length = cable.Length, Ordered = cable.Ordered }, s0, e0);
        var route = known is null ? Of(basis, like) : known.Of(basis, b => Of(b, like));
        if (route is null)
            needs.Add(Need.RouteLength);
        return route;
    }

    private static RunRoute? Of(LieBasis basis, RunRoute? like)
    {
        var (cable, s0, e0) = (basis.Cable, basis.Start, basis.End);
        var ends = cable.Ends ?? new();
        var inFittings = ends.InBushing.Metres + ends.InAnchor.Metres;
        var of = new LieCase
        {
            Start = s0.Place,
            StartAlong = s0.Along,
            End = e0.Place,
            EndAlong = e0.Along,
            Length = 1,
            LeastRadius = cable.Conduit?.MinRadius?.Metres,
            Stiffness = StiffnessOf(cable.Conduit),
            Weight = new(0, 0, -(cable.Conduit?.Weight?.Nominal.NewtonsPerMetre ?? 0)),
        };
        of = of with { Supports = Supports(cable, of) };
        // The same ends and supports have the same natural length.
        var natural = like is not null && like.Case with { Length = 1, Supports = of.Supports } == of && !like.Case.Supports.Any(s => s.At is not null) ? like.Natural : NaturalLength(of);
        var (length, origin) = cable.Length is { } typed ? (typed.Nominal.Metres - inFittings, LengthOrigin.Typed)
            : natural is { } rests ? (rests, LengthOrigin.Natural)
            : cable.Ordered is { } ordered ? (ordered.Nominal.Metres - inFittings, LengthOrigin.Ordered)
            : (0, LengthOrigin.Natural);
        if (!(length > 0))
            return null;
        of = of with { Length = length };
        of = of with { Supports = [.. of.Supports.Select((p, i) => cable.Supports[^(i + 1)].FromAnchor is { } at && p.Kind == SupportKind.Tight ? p with { At = length - at.Nominal.Metres } : p)] };
        if (like is not null && like.Case == of && like.Origin == origin && like.InFittings == inFittings)
            return like;
        var answer = LieSolver.Solve(of);
        var route = new RunRoute { Case = of, Answer = answer, Origin = origin, From = s0.Words, InFittings = inFittings, Natural = natural };
        if (answer.Lie is not { } lie)
            return route;
        var straight = Published.Get("route/straight-radius").Value;
        return route with
        {
            Spread = SpreadOf(lie, cable, s0.Limits, e0.Limits),
            Bends = LieBend.Of(lie.Shape),
            LongestStraight = LieBend.Straight(lie.Shape, straight),
            Ordered = cable.Ordered is { } delivered && origin != LengthOrigin.Ordered ? LengthToOrder.With(lie, delivered.Nominal.Metres - inFittings - length) : null,
        };
    }

    /// <summary>Both ends and the ways the conduit points there; null with the missing inputs named.</summary>
    public static (Vector3 Start, Vector3 StartAlong, Vector3 End, Vector3 EndAlong)? Ends(Run run, LeverPlacement? placement, ICollection<Need> needs)
    {
        var (start, end) = (StartOf(run, needs), EndOf(run, placement, needs));
        return start is { } s && end is { } e ? (s.Place, s.Along, e.Place, e.Along) : null;
    }

    /// <summary>How near the lie comes to each body; proved along the whole of it.</summary>
    private static EquatableList<RouteGap> Gaps(EquatableList<KeepOut> keepOuts, Run run, Lie lie)
    {
        if (keepOuts.Count == 0)
            return [];
        var space = new FreeSpace(new()
        {
            Start = lie.Case.Start,
            StartAlong = lie.Case.StartAlong,
            End = lie.Case.End,
            EndAlong = lie.Case.EndAlong,
            LeastRadius = lie.Case.LeastRadius ?? 1,
            ConduitRadius = ConduitRadius(run),
            KeepOuts = keepOuts,
            Passes = Passes(run.Cable!, lie.Case, s => s.Kind == SupportHold.Grommet),
        });
        // A conduit that is all in its fittings is near nothing.
        return space.Gaps(lie.Shape, lie.Case.Supports).Where(g => double.IsFinite(g.Least)).OrderBy(g => g.Least).ToEquatableList();
    }

    private static double ConduitRadius(Run run) => 0.5 * (run.Cable?.Conduit?.Outside?.Most ?? 0);

    /// <summary>How near it comes to what conduits stay away from, and the bends of where it then rests.</summary>
    internal static RunRoute Rested(RunRoute route, Run run, RouteObstacles obstacles)
    {
        if (route.Lie is not { } lie)
            return route;
        var gaps = Gaps(obstacles.KeepOuts, run, lie);
        var resting = RouteChanges.Resting(lie, obstacles, gaps, l => Gaps(obstacles.KeepOuts, run, l), ConduitRadius(run));
        var counted = resting ?? lie;
        return route with
        {
            // Beside what it runs through when free, the conduit may come nearer to something else.
            Gaps = resting is null ? gaps : Worst(gaps, Gaps(obstacles.KeepOuts, run, resting)),
            Resting = resting,
            OtherGaps = counted.Others.Select(o => Gaps(obstacles.KeepOuts, run, counted with { Shape = o }).MinBy(g => g.Least - g.Keep)).ToEquatableList(),
            Bends = LieBend.Of(counted.Shape),
            LongestStraight = LieBend.Straight(counted.Shape, Published.Get("route/straight-radius").Value),
            Ordered = resting is not null && route.Ordered is { } uncut ? LengthToOrder.With(resting, uncut.Change) : route.Ordered,
        };
    }

    /// <summary>Of each thing the nearer of two.</summary>
    private static EquatableList<RouteGap> Worst(EquatableList<RouteGap> free, EquatableList<RouteGap> resting) =>
        free.Concat(resting).GroupBy(g => g.Name).Select(g => g.MinBy(x => x.Least)!).OrderBy(g => g.Least).ToEquatableList();

    /// <summary>The route held against what conduits stay away from, its ends moved and turned.</summary>
    public static RunRoute Held(RunRoute route, Run run, RouteObstacles obstacles) => Changed(Rested(route, run, obstacles), run, obstacles);

    /// <summary>What becomes of the lie as it counts when its end moves or is turned.</summary>
    internal static RunRoute Changed(RunRoute route, Run run, RouteObstacles obstacles)
    {
        if (route.Counted is not { } lie)
            return route;
        var middle = lie.Shape.PointAt(0.5 * lie.Shape.Length);
        return route with
        {
            AtMoves = RouteChanges.Moved(lie, run.Cable!, l => Gaps(obstacles.KeepOuts, run, l)),
            Twisted = RouteChanges.Twisted(route.Lie!, run.Cable!),
            NotHeld = obstacles.NotHeld.Concat(Gaps(obstacles.Planes, run, lie).Where(g => !(g.Least >= g.Keep)).Select(g => $"{g.Name}: the sheet has no outline, and the conduit goes through its plane or near it")).Concat(obstacles.Closed.Where(m => m.Holds(middle)).Select(m => $"{m.Name}: the conduit lies inside its skin, and whether that is solid the mesh does not say")).ToEquatableList(),
        };
    }

    /// <summary>Lengths to order; null where there is no lie.</summary>
    public static LengthToOrder? Order(RunRoute route, Run run, Sweep? sweep, double? knobOutAtPushStop, Display display, KnownLies? known = null)
    {
        if (route.Counted is not { } lie)
            return null;
        var ends = run.Cable?.Ends ?? new();
        var step = ends.OrderStep?.Metres ?? Published.Get("route/order-step").Value;
        var trimming = ends.Trimming?.Metres ?? Published.Get("route/trimming").Value;
        // At the push stop the most wire stands out of the conduit at the device, and least at the knob.
        // Where the arm passes a dead centre, or no place of the swivel is known yet, as much as there can be.
        const int Steps = 180;
        var longest = sweep is null ? 0
            : sweep.IsMonotone ? sweep.AtPush.Length
            : Enumerable.Range(0, Steps + 1).Max(i => (sweep.Case.Anchor - sweep.Case.SwivelAt(sweep.Case.From + (i * (sweep.Case.To - sweep.Case.From) / Steps))).Size);
        var free = sweep is null ? 0 : Math.Max(0, longest - ends.InAnchor.Metres) + Math.Max(0, knobOutAtPushStop ?? run.CockpitEnd?.Stroke?.Most ?? 0);
        var inch = display.Length == LengthUnit.Inch ? Length.MetresPerInch : 0.025;
        return LengthToOrder.Find(lie, new(route.InFittings, free, ends.WireInKnob.Metres + ends.WireBeyondPin.Metres, trimming, step), inch, known is null ? null : known.Near);
    }

    /// <summary>The cable that counts: bends, straight and length from the lie where there is one.</summary>
    public static Cable Cable(Cable typed, RunRoute route)
    {
        if (route is not { Counted: { } lie, CountedSpread: { } spread })
            return typed;
        // Each bend has its part of what the whole may turn less or more.
        double less = Math.Max(0, (lie.BendTotal - spread.BendLeast) / lie.BendTotal), more = Math.Max(0, (spread.BendMost - lie.BendTotal) / lie.BendTotal);
        return typed with
        {
            BendTotal = null,
            Bends = route.Bends.Select(b => new Bend(new(new(b.Angle), less * b.Angle, more * b.Angle), new(new(b.Mean), b.Mean - b.Radius, 0))).ToEquatableList(),
            LongestStraight = typed.LongestStraight ?? new(route.LongestStraight),
            Length = typed.Length ?? Toleranced<Length>.Exact(new(lie.Case.Length + route.InFittings)),
        };
    }

    private static EndPlace? StartOf(Run run, ICollection<Need> needs)
    {
        if (run.Cable?.Ends is { Leaves: { } at, LeavesAlong: { } along })
        {
            if (at.IsKnown)
                return new(PointSurvey.Place(at), Direction(along).Unit(), LimitsOf(at), "cable.ends.leaves");
            needs.Add(Need.Point(at.Name, "the lie of the conduit"));
            return null;
        }

        if (run.CockpitEnd is { Sheet: { } sheet, Hole: { } hole } end)
        {
            if (!hole.IsKnown)
            {
                needs.Add(Need.Point(hole.Name, "the lie of the conduit"));
                return null;
            }

            // Behind the sheet, along the shank: the end of the bushing.
            var shank = ShankOf(sheet, end.Tilt);
            var behind = end.Bushing?.Length?.Nominal.Metres ?? 0;
            return new(PointSurvey.Place(hole) - (behind * shank), -shank, LimitsOf(hole), end.Bushing?.Length is null ? "the hole in the sheet" : "the end of the bushing behind the sheet");
        }

        needs.Add(Need.Leaves);
        return null;
    }

    /// <summary>The shank's axis toward the pilot.</summary>
    private static Vector3 ShankOf(Sheet sheet, MountTilt? tilt)
    {
        var normal = Direction(sheet.Normal).Unit();
        return new SheetFrame(default, normal, HandleMount.UpOf(sheet, normal)).ShankAt(new(Math.Tan(tilt?.Up.Radians ?? 0), Math.Tan(tilt?.Right.Radians ?? 0)));
    }

    private static EndPlace? EndOf(Run run, LeverPlacement? placement, ICollection<Need> needs)
    {
        if (run.LeverEnd?.Placed is { } placed)
        {
            if (!placed.Anchor.IsKnown)
            {
                needs.Add(Need.Point(placed.Anchor.Name, "the lie of the conduit"));
                return null;
            }

            if (placed.Along is { } along)
                return new(PointSurvey.Place(placed.Anchor), Direction(along).Unit(), LimitsOf(placed.Anchor), "");
            // At the swivel at mid travel, as the throw takes it.
            return placement is null ? null : new(PointSurvey.Place(placed.Anchor), LeverPlacement.ToAircraft(placed, placement.Case.Along).Unit(), LimitsOf(placed.Anchor), "");
        }

        if (run.Cable?.Ends is { Arrives: { } at, ArrivesAlong: { } arrives })
        {
            if (at.IsKnown)
                return new(PointSurvey.Place(at), Direction(arrives).Unit(), LimitsOf(at), "");
            needs.Add(Need.Point(at.Name, "the lie of the conduit"));
            return null;
        }

        needs.Add(Need.Arrives);
        return null;
    }

    private static EquatableList<LieSupport> Supports(Cable cable, LieCase of)
    {
        var places = cable.Supports.Reverse().ToList();
        Vector3 At(int i) => i < 0 ? of.Start : i < places.Count ? PointSurvey.Place(places[i].Place) : of.End;
        return places.Select((p, i) =>
        {
            if (p.Kind == SupportHold.Grommet || p.Along is not { } line)
                return new LieSupport(At(i), SupportKind.Grommet);
            // A clamp's line has no sense of its own: it runs the way the conduit does, which comes from one hold and goes to the other.
            // Each counts alike, however far it is: past a clamp close to the knob a conduit may well turn back by a long way.
            var along = Direction(line).Unit();
            var way = Toward(At(i - 1), At(i)) + Toward(At(i), At(i + 1));
            return new LieSupport(At(i), p.Kind == SupportHold.TightClamp ? SupportKind.Tight : SupportKind.Sliding, Vector3.Dot(along, way) < 0 ? -along : along);
        }).ToEquatableList();
    }

    private static Vector3 Toward(Vector3 from, Vector3 to) => (to - from).Size > 0 ? (to - from).Unit() : default;

    /// <summary>Supports of the file that satisfy a condition, as the planner takes them: from the start to the end.</summary>
    public static EquatableList<RoutePass> Passes(Cable cable, LieCase of, Func<Support, bool> which) =>
        Supports(cable, of).Zip(cable.Supports.Reverse(), (lie, typed) => (Lie: lie, Typed: typed))
            .Select((s, i) => (s.Lie, s.Typed, Name: NameOf(cable, cable.Supports.Count - 1 - i)))
            .Where(s => which(s.Typed)).Select(s => new RoutePass(s.Name, s.Lie)).ToEquatableList();

    /// <summary>The name of its place, or what it is and its number as in the picture: counted from the device.</summary>
    public static string NameOf(Cable cable, int index) => cable.Supports[index] is { Place.Name: { Length: > 0 } name } ? name
        : $"{(cable.Supports[index].Kind == SupportHold.Grommet ? "grommet" : "clamp")} {index + 1}";

    private static double? NaturalLength(LieCase of) => LieSolver.NaturalLength(of with { Length = Math.Max(of.Straight, 1e-3) });

    /// <summary>Typed, or from the table's edge.</summary>
    public static double? StiffnessOf(Conduit? conduit) => conduit switch
    {
        { Bending: { } typed } => typed.Nominal.NewtonSquareMetres,
        { TableEdge: { } edge, Weight: { } weight } => Route.TableEdge.Find(new()
        {
            Overhang = new(edge.Overhang.Nominal.Metres, 0),
            Drop = new(edge.Droop.Nominal.Metres, 0),
            Weight = new(weight.Nominal.NewtonsPerMetre, 0),
        }).Stiffness,
        _ => null,
    };

    /// <summary>The lie again with everything that may be off drawn within its limits.</summary>
    private static LieSpread SpreadOf(Lie lie, Cable cable, PlaceLimits start, PlaceLimits end)
    {
        var of = lie.Case;
        var lean = Published.Get("route/direction-error").Value;
        var held = cable.Supports.Reverse().Select(s => LimitsOf(s.Place)).ToList();
        var less = cable.Length is { } typed ? (typed.Minus, typed.Plus) : default;
        var (radii, moves, bends) = (new List<double>(), new List<double>(), new List<double>());
        var without = 0;
        for (var n = 0; n < Lays; n++)
        {
            var random = new CounterRandom(29, n);
            var position = 0L;
            double Sign() => (2 * random.Uniform(position++)) - 1;
            double Within(double less, double more) => Sign() is var u && u < 0 ? u * less : u * more;
            Vector3 Off(PlaceLimits limits) => new(Within(limits.Less.X, limits.More.X), Within(limits.Less.Y, limits.More.Y), Within(limits.Less.Z, limits.More.Z));
            Vector3 Leant(Vector3 direction)
            {
                // Uniform within the cone, near enough.
                var across = Vector3.Cross(direction, Math.Abs(direction.X) < 0.7 ? new(1, 0, 0) : new(0, 1, 0)).Unit();
                double turn = Math.PI * Sign(), by = Math.Tan(lean * Math.Sqrt(Math.Abs(Sign())));
                return (direction + (by * ((Math.Cos(turn) * across) + (Math.Sin(turn) * Vector3.Cross(direction, across))))).Unit();
            }

            var drawn = of with
            {
                Start = of.Start + Off(start),
                StartAlong = Leant(of.StartAlong.Unit()),
                End = of.End + Off(end),
                EndAlong = Leant(of.EndAlong.Unit()),
                Supports = of.Supports.Select((s, i) => s with { Point = s.Point + Off(held[i]), Along = s.Along is { } a ? Leant(a) : null }).ToEquatableList(),
            };
            drawn = drawn.WithLength(of.Length + Within(less.Item1, less.Item2));
            drawn = drawn with
            {
                Supports = drawn.Supports.Select((s, i) => s.At is { } at && cable.Supports[^(i + 1)].FromAnchor is { } mark ? s with { At = at - Within(mark.Minus, mark.Plus) } : s).ToEquatableList(),
            };
            if (LieSolver.Track(drawn, lie) is not { } other)
            {
                without++;
                continue;
            }

            radii.Add(other.LeastRadius);
            bends.Add(other.BendTotal);
            moves.Add(LieSolver.Apart(other, lie.Shape));
        }

        double Rank(List<double> values, double share) => values.Count == 0 ? double.NaN : values.Order().ElementAt((int)Math.Clamp(share * values.Count, 0, values.Count - 1));
        return new(
            Lays, without, Rank(radii, 0.025), Rank(moves, 0.975), Math.Min(lie.BendTotal, bends.DefaultIfEmpty(lie.BendTotal).Min()), Math.Max(lie.BendTotal, bends.DefaultIfEmpty(lie.BendTotal).Max()),
            moves.Any(m => m > 0.1 * of.Straight));
    }

    private static PlaceLimits LimitsOf(PointAt at) => new(
        new(at.Station.Minus, at.Buttline.Minus, at.Waterline.Minus),
        new(at.Station.Plus, at.Buttline.Plus, at.Waterline.Plus));

    private static Vector3 Direction(DirectionAt d) => new(d.Aft, d.Right, d.Up);
}
