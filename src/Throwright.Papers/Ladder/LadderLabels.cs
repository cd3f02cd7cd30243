using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;

namespace Throwright.Papers.Ladder;

/// <summary>The words on a travel ladder: ends are named by what the device does there.</summary>
public sealed record LadderLabels
{
    /// <summary>Name of the run as it will be engraved.</summary>
    public string Run { get; init; } = "";

    /// <summary>Method of operation as it will be engraved.</summary>
    public string How { get; init; } = "";

    /// <summary>What moves, e.g. "flap".</summary>
    public string Device { get; init; } = "device";

    /// <summary>What the device does at its push stop and at its pull stop, e.g. "open" and "shut".</summary>
    public string PushMeans { get; init; } = "push stop";

    public string PullMeans { get; init; } = "pull stop";

    /// <summary>Verdicts of the rules on the three cushions; null: not judged, the drawing shows the figures alone.</summary>
    public Verdict? KnobIn { get; init; }

    public Verdict? KnobOut { get; init; }
    public Verdict? Tip { get; init; }

    /// <summary>The words that the aircraft file holds. A device has no name there, so the run's label names it.</summary>
    public static LadderLabels For(Run run)
    {
        var usual = new LadderLabels();
        return new()
        {
            Run = run.Label.Length > 0 ? run.Label : run.Id,
            How = run.How,
            Device = run.Label.Trim() is { Length: > 0 } label ? label.ToLowerInvariant() : usual.Device,
            PushMeans = Or(run.CockpitEnd?.PushMeans, usual.PushMeans),
            PullMeans = Or(run.CockpitEnd?.PullMeans, usual.PullMeans),
        };

        static string Or(string? given, string usual) => string.IsNullOrWhiteSpace(given) ? usual : given.Trim();
    }

    internal LadderLabels Cleaned() => this with
    {
        Run = PlainText.Clean(Run),
        How = PlainText.Clean(How),
        Device = PlainText.Clean(Device),
        PushMeans = PlainText.Clean(PushMeans),
        PullMeans = PlainText.Clean(PullMeans),
    };
}
