namespace Throwright.Engine.Mount;

/// <summary>A place in the sheet, m from the hole as it is: up in the sheet and to the right.</summary>
public readonly record struct Place(double Up, double Right)
{
    public double Away => Math.Sqrt((Up * Up) + (Right * Right));

    public double From(Place other) => new Place(Up - other.Up, Right - other.Right).Away;
}

/// <summary>Which place in the sheet is looked for.</summary>
/// <param name="Clearance">Of the handle moved there: lower proved, upper attained, below zero by the depth of an overlap.</param>
/// <param name="Room">How far the place is within the sheet's outline with all that the mount covers, m; below zero: so far outside. It changes by no more than the place.</param>
/// <param name="Wanted">Clearance to keep, m.</param>
/// <param name="Most">Farthest place looked at, m.</param>
/// <param name="Step">Places are taken in whole steps: what a rule can measure, m.</param>
/// <param name="MostAsked">Budget, counted in places asked.</param>
public sealed record PlaceCase(Func<Place, ClearanceBounds> Clearance, Func<Place, double> Room, double Wanted, double Most, double Step, int MostAsked = 3000);

/// <summary>The nearest place that clears.</summary>
/// <param name="Place">In whole steps, proved to clear; null: none was found.</param>
/// <param name="NoneNearer">Proved: no place nearer than this clears, on the steps or between them, m.</param>
public sealed record NearestPlace(Place? Place, double NoneNearer, int Asked);

/// <summary>Finds the nearest place in the sheet where a handle clears as it stands.</summary>
public static class PlaceSolver
{
    /// <summary>Squares of places, best first by their least distance (docs/theory/mount.md, section 2).</summary>
    /// <remarks>
    /// A handle moved by w has no point moved by more: a place with only U &lt; wanted refuses every place nearer to it than wanted - U. What such discs
    /// cover is never asked. The grid's places are asked in the order of their distance until one clears; then the squares nearer than that
    /// are refused until one is left that cannot be: there the proof ends.
    /// </remarks>
    public static NearestPlace Find(PlaceCase of, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(of);
        if (!(of.Step > 0) || !(of.Most >= of.Step) || !double.IsFinite(of.Most / of.Step))
            throw new ArgumentException("A place is looked for in steps above zero and within a range of one step or more.", nameof(of));
        var refused = new List<(Place Middle, double Radius)>();
        var asked = 0;
        var count = (int)(of.Most / of.Step);
        var grid = from i in Enumerable.Range(-count, (2 * count) + 1)
                   from j in Enumerable.Range(-count, (2 * count) + 1)
                   let place = new Place(i * of.Step, j * of.Step)
                   where place.Away > 0 && place.Away <= of.Most
                   orderby place.Away, i, j
                   select place;
        Place? found = null;
        foreach (var place in grid)
        {
            if (cancel.IsCancellationRequested || asked >= of.MostAsked)
                break;
            if (of.Room(place) < 0 || Covered(place, 0) || Refuses(place))
                continue;
            found = place;
            break;
        }

        return new(found, NoneNearer(found?.Away ?? of.Most), asked);

        // True where it does not clear; then its disc is kept.
        bool Refuses(Place place)
        {
            asked++;
            var there = of.Clearance(place);
            if (there.Lower >= of.Wanted)
                return false;
            if (there.Upper < of.Wanted)
                refused.Add((place, of.Wanted - there.Upper));
            return true;
        }

        // All places within "round" of this one are in one disc.
        bool Covered(Place place, double round) => refused.Exists(r => place.From(r.Middle) + round < r.Radius);

        double NoneNearer(double most)
        {
            var queue = new PriorityQueue<(Place Middle, double Half), (double, int)>();
            queue.Enqueue((default, most), (0, 0));
            var number = 0;
            while (queue.TryDequeue(out var square, out var order))
            {
                var (middle, half) = square;
                if (order.Item1 >= most)
                    return most;
                var round = Math.Sqrt(2) * half;
                if (of.Room(middle) + round < 0 || Covered(middle, round))
                    continue;
                if (half <= 0.1 * of.Step || asked >= of.MostAsked || cancel.IsCancellationRequested)
                    return order.Item1;
                // The larger the square the less a single disc is likely to cover it; what it refuses serves its quarters too.
                if (half <= 8 * of.Step && !Covered(middle, 0) && Refuses(middle) && Covered(middle, round))
                    continue;
                var quarter = 0.5 * half;
                foreach (var (up, right) in ((int, int)[])[(-1, -1), (-1, 1), (1, -1), (1, 1)])
                {
                    var at = new Place(middle.Up + (up * quarter), middle.Right + (right * quarter));
                    queue.Enqueue((at, quarter), (Least(at, quarter), ++number));
                }
            }

            return most;
        }

        static double Least(Place middle, double half) =>
            new Place(Math.Max(0, Math.Abs(middle.Up) - half), Math.Max(0, Math.Abs(middle.Right) - half)).Away;
    }
}
