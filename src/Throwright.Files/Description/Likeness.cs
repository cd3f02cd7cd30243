namespace Throwright.Files.Description;

/// <summary>Finds the word that was probably meant.</summary>
internal static class Likeness
{
    /// <summary>The nearest of the known words, or null when none is near; letter case counts little.</summary>
    public static string? Nearest(string written, IEnumerable<string> known)
    {
        string? nearest = null;
        var least = Math.Clamp(written.Length / 3, 1, 3) + 1;
        foreach (var word in known)
        {
            var distance = Distance(written, word, least);
            if (distance < least)
                (nearest, least) = (word, distance);
        }

        return nearest;
    }

    /// <summary>
    /// Letters to insert, leave out, replace or swap with a neighbour (optimal string alignment distance);
    /// not worked out beyond <paramref name="most"/>.
    /// </summary>
    public static int Distance(string a, string b, int most)
    {
        if (Math.Abs(a.Length - b.Length) >= most)
            return most;
        var rows = new int[3][];
        for (var r = 0; r < 3; r++)
            rows[r] = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            rows[0][j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var (row, before, beforeThat) = (rows[i % 3], rows[(i - 1) % 3], rows[(i + 1) % 3]);
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = Same(a[i - 1], b[j - 1]);
                var d = Math.Min(Math.Min(row[j - 1], before[j]) + 1, before[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    d = Math.Min(d, beforeThat[j - 2] + 1);
                row[j] = d;
                least = Math.Min(least, d);
            }

            if (least >= most)
                return most;
        }

        return Math.Min(rows[a.Length % 3][b.Length], most);
    }

    private static bool Same(char a, char b) => char.ToLowerInvariant(a) == char.ToLowerInvariant(b);
}
