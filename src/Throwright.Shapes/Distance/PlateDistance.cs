using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Distance;

/// <summary>A flat sheet with holes, as far as its distance from points goes.</summary>
public static class PlateDistance
{
    /// <summary>
    /// Distance of a point from a sheet of half its thickness to each side of a flat outline, holes left out; below zero inside.
    /// The edges are taken round, so that at them it may say up to half the thickness too little.
    /// </summary>
    /// <remarks>
    /// From the flat itself: straight down where the foot lies on the sheet, else to the rim of the hole or to the nearest edge. Exact for
    /// holes inside the outline that don't overlap, so it grows no faster than the point moves.
    /// </remarks>
    /// <param name="outline">Corners in turn, on the middle of the sheet; brought into the plane through the first square to the normal.</param>
    public static Func<Vector3, double> Of(IReadOnlyList<Vector3> outline, Vector3 normal, double thickness, IReadOnlyList<(Vector3 Middle, double Radius)> holes)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(holes);
        if (outline.Count < 3)
            throw new ArgumentException("three corners or more", nameof(outline));
        var n = normal.Unit();
        var x = Rotation.SquareTo(n);
        var y = Vector3.Cross(n, x);
        var through = outline[0];
        (double U, double V) Flat(Vector3 p) => (Vector3.Dot(p - through, x), Vector3.Dot(p - through, y));
        var corners = outline.Select(Flat).ToArray();
        var rims = holes.Select(h => (Middle: Flat(h.Middle), h.Radius)).ToArray();
        return p =>
        {
            var foot = Flat(p);
            var across = 0.0;
            if (!Holds(corners, foot))
            {
                across = ToEdge(corners, foot);
            }
            else
            {
                foreach (var (middle, radius) in rims)
                {
                    double u = foot.U - middle.U, v = foot.V - middle.V;
                    across = Math.Max(across, radius - Math.Sqrt((u * u) + (v * v)));
                }
            }

            var off = Vector3.Dot(p - through, n);
            return Math.Sqrt((off * off) + (across * across)) - (0.5 * thickness);
        };
    }

    /// <summary>Whether a ray from the point crosses the outline an odd number of times.</summary>
    private static bool Holds((double U, double V)[] corners, (double U, double V) p)
    {
        var inside = false;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            var (a, b) = (corners[i], corners[j]);
            if ((a.V > p.V) != (b.V > p.V) && p.U < a.U + ((b.U - a.U) * (p.V - a.V) / (b.V - a.V)))
                inside = !inside;
        }

        return inside;
    }

    private static double ToEdge((double U, double V)[] corners, (double U, double V) p)
    {
        var least = double.PositiveInfinity;
        for (int i = 0, j = corners.Length - 1; i < corners.Length; j = i++)
        {
            double u = corners[i].U - corners[j].U, v = corners[i].V - corners[j].V, square = (u * u) + (v * v);
            var part = square > 0 ? Math.Clamp((((p.U - corners[j].U) * u) + ((p.V - corners[j].V) * v)) / square, 0, 1) : 0;
            double du = p.U - corners[j].U - (part * u), dv = p.V - corners[j].V - (part * v);
            least = Math.Min(least, (du * du) + (dv * dv));
        }

        return Math.Sqrt(least);
    }
}
