using System.Text;
using Throwright.Formats.Characters;
using Throwright.Papers.Marks;

namespace Throwright.Cli.Terminal;

/// <summary>Lines for a terminal or a file: wraps text, and colours it only where a person looks on.</summary>
public sealed class Screen
{
    private readonly StringBuilder text = new();
    private readonly bool colour;

    /// <param name="plain">Plain characters only; no colour.</param>
    public Screen(bool plain)
    {
        IsPlain = plain;
        colour = !plain && !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        Width = Console.IsOutputRedirected ? 100 : Math.Clamp(WindowWidth(), 60, 120);
    }

    public bool IsPlain { get; }

    /// <summary>Columns.</summary>
    public int Width { get; }

    /// <summary>Everything written so far.</summary>
    public override string ToString() => text.ToString();

    /// <summary>As it stands on this screen: plain ones may know ASCII only. Values written so are read again.</summary>
    private string Shown(string words) => !IsPlain || System.Text.Ascii.IsValid(words)
        ? words
        : words.Replace("−", "-", StringComparison.Ordinal).Replace("±", "+/-", StringComparison.Ordinal).Replace("°C", "degC", StringComparison.Ordinal).Replace("°", " deg", StringComparison.Ordinal)
            .Replace("²", "2", StringComparison.Ordinal).Replace("·", "*", StringComparison.Ordinal).Replace("–", "-", StringComparison.Ordinal).Replace("’", "'", StringComparison.Ordinal);

    public Screen Line(string words = "", bool bold = false)
    {
        Put(words, bold ? "1" : "");
        text.Append('\n');
        return this;
    }

    /// <summary>Words broken at blanks to the width, each line after <paramref name="first"/> indented alike.</summary>
    public Screen Wrapped(string first, string words, bool bold = false, string code = "")
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(words);
        first = Shown(first);
        var room = Math.Max(20, Width - first.Length);
        var lead = first;
        foreach (var part in Broken(Shown(words), room))
        {
            text.Append(lead);
            Put(part, code.Length > 0 ? code : bold ? "1" : "");
            text.Append('\n');
            lead = new(' ', first.Length);
        }

        return this;
    }

    /// <summary>A command to copy: never broken, so that it can be.</summary>
    public Screen Command(string first, string command)
    {
        text.Append(Shown(first));
        Put(command, "34");
        text.Append('\n');
        return this;
    }

    public Screen Block(CharacterBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        foreach (var line in block.Lines)
        {
            // No trailing blanks: they show up as noise in diffs and wrap in narrow windows.
            var used = line.Text.TrimEnd().Length;
            foreach (var span in line.Spans)
            {
                var part = span.Text.Length <= used ? span.Text : span.Text[..Math.Max(0, used)];
                Put(part, CodeOf(span));
                used -= part.Length;
            }

            text.Append('\n');
        }

        return this;
    }

    /// <summary>Spans without ending the line.</summary>
    public Screen Spans(CharacterLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        foreach (var span in line.Spans)
            Put(span.Text, CodeOf(span));
        return this;
    }

    /// <summary>Text as it is, without ending the line.</summary>
    public Screen Raw(string words)
    {
        text.Append(Shown(words));
        return this;
    }

    private static string CodeOf(CharacterSpan span)
    {
        var tone = span.Tone;
        var code = tone == Tones.Clear ? "32" : tone == Tones.AmberText ? "33" : tone == Tones.OnPlate ? "7" : tone == Tones.Blue ? "34" : tone == Tones.Ink2 ? "2" : "";
        return span.Bold ? code.Length > 0 ? "1;" + code : "1" : code;
    }

    private void Put(string words, string code)
    {
        words = Shown(words);
        if (colour && code.Length > 0 && words.Length > 0)
            text.Append("\u001b[").Append(code).Append('m').Append(words).Append("\u001b[0m");
        else
            text.Append(words);
    }

    private static IEnumerable<string> Broken(string words, int room)
    {
        var line = new StringBuilder();
        foreach (var word in words.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > room)
            {
                yield return line.ToString();
                line.Clear();
            }

            if (line.Length > 0)
                line.Append(' ');
            line.Append(word);
        }

        yield return line.ToString();
    }

    private static int WindowWidth()
    {
        try
        {
            return Console.WindowWidth;
        }
        catch (IOException)
        {
            return 100;
        }
    }
}
