namespace Throwright.Web.Editing;

/// <summary>Two texts line by line, for a person to choose between them.</summary>
public static class Difference
{
    private const int Around = 2;
    private const int MostLines = 1500;

    /// <summary>' ' in both, '-' only in the first, '+' only in the second; equal stretches are shortened.</summary>
    public static IReadOnlyList<(char Sign, string Line)> Of(string first, string second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        string[] a = first.Split('\n'), b = second.Split('\n');
        int front = 0, back = 0, least = Math.Min(a.Length, b.Length);
        while (front < least && a[front] == b[front])
            front++;
        while (back < least - front && a[^(back + 1)] == b[^(back + 1)])
            back++;
        string[] left = a[front..^back], right = b[front..^back];
        var lines = new List<(char, string)>();
        lines.AddRange(a[Math.Max(0, front - Around)..front].Select(l => (' ', l)));
        // Longest common part of the middle; where that would be too much work, the one whole and then the other.
        if ((long)left.Length * right.Length > (long)MostLines * MostLines)
        {
            lines.AddRange(left.Take(MostLines).Select(l => ('-', l)));
            lines.AddRange(right.Take(MostLines).Select(l => ('+', l)));
        }
        else
        {
            var longest = new int[left.Length + 1, right.Length + 1];
            for (var i = left.Length - 1; i >= 0; i--)
            {
                for (var j = right.Length - 1; j >= 0; j--)
                    longest[i, j] = left[i] == right[j] ? longest[i + 1, j + 1] + 1 : Math.Max(longest[i + 1, j], longest[i, j + 1]);
            }

            for (int i = 0, j = 0; i < left.Length || j < right.Length;)
            {
                if (i < left.Length && j < right.Length && left[i] == right[j])
                    (lines, i, j) = (With(lines, ' ', left[i]), i + 1, j + 1);
                else if (i < left.Length && (j == right.Length || longest[i + 1, j] >= longest[i, j + 1]))
                    (lines, i) = (With(lines, '-', left[i]), i + 1);
                else
                    (lines, j) = (With(lines, '+', right[j]), j + 1);
            }
        }

        lines.AddRange(a[^back..].Take(Around).Select(l => (' ', l)));
        return lines;
    }

    private static List<(char, string)> With(List<(char, string)> lines, char sign, string line)
    {
        lines.Add((sign, line));
        return lines;
    }
}
