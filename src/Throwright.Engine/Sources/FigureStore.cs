using System.Runtime.CompilerServices;
using System.Text.Json;
using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

[assembly: InternalsVisibleTo("Throwright.Engine.Tests")]

namespace Throwright.Engine.Sources;

/// <summary>A data file by its name under the project's root, e.g. data/wire/modulus.json.</summary>
internal sealed record DataFile(string Name, ReadOnlyMemory<byte> Json);

/// <summary>All published figures, read from the data files. A fault in one of them is a fault of the program.</summary>
internal sealed class FigureStore
{
    private const string SourcesFile = "data/sources.json";

    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    private readonly Dictionary<string, Source> sources = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Datum> figures = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Table> tables = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Rule> rules = new(StringComparer.Ordinal);

    private FigureStore()
    {
    }

    public IReadOnlyDictionary<string, Source> Sources => sources;
    public IReadOnlyDictionary<string, Datum> Figures => figures;
    public IReadOnlyDictionary<string, Table> Tables => tables;
    public IReadOnlyDictionary<string, Rule> Rules => rules;

    /// <summary>The files that are embedded in this assembly.</summary>
    public static FigureStore FromResources()
    {
        var assembly = typeof(FigureStore).Assembly;
        var files = new List<DataFile>();
        foreach (var resource in assembly.GetManifestResourceNames())
        {
            if (!resource.StartsWith("data/", StringComparison.Ordinal))
                continue;
            using var stream = assembly.GetManifestResourceStream(resource)!;
            var json = new byte[stream.Length];
            stream.ReadExactly(json);
            // The build on Windows leaves the separator of its own file system between topic and file.
            files.Add(new(resource.Replace('\\', '/'), json));
        }

        return Read(files);
    }

    public static FigureStore Read(IReadOnlyList<DataFile> files)
    {
        var store = new FigureStore();
        // The order of resources is the build's; ours must not depend on it.
        var ordered = files.OrderBy(f => f.Name, StringComparer.Ordinal).ToList();
        foreach (var file in ordered.Where(f => f.Name == SourcesFile))
            store.AddSources(Open(file));
        foreach (var file in ordered.Where(f => f.Name != SourcesFile))
            store.AddTopic(Open(file));
        return store;
    }

