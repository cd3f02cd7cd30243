using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Throwright.Files.Description;

/// <summary>Writes the description of the file as JSON Schema, draft 2020-12.</summary>
internal static class SchemaWriter
{
    public static string Text()
    {
        var definitions = new JsonObject();
        var file = AircraftDescription.File.Whole(definitions);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:throwright:aircraft-file:{AircraftFile.Format}",
            ["title"] = "Throwright aircraft file",
        };
        foreach (var (name, value) in file.ToList())
        {
            file.Remove(name);
            schema[name] = value;
        }

        var sorted = new JsonObject();
        foreach (var (name, value) in definitions.OrderBy(d => d.Key, StringComparer.Ordinal).ToList())
        {
            definitions.Remove(name);
            sorted[name] = value;
        }

        schema["$defs"] = sorted;
        using var bytes = new MemoryStream();
        // Written as it is read: ± and quotes stay what they are. The text goes into a file, never into a page.
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(bytes, options))
            schema.WriteTo(writer);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }
}
