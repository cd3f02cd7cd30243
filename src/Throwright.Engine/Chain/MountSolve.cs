using System.Globalization;
using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;
using Tilt = Throwright.Engine.Mount.Tilt;

namespace Throwright.Engine.Chain;

/// <summary>One way to make a handle clear: in words, and what to type for it.</summary>
/// <param name="Clearance">Of the handle so changed, from everything: lower proved.</param>
public sealed record MountChange(string Text, EquatableList<TrialEdit> Edits, ClearanceBounds Clearance);

/// <summary>The mount of one handle: the smallest tilt that clears, and what else would.</summary>
public sealed record MountAnswer
{
    public required HandleMount Handle { get; init; }

    /// <summary>Clearance to reach, m.</summary>
    public required double Wanted { get; init; }

    /// <summary>As it is mounted in the file.</summary>
    public required ClearanceBounds Now { get; init; }

    /// <summary>What comes nearest now.</summary>
    public required string Nearest { get; init; }

    /// <summary>Search without wedges, up to the tilt that needs none.</summary>
    public required SmallestTilt Straight { get; init; }

    /// <summary>Search with a pair of wedges; null: none is needed.</summary>
    public SmallestTilt? Wedged { get; init; }

    /// <summary>The tilt as it is typed, proved with its play; null: there is none.</summary>
    public Tilt? Tilt { get; init; }

    /// <summary>The same as a change of the file.</summary>
    public MountChange? Best { get; init; }

    /// <summary>Sheet to knob at the tilt, m: wedges lift the knob.</summary>
    public double Length { get; init; }

    /// <summary>Other cures, worked out by trial.</summary>
    public EquatableList<MountChange> Instead { get; init; } = [];

    /// <summary>Findings on tilt, wedges and thread.</summary>
    public EquatableList<Finding> Findings { get; init; } = [];
    public required string Sentence { get; init; }

    /// <summary>How the handle stands to the pilot, now and then; null where the file does not say.</summary>
    public double? FacingNow { get; init; }
    public double? FacingThen { get; init; }
    public EquatableList<string> Notes { get; init; } = [];
}

/// <summary>Searches the mount of one handle.</summary>
public sealed class MountSolve
{
    private const double Degree = Math.PI / 180;

    /// <summary>Boxes for one pair at one range of tilts.</summary>
    private const long Budget = 3_000;

    /// <summary>m.</summary>
    private const double Coarse = 1e-3;

    /// <summary>The hole is moved no farther than this, m.</summary>
    private const double FarthestHole = 0.1;

    /// <summary>Slope below which cells of tilts are not cut: a twentieth of a degree; tilts are typed in tenths.</summary>
    public const double Fine = 1e-3;

    /// <summary>The same for a quick look: half a degree.</summary>
    public const double Quick = 8e-3;

    private readonly Aircraft aircraft;
    private readonly Run run;
    private readonly FigureWriter say;
    private readonly CockpitEffort effort;
    private readonly CockpitCase? of;
    private readonly HandleMount? handle;
    private readonly List<CockpitBody> others = [];
    private readonly List<string> notRead = [];
    private readonly double wanted, square, wedge, thin, finest;
    private readonly bool isWedgeKnown;

    /// <param name="wanted">Clearance to reach, m; null: as the file asks, or the usual figure.</param>
    /// <param name="finest">Slope below which cells of tilts are not cut.</param>
    public MountSolve(Aircraft aircraft, Run run, FigureWriter say, CockpitEffort? effort = null, double? wanted = null, double finest = Fine)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(run);
        (this.aircraft, this.run, this.say, this.effort, this.finest) = (aircraft, run, say, effort ?? new(), finest);
        this.wanted = wanted ?? CockpitCheck.WishOf(run).Least.Value;
        var needs = new List<Need>();
        if (HandleMount.Of(run, run.Id, needs) is null)
        {
            Obstacle = $"The mount of {RunWords.Of(run).Name} can't be worked out yet. It needs: {string.Join("; ", needs.Select(n => $"{n.Name} ({n.Path})"))}.";
            return;
        }

        var scene = CockpitScene.Of(aircraft, this.effort);
        handle = scene.Handles.First(h => h.Run.Id == run.Id);
        notRead.AddRange(scene.NotRead.Select(l => l.ToString()));
        others.AddRange(scene.Handles.Where(h => h.Run.Id != run.Id).Select(h => h.Body).Concat(scene.Bodies));
        if (others.Count == 0)
        {
            Obstacle = "There is nothing that this handle could meet: the file describes no bodies and no other handle.";
            return;
        }

