using Throwright.Files.Json;

namespace Throwright.Files.Form;

/// <summary>What stands at one place of a file's text.</summary>
/// <param name="Raw">As written, with quotes and brackets.</param>
/// <param name="Shown">A text without its quotes; else as written.</param>
/// <param name="Line">Line of the file, from 1.</param>
public sealed record FileValue(string Raw, string Shown, bool IsText, bool IsObject, int Entries, int Line);

/// <summary>The values of a file's text by their paths, as typed.</summary>
public sealed class FileValues
{
    private readonly JsonText json;

    private FileValues(JsonText json) => this.json = json;

    public static FileValues Of(string text) => new(JsonText.Parse(text));

    /// <summary>The value at a path such as $.runs[0].leverEnd.arm.radius; null: nothing stands there.</summary>
    public FileValue? At(string path)
    {
        if (!JsonPath.TryRead(path, out var steps, out _) || json.Root is not { } node)
            return null;
        foreach (var (name, index) in steps)
        {
            var next = name is not null
                ? node.Kind == NodeKind.Object ? node.Member(name) : null
                : node.Kind == NodeKind.List && index < node.Items.Count ? node.Items[index] : null;
            if (next is null)
                return null;
            node = next;
        }

        var raw = json.Text[node.Start..node.End];
        return new(raw, node.Kind == NodeKind.Text ? node.Text : raw, node.Kind == NodeKind.Text, node.Kind == NodeKind.Object, node.Items.Count, json.PlaceOf(node.Start).Line);
    }

    /// <summary>Names of the members of an object, in the file's order; empty: no object stands there.</summary>
    public IReadOnlyList<string> NamesIn(string path)
    {
        if (!JsonPath.TryRead(path, out var steps, out _) || json.Root is not { } node)
            return [];
        foreach (var (name, index) in steps)
        {
            var next = name is not null ? node.Member(name) : index < node.Items.Count ? node.Items[index] : null;
            if (next is null)
                return [];
            node = next;
        }

        return node.Kind == NodeKind.Object ? [.. node.Items.Select(i => i.Name!)] : [];
    }

    /// <summary>A text as JSON, quotes around it.</summary>
    public static string Quoted(string text) => JsonText.Quoted(text);
}
