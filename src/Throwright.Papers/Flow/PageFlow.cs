using Throwright.Formats.Drawing;
using Throwright.Formats.Pdf;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;
using Throwright.Shapes;

namespace Throwright.Papers.Flow;

/// <summary>One cell of a table: words, or something to be filled in by hand.</summary>
public sealed record Cell(string Text, bool Bold = false)
{
    /// <summary>An empty box to write a reading in.</summary>
    public static Cell Box { get; } = new("\u0001box");

    /// <summary>A square to tick.</summary>
    public static Cell Tick { get; } = new("\u0001tick");

    internal bool IsForHand => ReferenceEquals(this, Box) || ReferenceEquals(this, Tick);

    public static implicit operator Cell(string text) => new(text);
}

/// <summary>A column of a table: its head, and its share of the width.</summary>
public sealed record Column(string Head, double Share);

/// <summary>Sets text, tables and drawings one below the other on as many pages as they need. Everything in mm.</summary>
/// <remarks>
/// Widths are measured with a face that is wider than the one printed, so a line never leaves its box. Nothing is cut off: a
/// row that does not fit starts a new page under the repeated head of its table.
/// </remarks>
public sealed class PageFlow(ShopPaper paper, string left, string foot)
{
    public const double Body = 3.2, Note = 2.7, Head = 4.6, Title = 7;

    private const double Margin = 16, HeadRoom = 12, FootRoom = 15, Leading = 1.38;

    private static readonly Style Heavy = Style.Line(Tones.Ink, 0.6), Thin = Style.Line(Tones.Ink, 0.3), Hair = Style.Line(Tones.Line, 0.3);

    private readonly List<(Sketch Sketch, string? Bookmark, string Title, Picture? Whole)> pages = [];
    private string title = "";
    private double y;

    /// <summary>Room between the margins.</summary>
    public double Width => paper.Width - (2 * Margin);

    /// <summary>The same in px of 1/96 in, for drawings.</summary>
    public double Pixels => Width / Lines.Px;

    private Sketch Sketch => pages[^1].Sketch;

    private double Bottom => paper.Height - FootRoom - 3;

    private double Room => Bottom - y;

    /// <summary>Begins a page with its head.</summary>
    public void NewPage(string name, string? bookmark)
    {
        title = name;
        pages.Add((new(), bookmark, name, null));
        var sketch = Sketch;
        sketch.Layer = "head";
        sketch.Text(Margin, 12, Head, TextMeasure.Fit(name, Head, 0.58 * Width, true), Tones.Ink, bold: true);
        sketch.Text(paper.Width - Margin, 12, Body, TextMeasure.Fit(left, Body, 0.4 * Width), Tones.Ink2, anchor: TextAnchor.End);
        sketch.Line(Margin, 14.5, paper.Width - Margin, 14.5, Heavy);
        sketch.Layer = "text";
        y = Margin + HeadRoom - 6;
    }

    public void Gap(double mm) => y += mm;

    /// <summary>Starts a new page unless so much room is left.</summary>
    public void Need(double mm)
    {
        if (mm > Room)
            NewPage(title, null);
    }

    public void Heading(string text, double size = Head)
    {
        Need((2.2 * size) + 10);
        y += 0.5 * size;
        foreach (var line in Broken(text, size, Width, true))
        {
            y += size * 1.15;
            Sketch.Text(Margin, y, size, line, Tones.Ink, bold: true);
        }

        y += 0.45 * size;
    }

    public void Text(string text, double size = Body, bool bold = false)
    {
        foreach (var line in Broken(text, size, Width, bold))
        {
            Need(size * Leading);
            y += size * Leading;
            Sketch.Text(Margin, y - (0.3 * size), size, line, Tones.Ink, bold);
        }

        y += 0.5 * size;
    }

    /// <summary>A name as it is engraved, with how it is worked beside it.</summary>
    public void Placard(string name, string how, string right)
    {
        const double size = 6;
        Need(14);
        var text = TextMeasure.Fit(name, size, 0.45 * Width, true);
        var width = TextMeasure.Width(text, size, true, 0.09) + 7;
        Sketch.Rectangle(new(Margin, y + 1, Margin + width, y + 11), Heavy);
        Sketch.Text(Margin + 3.5, y + 8.2, size, text, Tones.Ink, bold: true, tracking: 0.09);
        Sketch.Text(Margin + width + 4, y + 8, 4, TextMeasure.Fit(how, 4, 0.3 * Width), Tones.Ink);
        Sketch.Text(paper.Width - Margin, y + 8, Body, TextMeasure.Fit(right, Body, Math.Max(10, Width - width - 8 - TextMeasure.Width(TextMeasure.Fit(how, 4, 0.3 * Width), 4))), Tones.Ink2, anchor: TextAnchor.End);
        y += 14;
    }

