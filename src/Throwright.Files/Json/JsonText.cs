using System.Globalization;
using System.Text;

namespace Throwright.Files.Json;

/// <summary>A place where the text is not JSON: what stands there, what belongs there.</summary>
internal readonly record struct SyntaxProblem(int Start, int End, Node? In, string Found, string Expected);

/// <summary>A file's text as a tree of values that know their places.</summary>
/// <remarks>
/// JSON as in RFC 8259, and besides: // and /* */ comments, a comma after the last entry, a byte order mark in front.
/// Small slips (missing comma, quote not closed, name without quotes) are reported and read on, so that one
/// reading finds all of them; after anything worse <see cref="Root"/> is null.
/// </remarks>
internal sealed class JsonText
{
    public const int MostCharacters = 4 * 1024 * 1024;
    public const int MostDepth = 32;
    public const int MostTextLength = 10_000;
    public const int MostValues = 200_000;
    private const int MostSlips = 100;

    private readonly List<SyntaxProblem> problems = [];
    private readonly List<int> lineStarts = [0];
    private int at;
    private int values;

    private JsonText(string text)
    {
        Text = text;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && !(i + 1 < text.Length && text[i + 1] == '\n')))
                lineStarts.Add(i + 1);
        }
    }

    public string Text { get; }

    /// <summary>The whole file's value; null: the text could not be read to its end.</summary>
    public Node? Root { get; private set; }
    public IReadOnlyList<SyntaxProblem> Problems => problems;

    public static JsonText Parse(string text)
    {
        var json = new JsonText(text);
        json.ParseAll();
        return json;
    }

    /// <summary>A text in double quotes, as JSON.</summary>
    public static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            if (c is '"' or '\\')
                quoted.Append('\\').Append(c);
            else if (char.IsControl(c) || char.IsSurrogate(c))
                quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else
                quoted.Append(c);
        }

        return quoted.Append('"').ToString();
    }

    /// <summary>Line and column of a character, both from 1.</summary>
    public (int Line, int Column) PlaceOf(int offset)
    {
        var line = lineStarts.BinarySearch(offset);
        if (line < 0)
            line = ~line - 1;
        var start = lineStarts[line];
        // A byte order mark takes no column.
        if (line == 0 && Text.Length > 0 && Text[0] == '\uFEFF' && offset > 0)
            start = 1;
        return (line + 1, offset - start + 1);
    }

    /// <summary>Start and end of a line (from 1) without its line end.</summary>
    public (int Start, int End) LineOf(int line)
    {
        var start = lineStarts[line - 1];
        if (start == 0 && Text.Length > 0 && Text[0] == '\uFEFF')
            start = 1;
        var end = line < lineStarts.Count ? lineStarts[line] : Text.Length;
        while (end > start && Text[end - 1] is '\n' or '\r')
            end--;
        return (start, end);
    }

    /// <summary>The place after blanks and comments from <paramref name="from"/> on; -1: a comment is not closed.</summary>
    public int AfterBlanks(int from)
    {
        var i = from;
        while (i < Text.Length)
        {
            if (Text[i] is ' ' or '\t' or '\n' or '\r')
                i++;
            else if (IsAt(i, "//"))
                i = EndOfLine(i);
            else if (!IsAt(i, "/*"))
                return i;
            else if (Text.IndexOf("*/", i + 2, StringComparison.Ordinal) is var close && close < 0)
                return -1;
            else
                i = close + 2;
        }

        return i;
    }

    public int EndOfLine(int i)
    {
        var end = Text.AsSpan(i).IndexOfAny('\n', '\r');
        return end < 0 ? Text.Length : i + end;
    }

    private bool IsAt(int i, string mark) => string.CompareOrdinal(Text, i, mark, 0, mark.Length) == 0;

    private void ParseAll()
    {
        if (Text.Length > MostCharacters)
        {
            Report(0, 0, null, $"the file is larger than {MostCharacters / 1024 / 1024} MB", "an aircraft file; the largest has a few hundred kilobytes");
            return;
        }

        if (HalfCharacter(Text) is var half && half >= 0)
        {
            Report(half, half + 1, null, "half a character", "whole characters");
            return;
        }

        at = Text.Length > 0 && Text[0] == '\uFEFF' ? 1 : 0;
        if (!Blanks(null))
            return;
        if (at == Text.Length)
        {
            Report(at, at, null, "the file is empty", "an object { ... } with \"format\" and \"aircraft\"");
            return;
        }

        var root = Value(null, null, 0, 0, 0, 0);
        if (root is null || !Blanks(root))
            return;
        if (at < Text.Length)
        {
            Report(at, at + 1, root, $"{Shown(at)} after the end of the file's object", "nothing more; is a brace { or } too many?");
            return;
        }

        Root = root;
    }

    private void Report(int start, int end, Node? inside, string found, string expected) => problems.Add(new(start, end, inside, found, expected));

    /// <summary>A slip that can be read past; false: there are too many.</summary>
    private bool Slip(int start, int end, Node? inside, string found, string expected)
    {
        Report(start, end, inside, found, expected);
        return problems.Count < MostSlips;
    }

    private bool Blanks(Node? inside)
    {
        var next = AfterBlanks(at);
        if (next >= 0)
        {
            at = next;
            return true;
        }

        var open = Text.IndexOf("/*", at, StringComparison.Ordinal);
        Report(open, open + 2, inside, "a comment /* that is not closed", "*/ at the end of the comment");
        return false;
    }

    /// <summary>The character at a place, as a person may be shown it.</summary>
    private string Shown(int i)
    {
        if (i >= Text.Length)
            return "the end of the file";
        var c = Text[i];
        var code = char.IsHighSurrogate(c) && i + 1 < Text.Length && char.IsLowSurrogate(Text[i + 1]) ? char.ConvertToUtf32(c, Text[i + 1]) : c;
        return c is > ' ' and < '\u007F' ? c.ToString() : string.Create(CultureInfo.InvariantCulture, $"the character U+{code:X4}");
    }

    private Node? Value(Node? parent, string? name, int nameStart, int nameEnd, int index, int depth)
    {
        if (++values > MostValues)
        {
            Report(at, at, parent, $"more than {MostValues} values", "an aircraft file; the largest has some ten thousand");
            return null;
        }

        var c = at < Text.Length ? Text[at] : '\0';
        if (c is '{' or '[')
        {
            if (depth >= MostDepth)
            {
                Report(at, at + 1, parent, $"brackets nested deeper than {MostDepth}", "an aircraft file; the deepest value lies at 8");
                return null;
            }

            var node = new Node { Kind = c == '{' ? NodeKind.Object : NodeKind.List, Start = at, End = at, Parent = parent, Name = name, NameStart = nameStart, NameEnd = nameEnd, Index = index };
            return Entries(node, depth + 1) ? node : null;
        }

        var start = at;
        if (c == '"')
        {
            var slips = problems.Count;
            return ReadText(parent, out var text)
                ? new Node { Kind = NodeKind.Text, Text = text, Start = start, End = at, Parent = parent, Name = name, NameStart = nameStart, NameEnd = nameEnd, Index = index, HasSlip = problems.Count > slips }
                : null;
        }

        if (c is '“' or '”' or '„')
        {
            Report(at, at + 1, parent, $"a typographic quote {c}", "the plain quote \"");
            return null;
        }

        var word = IsUnseen(c) ? "" : Bare();
        if (word.Length == 0)
        {
            Report(at, Math.Min(at + 1, Text.Length), parent, Shown(at), name is null ? "a value" : $"a value for \"{Short(name)}\"");
            return null;
        }

        var kind = word switch { "true" => NodeKind.True, "false" => NodeKind.False, "null" => NodeKind.Null, _ => IsNumber(word) ? NodeKind.Number : NodeKind.Word };
        return new Node { Kind = kind, Text = word, Start = start, End = at, Parent = parent, Name = name, NameStart = nameStart, NameEnd = nameEnd, Index = index };
    }

    /// <summary>The entries of an object or a list, from its opening to its closing bracket.</summary>
    private bool Entries(Node node, int depth)
    {
        var close = node.Kind == NodeKind.Object ? '}' : ']';
        at++;
        while (true)
        {
            if (!Blanks(node))
                return false;
            if (at < Text.Length && Text[at] == close)
            {
                at++;
                node.End = at;
                return true;
            }

            if (at >= Text.Length)
            {
                var (line, _) = PlaceOf(node.Start);
                Report(at, at, node, "the end of the file", $"{close} for the {Text[node.Start]} of line {line}");
                return false;
            }

            if (Text[at] == ',')
            {
                if (!Slip(at, at + 1, node, "a comma with nothing before it", "one comma between two entries"))
                    return false;
                at++;
                continue;
            }

            var slips = problems.Count;
            if (!(node.Kind == NodeKind.Object ? NamedEntry(node, depth) : ListEntry(node, depth)))
                return false;
            if (!AfterEntry(node, close, slipped: problems.Count > slips))
                return false;
        }
    }

    private bool ListEntry(Node node, int depth)
    {
        var value = Value(node, null, 0, 0, node.Items.Count, depth);
        if (value is null)
            return false;
        node.Items.Add(value);
        return true;
    }

    private bool NamedEntry(Node node, int depth)
    {
        var start = at;
        string name;
        if (Text[at] == '"')
        {
            if (!ReadText(node, out name))
                return false;
        }
        else
        {
            name = Name();
            if (name.Length == 0)
            {
                Report(at, at + 1, node, Shown(at), "a member's name in quotes, or }");
                return false;
            }

            if (!Slip(start, at, node, $"{Short(name)} without quotes", $"the name in double quotes: \"{Short(name.Trim('\''))}\""))
                return false;
            name = name.Trim('\'');
        }

        var end = at;
        if (!Blanks(node))
            return false;
        if (at < Text.Length && Text[at] == ':')
            at++;
        else if (at >= Text.Length || Text[at] is '}' or ']' or ',' || !Slip(at, at + 1, node, $"{Shown(at)} after the name \"{Short(name)}\"", "a colon"))
        {
            Report(at, Math.Min(at + 1, Text.Length), node, $"{Shown(at)} after the name \"{Short(name)}\"", "a colon and a value");
            return false;
        }

        if (!Blanks(node))
            return false;
        var value = Value(node, name, start, end, 0, depth);
        if (value is null)
            return false;
        node.Items.Add(value);
        return true;
    }

    /// <summary>The comma after an entry, or the end of the list.</summary>
    private bool AfterEntry(Node node, char close, bool slipped)
    {
        var end = at;
        if (!Blanks(node))
            return false;
        if (at >= Text.Length || Text[at] == close)
            return true;
        if (Text[at] == ',')
        {
            at++;
            return true;
        }

        var last = node.Items[^1];
        if (Text[at] == '"' && at == last.End && last.Kind is not (NodeKind.Object or NodeKind.List))
        {
            // "1 3/4"" or 1.5": an inch mark.
            var found = last.Kind == NodeKind.Text ? "a second quote after the end of the text" : "a quote after a value without quotes";
            if (!Slip(at, at + 1, last, found, "an inch written \"1 3/4 in\"; a quote inside a text is written \\\""))
                return false;
            last.HasSlip = true;
            at++;
            if (!Blanks(node))
                return false;
            if (at < Text.Length && Text[at] == ',')
                at++;
            return true;
        }

        if (Text[at] is '}' or ']')
        {
            var (line, _) = PlaceOf(node.Start);
            Report(at, at + 1, node, Shown(at), $"{close} for the {Text[node.Start]} of line {line}");
            return false;
        }

        // A text that was not closed has swallowed its comma: one slip, one message.
        return slipped || Slip(end, end, last, "no comma", $"a comma before {Shown(at)}");
    }

    private string Bare()
    {
        var start = at;
        while (at < Text.Length && Text[at] is not (',' or ']' or '}' or '{' or '[' or '"' or '\n' or '\r') && !IsAt(at, "//") && !IsAt(at, "/*"))
            at++;
        while (at > start && Text[at - 1] is ' ' or '\t')
            at--;
        return Text[start..at];
    }

    private string Name()
    {
        var start = at;
        while (at < Text.Length && (char.IsLetterOrDigit(Text[at]) || Text[at] is '_' or '-' or '$' or '\''))
            at++;
        return Text[start..at];
    }

    private static bool IsNumber(string word)
    {
        var i = 0;
        if (word[0] == '-')
            i++;
        var whole = i;
        i = Digits(word, i);
        if (i == whole || (word[whole] == '0' && i > whole + 1))
            return false;
        if (i < word.Length && word[i] == '.')
        {
            var part = i + 1;
            i = Digits(word, part);
            if (i == part)
                return false;
        }

        if (i < word.Length && word[i] is 'e' or 'E')
        {
            i++;
            if (i < word.Length && word[i] is '+' or '-')
                i++;
            var power = i;
            i = Digits(word, i);
            if (i == power)
                return false;
        }

        return i == word.Length;
    }

    private static int Digits(string word, int i)
    {
        while (i < word.Length && char.IsAsciiDigit(word[i]))
            i++;
        return i;
    }

    /// <summary>A text in double quotes, its escapes resolved; false: too many slips to read on.</summary>
    private bool ReadText(Node? inside, out string text)
    {
        var start = at++;
        var read = new StringBuilder();
        text = "";
        while (true)
        {
            if (at >= Text.Length || Text[at] is '\n' or '\r')
            {
                if (!Slip(start, at, inside, "a text that is not closed on its line", "a quote \" at its end"))
                    return false;
                break;
            }

            var c = Text[at];
            if (c == '"')
            {
                at++;
                break;
            }

            if (c == '\\')
            {
                if (!Escape(inside, read))
                    return false;
                continue;
            }

            if (char.IsControl(c) && !Slip(at, at + 1, inside, $"{Shown(at)} inside a text", "printable characters; a tab is written \\t"))
                return false;
            read.Append(c);
            at++;
        }

        if (read.Length > MostTextLength && !Slip(start, at, inside, $"a text of {read.Length} characters", $"at most {MostTextLength} characters"))
            return false;
        text = read.ToString();
        var half = HalfCharacter(text);
        return half < 0 || Slip(start, at, inside, string.Create(CultureInfo.InvariantCulture, $"half a character (U+{(int)text[half]:X4}) inside a text"), "whole characters");
    }

    private bool Escape(Node? inside, StringBuilder read)
    {
        var start = at++;
        var c = at < Text.Length ? Text[at] : '\n';
        if (c == 'u' && at + 4 < Text.Length && int.TryParse(Text.AsSpan(at + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code))
        {
            read.Append((char)code);
            at += 5;
            return true;
        }

        var plain = c switch { '"' => '"', '\\' => '\\', '/' => '/', 'b' => '\b', 'f' => '\f', 'n' => '\n', 'r' => '\r', 't' => '\t', _ => '\0' };
        if (plain != '\0')
        {
            read.Append(plain);
            at++;
            return true;
        }

        // The character after the backslash is read again, on its own: it may be the end of the line.
        return Slip(start, start + 1, inside, "a backslash that starts no known escape", "\\\\ for a backslash, \\\" for a quote, \\n for a new line");
    }

    /// <summary>Place of a surrogate without its other half, or -1.</summary>
    private static int HalfCharacter(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
                continue;
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                i++;
            else
                return i;
        }

        return -1;
    }

    /// <summary>Blanks that JSON does not know, control characters, and marks that steer the direction of writing.</summary>
    public static bool IsUnseen(char c) =>
        char.IsControl(c) || CharUnicodeInfo.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.SpaceSeparator;

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
