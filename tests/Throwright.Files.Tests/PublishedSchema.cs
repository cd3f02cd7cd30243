using System.Text.Json;
using Json.Schema;

namespace Throwright.Files.Tests;

/// <summary>The schema as a foreign validator understands it.</summary>
internal static class PublishedSchema
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(AircraftFile.Schema());

    private static readonly JsonDocumentOptions Options = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, AllowDuplicateProperties = false };

    /// <summary>False also where the text is not JSON.</summary>
    public static bool Accepts(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text, Options);
            return Schema.Evaluate(document.RootElement).IsValid;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // InvalidOperationException: half a character in a text.
            return false;
        }
    }
}
