using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Solids;

/// <summary>A straight line or an arc between two nodes of a profile, m and rad.</summary>
/// <param name="Centre">Of an arc; null: straight.</param>
/// <param name="StartAngle">Direction from the centre to the start.</param>
/// <param name="Sweep">Angle turned, anticlockwise positive.</param>
public sealed record Stretch(Vector2 From, Vector2 To, Vector2? Centre = null, double Radius = 0, double StartAngle = 0, double Sweep = 0)
{
    public bool IsArc => Centre is not null;

    public Vector2 At(double share) => Centre is { } centre
        ? centre + Vector2.Polar(Radius, StartAngle + (share * Sweep))
        : From + (share * (To - From));

    public double Length => IsArc ? Radius * Math.Abs(Sweep) : (To - From).Size;

    /// <summary>Least distance of a place from this stretch.</summary>
    public double DistanceTo(Vector2 place)
    {
        if (Centre is { } centre)
        {
            var out_ = place - centre;
            var turned = Math.Atan2(out_.Y, out_.X) - StartAngle;
            turned -= 2 * Math.PI * Math.Floor(turned / (2 * Math.PI));
            var within = Sweep >= 0 ? turned <= Sweep : (2 * Math.PI) - turned <= -Sweep;
            if (within)
                return Math.Abs(out_.Size - Radius);
        }
        else
        {
            var along = To - From;
            var share = Vector2.Dot(place - From, along) / Vector2.Dot(along, along);
            if (share is > 0 and < 1)
                return Math.Abs(Vector2.Cross(along, place - From)) / along.Size;
        }

        return Math.Min((place - From).Size, (place - To).Size);
    }
}

/// <summary>A closed outline of straight lines and arcs, anticlockwise; no arc turns more than a quarter.</summary>
public sealed record Profile
{
    private Profile(EquatableList<Stretch> stretches) => Stretches = stretches;

    public EquatableList<Stretch> Stretches { get; }

    /// <summary>Area by Green's theorem, exact for lines and arcs.</summary>
    public double Area => Stretches.Sum(s => 0.5 * Vector2.Cross(s.From, s.To) + (s.IsArc ? 0.5 * s.Radius * s.Radius * (s.Sweep - Elementary.Sin(s.Sweep)) : 0));

    public double Perimeter => Stretches.Sum(s => s.Length);

    /// <summary>Area times the centroid's place.</summary>
    public Vector2 Moment
    {
        get
        {
            var sum = default(Vector2);
            foreach (var s in Stretches)
            {
                // Triangle from the origin, then the cap between chord and arc.
                sum += Vector2.Cross(s.From, s.To) / 6 * (s.From + s.To);
                if (s.Centre is not { } centre)
                    continue;
                var cap = 0.5 * s.Radius * s.Radius * (s.Sweep - Elementary.Sin(s.Sweep));
                var half = Elementary.Sin(0.5 * s.Sweep);
                var reach = 2.0 / 3 * s.Radius * s.Radius * s.Radius * half * half * half;
                sum += (cap * centre) + Vector2.Polar(reach, s.StartAngle + (0.5 * s.Sweep));
            }

            return sum;
        }
    }

    public double DistanceTo(Vector2 place) => Stretches.Min(s => s.DistanceTo(place));

    public Profile Moved(Vector2 by) => new(Stretches.Select(s => s with { From = s.From + by, To = s.To + by, Centre = s.Centre + by }).ToEquatableList());

    /// <summary>A circle in four quarters; the first node in direction <paramref name="first"/>, rad.</summary>
    public static Profile Circle(Vector2 centre, double radius, double first = 0) => Close([Arc(centre, radius, first, 2 * Math.PI)]);

    /// <summary>A circle cut by a straight line at a distance from its centre, square to a direction (rad).</summary>
    public static Profile FlattedCircle(Vector2 centre, double radius, double toFlat, double direction)
    {
        if (!(toFlat > 0 && toFlat < radius))
            throw new ArgumentOutOfRangeException(nameof(toFlat), toFlat, "a flat lies between the centre and the circle");
        var half = Math.Acos(toFlat / radius);
        return Close([Arc(centre, radius, direction + half, 2 * (Math.PI - half))]);
    }

    /// <summary>A rectangle about a centre, its corners rounded; corner 0: sharp.</summary>
    public static Profile Rectangle(Vector2 centre, double width, double height, double corner = 0)
    {
        double x = 0.5 * width, y = 0.5 * height;
        if (!(width > 0 && height > 0 && corner >= 0 && corner < Math.Min(x, y)))
            throw new ArgumentOutOfRangeException(nameof(corner), corner, "a corner is smaller than half the shorter side");
        Vector2[] at = [new(x, -y), new(x, y), new(-x, y), new(-x, -y)];
        if (corner == 0)
            return Polygon([.. at.Select(p => centre + p)]);
        Vector2[] heart = [new(x - corner, corner - y), new(x - corner, y - corner), new(corner - x, y - corner), new(corner - x, corner - y)];
        return Close([.. Enumerable.Range(0, 4).Select(i => Arc(centre + heart[i], corner, (i - 1) * (Math.PI / 2), Math.PI / 2))]);
    }

    /// <summary>A slot with round ends; length overall, its long side in a direction (rad).</summary>
    public static Profile Slot(Vector2 centre, double width, double length, double direction)
    {
        if (!(width > 0 && length > width))
            throw new ArgumentOutOfRangeException(nameof(length), length, "a slot is longer than wide");
        var reach = Vector2.Polar(0.5 * (length - width), direction);
        return Close([
            Arc(centre + reach, 0.5 * width, direction - (Math.PI / 2), Math.PI),
            Arc(centre - reach, 0.5 * width, direction + (Math.PI / 2), Math.PI)]);
    }

    public static Profile Polygon(IReadOnlyList<Vector2> corners) =>
        Close([.. Enumerable.Range(0, corners.Count).Select(i => new Stretch(corners[i], corners[(i + 1) % corners.Count]))]);

    /// <summary>An arc; its ends are what the angles give.</summary>
    public static Stretch Arc(Vector2 centre, double radius, double from, double sweep) =>
        new(centre + Vector2.Polar(radius, from), centre + Vector2.Polar(radius, from + sweep), centre, radius, from, sweep);

    /// <summary>Joins stretches with straight lines where their ends do not meet, and cuts arcs into quarters at most.</summary>
    public static Profile Close(IReadOnlyList<Stretch> parts)
    {
        const double Same = 1e-12;
        var pieces = new List<Stretch>();
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            if (part.Centre is { } centre)
            {
                var count = Math.Max(1, (int)Math.Ceiling((Math.Abs(part.Sweep) / (Math.PI / 2)) - 1e-9));
                for (var k = 0; k < count; k++)
                    pieces.Add(Arc(centre, part.Radius, part.StartAngle + (part.Sweep * k / count), part.Sweep / count));
            }
            else
            {
                pieces.Add(part);
            }

            var next = parts[(i + 1) % parts.Count].From;
            if ((next - pieces[^1].To).Size > Same)
                pieces.Add(new(pieces[^1].To, next));
        }

        // One place per node: the end of a piece is the start of the next, to the last bit.
        for (var i = 0; i < pieces.Count; i++)
            pieces[i] = pieces[i] with { To = pieces[(i + 1) % pieces.Count].From };
        return pieces.Count < 2 || pieces.Any(p => !(p.Length > Same))
            ? throw new ArgumentException("A profile is a closed line of at least two pieces, none of them a point.", nameof(parts))
            : new(pieces.ToEquatableList());
    }
}
