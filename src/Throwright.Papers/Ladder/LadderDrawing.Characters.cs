using Throwright.Engine.Findings;
using Throwright.Formats.Characters;
using Throwright.Formats.Drawing;
using Throwright.Papers.Marks;
using Throwright.Shapes.Quantities;

namespace Throwright.Papers.Ladder;

/// <summary>How the ladder is typed.</summary>
public sealed record CharacterOptions
{
    /// <summary>Columns of the terminal.</summary>
    public int Width { get; init; } = 100;

    /// <summary>Columns for an inch of travel, where the width allows it.</summary>
    public double ColumnsPerInch { get; init; } = 18;

    /// <summary>ASCII only, for fonts without block characters.</summary>
    public bool Plain { get; init; }
}

public static partial class LadderDrawing
{
    /// <summary>The ladder in characters. Tones go with the spans; the characters alone say everything.</summary>
    public static CharacterBlock Characters(LadderLayout layout, CharacterOptions? options = null) =>
        new CharacterFrame(layout, options ?? new()).Draw();

    /// <summary>Columns of a ladder in characters; the curves below it use the same.</summary>
    internal sealed class CharacterFrame
    {
        private static readonly double[] InchScales = [72, 36, 18, 12, 9, 6, 4, 3, 2, 1, 0.5, 0.25, 0.1];

        private readonly LadderLayout layout;
        private readonly ShownFigures shown;
        private readonly LadderBody? body;
        private readonly CharacterCanvas canvas;
        private readonly bool aside;
        private readonly double scale;

        public CharacterFrame(LadderLayout layout, CharacterOptions options)
        {
            this.layout = layout;
            shown = new(layout.Display);
            body = layout.Body;
            Width = Math.Max(options.Width, 40);
            Signs = options.Plain ? CharacterSigns.Plain : CharacterSigns.Full;
            Stroke = layout.Stroke ?? 0.0762;
            aside = Width >= 84;

            // Text to the left of the sheet: the lanes' names, and how far the push stop lies beyond it.
            var before = body?.KnobIn is { } knobIn && PlateText(knobIn) is { Length: > 0 } plate ? CharacterCanvas.CellsOf(plate) + 2 : 0;
            var after = aside && body is not null ? 3 + Math.Max(Math.Max(CharacterCanvas.CellsOf(PlateText(body.KnobOut)), CharacterCanvas.CellsOf(OutText(body))), CharacterCanvas.CellsOf(WorstText(body))) : 4;
            double low = 0, high = Stroke;
            if (body is not null)
                (low, high) = (Math.Min(0, body.PushStop.Nominal), Math.Max(Stroke, body.PullStop.Nominal));
            var columns = Width - Math.Max(11, before) - after - 2;
            scale = ColumnsPerInch(options.ColumnsPerInch, Stroke / 0.0254, (high - low) / 0.0254, columns) / 0.0254;
            Zero = Math.Max(11, before + 1) + (int)Math.Ceiling(-low * scale);
            canvas = new(Width, Tones.Ink);
        }

        /// <summary>As asked for; less if that does not fit; more if the stroke would be too short to read.</summary>
        private static double ColumnsPerInch(double asked, double stroke, double extent, int columns)
        {
            var tooShort = stroke * asked < 24;
            return InchScales.Append(asked).OrderDescending()
                .Where(s => s <= asked || (tooShort && stroke * s <= 60))
                .FirstOrDefault(s => extent * s <= columns, InchScales[^1]);
        }

        public int Width { get; }

        public double Stroke { get; }

        /// <summary>Column of the first cell of travel.</summary>
        public int Zero { get; }

        /// <summary>Columns per metre.</summary>
        public double Scale => scale;

        public CharacterSigns Signs { get; }

        public int At(double place) => Zero + (int)Math.Round(place * scale, MidpointRounding.AwayFromZero);

        public CharacterBlock Draw()
        {
            DrawRule();
            if (body is null)
                DrawPlace();
            else
                DrawBody(body);
            return canvas.ToBlock();
        }

        private void Put(int row, int column, string text, Tone tone, bool bold = false) => canvas.Put(row, column, Signs.Fit(text), tone, bold);

