using System.Globalization;
using Throwright.Shapes;

namespace Throwright.Formats.Drawing;

/// <summary>The name of a colour role, e.g. "ink". A drawing holds names only; a <see cref="Palette"/> says what they look like.</summary>
public sealed record Tone
{
    /// <param name="name">Lower-case letters, digits and hyphens, a letter first: it becomes a class name.</param>
    public Tone(string name)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        if (!char.IsAsciiLetterLower(name[0]) || name.Any(c => !char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-'))
            throw new ArgumentException($"\"{name}\" is not a tone name (a-z, 0-9 and hyphens, a letter first).", nameof(name));
        Name = name;
    }

    public string Name { get; }

    public override string ToString() => Name;
}

/// <summary>A colour of the screen or of a printer, 8 bits each.</summary>
public readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    /// <summary>Reads "#rrggbb".</summary>
    public static Colour FromHex(string hex)
    {
        if (hex.Length != 7 || hex[0] != '#' || !int.TryParse(hex.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
            throw new ArgumentException($"\"{hex}\" is not a colour written #rrggbb.", nameof(hex));
        return new((byte)(value >> 16), (byte)(value >> 8), (byte)value);
    }

    /// <summary>Hue in degrees, 0 = red, 120 = green, 240 = blue; NaN for a grey.</summary>
    public double Hue
    {
        get
        {
            double r = Red, g = Green, b = Blue, most = Math.Max(r, Math.Max(g, b)), span = most - Math.Min(r, Math.Min(g, b));
            if (span == 0)
                return double.NaN;
            var sixth = most == r ? (g - b) / span : most == g ? 2 + ((b - r) / span) : 4 + ((r - g) / span);
            return 60 * (sixth < 0 ? sixth + 6 : sixth);
        }
    }

    /// <summary>0 for a grey, 1 for a pure colour.</summary>
    public double Saturation
    {
        get
        {
            double most = Math.Max(Red, Math.Max(Green, Blue)), least = Math.Min(Red, Math.Min(Green, Blue));
            return most == 0 ? 0 : (most - least) / most;
        }
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");
}

/// <summary>What each tone looks like.</summary>
public sealed record Palette(EquatableList<(Tone Tone, Colour Colour)> Entries)
{
    public Colour this[Tone tone]
    {
        get
        {
            foreach (var (name, colour) in Entries)
            {
                if (name == tone)
                    return colour;
            }

            throw new ArgumentException($"The palette has no tone \"{tone}\".", nameof(tone));
        }
    }
}
