using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace Throwright.Files.Json;

/// <summary>One step into a value: a member's name, or a place in a list.</summary>
internal readonly record struct PathStep(string? Name, int Index);

/// <summary>Paths to one value, a part of RFC 9535 (JSONPath): $.runs[2].leverEnd, $.points['valve-pivot'][1].</summary>
internal static class JsonPath
{
    /// <summary>A member's step as text: .name, or ['any name'].</summary>
    public static string Step(string name)
    {
        var plain = name.Length > 0 && !char.IsAsciiDigit(name[0]);
        foreach (var c in name)
            plain &= char.IsAsciiLetterOrDigit(c) || c is '_' or '$';
        if (plain)
            return "." + name;
        var text = new StringBuilder("['");
        foreach (var c in name)
        {
            if (c is '\'' or '\\')
                text.Append('\\').Append(c);
            else if (char.IsControl(c))
                text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else
                text.Append(c);
        }

        return text.Append("']").ToString();
    }

    public static bool TryRead(string path, out List<PathStep> steps, [NotNullWhen(false)] out string? problem)
    {
        steps = [];
        problem = null;
        if (path.Length == 0 || path[0] != '$')
        {
            problem = $"\"{path}\" is not a path: it starts with $, e.g. $.runs[0].leverEnd.arm.radius";
            return false;
        }

        for (var i = 1; i < path.Length;)
        {
            if (path[i] == '.' && Plain(path, i + 1) is var end && end > i + 1)
            {
                steps.Add(new(path[(i + 1)..end], 0));
                i = end;
            }
            else if (path[i] == '[' && Quoted(path, i + 1, out var name) is var after && after > 0)
            {
                steps.Add(new(name, 0));
                i = after;
            }
            else if (path[i] == '[' && path.IndexOf(']', i) is var close && close > 0
                && int.TryParse(path.AsSpan(i + 1, close - i - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var index))
            {
                steps.Add(new(null, index));
                i = close + 1;
            }
            else
            {
                problem = $"\"{path}\" is not a path: character {i + 1} is not understood, e.g. $.points['valve-pivot'][1]";
                return false;
            }
        }

        return true;
    }

    private static int Plain(string path, int i)
    {
        while (i < path.Length && (char.IsAsciiLetterOrDigit(path[i]) || path[i] is '_' or '$'))
            i++;
        return i;
    }

    /// <summary>Reads 'name'] and returns the place after it; 0: it is not one.</summary>
    private static int Quoted(string path, int i, out string name)
    {
        name = "";
        if (i >= path.Length || path[i] != '\'')
            return 0;
        var text = new StringBuilder();
        for (i++; i < path.Length; i++)
        {
            if (path[i] == '\'')
            {
                name = text.ToString();
                return i + 1 < path.Length && path[i + 1] == ']' ? i + 2 : 0;
            }

            if (path[i] != '\\')
            {
                text.Append(path[i]);
                continue;
            }

            i++;
            if (i < path.Length && path[i] is '\'' or '\\')
                text.Append(path[i]);
            else if (i + 4 < path.Length && path[i] == 'u' && int.TryParse(path.AsSpan(i + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code))
            {
                text.Append((char)code);
                i += 4;
            }
            else
            {
                return 0;
            }
        }

        return 0;
    }
}
