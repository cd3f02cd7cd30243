using CsCheck;
using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Tests.Frames.Laws;

public sealed class PoseTests
{
    private static readonly Vector3 X = new(1, 0, 0), Y = new(0, 1, 0), Z = new(0, 0, 1);

    [Fact]
    public void Turn_AQuarterAboutZ_TakesXToY()
    {
        Near(Y, Rotation.About(Z, Math.PI / 2) * X);
        Near(X, Rotation.About(Z, Math.PI / 2).Back(Y));
        // About a line beside the origin: the foot stays.
        Near(new(1, 1, 5), Pose.TurnAbout(X, Z, Math.PI / 2) * new Vector3(2, 0, 5));
        Near(new(1, 0, 3), Pose.TurnAbout(X, Z, 1.234) * new Vector3(1, 0, 3));
        Near(new(0, 0.5, 0), Pose.Slide(2 * Y, 0.5) * default(Vector3));
    }

    [Fact]
    public void Poses_OneAfterTheOther_AreTheirProduct()
    {
        Gen.Select(Place, Place, Gen.Double[-7, 7], Place, Place, Gen.Double[-7, 7], Place).Sample((o, a, p, o2, a2, q, x) =>
        {
            if (a.Size < 0.1 || a2.Size < 0.1)
                return;
            var outerFromMiddle = Pose.TurnAbout(o, a, p);
            var middleFromInner = Pose.TurnAbout(o2, a2, q);
            Near(outerFromMiddle * (middleFromInner * x), outerFromMiddle * middleFromInner * x);
            Near(x, outerFromMiddle.Inverse() * (outerFromMiddle * x));
            Near(x, outerFromMiddle.Back(outerFromMiddle * x));
            Assert.Equal((x - o).Size, ((outerFromMiddle * x) - o).Size, 1e-11);
        });
    }

    [Fact]
    public void Between_TwoDirections_TakesOneToTheOther()
    {
        Gen.Select(Place, Place).Sample((a, b) =>
        {
            if (a.Size > 0.1 && b.Size > 0.1)
                Near(b.Unit(), Rotation.Between(a, b) * a.Unit(), 1e-9);
        });
        Near(-X, Rotation.Between(X, -X) * X);
        Near(X, Rotation.Between(X, 2 * X) * X);
    }

    [Fact]
    public void Chain_FirstJoint_MovesEverythingAfterIt()
    {
        // A turntable that carries a slide along x: turned a quarter, the slide goes along y.
        var chain = new JointChain([Joint.Turn("table", default, Z, -2, 2), Joint.Slide("slide", X, 0, 1)]);
        Near(new(0, 0.7, 0), chain.At([Math.PI / 2, 0.7]) * default(Vector3));
        // The other way round the slide stays put.
        var other = new JointChain([Joint.Slide("slide", X, 0, 1), Joint.Turn("table", default, Z, -2, 2)]);
        Near(new(0.7, 0, 0), other.At([0.7, Math.PI / 2]) * default(Vector3));
        Assert.Throws<ArgumentException>(() => chain.At([0]));
        Assert.Equal(chain, JointChain.Fixed.Then(chain.Joints[0]).Then(chain.Joints[1]));
    }

    private static readonly Gen<Vector3> Place = Gen.Select(Gen.Double[-2, 2], Gen.Double[-2, 2], Gen.Double[-2, 2], (x, y, z) => new Vector3(x, y, z));

    private static void Near(Vector3 expected, Vector3 actual, double within = 1e-11) =>
        Assert.True((expected - actual).Size <= within, $"{expected} against {actual}");
}
