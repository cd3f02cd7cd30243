using System.Globalization;
using System.Text;

namespace Throwright.Formats.Step;

/// <summary>A fault of a STEP file and where it is.</summary>
/// <param name="Line">From 1; 0: of the file as a whole.</param>
/// <param name="Entity">Number of the entity; 0: none.</param>
public sealed record StepFault(int Line, int Entity, string What)
{
    public override string ToString() => Entity > 0 ? $"line {Line}, #{Entity}: {What}" : Line > 0 ? $"line {Line}: {What}" : What;
}

internal sealed class StepFaultException(StepFault fault) : Exception(fault.ToString())
{
    public StepFault Fault { get; } = fault;
}

/// <summary>One value of an entity.</summary>
internal abstract record Value
{
    public sealed record Reference(int Id) : Value;

    public sealed record Real(double Number) : Value;

    public sealed record Whole(long Number) : Value;

    public sealed record Words(string Text) : Value;

    /// <summary>.NAME.</summary>
    public sealed record Name(string Text) : Value;

    /// <summary>$ or *.</summary>
    public sealed record Left : Value;

    public sealed record Listed(IReadOnlyList<Value> Items) : Value;

    public sealed record Typed(string Type, IReadOnlyList<Value> Items) : Value;
}

/// <summary>An entity: one part, or several for a complex one.</summary>
internal sealed record Entity(int Id, int Line, IReadOnlyList<Value.Typed> Parts);

/// <summary>Reads the exchange structure of ISO 10303-21, knowing nothing of what the entities mean.</summary>
internal sealed class Part21
{
    private readonly string text;
    private int at;
    private int line = 1;
    private int current;

    private Part21(string text) => this.text = text;

    public Dictionary<int, Entity> Entities { get; } = [];

    public List<Value.Typed> Header { get; } = [];

    public static Part21 Read(string text)
    {
        var file = new Part21(text);
        file.Structure();
        return file;
    }

    private void Structure()
    {
        Expect("ISO-10303-21;");
        Expect("HEADER;");
        while (!Take("ENDSEC;"))
        {
            Header.Add(Part());
            Expect(";");
        }

        Expect("DATA;");
        while (!Take("ENDSEC;"))
        {
            Expect("#");
            var start = line;
            var id = current = (int)WholeNumber();
            Expect("=");
            var parts = new List<Value.Typed>();
            if (Take("("))
            {
                while (!Take(")"))
                    parts.Add(Part());
                for (var i = 1; i < parts.Count; i++)
                {
                    if (string.CompareOrdinal(parts[i - 1].Type, parts[i].Type) >= 0)
                        throw Fault($"{parts[i].Type} after {parts[i - 1].Type}: the parts of a complex entity stand in alphabetical order");
                }
            }
            else
            {
                parts.Add(Part());
            }

            Expect(";");
            if (!Entities.TryAdd(id, new(id, start, parts)))
                throw Fault("the number for the second time");
            current = 0;
        }

        Expect("END-ISO-10303-21;");
        Skip();
        if (at < text.Length)
            throw Fault("text after the end of the exchange structure");
    }

    private Value.Typed Part()
    {
        Skip();
        var from = at;
        while (at < text.Length && (char.IsAsciiLetterUpper(text[at]) || char.IsAsciiDigit(text[at]) || text[at] == '_'))
            at++;
        if (at == from)
            throw Fault($"{Found()} where the name of an entity was expected");
        var name = text[from..at];
        return new(name, Items());
    }

    private List<Value> Items()
    {
        Expect("(");
        var items = new List<Value>();
        if (Take(")"))
            return items;
        do
            items.Add(Item());
        while (Take(","));
        Expect(")");
        return items;
    }

    private Value Item()
    {
        Skip();
        var c = at < text.Length ? text[at] : '\0';
        switch (c)
        {
            case '#':
                at++;
                return new Value.Reference((int)WholeNumber());
            case '(':
                return new Value.Listed(Items());
            case '$' or '*':
                at++;
                return new Value.Left();
            case '\'':
                return Words();
            case '.':
                var end = text.IndexOf('.', at + 1);
                if (end < 0)
                    throw Fault("a name without its second point");
                var name = text[(at + 1)..end];
                at = end + 1;
                return new Value.Name(name);
            case '+' or '-' or (>= '0' and <= '9'):
                return Number();
            default:
                return Part();
        }
    }

    private Value Number()
    {
        var from = at;
        at++;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] is '.' or 'E' || (text[at] is '+' or '-' && text[at - 1] == 'E')))
            at++;
        var word = text[from..at];
        if (!word.Contains('.', StringComparison.Ordinal))
        {
            return long.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)
                ? new Value.Whole(whole)
                : throw Fault($"{word}: a real has a point");
        }

        return double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var real) && double.IsFinite(real)
            ? new Value.Real(real)
            : throw Fault($"{word} is no number");
    }

    private Value.Words Words()
    {
        var words = new StringBuilder();
        for (at++; ; at++)
        {
            if (at >= text.Length)
                throw Fault("a text without its end");
            if (text[at] == '\'' && !(at + 1 < text.Length && text[at + 1] == '\''))
            {
                at++;
                return new(words.ToString());
            }

            if (text[at] == '\'')
            {
                at++;
            }
            else if (text.AsSpan(at).StartsWith(@"\X2\"))
            {
                var end = text.IndexOf(@"\X0\", at, StringComparison.Ordinal);
                for (var i = at + 4; i + 4 <= end; i += 4)
                    words.Append((char)ushort.Parse(text.AsSpan(i, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture));
                at = end < 0 ? throw Fault(@"\X2\ without \X0\") : end + 3;
                continue;
            }
            else if (text.AsSpan(at).StartsWith(@"\\"))
            {
                at++;
            }
            else if (text[at] is < ' ' or > '~')
            {
                throw Fault("a character outside ASCII");
            }

            words.Append(text[at]);
        }
    }

    private long WholeNumber()
    {
        var from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
            at++;
        return int.TryParse(text.AsSpan(from, at - from), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw Fault($"{Found()} where a number was expected");
    }

    private void Skip()
    {
        for (; at < text.Length; at++)
        {
            if (text[at] == '\n')
                line++;
            else if (text.AsSpan(at).StartsWith("/*"))
                at = text.IndexOf("*/", at, StringComparison.Ordinal) is var end and >= 0 ? end + 1 : throw Fault("a comment without its end");
            else if (text[at] is not (' ' or '\r' or '\t'))
                return;
        }
    }

    private bool Take(string word)
    {
        Skip();
        if (!text.AsSpan(at).StartsWith(word))
            return false;
        at += word.Length;
        return true;
    }

    private void Expect(string word)
    {
        if (!Take(word))
            throw Fault($"{Found()} where {word} was expected");
    }

    private string Found() => at >= text.Length ? "the end" : $"\"{text[at]}\"";

    private StepFaultException Fault(string what) => new(new(line, current, what));
}
