using System.Globalization;
using System.Text;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

/// <summary>Writes the description of the file as a page for people.</summary>
internal static class ReferencePageWriter
{
    private static readonly QuantityKind[] Kinds =
    [
        QuantityKind.Length, QuantityKind.Angle, QuantityKind.Force, QuantityKind.Torque, QuantityKind.Temperature, QuantityKind.Stiffness, QuantityKind.TorsionRate, QuantityKind.BendingStiffness, QuantityKind.LineWeight, QuantityKind.Stress,
    ];

    public static string Text()
    {
        var page = new StringBuilder();
        page.Append(
            $"""
            # The aircraft file

            <!-- Written by the program from its own description of the file. To write it anew:
            THROWRIGHT_WRITE_REFERENCE=1 dotnet test --project tests/Throwright.Files.Tests -->

            One JSON file for each aircraft, named `...{AircraftFile.Extension}`, in UTF-8. `throwright new` writes one with comments to start from.
            An editor that is shown `throwright.schema.json` (member `$schema`) offers the members and their meaning while you type.

            - Comments (`//` to the end of the line, `/* ... */`) and a comma after the last entry are allowed.
            - A physical value is a text with its unit, with or without a tolerance: `"1 3/4 in"`, `"44.5 mm ± 0.5 mm"`, `"92 deg +2/-1 deg"`, `"6 lbf in ± 20 %"`. A bare number is refused.
            - A tolerance is a hard limit. The word `normal` behind it says that the values bunch around the middle and the limit is three standard deviations.
            - What you don't know yet is left out. Each stage says what it needs.
            - Unknown members, repeated members and values out of any sense are refused, all of them at once, each with its line. A run at fault is left out; the other runs are read.
            - The ranges below catch slips of the keyboard. They are no engineering limits.
            - At most {AircraftFile.MostBytes / 1024 / 1024} MB, 1000 runs, 32 brackets deep.
            - When the program saves, the file before is kept beside it with `.backup` behind its name. It does not save over a file that was changed since it was read.

            ## Units

            | quantity | units | examples |
            |---|---|---|

            """);
        foreach (var kind in Kinds)
        {
            var units = string.Join(", ", UnitText.UnitsOf(kind).Select(u => $"`{u.Unit}`"));
            var examples = string.Join(", ", QuantityReader.Examples(kind, exact: kind == QuantityKind.Temperature).Select(e => $"`\"{e}\"`"));
            page.Append(CultureInfo.InvariantCulture, $"| {QuantityReader.Words(kind)} | {units} | {examples} |\n");
        }

        page.Append("| ratio | none | `\"0.15\"`, `\"0.15 ± 0.05\"` |\n");
        foreach (var shape in Objects(AircraftDescription.File))
            Append(page, shape);
        return page.ToString().ReplaceLineEndings("\n");
    }

    /// <summary>Every object of the file, each once, in the order in which a reader meets them.</summary>
    public static IReadOnlyList<IObject> Objects(Shape from)
    {
        var found = new List<IObject>();
        Walk(from);
        return found;

        void Walk(Shape shape)
        {
            if (shape is IObject o)
            {
                if (found.Contains(o))
                    return;
                found.Add(o);
            }

            foreach (var inside in shape.Inside)
                Walk(inside);
        }
    }

    private static void Append(StringBuilder page, IObject shape)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {shape.Title}\n\n| member | what it is | kind | accepted | left out |\n|---|---|---|---|---|\n");
        foreach (var member in shape.Members)
        {
            var leftOut = member.IsRequired ? "**needed**" : member.Otherwise;
            page.Append(CultureInfo.InvariantCulture, $"| `{member.Name}` | {Cell(member.Meaning)} | {Cell(member.Shape.Kind)} | {Cell(member.Shape.Limits)} | {Cell(leftOut)} |\n");
        }

        var words = shape.Members.Where(m => WordsOf(m.Shape) is { } w && w.Words.Any(x => x.Meaning.Length > 0)).ToList();
        if (words.Count > 0)
            page.Append('\n');
        foreach (var member in words)
        {
            page.Append(CultureInfo.InvariantCulture, $"- `{member.Name}`: ");
            page.AppendJoin("; ", WordsOf(member.Shape)!.Words.Select(w => w.Meaning.Length > 0 ? $"`{w.Text}` {w.Meaning}" : $"`{w.Text}`"));
            page.Append(".\n");
        }

        if (shape.Rules.Count == 0)
            return;
        page.Append("\nRules:\n\n");
        foreach (var rule in shape.Rules)
            page.Append(CultureInfo.InvariantCulture, $"- {rule.Text}\n");
    }

    private static IWords? WordsOf(Shape shape) => shape is IObject ? null : shape as IWords ?? shape.Inside.OfType<IWords>().FirstOrDefault();

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
