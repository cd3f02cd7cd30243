namespace Throwright.Engine.Mount;

/// <summary>Which tilt is looked for.</summary>
/// <param name="Clearance">The clearance by range of tilts.</param>
/// <param name="Reach">No part of the handle that counts is ever farther from the foot, m: a tilt moves it by no more than this per rad.</param>
/// <param name="Wanted">Clearance to reach, m.</param>
/// <param name="Most">Largest tilt looked at, each way and in total, rad.</param>
/// <param name="Play">Error of the finished mount, as a slope each way: a tilt counts only if all within it clear.</param>
/// <param name="Finest">Cells smaller than this stay undecided, as a slope.</param>
/// <param name="MostCells">Budget, counted.</param>
public sealed record TiltCase(
    TiltClearance Clearance, double Reach, double Wanted, double Most, double Play = 0, double Finest = 3e-4, int MostCells = 20_000);

/// <summary>How the search for a tilt ended.</summary>
public enum TiltEnd
{
    /// <summary>A tilt clears, and no smaller one does, but for the cells left undecided.</summary>
    Found,

    /// <summary>Proved: no tilt of the range clears.</summary>
    NoneInRange,

    /// <summary>No tilt was found that clears, but not all cells were decided.</summary>
    Undecided,
}

/// <summary>The smallest tilt that clears, with its proof.</summary>
/// <param name="Tilt">Proved to clear, with its play; null when there is none.</param>
/// <param name="NoneBelow">Proved: every total tilt below this fails, rad.</param>
/// <param name="Clearance">At the tilt.</param>
public sealed record SmallestTilt(TiltEnd Ended, Tilt? Tilt, double NoneBelow, ClearanceBounds Clearance, int Cells);
