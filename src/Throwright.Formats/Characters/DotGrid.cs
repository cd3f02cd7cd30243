using System.Collections;

namespace Throwright.Formats.Characters;

/// <summary>Dots finer than a character cell: two across and four down in each, shown by the Braille patterns of Unicode.</summary>
public sealed class DotGrid(int columns, int rows)
{
    /// <summary>Bit of each dot in U+2800..U+28FF, by its place in the cell (x + 2 y).</summary>
    private static readonly int[] Bits = [0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80];

    private readonly BitArray dots = new(columns * rows * 8);

    public int Across => columns * 2;

    public int Down => rows * 4;

    public bool this[int x, int y]
    {
        get => x >= 0 && x < Across && y >= 0 && y < Down && dots[(y * Across) + x];
        set
        {
            if (x >= 0 && x < Across && y >= 0 && y < Down)
                dots[(y * Across) + x] = value;
        }
    }

    /// <summary>The character of a cell; null where it holds no dot.</summary>
    public char? At(int column, int row)
    {
        var code = 0;
        for (var i = 0; i < 8; i++)
        {
            if (this[(2 * column) + (i % 2), (4 * row) + (i / 2)])
                code |= Bits[i];
        }

        return code == 0 ? null : (char)(0x2800 + code);
    }
}
