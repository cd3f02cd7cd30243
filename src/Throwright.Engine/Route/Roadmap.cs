using Throwright.Shapes.Frames;

namespace Throwright.Engine.Route;

/// <summary>Straight legs through the free space whose corners can be rounded with the wanted radius.</summary>
/// <remarks>
/// Points of a Halton sequence (J. H. Halton, Numer. Math. 2 (1960) 84-90), points ahead of both ends and the permitted
/// places; each joined to its nearest ones where the leg is proved clear. A shortest way over directed legs, since what a
/// corner needs depends on the leg before it.
/// </remarks>
internal sealed class Roadmap
{
    private const int Neighbours = 14;
    private readonly RoutePlanCase of;
    private readonly FreeSpace space;
    private readonly double radius, room;
    private readonly List<Vector3> points = [];
    private readonly List<Leg>[] legs;
    private readonly List<double> worn = [];
    private readonly int starts, ends;

    /// <param name="radius">Of the corners.</param>
    /// <param name="room">Room that every leg has to spare.</param>
    public Roadmap(RoutePlanCase of, FreeSpace space, double radius, double room, int samples)
    {
        (this.of, this.space, this.radius, this.room) = (of, space, radius, room);
        // Points straight ahead of both ends come first: only they are joined to the ends.
        starts = Ahead(of.Start, of.StartAlong.Unit());
        ends = starts + Ahead(of.End, -of.EndAlong.Unit());
        foreach (var place in of.Places)
            Add(place.Point);
        // A search by samples would miss narrow holes.
        foreach (var opening in of.Openings)
        {
            foreach (var off in (ReadOnlySpan<double>)[-0.4, 0.4, -1, 1, -2, 2])
                Add(opening.Middle + (off * radius * opening.Through.Unit()));
        }

        Cone(of.Start, of.StartAlong.Unit());
        Cone(of.End, -of.EndAlong.Unit());
        var (low, high) = Box();
        for (int i = 1, tried = 0; points.Count < ends + samples && tried < 20 * samples; i++, tried++)
            Add(low + new Vector3(Halton(i, 2) * (high.X - low.X), Halton(i, 3) * (high.Y - low.Y), Halton(i, 5) * (high.Z - low.Z)));
        legs = new List<Leg>[points.Count];
        Join();
    }

    /// <summary>Corner points of the next way from the start to the end; null when there is none. Each call looks for another way round.</summary>
    public List<Vector3>? Next()
    {
        var way = Search();
        if (way is null)
            return null;
        for (var i = 0; i + 1 < way.Count; i++)
            worn[legs[way[i]].First(l => l.To == way[i + 1]).Number / 2] *= 1.6;
        return [of.Start, .. way.Select(i => points[i]), of.End];
    }

    /// <summary>Makes all legs near a curve dearer, so that the next way goes round the other side of something.</summary>
    public void Wear(PlannedCurve curve)
    {
        var near = Math.Max(radius, 0.1 * (of.End - of.Start).Size);
        var r = curve.Points;
        for (var i = 0; i < points.Count; i++)
        {
            foreach (var leg in legs[i])
            {
                if (leg.To < i)
                    continue;
                var middle = points[i] + (0.5 * leg.Length * leg.Along);
                for (var k = 0; k < r.Count; k += 2)
                {
                    if ((r[k] - middle).Size < near)
                    {
                        worn[leg.Number / 2] *= 1.3;
                        break;
                    }
                }
            }
        }
    }

    /// <summary>A leg in one direction; the same way back has the number next to it.</summary>
    private readonly record struct Leg(int To, double Length, Vector3 Along, int Number);

    private int Ahead(Vector3 from, Vector3 along)
    {
        var before = points.Count;
        foreach (var s in (ReadOnlySpan<double>)[0.15, 0.4, 0.8, 1.3, 2, 3, 4.5])
        {
            var to = from + (s * radius * along);
            if (!space.IsClear(from, to, Math.Min(room, 0)))
                break;
            points.Add(to);
        }

        return points.Count - before;
    }

    private void Cone(Vector3 from, Vector3 along)
    {
        var side = Math.Abs(along.X) < 0.7 ? Vector3.Cross(along, new(1, 0, 0)).Unit() : Vector3.Cross(along, new(0, 1, 0)).Unit();
        var other = Vector3.Cross(along, side);
        for (var ring = 1; ring <= 2; ring++)
        {
            for (var i = 0; i < 8; i++)
            {
                double turn = Math.PI * i / 4, out1 = 0.6 * ring;
                foreach (var far in (ReadOnlySpan<double>)[1.5, 3])
                    Add(from + (far * radius * (along + (out1 * Math.Cos(turn) * side) + (out1 * Math.Sin(turn) * other))));
            }
        }
    }

    private void Add(Vector3 p)
    {
        if (space.At(p) > room)
            points.Add(p);
    }

