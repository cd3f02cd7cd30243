using Throwright.Engine.Clearance;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Mount;

namespace Throwright.Engine.Chain;

/// <summary>The clearance map of one handle over the two slopes of its mount, with what was found in it.</summary>
/// <param name="Wanted">Clearance to keep, m.</param>
/// <param name="Most">Largest slope each way as an angle, rad.</param>
/// <param name="Cells">Whole cells, each with what is proved of every tilt in it.</param>
/// <param name="Now">As the file mounts it.</param>
/// <param name="Chosen">The tilt that the search chose, proved with its play; null: none, or not searched.</param>
/// <param name="NoneBelow">Proved: no total tilt below this keeps what is wanted, rad; null: not searched, or the square handle keeps it.</param>
/// <param name="Facing">The tilt at which the shank points at the pilot's eye, often beyond the map; null: no eye in the file, or behind the sheet.</param>
/// <param name="IsWhole">All cells were looked at; else it was stopped and the rest is open.</param>
public sealed record MountMap(HandleMount Handle, double Wanted, double Most, TiltMap Cells, Tilt Now, Tilt? Chosen, double? NoneBelow, Tilt? Facing, bool IsWhole)
{
    /// <summary>Cells each way where no number is given: an odd one, so that square lies in the middle of a cell.</summary>
    public const int UsualCells = 21;

    /// <summary>The map of a run whose handle meets something or stands at a lean, with a quick search in it; null: neither, or it can't be worked out.</summary>
    /// <remarks>A handle that stands square and keeps its distance needs no map.</remarks>
    public static MountMap? Of(Aircraft aircraft, RunAnswer answer, CockpitEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        ArgumentNullException.ThrowIfNull(answer);
        if (answer.Clearance?.Handle is not { } handle || (handle.Tilt == Tilt.None && !answer.Findings.Any(f => f is { Rule: ClearanceRules.Pair, Verdict: not Verdict.Clear })))
            return null;
        var solve = new MountSolve(aircraft, answer.Run, new(aircraft.Display), effort, finest: MountSolve.Quick);
        return solve.Obstacle is null ? solve.Map(solve.Find(withOthers: false)) : null;
    }

    public int Count(TiltCellAnswer answer) => Cells.Cells.Count(c => c.Answer == answer);
}
