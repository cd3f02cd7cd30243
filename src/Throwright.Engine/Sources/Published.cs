namespace Throwright.Engine.Sources;

/// <summary>The published figures, tables, rules and their bibliography. Read once, at the first question.</summary>
/// <remarks>An id that is not in the data files is a fault of the program: <see cref="ArgumentException"/>.</remarks>
public static class Published
{
    private static readonly Lazy<FigureStore> Store = new(FigureStore.FromResources);

    /// <summary>All single figures, by id.</summary>
    public static IReadOnlyDictionary<string, Datum> All => Store.Value.Figures;

    /// <summary>All tables, by id.</summary>
    public static IReadOnlyDictionary<string, Table> Tables => Store.Value.Tables;

    /// <summary>All rules, by id.</summary>
    public static IReadOnlyDictionary<string, Rule> Rules => Store.Value.Rules;

    /// <summary>The bibliography, by id.</summary>
    public static IReadOnlyDictionary<string, Source> Bibliography => Store.Value.Sources;

    public static Datum Get(string id) => Find(All, id, "figure");

    public static Table Table(string id) => Find(Tables, id, "table");

    public static Rule Rule(string id) => Find(Rules, id, "rule");

    public static Source Source(string id) => Find(Bibliography, id, "source");

    private static T Find<T>(IReadOnlyDictionary<string, T> all, string id, string what) =>
        all.TryGetValue(id, out var found) ? found : throw new ArgumentException($"no published {what} \"{id}\"", nameof(id));
}
