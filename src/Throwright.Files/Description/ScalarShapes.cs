using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Throwright.Files.Json;

namespace Throwright.Files.Description;

/// <summary>A text with a greatest length; one line, unless notes are written in it.</summary>
internal sealed class TextShape(int most, bool mayBeEmpty = true, bool manyLines = false) : Shape<string>
{
    public bool HasManyLines => manyLines;
    public override string Kind => "text";
    public override string Limits => mayBeEmpty ? $"at most {most} characters" : $"1 to {most} characters";

    public override JsonObject Schema(JsonObject definitions)
    {
        var schema = new JsonObject { ["type"] = "string" };
        if (!mayBeEmpty)
            schema["minLength"] = 1;
        schema["maxLength"] = most;
        return schema;
    }

    public override bool TryRead(Node node, Reading reading, out string value)
    {
        value = node.Text;
        if (node.Kind != NodeKind.Text)
        {
            reading.AtValue(node, Reading.Shown(node), "a text in double quotes");
            return false;
        }

        if (value.Length > most)
        {
            reading.AtValue(node, $"a text of {value.Length} characters", $"at most {most} characters");
            return false;
        }

        if (!mayBeEmpty && string.IsNullOrWhiteSpace(value))
        {
            reading.AtValue(node, "an empty text", "a text of at least one letter");
            return false;
        }

        foreach (var c in value)
        {
            if (!Reading.IsUnseen(c) || (manyLines && c is '\n' or '\r' or '\t'))
                continue;
            reading.AtValue(node, string.Create(CultureInfo.InvariantCulture, $"the invisible character U+{(int)c:X4} in the text"), manyLines ? "printable characters and new lines" : "printable characters on one line");
            return false;
        }

        return true;
    }
}

/// <summary>A short name for files and commands.</summary>
internal sealed partial class IdShape : Shape<string>
{
    private const string Pattern = "^[a-z0-9]+(-[a-z0-9]+)*$";
    private const int Most = 40;

    public override string Kind => "text";
    public override string Limits => $"lower case letters, digits and single hyphens, at most {Most}";

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "string", ["pattern"] = Pattern, ["maxLength"] = Most };

    public override bool TryRead(Node node, Reading reading, out string value)
    {
        value = node.Text;
        if (node.Kind == NodeKind.Text && value.Length <= Most && IdPattern().IsMatch(value))
            return true;
        reading.AtValue(node, Reading.Shown(node), $"a short name of lower case letters, digits and single hyphens, at most {Most} characters, e.g. \"cowl-flap\"");
        return false;
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*\\z")]
    private static partial Regex IdPattern();
}

/// <summary>true or false.</summary>
internal sealed class FlagShape : Shape<bool>
{
    public override string Kind => "true or false";

    public override JsonObject Schema(JsonObject definitions) => new() { ["type"] = "boolean" };

    public override bool TryRead(Node node, Reading reading, out bool value)
    {
        value = node.Kind == NodeKind.True;
        if (node.Kind is NodeKind.True or NodeKind.False)
            return true;
        reading.AtValue(node, Reading.Shown(node), "true or false, without quotes");
        return false;
    }
}

/// <summary>One of a few whole numbers that measure nothing.</summary>
internal sealed class CountShape(params int[] allowed) : Shape<int>
{
    public IReadOnlyList<int> Allowed => allowed;
    public override string Kind => "whole number";
    public override string Limits => List("or");

    public override JsonObject Schema(JsonObject definitions) => new() { ["enum"] = new JsonArray([.. allowed.Select(n => JsonValue.Create(n))]) };

    public override bool TryRead(Node node, Reading reading, out int value)
    {
        // 16 and 16.0 are the same number in JSON.
        value = node.Kind == NodeKind.Number && double.Parse(node.Text, CultureInfo.InvariantCulture) is var number
            ? Array.Find(allowed, n => n == number)
            : 0;
        if (value != 0)
            return true;
        reading.AtValue(node, Reading.Shown(node), $"{List("or")}, without quotes");
        return false;
    }

    private string List(string last) =>
        allowed.Length == 1 ? $"{allowed[0]}" : $"{string.Join(", ", allowed[..^1])} {last} {allowed[^1]}";
}

/// <summary>One word of the file and what it stands for.</summary>
internal sealed record Word<T>(string Text, T Value, string Meaning = "");

/// <summary>One of a fixed set of words.</summary>
internal sealed class WordShape<T>(params Word<T>[] words) : Shape<T>, IWords
    where T : struct, Enum
{
    public override string Kind => "word";
    public override string Limits => string.Join(", ", words.Select(w => $"`{w.Text}`"));
    public IEnumerable<(string Text, string Meaning)> Words => words.Select(w => (w.Text, w.Meaning));

    /// <summary>Every value of the model can be written, and no word stands for two.</summary>
    public bool IsComplete => words.Select(w => w.Value).Order().SequenceEqual(Enum.GetValues<T>().Order());

    public string TextOf(T value) => Array.Find(words, w => w.Value.Equals(value))!.Text;

    public override JsonObject Schema(JsonObject definitions) => new() { ["enum"] = new JsonArray([.. words.Select(w => JsonValue.Create(w.Text))]) };

    public override bool TryRead(Node node, Reading reading, out T value)
    {
        foreach (var word in words)
        {
            if (node.Kind != NodeKind.Text || word.Text != node.Text)
                continue;
            value = word.Value;
            return true;
        }

        value = default;
        WordList.Refuse(this, node, reading);
        return false;
    }
}

/// <summary>A set of words, whatever they stand for.</summary>
internal interface IWords
{
    bool IsComplete { get; }
    IEnumerable<(string Text, string Meaning)> Words { get; }
}

/// <summary>What all sets of words do alike.</summary>
internal static class WordList
{
    public static void Refuse(IWords of, Node node, Reading reading)
    {
        var texts = of.Words.Select(w => w.Text);
        var list = string.Join(", ", texts.Select(text => $"\"{text}\""));
        var near = node.Kind is NodeKind.Text or NodeKind.Word && reading.IsListing ? Likeness.Nearest(node.Text, texts) : null;
        reading.AtValue(node, Reading.Shown(node), near is null ? $"one of {list}" : $"one of {list}; did you mean \"{near}\"?");
    }
}
