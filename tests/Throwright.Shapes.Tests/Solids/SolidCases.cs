using Throwright.Shapes.Solids;

namespace Throwright.Shapes.Tests.Solids;

/// <summary>Bodies of every kind, with the closed form of their volume (m^3) and the number of holes through them.</summary>
internal sealed record SolidCase(string Name, Solid Solid, double Volume, int ThroughHoles)
{
    public override string ToString() => Name;
}

internal static class SolidCases
{
    public const double Mm = 1e-3;
    public const double Degree = Math.PI / 180;

    /// <summary>The worked washer: 12.5 deg, outside 32, bore 11.2, thin edge 1.5 mm.</summary>
    public static WedgeWasher Worked { get; } = new(12.5 * Degree, 32 * Mm, 11.2 * Mm, 1.5 * Mm);

    public static WedgeWasher Keyed { get; } = Worked with { Chamfer = 0.5 * Mm, Pin = new(0.2 * Mm, 11 * Mm, 3 * Mm, 2 * Mm) };

    public static WedgeWasher Flatted { get; } = Worked with { BoreFlat = 4.5 * Mm, FlatDirection = 30 * Degree };

    /// <summary>A block 50 x 30 x 20 with a guide hole at 12.5 deg and two pin holes.</summary>
    public static DrilledPlate Block { get; } = new(
        Profile.Rectangle(default, 50 * Mm, 30 * Mm),
        20 * Mm,
        [
            ThroughHole.Round(new(-2 * Mm, 0), 9.5 * Mm, new(Math.Sin(12.5 * Degree), 0, Math.Cos(12.5 * Degree))),
            ThroughHole.Round(new(-18 * Mm, 0), 3.2 * Mm),
            ThroughHole.Round(new(18 * Mm, 0), 3.2 * Mm),
        ]);

    public static DrilledPlate Plate { get; } = new(
        Profile.Rectangle(default, 60 * Mm, 40 * Mm, 5 * Mm),
        1.6 * Mm,
        [new(new(0, 0), new(0, 0, 1), Profile.Slot(default, 9.9 * Mm, 10.49 * Mm, 25 * Degree)), ThroughHole.Round(new(20 * Mm, 10 * Mm), 4 * Mm)]);

    /// <summary>A bracket of 1.6 sheet, radius 4.8, legs 40 and 30 from the tangent lines, 30 wide.</summary>
    public static BentSheet Bracket(double bend) => new(
        [40 * Mm, 30 * Mm], [new(bend, 4.8 * Mm)], 30 * Mm, 1.6 * Mm, 4 * Mm,
        [
            new(0, 12 * Mm, 5 * Mm, Profile.Circle(default, 2.1 * Mm)),
            new(0, 28 * Mm, 0, Profile.Slot(default, 4.2 * Mm, 9 * Mm, 20 * Degree)),
            new(1, 16 * Mm, -1 * Mm, Profile.Circle(default, 6.35 * Mm)),
        ]);

    /// <summary>With a second bend, the other way or the same, and a hole in each leg.</summary>
    public static BentSheet TwoBends(double first, double second, bool isBack, double top = 25) => new(
        [40 * Mm, 30 * Mm, top * Mm], [new(first, 4.8 * Mm), new(second, 3.2 * Mm, isBack)], 30 * Mm, 1.6 * Mm, 4 * Mm,
        [
            new(0, 12 * Mm, 5 * Mm, Profile.Circle(default, 2.1 * Mm)),
            new(1, 15 * Mm, -3 * Mm, Profile.Slot(default, 4.2 * Mm, 9 * Mm, 20 * Degree)),
            new(2, 12 * Mm, 2 * Mm, Profile.Circle(default, 3.2 * Mm)),
        ]);

    public static IReadOnlyList<SolidCase> All { get; } =
    [
        Of("wedge", Worked),
        Of("wedge half a degree", Worked with { Tilt = 0.5 * Degree }),
        Of("wedge 30 deg", Worked with { Tilt = 30 * Degree }),
        Of("wedge with pin hole", Worked with { Pin = Keyed.Pin }),
        Of("wedge with chamfers", Worked with { Chamfer = 0.5 * Mm }),
        Of("wedge with chamfers and pin hole", Keyed),
        Of("wedge with flat in the bore", Flatted),
        Of("drill block", Block),
        Of("plate", Plate),
        Of("bracket 90 deg", Bracket(90 * Degree)),
        Of("bracket 67 deg", Bracket(67 * Degree)),
        Of("bracket 120 deg", Bracket(120 * Degree)),
        Of("bracket Z", TwoBends(90 * Degree, 90 * Degree, isBack: true)),
        Of("bracket Z oblique", TwoBends(67 * Degree, 115 * Degree, isBack: true)),
        Of("bracket U", TwoBends(90 * Degree, 90 * Degree, isBack: false)),
        Of("bracket U open", TwoBends(70 * Degree, 60 * Degree, isBack: false)),
    ];

    private static SolidCase Of(string name, WedgeWasher washer) => new(name, washer.Build(), washer.Volume, washer.ThroughHoles);

    private static SolidCase Of(string name, DrilledPlate plate) => new(name, plate.Build(), plate.Volume, plate.Holes.Count);

    private static SolidCase Of(string name, BentSheet bracket) => new(name, bracket.Build(), bracket.Volume, bracket.ThroughHoles);
}
