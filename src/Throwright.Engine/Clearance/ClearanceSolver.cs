using Throwright.Shapes;
using Throwright.Shapes.Distance;

namespace Throwright.Engine.Clearance;

/// <summary>Holds everything that moves against everything else.</summary>
public static class ClearanceSolver
{
    /// <summary>Pairs whose distance can change or that move together with nothing between them.</summary>
    /// <remarks>Two bodies on the same joints, or both fixed, stand still against each other: that is the builder's drawing.</remarks>
    public static IEnumerable<(CockpitBody First, CockpitBody Second)> Pairs(CockpitCase cockpit)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        var watched = cockpit.Watched.ToHashSet(StringComparer.Ordinal);
        return
            from i in Enumerable.Range(0, cockpit.Bodies.Count)
            from j in Enumerable.Range(i + 1, cockpit.Bodies.Count - i - 1)
            where cockpit.Bodies[i].Joints != cockpit.Bodies[j].Joints
            where watched.Count == 0 || watched.Contains(cockpit.Bodies[i].Name) || watched.Contains(cockpit.Bodies[j].Name)
            select (cockpit.Bodies[i], cockpit.Bodies[j]);
    }

    /// <param name="threads">Pairs worked at once; the answer does not depend on it.</param>
    /// <param name="progress">Called with pairs done and pairs in all; from any thread.</param>
    public static CockpitClearance Solve(CockpitCase cockpit, int threads = 1, Action<int, int>? progress = null, CancellationToken cancel = default)
    {
        Check(cockpit);
        (CockpitBody First, CockpitBody Second)[] pairs = [.. Pairs(cockpit)];
        var answers = new PairClearance[pairs.Length];
        var done = 0;
        // No token here: a cancelled pair comes back with the bounds it has, and every pair has an answer.
        Parallel.For(0, pairs.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, i =>
        {
            answers[i] = Between(cockpit, pairs[i].First, pairs[i].Second, cancel);
            progress?.Invoke(Interlocked.Increment(ref done), pairs.Length);
        });
        return new(cockpit, answers.ToEquatableList());
    }

    /// <summary>One pair of bodies.</summary>
    /// <remarks>
    /// Far-off pairs cost one box: its direction proves Interest at once. So there is no separate coarse pass that could
    /// leave a pair out.
    /// </remarks>
    public static PairClearance Between(CockpitCase cockpit, CockpitBody first, CockpitBody second, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        return Between(cockpit, first, second, new() { Tolerance = cockpit.Tolerance, Enough = cockpit.Interest, MostBoxes = cockpit.MostBoxes }, cancel);
    }

    /// <summary>One pair of bodies, as closely as the aim says.</summary>
    public static PairClearance Between(CockpitCase cockpit, CockpitBody first, CockpitBody second, SearchAim aim, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(cockpit);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        HashSet<(string, string)> allowed =
        [
            .. cockpit.Allowed.Where(c => c.FirstBody == first.Name && c.SecondBody == second.Name).Select(c => (c.FirstPart, c.SecondPart)),
            .. cockpit.Allowed.Where(c => c.FirstBody == second.Name && c.SecondBody == first.Name).Select(c => (c.SecondPart, c.FirstPart)),
        ];
        var found = LeastDistance.Find(first.Moving, second.Moving, aim, allowed.Count == 0 ? null : (a, b) => allowed.Contains((a, b)), cancel: cancel);
        // With an allowed contact the surfaces may cross, so one position no longer speaks for all.
        var enclosure = found.Lower > 0 ? Enclosures.Of(first.Moving, second.Moving, found.Positions) : Enclosure.Outside;
        return new(first, second, found, enclosure);
    }

    private static void Check(CockpitCase cockpit)
    {
        var twice = cockpit.Bodies.GroupBy(b => b.Name, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
            throw new ArgumentException($"Two bodies are called \"{twice.Key}\".", nameof(cockpit));
        foreach (var contact in cockpit.Allowed)
        {
            Part(contact.FirstBody, contact.FirstPart);
            Part(contact.SecondBody, contact.SecondPart);
            if (string.IsNullOrWhiteSpace(contact.Reason))
                throw new ArgumentException($"The allowed contact of {contact.FirstBody} and {contact.SecondBody} gives no reason.", nameof(cockpit));
        }

        void Part(string body, string part)
        {
            var found = cockpit.Bodies.FirstOrDefault(b => b.Name == body)
                ?? throw new ArgumentException($"An allowed contact names the body \"{body}\": there is none.", nameof(cockpit));
            if (!found.Solid.PartNames.Contains(part, StringComparer.Ordinal))
                throw new ArgumentException($"An allowed contact names the part \"{part}\" of {body}: it has {string.Join(", ", found.Solid.PartNames)}.", nameof(cockpit));
        }
    }
}