        private void DrawRule()
        {
            var inch = shown.Inches;
            var unit = inch ? 0.0254 : 0.001;
            double[] steps = inch ? [1.0 / 64, 1.0 / 32, 1.0 / 16, 1.0 / 8, 1.0 / 4, 0.5, 1, 2, 5, 10, 20, 50] : [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];
            var step = steps.FirstOrDefault(s => s * unit * scale >= (inch ? 8 : 6), steps[^1]);
            Put(1, Zero - 1, Signs.Sheet, Tones.Ink);
            var end = At(Stroke);
            for (var x = Zero; x <= end; x++)
                Put(1, x, Signs.Rule, Tones.Ink);
            var last = Zero - 1;
            for (var i = 0; i * step * unit <= Stroke + 1e-9; i++)
            {
                var (x, value) = (At(i * step * unit), i * step);
                Put(1, x, x == Zero ? Signs.RuleStart : x == end ? Signs.RuleEnd : value % 1 == 0 && inch ? Signs.RuleWhole : Signs.RuleTick, Tones.Ink);
                var figure = inch ? FigureText.FractionOfInch(new(value * unit))![..^3] : FigureText.Plain(value, value % 1 == 0 ? 0 : 1);
                if (x <= last || x + figure.Length > Width)
                    continue;
                Put(0, x, figure, Tones.Ink, value % 1 == 0);
                last = x + figure.Length;
            }

            Put(1, end, Signs.RuleEnd, Tones.Ink);
            Put(0, last + 1, shown.LengthUnitName, Tones.Ink2);
        }

        private void DrawBody(LadderBody b)
        {
            var stop = At(Stroke);
            for (var row = 2; row <= 5; row++)
            {
                Put(row, Zero - 1, Signs.Sheet, Tones.Ink);
                Put(row, stop, Signs.OutStop, Tones.Ink);
            }

            // Pull stop, above the pull lane.
            var (low, high) = Band(2, b.PullStop);
            var outHigh = high;
            PutBeside(2, layout.Labels.PullMeans, low, high, stop, before: true);
            if (b.KnobOut.CanBeOver)
                Put(2, Math.Max(stop, high) + 1, Signs.Over, Tones.AmberText, true);
            Lane(3, "pull " + Signs.Out, b.Pull, b);
            Lane(4, "push " + Signs.In, b.Push, b);
            (low, high) = Band(5, b.PushStop);
            PutBeside(5, layout.Labels.PushMeans, low, high, stop, before: false);
            if (b.KnobIn.CanBeOver)
                Put(5, Math.Min(Zero - 1, low) - 1, Signs.Over, Tones.AmberText, true);
            if (PlateText(b.KnobIn) is { Length: > 0 } inPlate)
                Put(5, Math.Min(Zero - 1, low) - 2 - CharacterCanvas.CellsOf(inPlate), inPlate, PlateTone(b.KnobIn), true);
            Tip(6, b);

            var below = new List<(string Text, Tone Tone, bool Bold)> { ($"cushion, knob in: {shown.Left(b.KnobIn.Nominal)}, {Worst(b.KnobIn)}", Tones.Ink, false) };
            if (aside)
            {
                var column = Math.Max(stop + 2, Math.Max(At(b.PullStop.Nominal) + 2, outHigh + (b.KnobOut.CanBeOver ? 3 : 1)));
                Put(2, column, PlateText(b.KnobOut), PlateTone(b.KnobOut), true);
                Put(3, column, OutText(b), Tones.Ink);
                Put(4, column, WorstText(b), Tones.Ink2);
            }
            else
            {
                below.Add(($"cushion, knob out: {shown.Left(b.KnobOut.Nominal)}, {Worst(b.KnobOut)}", Tones.Ink, false));
                if (PlateText(b.KnobOut) is { Length: > 0 } plate)
                    below.Add((plate, PlateTone(b.KnobOut), true));
            }

            below.Add(($"tip: {shown.Left(b.TipCushion.Nominal)}, {Worst(b.TipCushion)}{(b.TipGoverns ? ", stops first" : "")}", Tones.Ink, b.TipGoverns));
            if (PlateText(b.TipCushion) is { Length: > 0 } tipPlate)
                below.Add(("at the tip " + tipPlate, PlateTone(b.TipCushion), true));
            below.Add(($"throw {shown.Length(b.Throw)}", Tones.Ink, false));
            if (b.LostMotion > 0)
                below.Add(($"lost {Signs.Lost} {shown.Length(b.LostMotion)}", Tones.Ink, false));
            if (b.Stretch > 0)
                below.Add(($"stretch {Signs.Stretch} {shown.Length(b.Stretch)}", Tones.Ink, false));
            below.Add(($"wanted at each end {shown.Known(b.Wanted)}", Tones.Ink2, false));
            var (row2, x) = (7, 4);
            foreach (var (item, tone, bold) in below)
            {
                var cells = CharacterCanvas.CellsOf(item);
                if (x > 4 && x + cells > Width)
                    (row2, x) = (row2 + 1, 4);
                Put(row2, x, item, tone, bold);
                x += cells + 4;
            }

            DrawNotes(row2 + 1);
        }

