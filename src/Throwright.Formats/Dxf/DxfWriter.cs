using System.Globalization;
using System.Text;
using Throwright.Formats.Drawing;

namespace Throwright.Formats.Dxf;

/// <summary>The edition of the DXF format.</summary>
public enum DxfEdition
{
    /// <summary>AC1009: no units, read by the simplest laser and router software.</summary>
    R12,

    /// <summary>AC1015: says millimetres.</summary>
    R2000,
}

/// <summary>Writes drawings as DXF at true size, one unit one millimetre, y up from the lower edge of the paper.</summary>
/// <remarks>
/// Lines and arcs that follow each other on one layer, end to start, become one polyline with bulges, so an outline to
/// be cut is one closed entity. Layers keep their names in capitals. Areas without a line are left out, but for
/// triangles (arrow heads). Tones are colours of paper and screen: here all is drawn in colour 7. ASCII, CR LF.
/// </remarks>
public static class DxfWriter
{
    /// <summary>Ends nearer than this are one point, mm.</summary>
    private const double Same = 1e-6;

    public static string Write(Picture picture, DxfEdition edition) => new Sheet(picture, edition == DxfEdition.R2000).Write();

    private sealed record Node(double X, double Y, double Bulge);

    private abstract record Entity(string Layer, Style Style);

    private sealed record Path(string Layer, Style Style, List<Node> Nodes, bool Closed) : Entity(Layer, Style);

    private sealed record Round(string Layer, Style Style, double X, double Y, double Radius, double From, double Sweep) : Entity(Layer, Style);

    private sealed record Head(string Layer, Style Style, List<Point> Corners) : Entity(Layer, Style);

    private sealed record Words(string Layer, double X, double Y, double Height, int Anchor, string Text) : Entity(Layer, new());

