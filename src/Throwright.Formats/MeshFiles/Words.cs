using System.Buffers.Text;
using System.Text;

namespace Throwright.Formats.MeshFiles;

/// <summary>A text file word by word, without a copy of it.</summary>
internal sealed class Words(byte[] file)
{
    private int at, line = 1, wordAt, wordEnd, wordLine = 1;

    public bool IsAtLineEnd
    {
        get
        {
            SkipBlanks(overLines: false);
            return at >= file.Length || file[at] is (byte)'\n' or (byte)'#';
        }
    }

    public bool IsAtEnd => at >= file.Length;

    /// <summary>The next word; empty at the end of the file.</summary>
    public ReadOnlySpan<byte> Next(bool overLines = true)
    {
        SkipBlanks(overLines);
        (wordAt, wordLine) = (at, line);
        while (at < file.Length && file[at] > ' ')
            at++;
        wordEnd = at;
        return file.AsSpan(wordAt, wordEnd - wordAt);
    }

    public void Must(ReadOnlySpan<byte> word, string expected)
    {
        if (!Next().SequenceEqual(word))
            throw Fault(expected);
    }

    public double Number(bool overLines = true)
    {
        var word = Next(overLines);
        if (word is [(byte)'+', ..])
            word = word[1..];
        return Utf8Parser.TryParse(word, out double value, out var used) && used == word.Length ? value : throw Fault("a number");
    }

    public void SkipLine()
    {
        while (at < file.Length && file[at] != '\n')
            at++;
    }

    /// <summary>The last word is not what belongs there.</summary>
    public MeshFault Fault(string expected)
    {
        var word = Encoding.ASCII.GetString(file, wordAt, Math.Min(wordEnd - wordAt, 40));
        return new(
            wordAt >= file.Length ? $"line {wordLine}: the file ends here" : $"line {wordLine}: \"{word}\"",
            wordAt >= file.Length ? $"{expected}: the file is cut short, export it again" : expected);
    }

    private void SkipBlanks(bool overLines)
    {
        for (; at < file.Length && file[at] <= ' '; at++)
        {
            if (file[at] != '\n')
                continue;
            if (!overLines)
                return;
            line++;
        }
    }
}
