using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain;

/// <summary>A curved sheet is held as a slab that its whole curve lies in.</summary>
public sealed class CurvedSheetClearanceTests
{
    private static Sheet Skin(double radius, SheetBulge bulges) => Panel with
    {
        Outline = [At(1000, -300, 500), At(1000, 300, 500), At(1000, 300, 900), At(1000, -300, 900)],
        Curve = new(Levers.Mm(radius), new(0, 0, 1), bulges),
    };

    [Fact]
    public void Rise_HoldsTheWholeCircle()
    {
        // 600 mm across, R 1000: over the whole width the circle rises 1000 - sqrt(1000^2 - 600^2) = 200 mm.
        Assert.Equal(0.200, CockpitScene.RiseOf(Skin(1000, SheetBulge.Away)), 9);
        Assert.Equal(0.600, CockpitScene.RiseOf(Skin(500, SheetBulge.Toward)), 9);
        Assert.Equal(0, CockpitScene.RiseOf(Panel));
    }

    [InlineData(SheetBulge.Away)]
    [InlineData(SheetBulge.Toward)]
    [Theory]
    public void Mover_BesideACurvedSheet_IsNeverFartherThanBesideTheFlat(SheetBulge bulges)
    {
        // A lever of 100 mm whose pivot is 150 mm aft of the face: its tip comes to 45 mm from the flat; the true skin may come 200 mm.
        Body lever = new()
        {
            Id = "lever",
            Joints = [new TurnJoint("lever", new(0, -1, 0), At(1150, 0, 600), Deg(0), Deg(90))],
            Parts = [new("bar", new CapsuleShape(At(1150, 0, 600), At(1150, 0, 700), Levers.Mm(5)))],
        };
        double Least(Sheet sheet) => CockpitCheck.Solve(Of(Handle("knob", 250, 850), lever) with { Sheets = [sheet] })!.Movers.Single().Lower;
        Assert.True(Least(Skin(1000, bulges)) <= 0);
        Assert.True(Least(Skin(1000, bulges) with { Curve = null }) > 0.04);
    }
}
