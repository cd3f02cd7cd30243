using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Throwright.Engine.Findings;
using Throwright.Papers.Marks;

namespace Throwright.Cli.Terminal;

/// <summary>How every answer for other programs is written.</summary>
internal static class AnswerJson
{
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>One object, without a line's end.</summary>
    public static string Write(Action<Utf8JsonWriter> body)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    /// <summary>
    /// JSON knows no infinity: what has no limit is left out. Twelve digits: a thousand times finer than anything measured,
    /// and free of the last bits in which two systems' exponentials may differ.
    /// </summary>
    public static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, double.Parse(number.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
    }

    public static void Source(Utf8JsonWriter json, SourceRef source)
    {
        json.WriteStartObject();
        json.WriteString("id", source.Id);
        json.WriteString("place", source.Place);
        json.WriteString("evidence", Words.EvidenceWord(source.Evidence));
        json.WriteEndObject();
    }

    /// <summary>The name of a state, as members are written: "lostMotion".</summary>
    public static string Word<T>(T state)
        where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(state.ToString());
}
