using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Solids;

/// <summary>A hole through a plate. Its axis passes through a place on the lower face; z of the direction is above zero.</summary>
/// <param name="Direction">Of the axis, any length; (0, 0, 1): square.</param>
/// <param name="Outline">About the axis, in a plane square to it.</param>
public sealed record ThroughHole(Vector2 Place, Vector3 Direction, Profile Outline)
{
    public static ThroughHole Round(Vector2 place, double diameter) => new(place, new(0, 0, 1), Profile.Circle(default, 0.5 * diameter));

    public static ThroughHole Round(Vector2 place, double diameter, Vector3 direction) => new(place, direction, Profile.Circle(default, 0.5 * diameter));

    /// <summary>x of the outline: along the lean, or along x of the plate for a square hole.</summary>
    internal Axes Axes
    {
        get
        {
            var z = Direction.Unit();
            var lean = new Vector3(z.X, z.Y, 0);
            return Solids.Axes.Along(new(Place.X, Place.Y, 0), z, lean.Size > 1e-12 ? lean : new(1, 0, 0));
        }
    }

    /// <summary>Area of the opening in the plate's face.</summary>
    internal double Opening => Outline.Area / Direction.Unit().Z;
}

/// <summary>A flat piece with holes, each with its own axis: a plate, or a drill block with a tilted guide hole. Lengths m.</summary>
/// <remarks>The lower face is at z = 0, the upper at z = thickness.</remarks>
public sealed record DrilledPlate(Profile Outline, double Thickness, EquatableList<ThroughHole> Holes)
{
    /// <summary>Closed form: a cylinder through two parallel faces takes its opening times the thickness, whatever its lean.</summary>
    public double Volume => Thickness * (Outline.Area - Holes.Sum(h => h.Opening));

    /// <summary>Least material between a hole's opening and the outline or another hole's, on either face; below zero when they meet.</summary>
    /// <remarks>Looked at on 180 places of each round outline.</remarks>
    public double LeastWall
    {
        get
        {
            var least = double.PositiveInfinity;
            foreach (var z in (double[])[0, Thickness])
            {
                var openings = Holes.Select(h => Opening(h, z)).ToList();
                for (var i = 0; i < openings.Count; i++)
                {
                    least = Math.Min(least, openings[i].Min(p => IsInside(p) ? Outline.DistanceTo(p) : -Outline.DistanceTo(p)));
                    for (var k = 0; k < i; k++)
                    {
                        var (one, other) = (Holes[i], Holes[k]);
                        var near = openings[i].Min(p => openings[k].Min(q => (p - q).Size));
                        var meet = openings[k].Any(q => Covers(one, q, z)) || openings[i].Any(p => Covers(other, p, z));
                        least = Math.Min(least, meet ? -near : near);
                    }
                }
            }

            return least;
        }
    }

    public Solid Build()
    {
        if (!(Thickness > 0) || !(LeastWall > 0))
            throw new InvalidOperationException("The plate can't be made: it has no thickness, or a hole meets its edge or another hole.");
        var make = new SolidBuilder();
        Axes upper = Axes.World.At(new(0, 0, Thickness)), lower = Axes.World.Flipped();
        Ring low = make.Ring(Axes.World, Outline, lower), high = make.Ring(Axes.World, Outline, upper);
        make.Connect(low, high);
        int top = make.Cap(upper, high), bottom = make.Cap(lower, low);
        foreach (var hole in Holes)
        {
            Ring below = make.Ring(hole.Axes, hole.Outline, lower), above = make.Ring(hole.Axes, hole.Outline, upper);
            make.Connect(below, above, inward: true);
            make.Hole(bottom, below);
            make.Hole(top, above);
        }

        return make.Build();
    }

    private static List<Vector2> Opening(ThroughHole hole, double z)
    {
        var axes = hole.Axes;
        var points = new List<Vector2>();
        foreach (var stretch in hole.Outline.Stretches)
        {
            var count = stretch.IsArc ? 45 : 8;
            for (var i = 0; i < count; i++)
            {
                var p = axes.Point(stretch.At(i / (double)count));
                var along = (z - p.Z) / axes.Z.Z;
                points.Add(new(p.X + (along * axes.Z.X), p.Y + (along * axes.Z.Y)));
            }
        }

        return points;
    }

    private static bool Covers(ThroughHole hole, Vector2 place, double z)
    {
        var (x, y, _) = hole.Axes.Of(new(place.X, place.Y, z));
        return IsInside(hole.Outline, new(x, y));
    }

    private bool IsInside(Vector2 place) => IsInside(Outline, place);

    private static bool IsInside(Profile outline, Vector2 place)
    {
        // Winding of the sampled outline about the place; arcs turn a quarter at most, so 16 chords each are plenty.
        var turned = 0.0;
        foreach (var stretch in outline.Stretches)
        {
            var count = stretch.IsArc ? 16 : 1;
            for (var i = 0; i < count; i++)
            {
                Vector2 a = stretch.At(i / (double)count) - place, b = stretch.At((i + 1) / (double)count) - place;
                turned += Math.Atan2(Vector2.Cross(a, b), Vector2.Dot(a, b));
            }
        }

        return turned > Math.PI;
    }
}
