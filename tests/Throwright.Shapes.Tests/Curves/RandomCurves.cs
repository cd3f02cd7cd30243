using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves;

/// <summary>Seeded problems: chord 1, tangents within an angle of the chord, length 1.02 to 1.6.</summary>
internal static class RandomCurves
{
    public static ElasticProblem Problem(int number, bool planar, double within = Math.PI / 2, double shortest = 1.02, double longest = 1.6)
    {
        var random = new CounterRandom(99, number);
        return new()
        {
            Start = new(0, 0, 0),
            StartDirection = Direction(random, 0, planar, within),
            End = new(1, 0, 0),
            EndDirection = Direction(random, 2, planar, within),
            Length = shortest + ((longest - shortest) * random.Uniform(4)),
        };
    }

    public static Vector3 Direction(CounterRandom random, int position, bool planar, double within)
    {
        double u = random.Uniform(position), turn = planar ? 0 : 2 * Math.PI * random.Uniform(position + 1);
        var angle = planar ? within * ((2 * u) - 1) : Math.Acos(1 - (u * (1 - Math.Cos(within))));
        return new(Math.Cos(angle), Math.Sin(angle) * Math.Cos(turn), Math.Sin(angle) * Math.Sin(turn));
    }
}