    /// <summary>WARNING, CAUTION or NOTE in a frame, before the step it belongs to.</summary>
    public void Boxed(string rank, string text)
    {
        var lines = Broken(text, Body, Width - 8);
        var height = 8.5 + (lines.Count * Body * Leading);
        Need(height + 3);
        Sketch.Rectangle(new(Margin, y, Margin + Width, y + height), Heavy);
        Sketch.Text(Margin + (0.5 * Width), y + 5, Body, rank, Tones.Ink, bold: true, anchor: TextAnchor.Middle, tracking: 0.12);
        for (var i = 0; i < lines.Count; i++)
            Sketch.Text(Margin + 4, y + 5 + ((i + 1) * Body * Leading), Body, lines[i], Tones.Ink);
        y += height + 3;
    }

    public void Table(IReadOnlyList<Column> columns, IEnumerable<IReadOnlyList<Cell>> rows, double size = Body)
    {
        var total = columns.Sum(c => c.Share);
        var lefts = new List<double>();
        var x = Margin;
        foreach (var column in columns)
        {
            lefts.Add(x);
            x += column.Share / total * Width;
        }

        double Room2(int c) => ((c + 1 < lefts.Count ? lefts[c + 1] : Margin + Width) - lefts[c]) - 2.5;
        var leading = size * Leading;

        void Heads()
        {
            var high = columns.Select((c, i) => Broken(c.Head, Note, Room2(i), true)).ToList();
            y += (high.Max(h => h.Count) * Note * Leading) + 0.5;
            for (var c = 0; c < columns.Count; c++)
            {
                for (var i = 0; i < high[c].Count; i++)
                    Sketch.Text(lefts[c], y - ((high[c].Count - 1 - i) * Note * Leading) - 0.8, Note, high[c][i], Tones.Ink, bold: true);
            }

            y += 0.7;
            Sketch.Line(Margin, y, Margin + Width, y, Heavy);
        }

        Need(18);
        Heads();
        foreach (var row in rows)
        {
            var lines = row.Select((cell, c) => cell.IsForHand ? [] : Broken(cell.Text, size, Room2(c), cell.Bold)).ToList();
            var done = 0;
            var all = Math.Max(1, lines.Max(l => l.Count));
            while (done < all)
            {
                var hand = done == 0 && row.Any(c => c.IsForHand);
                var most = (int)Math.Floor((Room - 2.6) / leading);
                // A row is kept whole where a page can hold it.
                var isSplit = most < all - done && done == 0 && all * leading < paper.Height - 70;
                if (most < 1 || isSplit || (hand && Room < 9))
                {
                    NewPage(title, null);
                    Heads();
                    most = (int)((Room - 2.6) / leading);
                }

                var now = Math.Min(most, all - done);
                var height = Math.Max((now * leading) + 2.2, hand ? 8.2 : 0);
                for (var c = 0; c < row.Count; c++)
                {
                    for (var i = 0; i < now && done + i < lines[c].Count; i++)
                        Sketch.Text(lefts[c], y + 0.6 + ((i + 0.78) * leading), size, lines[c][done + i], Tones.Ink, row[c].Bold);
                    if (done > 0 || !row[c].IsForHand)
                        continue;
                    if (ReferenceEquals(row[c], Cell.Box))
                        Sketch.Rectangle(new(lefts[c], y + 1.1, lefts[c] + Math.Min(Room2(c), 26), y + 7.1), Thin);
                    else
                        Sketch.Rectangle(new(lefts[c], y + 1.9, lefts[c] + 4.3, y + 6.2), Thin);
                }

                y += height;
                done += now;
            }

            Sketch.Line(Margin, y, Margin + Width, y, Hair);
        }

        y += 3;
    }

