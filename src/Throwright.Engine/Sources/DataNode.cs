using System.Text.Json;

namespace Throwright.Engine.Sources;

/// <summary>One place in a data file, so that every complaint can name it.</summary>
/// <remarks>A class: lists of a class share code that is compiled already, lists of a struct would be compiled at start.</remarks>
/// <param name="Path">JSON pointer, e.g. /figures/3/evidence; empty for the whole file.</param>
internal sealed record DataNode(string File, string Path, JsonElement Element)
{
    public InvalidDataException Fault(string found, string expected) =>
        new($"{File}: {(Path.Length == 0 ? "/" : Path)}: found {found}, expected {expected}");

    /// <summary>Refuses an object that has a property other than these.</summary>
    public DataNode Only(params IReadOnlyList<string> names)
    {
        if (Element.ValueKind != JsonValueKind.Object)
            throw Fault(Element.ValueKind.ToString(), "an object");
        foreach (var property in Element.EnumerateObject())
        {
            if (!names.Contains(property.Name))
                throw Fault($"\"{property.Name}\"", string.Join(", ", names));
        }

        return this;
    }

    public DataNode? Find(string name) =>
        Element.TryGetProperty(name, out var child) ? new DataNode(File, $"{Path}/{name}", child) : null;

    public DataNode Need(string name) => Find(name) ?? throw Fault("nothing", $"\"{name}\"");

    /// <summary>The members of a list; none where the property is left out.</summary>
    public IEnumerable<DataNode> Items(string name)
    {
        if (Find(name) is not { } list)
            yield break;
        if (list.Element.ValueKind != JsonValueKind.Array)
            throw list.Fault(list.Element.ValueKind.ToString(), "a list");
        var i = 0;
        foreach (var item in list.Element.EnumerateArray())
            yield return new(File, $"{list.Path}/{i++}", item);
    }

    public string Text(string name) => Need(name).AsText();

    public string TextOrEmpty(string name) => Find(name)?.AsText() ?? "";

    /// <summary>A text that is not empty.</summary>
    public string Words(string name)
    {
        var text = Text(name);
        return text.Length > 0 ? text : throw Need(name).Fault("\"\"", "words");
    }

    /// <summary>A number as it stands in the file, trailing zeros and all, or a text such as "1/8".</summary>
    public string Figure() => Element.ValueKind switch
    {
        JsonValueKind.Number => Element.GetRawText(),
        JsonValueKind.String when Element.GetString() is { Length: > 0 } text => text,
        _ => throw Fault(Element.GetRawText(), "a number, or a fraction in quotes"),
    };

    private string AsText() => Element.ValueKind == JsonValueKind.String
        ? Element.GetString()!
        : throw Fault(Element.GetRawText(), "a text");
}