    private static DataNode Open(DataFile file)
    {
        try
        {
            // Never disposed, so its memory is not handed back to a pool: it is read once in the life of the program.
            return new(file.Name, "", JsonDocument.Parse(file.Json, Strict).RootElement);
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"{file.Name}: {e.Message}", e);
        }
    }

    private void AddSources(DataNode root)
    {
        foreach (var node in root.Only("sources").Items("sources"))
        {
            node.Only("id", "title", "by", "edition", "date", "kind", "binds", "note");
            Add(sources, node, new Source
            {
                Id = node.Words("id"),
                Title = node.Words("title"),
                By = node.Text("by"),
                Edition = node.Text("edition"),
                Date = node.Text("date"),
                Kind = Choice<SourceKind>(node.Need("kind")),
                Binds = Choice<Binding>(node.Need("binds")),
                Note = node.TextOrEmpty("note"),
            });
        }
    }

    private void AddTopic(DataNode root)
    {
        root.Only("figures", "tables", "rules");
        foreach (var node in root.Items("figures"))
            Add(figures, node, ReadFigure(node));
        foreach (var node in root.Items("tables"))
            Add(tables, node, ReadTable(node));
        foreach (var node in root.Items("rules"))
            Add(rules, node, ReadRule(node));
    }

    private void Add<T>(Dictionary<string, T> all, DataNode node, T item)
    {
        var id = node.Words("id");
        var taken = typeof(T) == typeof(Datum) ? tables.ContainsKey(id) : typeof(T) == typeof(Table) && figures.ContainsKey(id);
        if (taken || !all.TryAdd(id, item))
            throw node.Need("id").Fault($"\"{id}\" for the second time", "an id of its own");
    }

    private Datum ReadFigure(DataNode node)
    {
        node.Only("id", "name", "value", "low", "high", "unit", "source", "place", "evidence", "range", "note");
        var unit = node.Text("unit");
        var kind = KindOf(node.Need("unit"), unit);
        var value = node.Find("value");
        var low = node.Find("low");
        var high = node.Find("high");
        if (low is null != high is null || (value is null && low is null))
            throw node.Fault("half a band or nothing", "\"value\", or \"low\" with \"high\"");
        var lowSi = low is null ? Si(value!, kind, unit) : Si(low, kind, unit);
        var highSi = high is null ? Si(value!, kind, unit) : Si(high, kind, unit);
        var si = value is null ? (lowSi + highSi) / 2 : Si(value, kind, unit);
        if (!(lowSi <= si && si <= highSi))
            throw node.Fault("a value outside its band", "low <= value <= high");
        var band = low is null ? "" : $"{low.Figure()} to {high!.Figure()}";
        var text = value is null ? band : band.Length == 0 ? value.Figure() : $"{value.Figure()} ({band})";
        return new()
        {
            Id = Topical(node),
            Name = node.Words("name"),
            Kind = kind,
            Value = si,
            Low = lowSi,
            High = highSi,
            Text = unit.Length == 0 ? text : $"{text} {unit}",
            Unit = unit,
            Source = Reference(node),
            Range = node.Text("range"),
            Note = node.Text("note"),
        };
    }

    private Table ReadTable(DataNode node)
    {
        node.Only("id", "name", "source", "place", "evidence", "range", "note", "columns", "rows");
        var columns = node.Items("columns").Select(ReadColumn).ToList();
        var source = Reference(node);
        var rows = new List<TableRow>();
        var texts = new HashSet<string>(StringComparer.Ordinal);
        foreach (var rowNode in node.Items("rows"))
        {
            var row = ReadRow(rowNode, columns, source);
            if (!texts.Add(string.Join('|', row.Cells.Select(c => $"{c.Column}={c.Text}"))))
                throw rowNode.Fault("a row for the second time", "each row once");
            rows.Add(row);
        }

        if (columns.Count == 0 || rows.Count == 0)
            throw node.Fault("an empty table", "columns and rows");
        return new()
        {
            Id = Topical(node),
            Name = node.Words("name"),
            Columns = columns.ToEquatableList(),
            Rows = rows.ToEquatableList(),
            Source = source,
            Range = node.Text("range"),
            Note = node.Text("note"),
        };
    }

    private static TableColumn ReadColumn(DataNode node)
    {
        node.Only("id", "name", "unit", "text");
        var isText = node.Find("text") is not null;
        if (isText == node.Find("unit") is not null)
            throw node.Fault("both or neither", "\"unit\" or \"text\"");
        var unit = node.TextOrEmpty("unit");
        return new(node.Words("id"), node.Words("name"), isText ? null : KindOf(node, unit), unit);
    }

    private TableRow ReadRow(DataNode node, List<TableColumn> columns, SourceRef tableSource)
    {
        node.Only([.. columns.Select(c => c.Id), "source", "place", "evidence", "note"]);
        var cells = new List<TableCell>();
        foreach (var column in columns)
        {
            if (node.Find(column.Id) is not { } cell)
                continue;
            cells.Add(column.Kind is { } kind
                ? new(column.Id, cell.Figure(), Si(cell, kind, column.Unit))
                : new(column.Id, node.Words(column.Id), null));
        }

        return new()
        {
            Cells = cells.ToEquatableList(),
            Source = node.Find("source") is null ? tableSource : Reference(node),
            Note = node.TextOrEmpty("note"),
        };
    }

    private Rule ReadRule(DataNode node)
    {
        node.Only("id", "cite", "source", "place", "evidence", "says", "note");
        var source = Reference(node);
        return new()
        {
            Id = node.Words("id"),
            Cite = node.Words("cite"),
            Says = node.Words("says"),
            Source = source,
            Binds = sources[source.Id].Binds,
            Note = node.Text("note"),
        };
    }

    private SourceRef Reference(DataNode node)
    {
        var id = node.Words("source");
        if (!sources.ContainsKey(id))
            throw node.Need("source").Fault($"\"{id}\"", $"an id of {SourcesFile}");
        return new(id, node.Text("place"), Choice<Evidence>(node.Need("evidence")));
    }

    /// <summary>The id of a figure or table begins with the folder of its file.</summary>
    private static string Topical(DataNode node)
    {
        var id = node.Words("id");
        var folder = node.File["data/".Length..(node.File.LastIndexOf('/') + 1)];
        return id.StartsWith(folder, StringComparison.Ordinal)
            ? id
            : throw node.Need("id").Fault($"\"{id}\"", $"an id that begins with {folder}");
    }

    private static double Si(DataNode node, QuantityKind kind, string unit)
    {
        var text = node.Figure();
        if (!UnitText.TryRead(kind, $"{text} {unit}", out var read, out var problem))
            throw node.Fault($"\"{text} {unit}\" ({problem})", UnitText.Expected(kind));
        return read.Nominal;
    }

    private static QuantityKind KindOf(DataNode node, string unit)
    {
        foreach (var kind in Enum.GetValues<QuantityKind>())
        {
            foreach (var (name, _) in UnitText.UnitsOf(kind))
            {
                if (name == unit)
                    return kind;
            }
        }

        throw node.Fault($"\"{unit}\"", "a unit that UnitText reads");
    }

    /// <summary>Reads "type-certificated" or "commonPractice" as the member of that name.</summary>
    private static T Choice<T>(DataNode node)
        where T : struct, Enum
    {
        var text = node.Figure();
        foreach (var value in Enum.GetValues<T>())
        {
            if (value.ToString().Equals(text.Replace("-", ""), StringComparison.OrdinalIgnoreCase))
                return value;
        }

        throw node.Fault($"\"{text}\"", string.Join(", ", Enum.GetNames<T>()));
    }
}
