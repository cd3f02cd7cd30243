using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Throwright.Formats.Step;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.Tests.Step;

/// <summary>Open CASCADE puts two wedges, the sheet and the shank together: nothing shares room, the faces meet.</summary>
public partial class OutsidePairTests
{
    private const double Mm = 1e-3, Tilt = 12.5 * Math.PI / 180, Sheet = 1.6 * Mm, Shank = 9.5 * Mm, Clearance = 0.4 * Mm;

    /// <summary>The places of the parts are worked out here, apart from the program: half a turn about the line of equal thickness gives the second wedge.</summary>
    [Fact]
    public void Occt_ThePairOnItsSheet_SharesNoRoomAndMeetsTheFaces()
    {
        var draw = OutsideReaders.Find("occt-draw", "occt-draw");
        double sin = Math.Sin(Tilt), cos = Math.Cos(Tilt), tan = sin / cos, shift = 0.5 * Sheet * tan;
        var washer = new WedgeWasher(Tilt, 32 * Mm, Shank + Clearance, 1.5 * Mm);
        var wedge = washer.Build();
        Axes front = new(new(shift, 0, 0.5 * Sheet), new(-cos, 0, sin), new(0, -1, 0), new(sin, 0, cos)), back = Turned(front);
        var sheet = new DrilledPlate(
            Profile.Rectangle(default, 46 * Mm, 46 * Mm), Sheet, [new(default, new(0, 0, 1), Profile.Slot(default, Shank + Clearance, (Shank / cos) + (Sheet * tan) + Clearance, 0))]);
        var shank = new SolidBuilder();
        var along = Axes.Along(default, new(sin, 0, cos), new(cos, 0, -sin));
        Axes low = along.At(along.Point(0, 0, -20 * Mm)), high = along.At(along.Point(0, 0, 20 * Mm));
        Ring one = shank.Ring(along, Profile.Circle(default, 0.5 * Shank), low), two = shank.Ring(along, Profile.Circle(default, 0.5 * Shank), high);
        shank.Connect(one, two);
        shank.Cap(low.Flipped(), one);
        shank.Cap(high, two);
        (string Name, Solid Solid)[] parts =
        [
            ("front", wedge.Placed(front)), ("back", wedge.Placed(back)), ("sheet", sheet.Build().Placed(Axes.World.At(new(0, 0, -0.5 * Sheet)))), ("shank", shank.Build()),
        ];
        using var folder = new OutsideReaders.Folder();
        var script = new StringBuilder("pload MODELING XDE\n");
        foreach (var (name, solid) in parts)
        {
            folder.Put($"{name}.step", Encoding.ASCII.GetBytes(StepWriter.Write(solid, StepTests.Head)));
            script.Append(CultureInfo.InvariantCulture, $"stepread {name}.step {name} *\nrenamevar {name}_1 {name}\n");
        }

        (string, string)[] pairs = [("front", "sheet"), ("back", "sheet"), ("front", "back"), ("front", "shank"), ("back", "shank"), ("sheet", "shank")];
        foreach (var (a, b) in pairs)
            script.Append(CultureInfo.InvariantCulture, $"puts \"@@{a} {b}\"\nbcommon c {a} {b}\nputs [vprops c 1e-9]\ndistmini d {a} {b}\nputs \"distance [dval d_val]\"\n");
        // The area of contact: each wedge pressed a thousandth of a millimetre into the sheet shares its seat's area times that.
        const double press = 1e-3;
        foreach (var (name, by) in ((string, double)[])[("front", -press), ("back", press)])
            script.Append(CultureInfo.InvariantCulture, $"puts \"@@{name} seat\"\ntcopy {name} p\nttranslate p 0 0 {by}\nbcommon c p sheet\nputs [vprops c 1e-9]\n");
        script.Append("exit\n");
        folder.Put("run.tcl", Encoding.ASCII.GetBytes(script.ToString()));
        var (_, said) = OutsideReaders.Run(draw, folder.Place, ["-b", "-f", "run.tcl"], OutsideReaders.OcctLibraries(folder.Place));
        var blocks = said.Split("@@")[1..];
        Assert.True(blocks.Length == pairs.Length + 2, said);
        var gap = Clearance / 2 * 1000;
        // Wedge to shank: the radial clearance; sheet to shank: its share square to the shank (docs/theory/make.md, section 5).
        double[] distances = [0, 0, 1.6, gap, gap, gap * cos];
        for (var i = 0; i < pairs.Length; i++)
        {
            var volume = Mass().Match(blocks[i]) is { Success: true } m ? double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) : 0;
            Assert.True(Math.Abs(volume) < 1e-6, $"{pairs[i]} share {volume} mm3: {blocks[i]}");
            var distance = double.Parse(Distance().Match(blocks[i]).Groups[1].Value, CultureInfo.InvariantCulture);
            Assert.True(Math.Abs(distance - distances[i]) < 2e-5, $"{pairs[i]}: {distance} mm, expected {distances[i]}");
        }

        // All of the wedge's face but what lies over the sheet's hole.
        var contact = ContactArea(washer, shift * 1000, (Shank + Clearance) * 1000, ((Shank / cos) + (Sheet * tan) + Clearance) * 1000);
        var seat = Math.PI * ((16 * 16) - Math.Pow(0.5 * washer.Bore * 1000, 2)) / cos;
        Assert.InRange(contact, 0.99 * seat, seat);
        foreach (var block in blocks[pairs.Length..])
        {
            var area = double.Parse(Mass().Match(block).Groups[1].Value, CultureInfo.InvariantCulture) / press;
            Assert.True(Math.Abs(area - contact) < 0.02, $"seat of {area} mm2, expected {contact}: {block}");
        }
    }

    /// <summary>By strips across the tilt, mm2: the rim's ellipse less whatever the bore's ellipse and the slot cover together.</summary>
    private static double ContactArea(WedgeWasher washer, double shift, double width, double length)
    {
        double big = 500 * washer.Outside, small = 500 * washer.Bore, cos = Math.Cos(Tilt), area = 0;
        const int strips = 200_000;
        for (var i = 0; i < strips; i++)
        {
            var y = big * ((2 * (i + 0.5) / strips) - 1);
            double Half(double radius) => Math.Abs(y) < radius ? Math.Sqrt((radius * radius) - (y * y)) : 0;
            var hole = new List<(double From, double To)>();
            if (Half(small) > 0)
                hole.Add((shift - (Half(small) / cos), shift + (Half(small) / cos)));
            if (Half(0.5 * width) > 0)
                hole.Add(((0.5 * (width - length)) - Half(0.5 * width), (0.5 * (length - width)) + Half(0.5 * width)));
            // Both reach over the middle, so together they are one stretch.
            var open = hole.Count == 0 ? 0 : hole.Max(h => h.To) - hole.Min(h => h.From);
            area += ((2 * Half(big) / cos) - open) * (2 * big / strips);
        }

        return area;
    }

    /// <summary>Half a turn about y.</summary>
    private static Axes Turned(Axes a)
    {
        static Vector3 Turn(Vector3 v) => new(-v.X, v.Y, -v.Z);
        return new(Turn(a.Origin), Turn(a.X), Turn(a.Y), Turn(a.Z));
    }

    [GeneratedRegex(@"Mass\s*:\s*([0-9.eE+-]+)")]
    private static partial Regex Mass();

    [GeneratedRegex(@"distance\s+([0-9.eE+-]+)")]
    private static partial Regex Distance();
}