    /// <summary>A drawing at its own size, from the left margin.</summary>
    public void Figure(Picture picture, string caption = "")
    {
        ArgumentNullException.ThrowIfNull(picture);
        Need(Math.Min(picture.Height + (caption.Length > 0 ? 8 : 3), paper.Height - 50));
        Sketch.Add(picture, Margin, y + 1);
        Sketch.Layer = "text";
        y += picture.Height + 2;
        if (caption.Length > 0)
            Text(caption, Note);
    }

    /// <summary>Words with a line to write on behind them, as far as the margin.</summary>
    public void Blank(string label, int lines = 1)
    {
        for (var i = 0; i < lines; i++)
        {
            Need(9);
            y += 8;
            var start = Margin;
            if (i == 0)
                start = Sketch.Text(Margin, y - 1, Body, TextMeasure.Fit(label, Body, 0.7 * Width), Tones.Ink).Right + 2;
            Sketch.Line(start, y, Margin + Width, y, Thin);
        }

        y += 1;
    }

    /// <summary>Lines no wider than the room. A word that is too long is broken, never cut off.</summary>
    private static IReadOnlyList<string> Broken(string text, double size, double room, bool bold = false)
    {
        if (!text.Split(' ').Any(w => TextMeasure.Width(w, size, bold) > room))
            return TextMeasure.Wrap(text, size, room, bold);
        var words = new List<string>();
        foreach (var word in text.Split(' '))
        {
            var part = "";
            foreach (var rune in word.EnumerateRunes())
            {
                if (part.Length > 0 && TextMeasure.Width(part + rune, size, bold) > room)
                {
                    words.Add(part);
                    part = "";
                }

                part += rune.ToString();
            }

            words.Add(part);
        }

        return TextMeasure.Wrap(string.Join(' ', words), size, room, bold);
    }

    /// <summary>Lines to sign on, two beside each other.</summary>
    public void Signatures(params ReadOnlySpan<string> names)
    {
        for (var i = 0; i < names.Length; i += 2)
        {
            Need(20);
            y += 13;
            for (var k = i; k < Math.Min(i + 2, names.Length); k++)
            {
                var half = 0.5 * (Width - 6);
                var start = Margin + ((k - i) * (half + 6));
                Sketch.Line(start, y, start + half, y, Thin);
                Sketch.Text(start, y + 4, Note, TextMeasure.Fit(names[k], Note, 0.55 * half), Tones.Ink);
                Sketch.Text(start + half, y + 4, Note, "certificate, date", Tones.Ink, anchor: TextAnchor.End);
            }

            y += 7;
        }
    }

    /// <summary>A drawing that is a page of its own size, upright or across, with its own frame and title.</summary>
    public void Sheet(Picture drawing, string name)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var sketch = new Sketch();
        sketch.Add(drawing, 0, 0);
        pages.Add((sketch, null, name, drawing));
        // What follows begins a page.
        title = name;
        y = Bottom;
    }

    /// <summary>The pages, each with its number and the line at its foot.</summary>
    public EquatableList<PdfPage> Finish(string name)
    {
        for (var i = 0; i < pages.Count; i++)
        {
            var sketch = pages[i].Sketch;
            sketch.Layer = "foot";
            if (pages[i].Whole is { } whole)
            {
                sketch.Text(whole.Width - 10, whole.Height - 3.2, 2.4, $"{TextMeasure.Fit(left, 2.4, 0.25 * Width)}. Not an approval. page {i + 1} of {pages.Count}", Tones.Ink, anchor: TextAnchor.End);
                continue;
            }

            sketch.Line(Margin, paper.Height - FootRoom, paper.Width - Margin, paper.Height - FootRoom, Thin);
            var lines = Broken(foot, Note, Width - 34).Take(2).ToList();
            for (var k = 0; k < lines.Count; k++)
                sketch.Text(Margin, paper.Height - FootRoom + 4 + (k * Note * Leading), Note, lines[k], Tones.Ink);
            sketch.Text(paper.Width - Margin, paper.Height - FootRoom + 4, Note, $"page {i + 1} of {pages.Count}", Tones.Ink, anchor: TextAnchor.End);
        }

        return pages.Select(p => new PdfPage(p.Sketch.ToPicture(p.Whole?.Width ?? paper.Width, p.Whole?.Height ?? paper.Height, $"{name}: {p.Title}", p.Title), p.Bookmark)).ToEquatableList();
    }
}