        private void DrawNotes(int row)
        {
            foreach (var part in layout.NotCounted)
            {
                foreach (var line in CharacterCanvas.Wrap("not counted: " + part, Width - 4, Signs.Dots))
                    Put(row++, 4, line, Tones.Ink, true);
            }
        }

        private void DrawPlace()
        {
            var stop = At(Stroke);
            for (var row = 2; row <= 5; row++)
            {
                Put(row, Zero - 1, Signs.Sheet, Tones.Ink);
                if (layout.Stroke is not null)
                    Put(row, stop, Signs.OutStop, Tones.Ink);
            }

            foreach (var (row, name) in ((int, string)[])[(3, "pull " + Signs.Out), (4, "push " + Signs.In)])
            {
                Put(row, 2, name, Tones.Ink);
                for (var x = Zero; x < stop; x++)
                    Put(row, x, (x - Zero) % 2 == 0 ? Signs.Unknown : " ", Tones.Blue);
            }

            var y = 6;
            foreach (var need in layout.Needs)
            {
                foreach (var line in CharacterCanvas.Wrap($"{GapMark.Word(layout.Without)}: {need}", Width - 4, Signs.Dots))
                    Put(y++, 4, line, Tones.Blue, true);
            }

            DrawNotes(y);
        }

        private void Lane(int row, string name, LadderLane lane, LadderBody b)
        {
            Put(row, 2, name, Tones.Ink);
            foreach (var cushion in (LadderCushion[])[b.KnobIn, b.KnobOut])
            {
                if (!(cushion.Least > 0))
                    continue;
                int a = At(cushion.Limit), z = At(cushion.Limit + (cushion.Away * Math.Min(cushion.Least.Value, cushion.Nominal)));
                for (var x = Math.Min(a, z); x < Math.Max(a, z); x++)
                    Put(row, x, " ", Tones.ClearWash);
            }

            var stop = At(Stroke);
            foreach (var (part, from, to) in Cells(lane))
            {
                if (part == LanePart.Cushion)
                    continue;
                var sign = part switch { LanePart.LostMotion => Signs.Lost, LanePart.Stretch => Signs.Stretch, _ => Signs.Throw };
                for (var x = from; x < to; x++)
                {
                    var beyond = x < Zero || x >= stop;

                    // The stop keeps its own cell: the bar is seen on both sides of it.
                    if (x == Zero - 1 || x == stop)
                        Put(row, x, Signs.StopInBar, Tones.Ink, true);
                    else
                        Put(row, x, sign, beyond ? Tones.AmberText : part == LanePart.Throw ? Tones.Throw : Tones.Ink);
                }

                // A bar that ends in the stop's own cell, or before it by rounding, still has to be seen beyond it.
                if (to > stop && to <= stop + 1)
                    Put(row, stop + 1, sign, Tones.AmberText);
                if (from < Zero && from >= Zero - 1)
                    Put(row, Zero - 2, sign, Tones.AmberText);
            }
        }