    private sealed class Sheet(Picture picture, bool isNew)
    {
        private static readonly int[] Weights = [0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

        private readonly StringBuilder text = new();
        private readonly List<string> dashes = [];
        private int handle = 0x20;

        /// <summary>Handle of the table that is being written.</summary>
        private string owner = "0";

        public string Write()
        {
            var entities = Joined([.. picture.Shapes.SelectMany(Entities)]);
            foreach (var entity in entities.Where(e => e.Style.Dash.Count > 0))
            {
                if (!dashes.Contains(Key(entity.Style)))
                    dashes.Add(Key(entity.Style));
            }

            Header();
            if (isNew)
            {
                Section("CLASSES");
                EndSection();
            }

            Tables([.. entities.Select(e => e.Layer).Distinct().Order(StringComparer.Ordinal)], entities);
            Blocks();
            Section("ENTITIES");
            foreach (var entity in entities)
                Put(entity);
            EndSection();
            if (isNew)
                Objects();
            Put(0, "EOF");
            return text.ToString().Replace("@SEED@", handle.ToString("X", CultureInfo.InvariantCulture), StringComparison.Ordinal);
        }

        private void Header()
        {
            Section("HEADER");
            Put(9, "$ACADVER");
            Put(1, isNew ? "AC1015" : "AC1009");
            if (isNew)
            {
                Put(9, "$HANDSEED");
                Put(5, "@SEED@");
                Put(9, "$INSUNITS");
                Put(70, 4);
                Put(9, "$MEASUREMENT");
                Put(70, 1);
            }

            Put(9, "$EXTMIN");
            PutPoint(10, 0, 0);
            Put(9, "$EXTMAX");
            PutPoint(10, picture.Width, picture.Height);
            EndSection();
        }

        private void Tables(List<string> layers, List<Entity> entities)
        {
            Section("TABLES");
            if (isNew)
                Table("VPORT", "8", []);
            List<Action> lines = [() => LineType("5", "BYBLOCK", []), () => LineType("6", "BYLAYER", []), () => LineType("7", "CONTINUOUS", [])];
            if (!isNew)
                lines.RemoveRange(0, 2);
            for (var i = 0; i < dashes.Count; i++)
            {
                var (name, dash) = ($"DASH{i + 1}", entities.First(e => Key(e.Style) == dashes[i]).Style.Dash);
                lines.Add(() => LineType(Next(), name, dash));
            }

            Table("LTYPE", "9", lines);
            Table("LAYER", "A", [() => Layer("B", "0"), .. layers.Where(l => l != "0").Select(l => (Action)(() => Layer(Next(), l)))]);
            Table("STYLE", "C", [TextStyle]);
            if (isNew)
            {
                Table("VIEW", "D", []);
                Table("UCS", "E", []);
                Table("APPID", "F", [() => Record("APPID", "10", "AcDbRegAppTableRecord", "ACAD")]);
                Table("DIMSTYLE", "11", [], "AcDbDimStyleTable");
                Table("BLOCK_RECORD", "12",
                [
                    () => Record("BLOCK_RECORD", "13", "AcDbBlockTableRecord", "*MODEL_SPACE", flags: false),
                    () => Record("BLOCK_RECORD", "14", "AcDbBlockTableRecord", "*PAPER_SPACE", flags: false),
                ]);
            }

            EndSection();
        }

        private void Table(string name, string tableHandle, List<Action> records, string? alsoMark = null)
        {
            Put(0, "TABLE");
            Put(2, name);
            Own(tableHandle, "0");
            Mark("AcDbSymbolTable");
            Put(70, records.Count);
            if (alsoMark is not null)
                Mark(alsoMark);
            owner = tableHandle;
            foreach (var record in records)
                record();
            Put(0, "ENDTAB");
        }

        private void Record(string type, string its, string mark, string name, bool flags = true)
        {
            Put(0, type);
            Own(its, owner);
            Mark("AcDbSymbolTableRecord");
            Mark(mark);
            Put(2, name);
            if (flags)
                Put(70, 0);
        }

        private void LineType(string its, string name, IReadOnlyList<double> dash)
        {
            Record("LTYPE", its, "AcDbLinetypeTableRecord", name);
            Put(3, "");
            Put(72, 65);
            Put(73, dash.Count);
            Put(40, dash.Sum());
            for (var i = 0; i < dash.Count; i++)
            {
                // Pen down above zero, pen up below.
                Put(49, i % 2 == 0 ? dash[i] : -dash[i]);
                if (isNew)
                    Put(74, 0);
            }
        }

        private void Layer(string its, string name)
        {
            Record("LAYER", its, "AcDbLayerTableRecord", name);
            Put(62, 7);
            Put(6, "CONTINUOUS");
            if (isNew)
                Put(390, "1A");
        }

        private void TextStyle()
        {
            Record("STYLE", "15", "AcDbTextStyleTableRecord", "STANDARD");
            Put(40, 0.0);
            Put(41, 1.0);
            Put(50, 0.0);
            Put(71, 0);
            Put(42, 2.5);
            Put(3, "txt");
            Put(4, "");
        }

        private void Blocks()
        {
            Section("BLOCKS");
            if (isNew)
            {
                foreach (var (name, its, begin, end) in ((string, string, string, string)[])[("*MODEL_SPACE", "13", "16", "17"), ("*PAPER_SPACE", "14", "18", "19")])
                {
                    Put(0, "BLOCK");
                    Own(begin, its);
                    Mark("AcDbEntity");
                    Put(8, "0");
                    Mark("AcDbBlockBegin");
                    Put(2, name);
                    Put(70, 0);
                    PutPoint(10, 0, 0);
                    Put(3, name);
                    Put(1, "");
                    Put(0, "ENDBLK");
                    Own(end, its);
                    Mark("AcDbEntity");
                    Put(8, "0");
                    Mark("AcDbBlockEnd");
                }
            }

            EndSection();
        }

        private void Objects()
        {
            Section("OBJECTS");
            Put(0, "DICTIONARY");
            Own("1B", "0");
            Mark("AcDbDictionary");
            Put(281, 1);
            Put(3, "ACAD_GROUP");
            Put(350, "1C");
            Put(3, "ACAD_PLOTSTYLENAME");
            Put(350, "1D");
            Put(0, "DICTIONARY");
            Own("1C", "1B");
            Mark("AcDbDictionary");
            Put(281, 1);
            Put(0, "ACDBDICTIONARYWDFLT");
            Own("1D", "1B");
            Mark("AcDbDictionary");
            Put(281, 1);
            Put(3, "Normal");
            Put(350, "1A");
            Mark("AcDbDictionaryWithDefault");
            Put(340, "1A");
            Put(0, "ACDBPLACEHOLDER");
            Own("1A", "1D");
            EndSection();
        }

        private IEnumerable<Entity> Entities(Shape shape)
        {
            var layer = shape.Layer.ToUpperInvariant();
            switch (shape)
            {
                case Segments s:
                    return s.Parts.Select(p => new Path(layer, s.Style, [At(p.A), At(p.B)], false));
                case Outline { Style.Stroke: null, Points.Count: 3 } o:
                    return [new Head(layer, new(), [.. o.Points])];
                case Outline { Style.Stroke: not null } o:
                    return [new Path(layer, o.Style, [.. o.Points.Select(At)], o.Closed)];
                case Circle { Style.Stroke: not null } c:
                    return [new Round(layer, c.Style, c.Centre.X, Up(c.Centre.Y), c.Radius, 0, 2 * Math.PI)];
                case Arc { Style.Stroke: not null } a:
                    return [new Round(layer, a.Style, a.Centre.X, Up(a.Centre.Y), a.Radius, a.From, a.Sweep)];
                case Dots d:
                    return d.Centres.Select(p => new Round(layer, new(), p.X, Up(p.Y), 0.5 * d.Diameter, 0, 2 * Math.PI));
                case Lettering l:
                    // The height of a DXF text is that of its capitals, 0.73 of the type size.
                    return [new Words(layer, l.At.X, Up(l.At.Y), 0.73 * l.Size, (int)l.Anchor, Ascii(l.PlainText))];
                default:
                    return [];
            }
        }

        /// <summary>Joins lines and arcs that follow each other.</summary>
        private static List<Entity> Joined(List<Entity> parts)
        {
            var joined = new List<Entity>();
            foreach (var part in parts)
            {
                var piece = AsPath(part);
                if (piece is not null && joined.Count > 0 && AsPath(joined[^1]) is { } chain && chain.Layer == piece.Layer && chain.Style == piece.Style && Meet(chain.Nodes[^1], piece.Nodes[0]))
                {
                    List<Node> nodes = [.. chain.Nodes[..^1], .. piece.Nodes];
                    var closed = nodes.Count > 2 && Meet(nodes[0], nodes[^1]);
                    joined[^1] = new Path(piece.Layer, piece.Style, closed ? nodes[..^1] : nodes, closed);
                }
                else
                {
                    joined.Add(part);
                }
            }

            return joined;
        }

        private static Path? AsPath(Entity entity)
        {
            if (entity is Path { Closed: false } path)
                return path;
            if (entity is not Round { Sweep: var sweep } arc || Math.Abs(sweep) > Math.PI + 1e-9)
                return null;
            Node End(double angle, double bulge) =>
                new(arc.X + (arc.Radius * Shapes.Numerics.Elementary.Cos(angle)), arc.Y + (arc.Radius * Shapes.Numerics.Elementary.Sin(angle)), bulge);
            // Bulge: tangent of a quarter of the angle, anticlockwise positive.
            return new(arc.Layer, arc.Style, [End(arc.From, Math.Tan(sweep / 4)), End(arc.From + sweep, 0)], false);
        }

        private static bool Meet(Node a, Node b) => Math.Abs(a.X - b.X) < Same && Math.Abs(a.Y - b.Y) < Same;

        private void Put(Entity entity)
        {
            switch (entity)
            {
                case Path { Closed: false, Nodes: [var a, var b] } line when a.Bulge == 0:
                    Begin("LINE", line, "AcDbLine");
                    PutPoint(10, a.X, a.Y);
                    PutPoint(11, b.X, b.Y);
                    break;
                case Path path when isNew:
                    Begin("LWPOLYLINE", path, "AcDbPolyline");
                    Put(90, path.Nodes.Count);
                    Put(70, path.Closed ? 1 : 0);
                    foreach (var node in path.Nodes)
                    {
                        Put(10, node.X);
                        Put(20, node.Y);
                        if (node.Bulge != 0)
                            Put(42, node.Bulge);
                    }

                    break;
                case Path path:
                    Begin("POLYLINE", path, "");
                    Put(66, 1);
                    PutPoint(10, 0, 0);
                    Put(70, path.Closed ? 1 : 0);
                    foreach (var node in path.Nodes)
                    {
                        Put(0, "VERTEX");
                        Put(8, path.Layer);
                        PutPoint(10, node.X, node.Y);
                        if (node.Bulge != 0)
                            Put(42, node.Bulge);
                    }

                    Put(0, "SEQEND");
                    Put(8, path.Layer);
                    break;
                case Round { Sweep: var sweep } round when Math.Abs(sweep) >= 2 * Math.PI:
                    Begin("CIRCLE", round, "AcDbCircle");
                    PutPoint(10, round.X, round.Y);
                    Put(40, round.Radius);
                    break;
                case Round round:
                    Begin("ARC", round, "AcDbCircle");
                    PutPoint(10, round.X, round.Y);
                    Put(40, round.Radius);
                    Mark("AcDbArc");
                    Put(50, Degrees(Math.Min(round.From, round.From + round.Sweep)));
                    Put(51, Degrees(Math.Max(round.From, round.From + round.Sweep)));
                    break;
                case Head head:
                    Begin("SOLID", head, "AcDbTrace");
                    for (var i = 0; i < 4; i++)
                    {
                        var (x, y) = head.Corners[Math.Min(i, 2)];
                        PutPoint(10 + i, x, Up(y));
                    }

                    break;
                case Words words:
                    Begin("TEXT", words, "AcDbText");
                    PutPoint(10, words.X, words.Y);
                    Put(40, words.Height);
                    Put(1, words.Text);
                    Put(7, "STANDARD");
                    if (words.Anchor != 0)
                    {
                        Put(72, words.Anchor);
                        PutPoint(11, words.X, words.Y);
                    }

                    Mark("AcDbText");
                    break;
                default:
                    throw new ArgumentException($"Unknown entity {entity.GetType().Name}.", nameof(entity));
            }
        }

        private void Begin(string type, Entity entity, string mark)
        {
            Put(0, type);
            if (isNew)
                Own(Next(), "13");
            Mark("AcDbEntity");
            Put(8, entity.Layer);
            if (entity.Style.Dash.Count > 0)
                Put(6, $"DASH{dashes.IndexOf(Key(entity.Style)) + 1}");
            if (isNew && entity.Style.Width > 0)
                Put(370, Weights.MinBy(w => Math.Abs(w - (100 * entity.Style.Width))));
            if (mark.Length > 0)
                Mark(mark);
        }

        private string Next() => (++handle).ToString("X", CultureInfo.InvariantCulture);

        private void Own(string its, string owning)
        {
            if (!isNew)
                return;
            Put(5, its);
            Put(330, owning);
        }

        private void Mark(string name)
        {
            if (isNew)
                Put(100, name);
        }

        private void Section(string name)
        {
            Put(0, "SECTION");
            Put(2, name);
        }

        private void EndSection() => Put(0, "ENDSEC");

        private void PutPoint(int code, double x, double y)
        {
            Put(code, x);
            Put(code + 10, y);
            Put(code + 20, 0.0);
        }

        private void Put(int code, double value) => Put(code, Number(value));

        private void Put(int code, int value) => Put(code, value.ToString(CultureInfo.InvariantCulture));

        private void Put(int code, string value) => text.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n{value}\r\n");

        private Node At(Point p) => new(p.X, Up(p.Y), 0);

        private double Up(double y) => picture.Height - y;

        private static string Key(Style style) => string.Join(' ', style.Dash.Select(Number));

        private static double Degrees(double radians) => radians * 180 / Math.PI is var degrees ? degrees - (360 * Math.Floor(degrees / 360)) : 0;

        /// <summary>To a nanometre; always with a point.</summary>
        private static string Number(double value)
        {
            if (!double.IsFinite(value))
                throw new ArgumentException("A drawing holds finite numbers only.", nameof(value));
            var rounded = Math.Round(value, 9, MidpointRounding.AwayFromZero);
            return rounded == 0 ? "0.0" : rounded.ToString("0.0########", CultureInfo.InvariantCulture);
        }

        private static string Ascii(string text)
        {
            var plain = new StringBuilder();
            foreach (var rune in text.EnumerateRunes())
            {
                plain.Append(rune.Value switch
                {
                    '°' => "%%d",
                    '±' => "%%p",
                    'Ø' or 'ø' or '⌀' => "%%c",
                    '%' => "%%%",
                    '×' => "x",
                    '−' or '–' or '—' or '‑' => "-",
                    '…' => "...",
                    '’' or '‘' or '′' => "'",
                    '“' or '”' or '″' => "\"",
                    '½' => "1/2",
                    '¼' => "1/4",
                    '¾' => "3/4",
                    'µ' or 'μ' => "u",
                    '²' => "2",
                    '³' => "3",
                    '→' => "->",
                    >= ' ' and <= '~' => rune.ToString(),
                    _ => "?",
                });
            }

            return plain.ToString();
        }
    }
}
