using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Solids;

/// <summary>Volume (m^3), surface (m^2) and centroid (m) of a body, from its boundary.</summary>
/// <remarks>
/// Volume = 1/3 of the integral of x . n over the boundary, centroid from x_i^2 n_i / 2 (divergence theorem). Each face
/// integral becomes one round its loops (Green): the integrand is a polynomial in q, done exactly by four Gauss points
/// from q = 0, and smooth along each edge, done by <see cref="Points"/> Gauss points to the last bits of a double.
/// </remarks>
public sealed record Measure(double Volume, double Surface, Vector3 Centroid)
{
    private const int Points = 20;

    private static readonly (double At, double Weight)[] Along = GaussPoints(Points), Inside = GaussPoints(4);

    public static Measure Of(Solid solid)
    {
        double volume = 0, surface = 0;
        var moment = default(Vector3);
        foreach (var face in solid.Faces)
        {
            volume += OfFace(solid, face, (x, n) => Vector3.Dot(x, n)) / 3;
            surface += Math.Abs(AreaOf(solid, face));
            moment += new Vector3(
                OfFace(solid, face, (x, n) => 0.5 * x.X * x.X * n.X),
                OfFace(solid, face, (x, n) => 0.5 * x.Y * x.Y * n.Y),
                OfFace(solid, face, (x, n) => 0.5 * x.Z * x.Z * n.Z));
        }

        return new(volume, surface, 1 / volume * moment);
    }

    /// <summary>Area of a face, m^2: positive when its loops run anticlockwise against the surface's own normal.</summary>
    public static double AreaOf(Solid solid, Face face) => OfFace(solid, face, (_, n) => n.Size);

    /// <summary>The same within one loop.</summary>
    public static double AreaOf(Solid solid, Face face, Loop loop) => OfLoop(solid, face, loop, (_, n) => n.Size);

    private static double OfFace(Solid solid, Face face, Func<Vector3, Vector3, double> of) => face.Loops.Sum(l => OfLoop(solid, face, l, of));

    private static double OfLoop(Solid solid, Face face, Loop loop, Func<Vector3, Vector3, double> of)
    {
        var surface = face.Surface;
        var sum = 0.0;
        foreach (var use in loop.Uses)
        {
            var edge = solid.Edges[use.Edge];
            var half = 0.5 * (edge.End - edge.Start);
            foreach (var (at, weight) in Along)
            {
                var t = edge.Start + (half * (1 + at));
                var point = edge.Curve.At(t);
                var (p, q) = surface.Of(point);
                var rate = surface.Rates(point, edge.Curve.SlopeAt(t)).P;
                var strip = 0.0;
                foreach (var (inside, share) in Inside)
                {
                    var s = 0.5 * q * (1 + inside);
                    strip += 0.5 * q * share * of(surface.At(p, s), surface.AreaAt(p, s));
                }

                sum -= (use.Forward ? 1 : -1) * half * weight * rate * strip;
            }
        }

        return sum;
    }

    /// <summary>Gauss-Legendre points on -1..1 by Newton's method on the polynomial of degree n.</summary>
    private static (double At, double Weight)[] GaussPoints(int n)
    {
        var points = new (double At, double Weight)[n];
        for (var i = 0; i < n; i++)
        {
            var x = Math.Cos(Math.PI * (i + 0.75) / (n + 0.5));
            double slope = 1;
            for (var round = 0; round < 8; round++)
            {
                double below = 1, value = x;
                for (var k = 2; k <= n; k++)
                    (below, value) = (value, ((((2 * k) - 1) * x * value) - ((k - 1) * below)) / k);
                slope = n * ((x * value) - below) / ((x * x) - 1);
                x -= value / slope;
            }

            points[i] = (x, 2 / ((1 - (x * x)) * slope * slope));
        }

        return points;
    }
}
