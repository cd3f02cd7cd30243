using System.Diagnostics.CodeAnalysis;
using System.Text;
using Throwright.Files.Json;

namespace Throwright.Files;

/// <summary>Changes one value in the text of a file; every comment, blank and other value stays as it is.</summary>
/// <remarks>Paths are those of <see cref="Description.FileProblem.JsonPath"/>. The new value is JSON, e.g. "\"1 3/4 in\"".</remarks>
public static class TextEdit
{
    /// <summary>Replaces a value that is there.</summary>
    public static bool TryReplace(string text, string jsonPath, string newJsonValue, [NotNullWhen(true)] out string? edited, [NotNullWhen(false)] out string? problem)
    {
        edited = null;
        if (!TryOpen(text, jsonPath, out var json, out var steps, out problem) || !IsValue(newJsonValue, out problem))
            return false;
        var (node, found) = Follow(json.Root!, steps);
        if (found < steps.Count)
        {
            problem = $"there is no {jsonPath}";
            return false;
        }

        edited = Spliced(text, node.Start, node.End, newJsonValue);
        return true;
    }

    /// <summary>Replaces a value, or puts in the member that is missing, with the objects around it if they are missing too.</summary>
    public static bool TrySet(string text, string jsonPath, string newJsonValue, [NotNullWhen(true)] out string? edited, [NotNullWhen(false)] out string? problem)
    {
        edited = null;
        if (!TryOpen(text, jsonPath, out var json, out var steps, out problem) || !IsValue(newJsonValue, out problem))
            return false;
        var (node, found) = Follow(json.Root!, steps);
        if (found == steps.Count)
        {
            edited = Spliced(text, node.Start, node.End, newJsonValue);
            return true;
        }

        if (node.Kind != NodeKind.Object || steps.Skip(found).Any(s => s.Name is null))
        {
            problem = $"there is no {jsonPath}, and {node.Path()} can't be given a member for it";
            return false;
        }

        var value = newJsonValue.Trim();
        for (var i = steps.Count - 1; i > found; i--)
            value = $"{{ {JsonText.Quoted(steps[i].Name!)}: {value} }}";
        edited = Inserted(json, node, steps[found].Name!, value);
        return true;
    }

    /// <summary>Puts an entry behind the last of a list; the list is made if its object has none yet.</summary>
    public static bool TryAppend(string text, string listPath, string newJsonValue, [NotNullWhen(true)] out string? edited, [NotNullWhen(false)] out string? problem)
    {
        edited = null;
        if (!TryOpen(text, listPath, out var json, out var steps, out problem) || !IsValue(newJsonValue, out problem))
            return false;
        var (node, found) = Follow(json.Root!, steps);
        if (found < steps.Count)
            return TrySet(text, listPath, $"[{newJsonValue.Trim()}]", out edited, out problem);
        if (node.Kind != NodeKind.List)
        {
            problem = $"{listPath} is not a list";
            return false;
        }

        var value = newJsonValue.Trim();
        if (node.Items is not [.., var last])
        {
            // Comments inside the empty list stay behind the entry.
            edited = text.Insert(node.Start + 1, value);
            return true;
        }

        var afterLast = json.AfterBlanks(last.End);
        var line = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        // An entry on lines of its own gets a line, entries side by side stay so.
        var onOwnLine = json.PlaceOf(last.Start).Line != json.PlaceOf(node.Start).Line;
        var gap = onOwnLine ? line + IndentOf(json, last.Start) : " ";
        edited = text[afterLast] == ','
            ? text.Insert(afterLast + 1, gap + value)
            : text.Insert(last.End, "," + gap + value);
        return true;
    }

    /// <summary>Takes out a member or an entry of a list, with its comma. Comments beside it stay.</summary>
    public static bool TryRemove(string text, string jsonPath, [NotNullWhen(true)] out string? edited, [NotNullWhen(false)] out string? problem)
    {
        edited = null;
        if (!TryOpen(text, jsonPath, out var json, out var steps, out problem))
            return false;
        var (node, found) = Follow(json.Root!, steps);
        if (found < steps.Count || node.Parent is null)
        {
            problem = found < steps.Count ? $"there is no {jsonPath}" : "the whole file can't be taken out";
            return false;
        }

        edited = Removed(json, node);
        return true;
    }

    private static bool TryOpen(string text, string jsonPath, out JsonText json, out List<PathStep> steps, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(jsonPath);
        json = JsonText.Parse(text);
        if (!JsonPath.TryRead(jsonPath, out steps, out problem))
            return false;
        if (json.Root is not null && json.Problems.Count == 0)
            return true;
        problem = $"the text is at fault in line {json.PlaceOf(json.Problems[0].Start).Line}: {json.Problems[0].Found}";
        return false;
    }

    private static bool IsValue(string newJsonValue, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(newJsonValue);
        var value = JsonText.Parse(newJsonValue);
        problem = value.Root is null || value.Problems.Count > 0 ? $"the new value is no JSON: {value.Problems[0].Found}"
            : value.Root.Kind == NodeKind.Word ? $"the new value is no JSON: {value.Root.Text}"
            : value.Root.End != newJsonValue.TrimEnd().Length || value.Root.Start != newJsonValue.Length - newJsonValue.TrimStart().Length ? "the new value has a comment around it"
            : null;
        return problem is null;
    }