        of = scene.Case(this.effort, [handle.Body], others) with { Interest = Math.Max(Published.Get("clearance/interest").Value, 1.01 * this.wanted) };
        // Sheets, arms and conduits stay out where no tilt, and no hole or shank that is tried, could bring the handle to them.
        var far = FarthestHole + (2 * handle.Reach(handle.Length) * Math.Tan(Published.Get("mount/most").Value)) + this.wanted;
        others.AddRange(scene.Sheets.Where(s => s.Of.Id != run.CockpitEnd!.Sheet!.Id).Select(s => s.Body)
            .Concat((this.effort.Ends?.Invoke() ?? RunCheck.DeviceEnds(aircraft, run, meshes: this.effort.Meshes)).Where(e => e.Run.Id != run.Id).SelectMany(e => new[] { e.Lever, e.Conduit }.OfType<CockpitBody>()))
            .Where(b => !(ClearanceSolver.Between(of, handle.Body, b, SearchAim.IsClearBy(far) with { MostBoxes = Budget }).Lower >= far)));
        // What comes nearest is asked first: it most often says no.
        others = [.. others.Select(o => (Body: o, Pair: ClearanceSolver.Between(of, handle.Body, o))).OrderBy(p => p.Pair.Lower).ThenByDescending(p => p.Pair.Found.Overlap).Select(p => p.Body)];
        // Outside and thin edge are the same at every lean; of a bushing that is not measured three times the shank.
        var pair = MadeParts.Wedges(Leaning(run, Tilt.FromDegrees(0, 10))).Pair;
        thin = pair?.Washer.ThinEdge ?? WedgePairSolver.LeastThinEdge(WedgeStock.Metal).Value;
        wedge = pair is null ? 3 * handle.ShankRadius : 0.5 * pair.Washer.Outside;
        isWedgeKnown = pair is not null;
        // A lean that has its wedges already: the square handle is shorter by them.
        square = handle.Length - (handle.Tilt.Total > NoWedge ? Lift(handle.Tilt.Slope) : 0);
    }

    /// <summary>Why nothing can be searched; null: it can.</summary>
    public string? Obstacle { get; }

    private static double NoWedge => Published.Get("mount/no-wedge").Value;

    private static double Play => Math.Tan(Published.Get("mount/play").Value);

    /// <summary>The smallest tilt that clears, with its proof, and what else would cure it.</summary>
    /// <param name="doing">Told what is being done, in a sentence.</param>
    public MountAnswer Find(bool withOthers = true, Action<string>? doing = null)
    {
        var mount = handle ?? throw new InvalidOperationException(Obstacle);
        doing?.Invoke("Looking for the smallest tilt that needs no wedge.");
        var now = Clearance(mount.Body, double.PositiveInfinity);
        var answer = new MountAnswer { Handle = mount, Wanted = wanted, Now = now, Nearest = others[0].Name, Straight = Search(mount, false), Sentence = "", Length = mount.Length };
        if (answer.Straight.Ended != TiltEnd.Found)
        {
            doing?.Invoke("No tilt without wedges clears; looking for the smallest on a pair of wedges.");
            answer = answer with { Wedged = Search(mount, true) };
        }

        var found = answer.Wedged ?? answer.Straight;
        var wedged = answer.Wedged is not null;
        if (found.Tilt is { } exact && Typed(exact, mount, wedged) is { } typed)
        {
            var (outward, outText) = TypedOut(mount, typed, wedged);
            var length = outward + (0.5 * mount.Sheet);
            List<TrialEdit> edits = [new("cockpitEnd.tilt", $"{{ \"up\": \"{Degrees(typed.Up)} deg\", \"right\": \"{Degrees(typed.Right)} deg\" }}", IsJson: true)];
            if (wedged || square != mount.Length)
                edits.Add(new("cockpitEnd.shank.out", outText));
            var there = Clearance(mount.At(typed, length), double.PositiveInfinity);
            answer = answer with
            {
                Tilt = typed,
                Length = length,
                FacingNow = MountFindings.FacingOf(aircraft, mount, mount.Tilt, mount.Length),
                FacingThen = MountFindings.FacingOf(aircraft, mount, typed, length),
                Best = new(
                    typed == Tilt.None
                        ? $"Mount the handle square to the sheet: it stays at least {say.Length(there.Lower, Rounding.Down)} from everything."
                        : $"Tilt the handle {Words(typed)}{(wedged ? " on a pair of wedges" : ", which plain washers take up")}: it stays at least {say.Length(there.Lower, Rounding.Down)} from everything.",
                    edits.ToEquatableList(),
                    there),
            };
        }

        // A handle that keeps its distance square needs no cure.
        if (answer.Best is null || (withOthers && answer.Tilt != Tilt.None))
        {
            doing?.Invoke("Trying other cures: another hole, a shorter shank, a smaller handle.");
            answer = answer with { Instead = Others(mount).ToEquatableList() };
        }

        return answer with { Sentence = SentenceOf(answer), Findings = FindingsOf(answer).ToEquatableList(), Notes = NotesOf(answer, wedged).ToEquatableList() };
    }

    /// <summary>The clearance map in whole cells over the range of tilts that is looked at, wedges counted where they are needed.</summary>
    /// <param name="answer">What the search found, to be shown in it; null: only the map.</param>
    /// <param name="progress">Called with cells done and cells in all; from any thread. The effort's token stops it: what is not reached stays open.</param>
    public MountMap Map(MountAnswer? answer = null, int cells = MountMap.UsualCells, Action<int, int>? progress = null)
    {
        var mount = handle ?? throw new InvalidOperationException(Obstacle);
        var most = Published.Get("mount/most").Value;
        var map = TiltMap.Over(TiltRange.Within(most), cells, cells, range => Cell(mount, range), effort.Threads, progress, effort.Cancel);
        var found = answer?.Wedged ?? answer?.Straight;
        return new(mount, wanted, most, map, mount.Tilt, answer?.Tilt, answer?.Tilt == Tilt.None ? null : found?.NoneBelow, MountFindings.TowardEye(aircraft, mount), !effort.Cancel.IsCancellationRequested);
    }

    /// <summary>The handle at a tilt that the builder chose: what to type for it, and the clearance it then has, worked out in full.</summary>
    public MountChange At(Tilt tilt)
    {
        var mount = handle ?? throw new InvalidOperationException(Obstacle);
        var wedged = tilt.Total > NoWedge;
        var (outward, outText) = TypedOut(mount, tilt, wedged);
        List<TrialEdit> edits = [new("cockpitEnd.tilt", $"{{ \"up\": \"{Degrees(tilt.Up)} deg\", \"right\": \"{Degrees(tilt.Right)} deg\" }}", IsJson: true)];
        if (wedged || square != mount.Length)
            edits.Add(new("cockpitEnd.shank.out", outText));
        var there = Clearance(mount.At(tilt, outward + (0.5 * mount.Sheet)), double.PositiveInfinity);
        return new(
            (tilt == Tilt.None ? "Mount the handle square to the sheet" : $"Tilt the handle {Words(tilt)}{(wedged ? " on a pair of wedges" : ", which plain washers take up")}")
                + (there.Upper <= 0 ? ": it touches." : $": it stays at least {say.Length(Math.Max(0, there.Lower), Rounding.Down)} from everything."),
            edits.ToEquatableList(),
            there);
    }

    /// <summary>What is proved of all tilts of a range, each mounted as its lean asks: without wedges up to what washers take up, else with.</summary>
    /// <remarks>
    /// The middle alone is asked first, its clearance U. No tilt of the cell has more than U + R w, w the farthest turn from the middle and R the
    /// reach (docs/theory/mount.md, section 2); where the cell lies on both sides of the lean that needs wedges, their lift is added. Only a cell whose
    /// middle keeps what is wanted can keep it everywhere, and only that is worth the proof over the whole range.
    /// </remarks>
    private TiltCell Cell(HandleMount mount, TiltRange range)
    {
        var (least, farthest, middle) = (range.Least.Slope, Farthest(range), range.Middle);
        var limit = Math.Tan(NoWedge);
        double LiftAt(double slope) => slope > limit ? Lift(slope) : 0;
        var there = LiftAt(middle.Slope);
        var alone = Clearance(mount.Over(TiltRange.At(middle), square, (there, there)), wanted);
        var jump = least <= limit && farthest > limit ? Lift(farthest) : 0;
        var high = alone.Upper + ((mount.Reach(square + Lift(farthest)) + wedge) * range.FarthestTurnFrom(middle)) + jump;
        if (effort.Cancel.IsCancellationRequested)
            return TiltCell.Unknown(range);
        if (high < wanted)
            return new(range, TiltCellAnswer.Fails, null, high);
        if (!(alone.Lower >= wanted))
            return new(range, TiltCellAnswer.Open, null, high);
        var body = mount.Over(range, square, (LiftAt(least), LiftAt(farthest)));
        var low = double.PositiveInfinity;
        foreach (var other in others)
        {
            // How much more than wanted is of interest for the shading only: coarsely, and no farther than the next steps.
            var asked = ClearanceSolver.Between(of!, body, other, new() { Enough = Math.Min(of!.Interest, 3 * wanted), TooLittle = wanted, Tolerance = Coarse, MostBoxes = Budget }, effort.Cancel);
            var proved = asked.Lower;
            if (proved < wanted && asked.Upper >= wanted)
                proved = ClearanceSolver.Between(of!, body, other, SearchAim.IsClearBy(wanted) with { Tolerance = effort.Tolerance, MostBoxes = Budget }, effort.Cancel).Lower;
            low = Math.Min(low, proved);
            if (low < wanted)
                break;
        }

        return low >= wanted ? new(range, TiltCellAnswer.Keeps, low, high) : new(range, TiltCellAnswer.Open, null, high);
    }

    private SmallestTilt Search(HandleMount mount, bool wedged)
    {
        var most = wedged ? Published.Get("mount/most").Value : NoWedge;
        // A wedge lifts the knob by its half width times the slope, so a turn moves points by that much more.
        var reach = mount.Reach(square + (wedged ? Lift(Math.Tan(most)) : 0)) + (wedged ? wedge : 0);
        return TiltSolver.Find(new((range, enough) => Clearance(Over(mount, range, wedged), enough), reach, wanted, most, Play, finest, finest > Fine ? 600 : 6000), effort.Cancel);
    }

    private double Lift(double slope) => thin + (wedge * slope);

    private static double Farthest(TiltRange range) =>
        new Tilt(Math.Max(Math.Abs(range.UpFrom), Math.Abs(range.UpTo)), Math.Max(Math.Abs(range.RightFrom), Math.Abs(range.RightTo))).Slope;

    private CockpitBody Over(HandleMount mount, TiltRange range, bool wedged) =>
        mount.Over(range, square, wedged ? (Lift(range.Least.Slope), Lift(Farthest(range))) : (0, 0));

    /// <summary>From everything, over all joint positions; stops as soon as the wanted clearance is proved or refused.</summary>
    private ClearanceBounds Clearance(CockpitBody body, double enough)
    {
        double lower = double.PositiveInfinity, upper = double.PositiveInfinity;
        foreach (var other in others)
        {
            if (double.IsPositiveInfinity(enough))
            {
                var value = ClearanceSolver.Between(of!, body, other, effort.Cancel);
                (lower, upper) = (Math.Min(lower, value.Lower), Math.Min(upper, value.Upper));
                continue;
            }

            // Within the tolerance of what is wanted neither side is worth a proof.
            var asked = ClearanceSolver.Between(of!, body, other, SearchAim.IsClearBy(enough) with { Tolerance = effort.Tolerance, MostBoxes = Budget, HowBadly = true }, effort.Cancel);
            (lower, upper) = (Math.Min(lower, asked.Lower), Math.Min(upper, asked.Upper));
            if (!(asked.Upper < enough))
                continue;
            // How much is lacking, roughly: the more, the farther all neighbours of this tilt are refused with it. Two bodies that
            // overlap by d along every direction still do, by d less what their points are moved (a tenth off for the search's rounding).
            if (asked.Hits)
                upper = -0.9 * asked.Found.Overlap;
            else
                upper = Math.Min(upper, ClearanceSolver.Between(of!, body, other, new() { Tolerance = Coarse, Enough = enough, MostBoxes = Budget }, effort.Cancel).Upper);
            // Not proved of those that were not asked.
            return new(0, upper);
        }

        return new(lower, upper);
    }

    /// <summary>The tilt in tenths of a degree that clears with its play and leans least; finer where none does.</summary>
    private Tilt? Typed(Tilt exact, HandleMount mount, bool wedged)
    {
        if (exact == Tilt.None)
            return exact;
        foreach (var step in (ReadOnlySpan<double>)[0.1, 0.01])
        {
            double up = Math.Atan(exact.Up) / Degree / step, right = Math.Atan(exact.Right) / Degree / step;
            var near = from u in Enumerable.Range((int)Math.Floor(up) - 2, 6)
                       from r in Enumerable.Range((int)Math.Floor(right) - 2, 6)
                       let tilt = Tilt.FromDegrees(Math.Round(u * step, 2), Math.Round(r * step, 2))
                       where tilt.Slope >= exact.Slope - 1e-12
                       orderby tilt.Slope, u, r
                       select tilt;
            foreach (var tilt in near)
            {
                if (Clearance(Over(mount, TiltRange.At(tilt, Play), wedged), wanted).Lower >= wanted)
                    return tilt;
            }
        }

        return exact;
    }

    /// <summary>The shank from the sheet's face to the knob at a tilt, as it is typed.</summary>
    private (double Metres, string Text) TypedOut(HandleMount mount, Tilt tilt, bool wedged)
    {
        var given = run.CockpitEnd!.Shank.Out!.Value;
        var length = square + (wedged ? Lift(tilt.Slope) : 0) - (0.5 * mount.Sheet);
        var limits = given.IsExact ? "" : given.Minus == given.Plus ? $" ± {say.Typed(given.Plus)}" : $" +{say.Typed(given.Plus)}/-{say.Typed(given.Minus)}";
        var text = say.Typed(length) + limits;
        return UnitText.TryRead<Length>(text, out var read, out var problem) ? (read.Nominal.Metres, text) : throw new InvalidOperationException($"\"{text}\": {problem}");
    }

    private static Run Leaning(Run run, Tilt tilt) =>
        run with { CockpitEnd = run.CockpitEnd! with { Tilt = new(new(Math.Atan(tilt.Up)), new(Math.Atan(tilt.Right))) } };

    private static string Degrees(double slope) => (Math.Atan(slope) / Degree).ToString("0.##", CultureInfo.InvariantCulture) is var text && text == "-0" ? "0" : text;

    /// <summary>"6.3° (2.0° down, 6.0° to the right)".</summary>
    private string Words(Tilt tilt)
    {
        var parts = new List<string>();
        if (Math.Abs(tilt.Up) > 1e-6)
            parts.Add($"{say.Angle(Math.Abs(Math.Atan(tilt.Up)))} {(tilt.Up > 0 ? "up" : "down")}");
        if (Math.Abs(tilt.Right) > 1e-6)
            parts.Add($"{say.Angle(Math.Abs(Math.Atan(tilt.Right)))} to the {(tilt.Right > 0 ? "right" : "left")}");
        return parts.Count == 1 ? parts[0] : $"{say.Angle(tilt.Total, Rounding.Up)} ({string.Join(", ", parts)})";
    }

    /// <summary>As it is typed: a plain hyphen, whatever is shown.</summary>
    private string Plain(double metres) => say.Typed(metres).Replace('−', '-');

    private string SentenceOf(MountAnswer answer)
    {
        var found = answer.Wedged ?? answer.Straight;
        var none = say.Angle(found.NoneBelow, Rounding.Down);
        if (answer.Best is { } best)
        {
            // A quick look leaves a gap between what it found and what it refused: that is not to be read as a bound.
            if (answer is { Tilt: { } tilt } && tilt != Tilt.None && finest > Fine)
                return $"{best.Text} A quick look: whether a tilt between {none} and {say.Angle(tilt.Total, Rounding.Up)} does too, \"solve mount\" decides.";
            return answer.Tilt == Tilt.None ? best.Text
                : $"{best.Text} No tilt below {none} keeps {say.Length(wanted)}{(answer.Wedged is null ? "" : " with wedges, and none up to " + say.Angle(NoWedge) + " without")}: proved.";
        }

        return found.Ended == TiltEnd.NoneInRange
            ? $"No tilt within {say.Angle(Published.Get("mount/most").Value)} keeps {say.Length(wanted)}: proved."
            : $"Can't tell yet which tilt keeps {say.Length(wanted)}; none below {none} does.";
    }

    private IEnumerable<Finding> FindingsOf(MountAnswer answer)
    {
        if (answer.Tilt is not { } tilt || tilt == Tilt.None)
            yield break;
        foreach (var finding in MountRules.OfLean(tilt.Total, MountLimits.Usual, say, MadeParts.IsPinned(run)))
            yield return finding;
        if (MadeParts.Wedges(Leaning(run, tilt)).Pair is { } pair)
        {
            foreach (var finding in MakeRules.Find(pair, say))
                yield return finding;
        }

        // The knob's back, leaning toward the sheet: the lowest point of its rim over the face.
        var gap = (answer.Length * Math.Cos(tilt.Total)) - (answer.Handle.Knob.Reach * Math.Sin(tilt.Total)) - (0.5 * answer.Handle.Sheet);
        if (gap <= 0)
        {
            yield return new()
            {
                Rule = MountRules.Lean,
                Verdict = Verdict.Fail,
                Sentence = $"Leaning so, the pushed-in knob meets its own sheet by {say.Length(-gap, Rounding.Up)}: a longer shank is needed.",
                Sources = [new("project", "docs/theory/mount.md", Evidence.Derived)],
            };
        }
    }

    /// <summary>Where neither a tilt nor anything else that is tried cures it: what was tried, and what is left to move.</summary>
    internal string NothingCures(MountAnswer answer) => answer.Best is not null || answer.Instead.Count > 0 || handle is null ? ""
        : $"Tried too, and none was found to cure it: {(run.CockpitEnd?.Sheet?.Curve is not null ? "" : $"another place of the hole within {say.Length(FarthestHole)}{(run.CockpitEnd?.Sheet?.Outline.Count > 0 ? " on the sheet" : "")}, ")}a shorter shank, a smaller {(handle.Knob.Form == KnobForm.T ? "handle" : "knob")}. {(run.CockpitEnd?.Sheet?.Curve is not null ? "Another place of the hole was not tried: the sheet is curved, and a hole elsewhere points elsewhere. " : "")}What is left: a shorter stroke, another place for the sheet, or stops that keep the other part away.";

    private IEnumerable<string> NotesOf(MountAnswer answer, bool wedged)
    {
        if (NothingCures(answer) is { Length: > 0 } nothing)
            yield return nothing;
        var cells = answer.Straight.Cells + (answer.Wedged?.Cells ?? 0);
        yield return cells == 1 ? "One range of tilts looked at." : $"{cells} ranges of tilts looked at.";
        yield return $"Each mount is proved with {say.Angle(Published.Get("mount/play").Value)} of error each way.";
        if (wedged)
            yield return $"Wedges of {say.Length(2 * wedge)} across{(isWedgeKnown ? "" : " (taken as three times the shank: measure the nut)")}, {say.Length(thin)} at the thin edge, lift the knob; that is counted.";
        foreach (var left in notRead)
            yield return char.ToUpperInvariant(left[0]) + left[1..] + ".";
    }

    /// <summary>Another place for the hole, a shorter shank, a smaller knob: tried one after the other until one clears.</summary>
    private IEnumerable<MountChange> Others(HandleMount mount)
    {
        var inches = say.LengthUnitName == "in";
        var straight = mount with { Tilt = Tilt.None, Length = square };
        if (NearestHole(straight, inches ? Length.MetresPerInch / 8 : 0.003) is { } hole)
            yield return hole;
        var step = inches ? Length.MetresPerInch / 16 : 0.001;
        TrialEdit[] upright = Upright(mount);

        // The knob must not sit on its bushing.
        for (var less = step; square - (0.5 * mount.Sheet) - less >= 2 * step; less += step)
        {
            if (Tried(straight with { Length = square - less }) is not { } bounds)
                continue;
            var outward = say.Typed(square - (0.5 * mount.Sheet) - less);
            yield return new($"Shorten the shank to {outward} in front of the sheet: {Proved(bounds)}", [.. upright.Where(e => e.Path != "cockpitEnd.shank.out"), new("cockpitEnd.shank.out", outward)], bounds);
            break;
        }

        var knob = mount.Knob;
        var isT = knob.Form == KnobForm.T;
        var least = isT ? 4 * knob.Radius : Published.Get("mount/least-knob").Value;
        var size = isT ? knob.Width : 2 * knob.Radius;
        for (var smaller = size - (2 * step); smaller >= least; smaller -= 2 * step)
        {
            if (Tried(straight with { Knob = isT ? knob with { Width = smaller } : knob with { Radius = 0.5 * smaller } }) is not { } bounds)
                continue;
            var text = say.Typed(smaller);
            yield return new(
                $"Take a {(isT ? "handle" : "knob")} of {text}: {Proved(bounds)}",
                [.. upright, new(isT ? "cockpitEnd.knob.width" : "cockpitEnd.knob.diameter", text)],
                bounds);
            break;
        }
    }

    /// <summary>What it takes to stand a leaning handle square again: its wedges come out.</summary>
    private TrialEdit[] Upright(HandleMount mount) => mount.Tilt == Tilt.None
        ? []
        :
        [
            new("cockpitEnd.tilt", "{ \"up\": \"0 deg\", \"right\": \"0 deg\" }", IsJson: true),
            .. square == mount.Length ? Array.Empty<TrialEdit>() : [new("cockpitEnd.shank.out", TypedOut(mount, Tilt.None, wedged: false).Text)],
        ];

    private ClearanceBounds? Tried(HandleMount changed) =>
        Clearance(changed.Body, wanted) is { } asked && asked.Lower >= wanted ? Clearance(changed.Body, double.PositiveInfinity) : null;

    /// <summary>The nearest place on the sheet where the square handle clears, with the proof of what is nearer.</summary>
    private MountChange? NearestHole(HandleMount straight, double step)
    {
        var frame = straight.Frame;
        var sheet = run.CockpitEnd!.Sheet!;
        // On a curved sheet a hole elsewhere points elsewhere: a place tried as on a flat one would prove nothing.
        if (sheet.Curve is not null)
            return null;
        var (corners, face) = (Corners(sheet, frame), 0.5 * straight.Sheet * frame.Normal);
        Vector3 At(Place p) => frame.Foot + (p.Up * frame.Up) + (p.Right * frame.Right);
        HandleMount Moved(Place p) => straight with { Frame = frame with { Foot = At(p) } };
        var found = PlaceSolver.Find(
            new(p => Clearance(Moved(p).Body, wanted), p => Within(corners, p) - wedge, wanted, FarthestHole, step, finest > Fine ? 300 : 3000), effort.Cancel);
        if (found.Place is not { } place || Tried(Moved(place)) is not { } bounds)
            return null;
        var words = new List<string>();
        if (place.Up != 0)
            words.Add($"{Typed(place.Up)} {(place.Up > 0 ? "up" : "down")}");
        if (place.Right != 0)
            words.Add($"{Typed(place.Right)} to the {(place.Right > 0 ? "right" : "left")}");
        var at = At(place) + face;
        List<TrialEdit> edits = [new("cockpitEnd.hole", $"[\"{Plain(at.X)}\", \"{Plain(at.Y)}\", \"{Plain(at.Z)}\"]", IsJson: true), .. Upright(handle!)];
        var nearer = found.NoneNearer >= step ? $" No place nearer than {say.Length(found.NoneNearer, Rounding.Down)} keeps {say.Length(wanted)}." : "";
        return new($"Move the hole {string.Join(" and ", words)} in the sheet, shank square: {Proved(bounds)}{nearer}", edits.ToEquatableList(), bounds);
    }

    /// <summary>In whole steps, as a rule has them.</summary>
    private string Typed(double metres) => say.Typed(Math.Abs(metres));

    private string Proved(ClearanceBounds bounds) => $"it stays at least {say.Length(bounds.Lower, Rounding.Down)} from everything, proved.";

    /// <summary>The sheet's outline about the foot.</summary>
    private static Place[] Corners(Sheet sheet, SheetFrame frame) =>
        [.. sheet.Outline.Select(p => HandleMount.Vector(p) - frame.Foot).Select(v => new Place(Vector3.Dot(v, frame.Up), Vector3.Dot(v, frame.Right)))];

    /// <summary>How far a place is from the outline: above zero inside, below outside. Without an outline every place is inside.</summary>
    private static double Within(Place[] corners, Place place)
    {
        if (corners.Length == 0)
            return double.PositiveInfinity;
        var (inside, least) = (false, double.PositiveInfinity);
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            Place a = new(corners[i].Up - place.Up, corners[i].Right - place.Right), b = new(corners[j].Up - place.Up, corners[j].Right - place.Right);
            if (a.Up > 0 != b.Up > 0 && 0 < ((b.Right - a.Right) * -a.Up / (b.Up - a.Up)) + a.Right)
                inside = !inside;
            double du = b.Up - a.Up, dr = b.Right - a.Right, length2 = (du * du) + (dr * dr);
            var t = length2 > 0 ? Math.Clamp(-((a.Up * du) + (a.Right * dr)) / length2, 0, 1) : 0;
            least = Math.Min(least, new Place(a.Up + (t * du), a.Right + (t * dr)).Away);
        }

        return inside ? least : -least;
    }
}
