using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;

namespace Throwright.Engine.Prove;

/// <summary>What a hand gives at the control for a moment, N.</summary>
/// <param name="Who">"nineteen women of twenty", "your pilot".</param>
public sealed record HandStrength(double Pull, double Push, string Who, SourceRef PullFrom, SourceRef PushFrom)
{
    private static readonly SourceRef Own = new("project", "measured on the pilot, typed into the file", Evidence.CommonPractice);

    /// <summary>By the file: forces measured on the pilot, else the published ones of who sits there, else of the weakest.</summary>
    /// <param name="pinched">The handle is held by finger and thumb, which give less than the arm.</param>
    public static HandStrength Of(Pilot? pilot, bool pinched)
    {
        var published = Published(pilot?.Smallest, pinched);
        if (pilot?.Strength is not { } own)
            return published;
        double pull = own.Pull?.Newtons ?? published.Pull;
        if (pinched && own.Pinch is { } pinch)
            pull = Math.Min(pull, pinch.Newtons);
        return new(
            pull, own.Push?.Newtons ?? published.Push, own is { Pull: not null, Push: not null } ? "your pilot" : "your pilot, where measured,",
            own.Pull is null && (own.Pinch is null || !pinched) ? published.PullFrom : Own, own.Push is null ? published.PushFrom : Own);
    }

    /// <summary>Published for the smallest who shall reach. No figure for large people is needed: the weakest decides.</summary>
    public static HandStrength Published(PilotSize? smallest, bool pinched)
    {
        // Of the sizes in the file, arm strength was found for two; finger strength for the weakest alone.
        var middle = smallest is PilotSize.Woman50 or PilotSize.Woman95;
        Datum pull = Sources.Published.Get(middle ? "people/middle-pull" : "people/weak-pull"), push = Sources.Published.Get(middle ? "people/middle-push" : "people/weak-push");
        var pinch = Sources.Published.Get(smallest is PilotSize.Man5 or PilotSize.Man50 or PilotSize.Man95 ? "hand/finger-pinch" : "people/weak-pinch");
        var byPinch = pinched && pinch.Value < pull.Value;
        return new(
            byPinch ? pinch.Value : pull.Value, push.Value, middle ? "half of all women" : "nineteen women of twenty",
            byPinch ? pinch.Source : pull.Source, push.Source);
    }
}