        /// <summary>Cells of each segment; none narrower than one, at the cost of the throw.</summary>
        private List<(LanePart Part, int From, int To)> Cells(LadderLane lane)
        {
            var ends = lane.Segments.Select(s => At(s.To)).ToArray();
            var start = body!.KnobIn.IsOver ? Math.Min(At(lane.From), Zero - 1) : Math.Max(At(lane.From), Zero);
            if (body.KnobOut.IsOver)
                ends[^1] = Math.Max(ends[^1], At(Stroke) + 1);
            var sizes = ends.Select((e, i) => Math.Max(0, e - (i == 0 ? start : ends[i - 1]))).ToArray();
            var total = sizes.Sum();
            for (var i = 0; i < sizes.Length; i++)
                sizes[i] = Math.Max(1, sizes[i]);
            var excess = sizes.Sum() - total;
            foreach (var giver in (LanePart[])[LanePart.Throw, LanePart.Stretch, LanePart.LostMotion, LanePart.Cushion])
            {
                // The throw gives first but keeps a cell; only a ladder of very few columns takes from the others.
                for (var i = 0; i < sizes.Length && excess > 0; i++)
                {
                    if (lane.Segments[i].Part != giver)
                        continue;
                    var given = Math.Min(excess, sizes[i] - (giver == LanePart.Throw ? 1 : 0));
                    sizes[i] -= given;
                    excess -= given;
                }
            }

            var cells = new List<(LanePart, int, int)>();
            var at = start;
            for (var i = 0; i < sizes.Length; i++)
            {
                cells.Add((lane.Segments[i].Part, at, at + sizes[i]));
                at += sizes[i];
            }

            return cells;
        }

        /// <returns>First and last cell.</returns>
        private (int Low, int High) Band(int row, LadderBand band)
        {
            int nominal = At(band.Nominal), low = band.Least is { } l ? Math.Min(nominal, At(l)) : nominal - 3, high = band.Most is { } m ? Math.Max(nominal, At(m)) : nominal + 3;
            for (var x = low + 1; x < high; x++)
            {
                var thick = band is { Low95: { } low95, High95: { } high95 } && x >= At(low95) && x <= At(high95);
                Put(row, x, thick ? Signs.Band95 : Signs.BandLine, Tones.Ink);
            }

            if (low < nominal)
                Put(row, low, band.Least is null ? Signs.BandOpenLow : Signs.BandLow, Tones.Ink);
            if (high > nominal)
                Put(row, high, band.Most is null ? Signs.BandOpenHigh : Signs.BandHigh, Tones.Ink);
            Put(row, nominal, Signs.Nominal, Tones.Ink, true);
            return (low, high);
        }

        /// <summary>"flap shut" beside a band, without "flap" where it is tight.</summary>
        private void PutBeside(int row, string means, int low, int high, int stop, bool before)
        {
            var (roomBefore, roomAfter) = (Math.Min(low, stop) - 2 - Zero, stop - high - 3);
            foreach (var text in (string[])[$"{layout.Labels.Device} {means}", means])
            {
                var cells = CharacterCanvas.CellsOf(text);
                var first = (before && roomBefore >= cells) || (roomAfter < cells && roomBefore >= roomAfter);
                if (Math.Max(roomBefore, roomAfter) < cells && text != means)
                    continue;
                var fitted = CharacterCanvas.Fit(text, Math.Max(0, first ? roomBefore : roomAfter), Signs.Dots);
                Put(row, first ? Math.Min(low, stop) - 1 - CharacterCanvas.CellsOf(fitted) : Math.Max(high, Zero - 1) + 2, fitted, Tones.Ink);
                return;
            }
        }

        private void Tip(int row, LadderBody b)
        {
            Put(row, 2, "tip", Tones.Ink);
            int from = At(b.Tip.From), to = At(b.PullStop.Nominal), tip = Math.Max(At(b.TipStop.Nominal), b.TipCushion.IsOver ? 0 : to + 1), last = Math.Min(Width - 7, Math.Max(At(Stroke), to) + 8);
            for (var x = from; x < to; x++)
                Put(row, x, Signs.Way, Tones.Ink);
            if (b.TipCushion.Least is > 0 and { } least)
            {
                for (var x = to + 1; x < Math.Min(At(b.PullStop.Nominal + Math.Min(least, b.TipCushion.Nominal)), last); x++)
                    Put(row, x, " ", Tones.ClearWash);
            }

            Put(row, Math.Min(from, to - 1), Signs.SwivelFrom, Tones.Ink);
            Put(row, to, Signs.Swivel, Tones.Ink, true);
            if (tip > last)
                Put(row, last, Signs.Break + Signs.Conduit, Tones.Ink);
            else if (b.TipCushion.IsOver)
                Put(row, to + 1, Signs.Over + " " + Signs.Conduit, Tones.AmberText, true);
            else
                Put(row, tip, Signs.Conduit + (b.TipCushion.CanBeOver ? Signs.Over : ""), b.TipCushion.CanBeOver ? Tones.AmberText : Tones.Ink);
        }

