using System.Buffers.Text;
using System.Globalization;

namespace Throwright.Formats.MeshFiles;

/// <summary>OBJ: corners and faces; all else is passed over, and no file it names is opened.</summary>
internal static class ObjReader
{
    /// <summary>Corners of one face: what is drawn by hand has four, what is cut by a plane some dozens.</summary>
    private const int MostSides = 10_000;

    public static void Read(byte[] file, MeshBuilder into)
    {
        var text = new Words(file);
        var face = new List<int>();
        while (true)
        {
            var word = text.Next();
            if (word.IsEmpty)
                return;
            if (word.SequenceEqual("v"u8))
            {
                into.Corner(text.Number(false), text.Number(false), text.Number(false));
            }
            else if (word.SequenceEqual("f"u8))
            {
                face.Clear();
                while (!text.IsAtLineEnd)
                {
                    var corner = text.Next(overLines: false);
                    // A line that goes on in the next one.
                    if (corner.SequenceEqual("\\"u8))
                    {
                        face.Add(Number(text.Next(), text, into));
                        continue;
                    }

                    face.Add(Number(corner, text, into));
                    if (face.Count > MostSides)
                        throw text.Fault($"at most {MostSides} corners in a face");
                }

                if (face.Count < 3)
                    throw text.Fault("three corners or more in a face");
                for (var i = 2; i < face.Count; i++)
                    into.Triangle(face[0], face[i - 1], face[i]);
            }

            text.SkipLine();
        }
    }

    /// <summary>The corner of 12, 12/3, 12//7 or 12/3/7; below zero it counts back from the last one.</summary>
    private static int Number(ReadOnlySpan<byte> word, Words text, MeshBuilder into)
    {
        if (!Utf8Parser.TryParse(word, out int number, out var used) || (used < word.Length && word[used] != '/'))
            throw text.Fault("the number of a corner");
        var index = number < 0 ? into.Corners + (long)number : number - 1L;
        return index >= 0 && index < into.Corners
            ? (int)index
            : throw text.Fault(string.Create(CultureInfo.InvariantCulture, $"a corner from 1 to {into.Corners}, or -1 to -{into.Corners}"));
    }
}
