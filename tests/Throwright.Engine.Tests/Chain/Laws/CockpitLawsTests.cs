using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using static Throwright.Engine.Tests.Chain.Cockpits;

namespace Throwright.Engine.Tests.Chain.Laws;

public sealed class CockpitLawsTests
{
    private static readonly Gen<Aircraft> Scenes = Gen.Select(
        Gen.Double[1040, 1150], Gen.Double[-60, 20], Gen.Double[660, 760], Gen.Double[-20, 20], Gen.Double[-20, 20], Gen.Double[5, 25],
        (x, y, z, up, right, thick) => Of(
            Handle("a").WithEnd(e => e with
            {
                Knob = KnobShape.THandle,
                KnobSize = new() { Diameter = Levers.Mm(16), Width = Levers.Mm(70) },
                Turns = new(Deg(10), Deg(80)),
                Tilt = new(Deg(up), Deg(right)),
            }),
            Ball(x + 60, y, z),
            new Body
            {
                Id = "lever",
                Joints = [new TurnJoint("lean", new(0.2, 1, 0.1), At(x + 40, y, z - 200), Deg(-15), Deg(15))],
                Parts =
                [
                    new("bar", new CapsuleShape(At(x + 40, y, z - 200), At(x + 40, y, z - 40), Levers.Mm(thick))),
                    new("cap", new ConeShape(At(x + 40, y, z - 40), At(x + 40, y, z - 20), Levers.Mm(thick), Levers.Mm(0.5 * thick))),
                    new("box", new BoxShape(At(x + 40, y + 20, z - 100), Levers.Mm(20), Levers.Mm(30), Levers.Mm(40), new(1, 0.3, 0), new(0, 0.2, 1))),
                ],
            },
            new Body { Id = "floor", Parts = [new("floor", new PlaneShape(At(1000, 0, 600), new(0.1, 0, 1)))] }));

    private static (double Lower, double Upper)[] Distances(Aircraft aircraft) =>
        [.. CockpitCheck.Solve(aircraft)!.Clearance.Pairs.Select(p => (p.Lower, p.Upper))];

    [Fact]
    public void Aircraft_MovedAndTurnedAsAWhole_KeepsEveryClearance() =>
        Gen.Select(Scenes, Gen.Double[-3, 3], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-2, 2]).Sample(
            (aircraft, angle, ax, ay, shift) =>
            {
                var pose = Pose.Slide(new(1, 0.5, -0.3), shift) * Pose.TurnAbout(new(0.2, 0.1, 0), new(ax, ay, 0.7), angle);
                Same(Distances(aircraft), Distances(Moved(aircraft, pose)));
            },
            iter: 40);

    /// <summary>Left and right change places, and with them every turn; what is left-handed stays what it is only if all of it is turned round.</summary>
    [Fact]
    public void Aircraft_SeenInAMirror_KeepsEveryClearance() => Scenes.Sample(aircraft => Same(Distances(aircraft), Distances(Mirrored(aircraft))), iter: 40);

    /// <summary>Proved below, attained above: two searches of one scene can't contradict each other.</summary>
    private static void Same((double Lower, double Upper)[] one, (double Lower, double Upper)[] other)
    {
        Assert.Equal(one.Length, other.Length);
        foreach (var (a, b) in one.Zip(other))
        {
            Assert.True(a.Lower <= b.Upper + 1e-9 && b.Lower <= a.Upper + 1e-9, $"{a} {b}");
            if (a.Upper < 0.1)
                Assert.Equal(a.Upper, b.Upper, 2.1e-4);
        }
    }

    private static Aircraft Mirrored(Aircraft aircraft)
    {
        static PointAt P(PointAt p) => p with { Buttline = p.Buttline.At(-p.Buttline.Nominal.Metres) };
        static DirectionAt D(DirectionAt d) => d with { Right = -d.Right };
        // A turn about an axis becomes the turn the other way about the mirrored axis: the axis itself is mirrored and reversed.
        static DirectionAt Turned(DirectionAt d) => new(-d.Aft, d.Right, -d.Up);
        static PartShape Shape(PartShape s) => s switch
        {
            SphereShape b => b with { Centre = P(b.Centre) },
            CapsuleShape c => c with { From = P(c.From), To = P(c.To) },
            ConeShape c => c with { From = P(c.From), To = P(c.To) },
            BoxShape b => b with { Centre = P(b.Centre), Along = D(b.Along), Up = D(b.Up) },
            PlaneShape p => new PlaneShape(P(p.At), D(p.Normal)),
            _ => throw new NotSupportedException(),
        };
        return aircraft with
        {
            Bodies = aircraft.Bodies.Select(b => b with
            {
                Joints = b.Joints.Select(j => j switch
                {
                    SlideJoint s => s with { Axis = D(s.Axis) },
                    TurnJoint t => (BodyJoint)(t with { Axis = Turned(t.Axis), About = P(t.About) }),
                    _ => throw new NotSupportedException(),
                }).ToEquatableList(),
                Parts = b.Parts.Select(p => p with { Shape = Shape(p.Shape) }).ToEquatableList(),
            }).ToEquatableList(),
            Runs = aircraft.Runs.Select(r => r.WithEnd(e => e with
            {
                Hole = P(e.Hole!),
                Tilt = new(e.Tilt!.Up, new(-e.Tilt.Right.Radians)),
                Turns = new(e.Turns!.Right, e.Turns.Left),
            })).ToEquatableList(),
        };
    }
}