        private string OutText(LadderBody b) => $"cushion, knob out: {shown.Left(b.KnobOut.Nominal)}";

        private string WorstText(LadderBody b) => Worst(b.KnobOut);

        private string Worst(LadderCushion c) => c.Least is { } least ? $"worst {shown.BareLeft(least)}" : "worst not bounded";

        private string PlateText(LadderCushion c)
        {
            if (c.Plate is not { } verdict)
                return "";
            var word = verdict == Verdict.Fail ? "FAIL" : GapMark.Word(verdict);
            return c.CanBeOver ? $"{word} {shown.Length(-c.Least!.Value, Rounding.Up)} too far" : word;
        }

        private static Tone PlateTone(LadderCushion c) => c.Plate switch { Verdict.Fail => Tones.OnPlate, Verdict.Caution => Tones.AmberText, _ => Tones.Blue };
    }

    /// <summary>The characters a ladder is made of.</summary>
    internal sealed record CharacterSigns
    {
        public required string Sheet { get; init; }
        public required string OutStop { get; init; }
        public required string StopInBar { get; init; }
        public required string Rule { get; init; }
        public required string RuleStart { get; init; }
        public required string RuleEnd { get; init; }
        public required string RuleWhole { get; init; }
        public required string RuleTick { get; init; }
        public required string Throw { get; init; }
        public required string Lost { get; init; }
        public required string Stretch { get; init; }
        public required string Unknown { get; init; }
        public required string BandLine { get; init; }
        public required string Band95 { get; init; }
        public required string BandLow { get; init; }
        public required string BandHigh { get; init; }
        public required string BandOpenLow { get; init; }
        public required string BandOpenHigh { get; init; }
        public required string Nominal { get; init; }
        public required string Over { get; init; }
        public required string Out { get; init; }
        public required string In { get; init; }
        public required string Way { get; init; }
        public required string SwivelFrom { get; init; }
        public required string Swivel { get; init; }
        public required string Break { get; init; }
        public required string Conduit { get; init; }
        public required string Dots { get; init; }
        public required bool IsPlain { get; init; }

        public static CharacterSigns Full { get; } = new()
        {
            Sheet = "▐",
            OutStop = "▌",
            StopInBar = "┃",
            Rule = "─",
            RuleStart = "├",
            RuleEnd = "┤",
            RuleWhole = "┼",
            RuleTick = "┴",
            Throw = "█",
            Lost = "╱",
            Stretch = "░",
            Unknown = "╌",
            BandLine = "─",
            Band95 = "━",
            BandLow = "├",
            BandHigh = "┤",
            BandOpenLow = "◄",
            BandOpenHigh = "►",
            Nominal = "●",
            Over = "!",
            Out = "→",
            In = "←",
            Way = "─",
            SwivelFrom = "○",
            Swivel = "●",
            Break = "≈",
            Conduit = "▐══",
            Dots = "…",
            IsPlain = false,
        };

        public static CharacterSigns Plain { get; } = new()
        {
            Sheet = "|",
            OutStop = "|",
            StopInBar = "|",
            Rule = "-",
            RuleStart = "+",
            RuleEnd = "+",
            RuleWhole = "+",
            RuleTick = "+",
            Throw = "#",
            Lost = "/",
            Stretch = ":",
            Unknown = ".",
            BandLine = "-",
            Band95 = "=",
            BandLow = "[",
            BandHigh = "]",
            BandOpenLow = "<",
            BandOpenHigh = ">",
            Nominal = "o",
            Over = "!",
            Out = ">",
            In = "<",
            Way = "-",
            SwivelFrom = "o",
            Swivel = "O",
            Break = "~",
            Conduit = "[==",
            Dots = "...",
            IsPlain = true,
        };

        /// <summary>Plain: our own signs in ASCII. The builder's words stay as they are.</summary>
        public string Fit(string text) => IsPlain ? text.Replace('−', '-').Replace('\u00A0', ' ').Replace("→", ">", StringComparison.Ordinal).Replace("←", "<", StringComparison.Ordinal) : text.Replace('\u00A0', ' ');
    }
}
