namespace Throwright.Engine.Mount;

/// <summary>Finds the smallest tilt that clears.</summary>
public static class TiltSolver
{
    /// <summary>Best first over cells of tilts by the least total tilt in each (docs/theory/mount.md, section 2).</summary>
    /// <remarks>
    /// At a cell's least tilt t the question is yes or no. Yes: nothing smaller is left, so it is the answer. No, with only
    /// U &lt; wanted attained: a mount turned by w from t moves no point by more than Reach w, so every tilt with
    /// U + Reach w &lt; wanted fails too. The cell is dropped when that reaches all of it, else halved.
    /// </remarks>
    public static SmallestTilt Find(TiltCase tilts, CancellationToken cancel = default)
    {
        if (!(tilts.Reach > 0) || !(tilts.Most > 0) || !(tilts.Most < 1.4) || !(tilts.Play >= 0) || !(tilts.Finest > 0))
            throw new ArgumentException("A tilt is looked for with a reach above zero and a range up to 80 deg.", nameof(tilts));
        var queue = new PriorityQueue<TiltRange, (double, int)>();
        queue.Enqueue(TiltRange.Within(tilts.Most), (0, 0));
        var undecided = double.PositiveInfinity;
        int cells = 0, number = 0;
        var mostSlope = Math.Tan(tilts.Most);
        (int Up, int Right)[] corners = tilts.Play > 0 ? [(-1, -1), (-1, 1), (1, -1), (1, 1)] : [(0, 0)];
        while (queue.TryDequeue(out var cell, out _))
        {
            var least = cell.Least;
            if (least.Slope > mostSlope)
                continue;
            if (cells >= tilts.MostCells || cancel.IsCancellationRequested)
            {
                undecided = Math.Min(undecided, least.Total);
                break;
            }

            cells++;
            // A corner of the play mostly says no, and one mount costs far less than a range of them.
            if (AtCorners(least) is { } upper)
            {
                if (Fails(cell, least, upper))
                    continue;
            }
            else
            {
                var there = tilts.Clearance(TiltRange.At(least, tilts.Play), tilts.Wanted);
                if (there.Lower >= tilts.Wanted)
                    return new(TiltEnd.Found, least, Math.Min(least.Total, undecided), there, cells);
                if (Fails(cell, least, there.Upper))
                    continue;
            }

            // The middle often fails more clearly than the edge that faces zero.
            var middle = cell.Middle;
            if (AtCorners(middle) is { } within && Fails(cell, middle, within))
                continue;
            if (cell.Width <= tilts.Finest)
            {
                undecided = Math.Min(undecided, least.Total);
                continue;
            }

            var (one, other) = cell.Halves();
            queue.Enqueue(one, (one.Least.Slope, ++number));
            queue.Enqueue(other, (other.Least.Slope, ++number));
        }

        return double.IsPositiveInfinity(undecided)
            ? new(TiltEnd.NoneInRange, null, tilts.Most, default, cells)
            : new(TiltEnd.Undecided, null, undecided, default, cells);

        // With play the attained value belongs to a tilt p beside "from"; the same p beside any tilt of the cell is as far off.
        bool Fails(TiltRange cell, Tilt from, double upper) => upper + (tilts.Reach * cell.FarthestTurnFrom(from, tilts.Play)) < tilts.Wanted;

        // What is attained below the wanted clearance at the first corner of the play that fails; null: none does. The corner
        // that failed last is asked first.
        double? AtCorners(Tilt at)
        {
            for (var i = 0; i < corners.Length; i++)
            {
                var (up, right) = corners[i];
                var found = tilts.Clearance(TiltRange.At(new(at.Up + (up * tilts.Play), at.Right + (right * tilts.Play))), tilts.Wanted).Upper;
                if (!(found < tilts.Wanted))
                    continue;
                (corners[0], corners[i]) = (corners[i], corners[0]);
                return found;
            }

            return null;
        }
    }
}
