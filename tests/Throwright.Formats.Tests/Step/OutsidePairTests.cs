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
        // The area of contact: the wedge's tilted face has all of its area in common with the sheet's.
        script.Append("exit\n");
        folder.Put("run.tcl", Encoding.ASCII.GetBytes(script.ToString()));
        var (_, said) = OutsideReaders.Run(draw, folder.Place, ["-b", "-f", "run.tcl"], OutsideReaders.OcctLibraries(folder.Place));
        var blocks = said.Split("@@")[1..];
        Assert.True(blocks.Length == pairs.Length, said);
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
