using Throwright.Shapes;

namespace Throwright.Engine.Mount;

/// <summary>Clearance over a range of tilts and all joint positions, m: lower proved for all, upper attained at a tilt of the range.</summary>
public readonly record struct ClearanceBounds(double Lower, double Upper);

/// <summary>The clearance of everything that concerns one handle, asked for a range of tilts.</summary>
/// <param name="range">Tilts, often a single one.</param>
/// <param name="wanted">The clearance that matters: the answer may stop as soon as it is above or below; infinity for the value itself.</param>
public delegate ClearanceBounds TiltClearance(TiltRange range, double wanted);

/// <summary>What is proved of the tilts of one cell.</summary>
public enum TiltCellAnswer
{
    /// <summary>Every tilt of the cell keeps what is wanted.</summary>
    Keeps,

    /// <summary>No tilt of the cell keeps it.</summary>
    Fails,

    /// <summary>Neither is proved of the whole cell: the limit runs through it, or the budget ended.</summary>
    Open,
}

/// <summary>One cell of the map.</summary>
/// <param name="Low">Every tilt of the cell has at least this clearance, proved, m; null: not worked out.</param>
/// <param name="High">No tilt of the cell has more, proved, m; below zero: all overlap by as much; infinity: not worked out.</param>
public sealed record TiltCell(TiltRange Range, TiltCellAnswer Answer, double? Low, double High)
{
    /// <summary>Of a cell that was not looked at.</summary>
    public static TiltCell Unknown(TiltRange range) => new(range, TiltCellAnswer.Open, null, double.PositiveInfinity);
}

/// <summary>The clearance map in whole cells: nothing hides between the points of a grid.</summary>
/// <param name="Cells">Row by row, up from the lowest slope, each row from left to right.</param>
public sealed record TiltMap(int Rows, int Columns, EquatableList<TiltCell> Cells)
{
    public TiltCell At(int row, int column) => Cells[(row * Columns) + column];

    /// <summary>All cells of a range.</summary>
    /// <param name="ask">Works one cell out; called from any thread.</param>
    /// <param name="progress">Called with cells done and cells in all; from any thread.</param>
    /// <param name="cancel">The cells not reached by then stay open.</param>
    public static TiltMap Over(
        TiltRange range, int rows, int columns, Func<TiltRange, TiltCell> ask, int threads = 1, Action<int, int>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(ask);
        if (rows < 1 || columns < 1)
            throw new ArgumentOutOfRangeException(nameof(rows), "A map has at least one cell.");
        var cells = new TiltCell[rows * columns];
        var done = 0;
        Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, k =>
        {
            int row = k / columns, column = k % columns;
            var cell = new TiltRange(
                range.UpFrom + ((range.UpTo - range.UpFrom) * row / rows),
                range.UpFrom + ((range.UpTo - range.UpFrom) * (row + 1) / rows),
                range.RightFrom + ((range.RightTo - range.RightFrom) * column / columns),
                range.RightFrom + ((range.RightTo - range.RightFrom) * (column + 1) / columns));
            cells[k] = cancel.IsCancellationRequested ? TiltCell.Unknown(cell) : ask(cell);
            progress?.Invoke(Interlocked.Increment(ref done), cells.Length);
        });
        return new(rows, columns, cells.ToEquatableList());
    }
}