    /// <summary>As far as the steps lead, and how many of them were found.</summary>
    private static (Node Node, int Found) Follow(Node root, List<PathStep> steps)
    {
        var node = root;
        for (var i = 0; i < steps.Count; i++)
        {
            var (name, index) = steps[i];
            var next = name is not null
                ? node.Kind == NodeKind.Object ? node.Member(name) : null
                : node.Kind == NodeKind.List && index < node.Items.Count ? node.Items[index] : null;
            if (next is null)
                return (node, i);
            node = next;
        }

        return (node, steps.Count);
    }

    private static string Spliced(string text, int start, int end, string value) => string.Concat(text.AsSpan(0, start), value.AsSpan().Trim(), text.AsSpan(end));

    private static string Inserted(JsonText json, Node parent, string name, string value)
    {
        var text = json.Text;
        var member = $"{JsonText.Quoted(name)}: {value}";
        var line = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        if (parent.Items.Count == 0)
        {
            // { } on one line, or with comments inside, which stay behind the new member.
            var inside = text[(parent.Start + 1)..(parent.End - 1)];
            return string.IsNullOrWhiteSpace(inside)
                ? Spliced(text, parent.Start, parent.End, $"{{ {member} }}")
                : text.Insert(parent.Start + 1, $"{line}{IndentOf(json, parent.Start)}  {member}{(inside[0] is '\n' or '\r' ? "" : line)}");
        }

        var last = parent.Items[^1];
        var afterLast = json.AfterBlanks(last.End);
        var hasComma = text[afterLast] == ',';
        var tail = hasComma ? afterLast + 1 : last.End;
        var edited = new StringBuilder(text);
        // From behind, so that places in front stay right.
        if (EndOfLineAfter(json, tail) is { } end)
            edited.Insert(end, $"{line}{IndentOf(json, last.NameStart)}{member}{(hasComma ? "," : "")}");
        else
            edited.Insert(tail, $" {member}{(hasComma ? "," : "")}");
        if (!hasComma)
            edited.Insert(last.End, ",");
        return edited.ToString();
    }

    /// <summary>The end of the line from here, past comments; null: something else follows on the line.</summary>
    private static int? EndOfLineAfter(JsonText json, int from)
    {
        var text = json.Text;
        for (var i = from; i < text.Length;)
        {
            if (text[i] is '\n' or '\r')
                return i;
            if (text[i] is ' ' or '\t')
                i++;
            else if (string.CompareOrdinal(text, i, "//", 0, 2) == 0)
                return json.EndOfLine(i);
            else if (string.CompareOrdinal(text, i, "/*", 0, 2) == 0)
                i = text.IndexOf("*/", i + 2, StringComparison.Ordinal) + 2;
            else
                return null;
        }

        return null;
    }

    /// <summary>The blanks at the start of a line.</summary>
    private static string IndentOf(JsonText json, int offset)
    {
        var (start, end) = json.LineOf(json.PlaceOf(offset).Line);
        var i = start;
        while (i < end && json.Text[i] is ' ' or '\t')
            i++;
        return json.Text[start..i];
    }

    private static string Removed(JsonText json, Node node)
    {
        var text = json.Text;
        var siblings = node.Parent!.Items;
        var at = siblings.IndexOf(node);
        int start = node.Name is null ? node.Start : node.NameStart, end = node.End;
        var afterNode = json.AfterBlanks(end);
        var edited = new StringBuilder(text);
        if (text[afterNode] == ',')
        {
            // Blanks before the comma go with it, comments there stay.
            edited.Remove(afterNode, 1);
        }

        if (node.Name is not null && !string.IsNullOrWhiteSpace(text[node.NameEnd..node.Start].Replace(":", "", StringComparison.Ordinal)))
        {
            // A comment between name and value stays.
            edited.Remove(node.Start, node.End - node.Start).Remove(json.AfterBlanks(node.NameEnd), 1);
            end = node.NameEnd;
        }

        (start, end) = WholeLine(edited.ToString(), start, end);
        edited.Remove(start, end - start);
        if (text[afterNode] != ',' && at > 0)
        {
            // It was the last: the comma before it goes too.
            var comma = json.AfterBlanks(siblings[at - 1].End);
            edited.Remove(comma, 1);
        }

        return edited.ToString();
    }

    /// <summary>The line with its end if nothing else stands on it; else the part and the blanks behind it.</summary>
    private static (int Start, int End) WholeLine(string text, int start, int end)
    {
        int from = start, to = end;
        while (from > 0 && text[from - 1] is ' ' or '\t')
            from--;
        while (to < text.Length && text[to] is ' ' or '\t')
            to++;
        var startsLine = from == 0 || text[from - 1] is '\n' or '\r';
        if (startsLine && to < text.Length && text[to] is '\n' or '\r')
            return (from, to + (text[to] == '\r' && to + 1 < text.Length && text[to + 1] == '\n' ? 2 : 1));
        return (start, to);
    }
}