    private (Vector3 Low, Vector3 High) Box()
    {
        Vector3 a = of.Start, b = of.End;
        var more = Math.Max(0.35 * (b - a).Size, 4 * radius);
        return (
            new(Math.Min(a.X, b.X) - more, Math.Min(a.Y, b.Y) - more, Math.Min(a.Z, b.Z) - more),
            new(Math.Max(a.X, b.X) + more, Math.Max(a.Y, b.Y) + more, Math.Max(a.Z, b.Z) + more));
    }

    private static double Halton(int index, int basis)
    {
        double value = 0, part = 1.0 / basis;
        for (; index > 0; index /= basis, part /= basis)
            value += part * (index % basis);
        return value;
    }

    private void Join()
    {
        for (var i = 0; i < points.Count; i++)
            legs[i] = [];
        var order = new int[points.Count];
        var far = new double[points.Count];
        for (var i = 0; i < points.Count; i++)
        {
            for (var j = 0; j < points.Count; j++)
                (order[j], far[j]) = (j, (points[j] - points[i]).Size);
            Array.Sort(far, order);
            var joined = 0;
            for (var n = 0; n < order.Length && joined < Neighbours; n++)
            {
                var j = order[n];
                // Ahead of one end only the step to the free counts; two points ahead of the same end are one line.
                if (j == i || far[n] < 0.05 * radius || (i < starts && j < starts) || (i >= starts && i < ends && j >= starts && j < ends))
                    continue;
                joined++;
                if (legs[i].Any(l => l.To == j) || !space.IsClear(points[i], points[j], room))
                    continue;
                Add(i, j);
            }
        }

        // Each point ahead of an end also sees those ahead of the other, however far.
        for (var i = 0; i < starts; i++)
        {
            for (var j = starts; j < ends; j++)
            {
                var d = points[j] - points[i];
                if (d.Size < 0.05 * radius || legs[i].Any(l => l.To == j) || !space.IsClear(points[i], points[j], room))
                    continue;
                Add(i, j);
            }
        }
    }

    private void Add(int i, int j)
    {
        var d = points[j] - points[i];
        var length = d.Size;
        legs[i].Add(new(j, length, (1 / length) * d, 2 * worn.Count));
        legs[j].Add(new(i, length, (-1 / length) * d, (2 * worn.Count) + 1));
        worn.Add(1);
    }

    /// <summary>Shortest way over directed legs, the straight distance to the end as what is still to come (A*).</summary>
    private List<int>? Search()
    {
        const int ToEnd = -2;
        var queue = new PriorityQueue<int, double>();
        var states = new List<(int From, int Node, Vector3 Along, double Room, int Before, double Cost, int Slot)>();
        // A slot for each directed leg, each way out of the start and each way into the end.
        var best = new double[(2 * worn.Count) + points.Count + points.Count];
        Array.Fill(best, double.PositiveInfinity);
        for (var i = 0; i < starts; i++)
        {
            var leg = (points[i] - of.Start).Size;
            Push(-1, i, (1 / leg) * (points[i] - of.Start), leg, -1, leg, (2 * worn.Count) + i);
        }

        while (queue.TryDequeue(out var at, out _))
        {
            var here = states[at];
            if (here.Cost > best[here.Slot])
                continue;
            if (here.Node == ToEnd)
            {
                var way = new List<int>();
                for (var s = here.Before; s >= 0; s = states[s].Before)
                    way.Add(states[s].Node);
                way.Reverse();
                return way;
            }

            // The last leg, straight into the end.
            if (here.Node >= starts && here.Node < ends)
            {
                var d = of.End - points[here.Node];
                Turn(at, here.Node, here.Along, here.Room, here.Cost, ToEnd, d.Size, (1 / d.Size) * d, 1, (2 * worn.Count) + points.Count + here.Node);
            }

            foreach (var leg in legs[here.Node])
            {
                if (leg.To != here.From)
                    Turn(at, here.Node, here.Along, here.Room, here.Cost, leg.To, leg.Length, leg.Along, worn[leg.Number / 2], leg.Number);
            }
        }

        return null;

        void Turn(int at, int node, Vector3 before, double room, double cost, int to, double length, Vector3 along, double dearer, int slot)
        {
            // The arc takes R tan(turn/2) of both legs, and saves twice that less its own length.
            var cosine = Vector3.Dot(before, along);
            if (cosine < -0.74)
                return;
            var tangent = radius * Math.Sqrt(Math.Max(0, 1 - cosine) / (1 + cosine));
            if (tangent > room || tangent > length)
                return;
            var arc = 2 * radius * Math.Atan(tangent / radius);
            Push(node, to, along, length - tangent, at, cost + (length * dearer) - ((2 * tangent) - arc) + (0.25 * arc), slot);
        }

        void Push(int from, int node, Vector3 along, double left, int before, double cost, int slot)
        {
            if (best[slot] <= cost)
                return;
            best[slot] = cost;
            states.Add((from, node, along, left, before, cost, slot));
            queue.Enqueue(states.Count - 1, cost + (node == ToEnd ? 0 : (of.End - points[node]).Size));
        }
    }
}
