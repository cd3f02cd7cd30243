using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Shapes.Tests.Solids;

public class AuditTests
{
    public static TheoryData<string> Names => [.. SolidCases.All.Select(c => c.Name)];

    /// <summary>Between them they have every kind of surface, hole and edge.</summary>
    public static TheoryData<string> Damaged => ["wedge with chamfers and pin hole", "wedge with flat in the bore", "bracket 67 deg"];

    private static SolidCase Case(string name) => SolidCases.All.Single(c => c.Name == name);

    /// <summary>The audit measures the boundary; the closed form knows nothing of it: they agree to 1e-12.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Solid_AsBuilt_HasNoDefectAndItsClosedFormVolume(string name)
    {
        var body = Case(name);
        Assert.Equal([], Audit.Find(body.Solid, body.Volume, body.ThroughHoles));
    }

    [Fact]
    public void FindsVolume_OffByAMillionth()
    {
        var body = Case("wedge");
        Assert.Equal(Defect.Volume, Assert.Single(Audit.Find(body.Solid, body.Volume * (1 + 1e-6))).Defect);
    }

    [Fact]
    public void FindsCount_AnotherNumberOfHoles() =>
        Assert.Equal(Defect.Count, Assert.Single(Audit.Find(Case("drill block").Solid, throughHoles: 2)).Defect);

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_TurnedInsideOut_IsFoundByItsVolume(string name)
    {
        // Every loop and every sense turned round, all consistent: only the sign of the volume is left to tell.
        var solid = Case(name).Solid;
        var faces = solid.Faces.Select(f => f with { Outward = !f.Outward, Loops = f.Loops.Select(Back).ToEquatableList() });
        Assert.Equal(Defect.Volume, Assert.Single(Audit.Find(solid with { Faces = faces.ToEquatableList() })).Defect);
    }

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_AnyFaceLeftOut_IsFound(string name)
    {
        var solid = Case(name).Solid;
        for (var i = 0; i < solid.Faces.Count; i++)
            Assert.Contains(Audit.Find(solid with { Faces = Without(solid.Faces, i) }), f => f.Defect == Defect.EdgeUse);
    }

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_AnyFaceSenseFlipped_IsFound(string name)
    {
        var solid = Case(name).Solid;
        for (var i = 0; i < solid.Faces.Count; i++)
        {
            var flipped = With(solid.Faces, i, solid.Faces[i] with { Outward = !solid.Faces[i].Outward });
            Assert.Contains(Audit.Find(solid with { Faces = flipped }), f => f.Defect == Defect.Sense);
        }
    }

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_AnyVertexMovedByANanometre_IsFound(string name)
    {
        var solid = Case(name).Solid;
        for (var i = 0; i < solid.Vertices.Count; i++)
        {
            var moved = With(solid.Vertices, i, solid.Vertices[i] + new Vector3(0, 0, 1e-9));
            Assert.Contains(Audit.Find(solid with { Vertices = moved }), f => f.Defect == Defect.VertexOff);
        }
    }

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_AnyLoopFlipped_IsFound(string name)
    {
        var solid = Case(name).Solid;
        for (var i = 0; i < solid.Faces.Count; i++)
        {
            for (var k = 0; k < solid.Faces[i].Loops.Count; k++)
            {
                var face = solid.Faces[i] with { Loops = With(solid.Faces[i].Loops, k, Back(solid.Faces[i].Loops[k])) };
                var found = Audit.Find(solid with { Faces = With(solid.Faces, i, face) });
                Assert.Contains(found, f => f.Defect == Defect.EdgeUse);
                Assert.Contains(found, f => f.Defect == Defect.Sense);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Damaged))]
    public void Solid_AnyRadiusAMicrometreOff_IsFound(string name)
    {
        var solid = Case(name).Solid;
        for (var i = 0; i < solid.Faces.Count; i++)
        {
            Surface? off = solid.Faces[i].Surface switch
            {
                Cylinder c => c with { Radius = c.Radius + 1e-6 },
                Cone c => c with { Slope = c.Slope * 1.001 },
                _ => null,
            };
            if (off is not null)
                Assert.Contains(Audit.Find(solid with { Faces = With(solid.Faces, i, solid.Faces[i] with { Surface = off }) }), f => f.Defect == Defect.EdgeOff);
        }
    }

    [Fact]
    public void Solid_HoleOutsideItsFace_IsFound()
    {
        // Built by hand past the check that refuses it: a hole beyond the edge of a plate.
        var make = new SolidBuilder();
        Axes upper = Axes.World.At(new(0, 0, 0.01)), lower = Axes.World.Flipped();
        var square = Profile.Rectangle(default, 0.02, 0.02);
        var hole = Profile.Circle(new(0.05, 0), 0.002);
        Ring a = make.Ring(Axes.World, square, lower), b = make.Ring(Axes.World, square, upper);
        Ring c = make.Ring(Axes.World, hole, lower), d = make.Ring(Axes.World, hole, upper);
        make.Connect(a, b);
        make.Connect(c, d, inward: true);
        make.Cap(upper, b, d);
        make.Cap(lower, a, c);
        Assert.Contains(Audit.Find(make.Build()), f => f.Defect == Defect.HoleOutside);
    }

    [Fact]
    public void Solid_TwoBodiesInOne_IsFound()
    {
        var one = new DrilledPlate(Profile.Rectangle(default, 0.02, 0.02), 0.01, []).Build();
        var two = new DrilledPlate(Profile.Rectangle(new(0.1, 0), 0.02, 0.02), 0.01, []).Build();
        var both = new Solid(
            one.Vertices.Concat(two.Vertices).ToEquatableList(),
            one.Edges.Concat(two.Edges.Select(e => e with { From = e.From + one.Vertices.Count, To = e.To + one.Vertices.Count })).ToEquatableList(),
            one.Faces.Concat(two.Faces.Select(f => f with
            {
                Loops = f.Loops.Select(l => new Loop(l.Uses.Select(u => u with { Edge = u.Edge + one.Edges.Count }).ToEquatableList())).ToEquatableList(),
            })).ToEquatableList());
        Assert.Contains(Audit.Find(both), f => f.Defect == Defect.Apart);
    }

    [Fact]
    public void Solid_NotANumber_IsFound()
    {
        var solid = Case("wedge").Solid;
        Assert.Contains(Audit.Find(solid with { Vertices = With(solid.Vertices, 3, new(double.NaN, 0, 0)) }), f => f.Defect == Defect.Degenerate);
    }

    private static Loop Back(Loop loop) => new(loop.Uses.Reverse().Select(SolidBuilder.Back).ToEquatableList());

    private static EquatableList<T> With<T>(EquatableList<T> list, int at, T item) => list.Select((x, i) => i == at ? item : x).ToEquatableList();

    private static EquatableList<T> Without<T>(EquatableList<T> list, int at) => list.Where((_, i) => i != at).ToEquatableList();
}
