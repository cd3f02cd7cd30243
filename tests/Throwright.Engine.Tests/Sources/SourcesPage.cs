using System.Text;
using Throwright.Engine.Findings;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Sources;

/// <summary>Writes docs/reference/sources.md from the data files.</summary>
internal static class SourcesPage
{
    public static string Markdown()
    {
        var page = new StringBuilder();
        page.Append("""
            # Sources and published figures

            Written from the files under `data/` by the tests; `THROWRIGHT_APPROVE=1` rewrites it. Change the data, not this page.

            Every figure says where it comes from and how its source was seen:

            | mark | what it means |
            |---|---|

            """);
        foreach (var evidence in Enum.GetValues<Evidence>())
            Row(page, Word(evidence), Meaning(evidence));
        page.Append("""

            A figure from memory is never the only limit behind `clear`. A publication that binds a type-certificated
            aeroplane is good practice, not law, for an amateur-built one; what binds that one are its operating limitations.
            The words below are our own: the publication has the binding ones. Where edition or date is missing, the copy
            that was read does not state it.

            """);
        Bibliography(page);
        Rules(page);
        Figures(page);
        Tables(page);
        FromMemory(page);
        return page.ToString().ReplaceLineEndings("\n");
    }

    private static void Bibliography(StringBuilder page)
    {
        page.Append("\n## Bibliography\n\n| id | publication | by | edition, date | kind | binds |\n|---|---|---|---|---|---|\n");
        foreach (var source in Published.Bibliography.Values)
        {
            Row(
                page,
                $"`{source.Id}`",
                Sentence(source.Title, source.Note),
                source.By,
                string.Join("; ", new[] { source.Edition, source.Date }.Where(t => t.Length > 0)),
                source.Kind.ToString().ToLowerInvariant(),
                Word(source.Binds));
        }
    }

    private static void Rules(StringBuilder page)
    {
        page.Append("\n## Rules\n\n| id | rule | what it says, in our words | binds | evidence |\n|---|---|---|---|---|\n");
        foreach (var rule in Published.Rules.Values)
            Row(page, $"`{rule.Id}`", rule.Cite, Sentence(rule.Says, rule.Note), Word(rule.Binds), Word(rule.Source.Evidence));
    }

    private static void Figures(StringBuilder page)
    {
        page.Append("\n## Figures\n");
        foreach (var topic in Published.All.Values.GroupBy(d => Topic(d.Id)).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            page.Append($"\n### {topic.Key}\n\n| id | figure | value | source | evidence | holds; note |\n|---|---|---|---|---|---|\n");
            foreach (var datum in topic)
                Row(page, $"`{datum.Id}`", datum.Name, datum.Text, Place(datum.Source), Word(datum.Source.Evidence), Sentence(datum.Range, datum.Note));
        }
    }

    private static void Tables(StringBuilder page)
    {
        page.Append("\n## Tables\n");
        foreach (var table in Published.Tables.Values.OrderBy(t => t.Id, StringComparer.Ordinal))
        {
            page.Append($"\n### `{table.Id}`\n\n{Capital(table.Name)}. {Place(table.Source)}; {Word(table.Source.Evidence)}.");
            if (table.Range.Length > 0)
                page.Append($" Holds for: {table.Range}.");
            if (table.Note.Length > 0)
                page.Append($" {Capital(table.Note)}.");
            page.Append("\n\n");
            var isMixed = table.Rows.Any(r => r.Source != table.Source || r.Note.Length > 0);
            string[] extra = isMixed ? ["source", "evidence", "note"] : [];
            var heads = table.Columns.Select(c => c.Unit.Length > 0 ? $"{c.Name} ({c.Unit})" : c.Name).Concat(extra).ToArray();
            Row(page, heads);
            page.Append("|---").Insert(page.Length, "|---", heads.Length - 1).Append("|\n");
            foreach (var row in table.Rows)
            {
                var cells = table.Columns.Select(c => row.Find(c.Id)?.Text ?? "");
                string[] more = isMixed ? [Place(row.Source), Word(row.Source.Evidence), row.Note] : [];
                Row(page, [.. cells, .. more]);
            }
        }
    }

    private static void FromMemory(StringBuilder page)
    {
        page.Append("\n## From memory, not verified\n\nWhoever has the publication at hand can settle these.\n\n");
        foreach (var datum in Published.All.Values.Where(d => d.Source.Evidence == Evidence.Memory).OrderBy(d => d.Id, StringComparer.Ordinal))
            page.Append($"- `{datum.Id}` {datum.Name}: {datum.Text}\n");
        foreach (var table in Published.Tables.Values.Where(t => t.Rows.Any(r => r.Source.Evidence == Evidence.Memory)).OrderBy(t => t.Id, StringComparer.Ordinal))
            page.Append($"- `{table.Id}` {table.Name}\n");
    }

    private static string Topic(string id) => id[..id.IndexOf('/')];

    private static string Place(SourceRef source) => source.Place.Length > 0 ? $"`{source.Id}`, {source.Place}" : $"`{source.Id}`";

    private static string Sentence(string first, string second)
    {
        if (first.Length == 0 || second.Length == 0)
            return first + second;
        return char.IsUpper(second[0]) ? $"{first.TrimEnd('.')}. {second}" : $"{first}; {second}";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Word(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read",
        Evidence.ReadInPart => "read in part",
        Evidence.Secondary => "secondary",
        Evidence.Memory => "from memory",
        Evidence.Derived => "derived",
        Evidence.Numerical => "numerical",
        _ => "common practice or own choice",
    };

    private static string Meaning(Evidence evidence) => evidence switch
    {
        Evidence.Read => "read in the publication itself or a page-for-page copy",
        Evidence.ReadInPart => "the part with the number was read",
        Evidence.Secondary => "read where another publication quotes or reprints it",
        Evidence.Memory => "not verified; may guide a default",
        Evidence.Derived => "derived by this project",
        Evidence.Numerical => "computed for this project by an independent method",
        _ => "no publication; the builder can change it",
    };

    private static string Word(Binding binding) => binding switch
    {
        Binding.TypeCertificated => "type-certificated aeroplanes",
        Binding.OperatingLimitation => "by operating limitations",
        Binding.Guidance => "guidance for everybody",
        _ => "nobody",
    };

    private static void Row(StringBuilder page, params IEnumerable<string> cells) =>
        page.Append("| ").AppendJoin(" | ", cells.Select(c => c.Replace("|", "\\|"))).Append(" |\n");
}
