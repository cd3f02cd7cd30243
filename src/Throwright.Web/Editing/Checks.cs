using System.Collections.Concurrent;
using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Model;

namespace Throwright.Web.Editing;

/// <summary>Answers of runs, each worked out once for as long as nothing that it rests on has changed.</summary>
public sealed class Checks
{
    private const int MostKept = 4000;
    private readonly ConcurrentDictionary<Question, Lazy<RunAnswer>> answers = new();

    private sealed record Question(Aircraft Around, Run Run);

    /// <summary>The answer; worked out on the caller's thread if it is not there yet.</summary>
    public RunAnswer Of(Aircraft aircraft, Run run)
    {
        ArgumentNullException.ThrowIfNull(aircraft);
        if (answers.Count > MostKept)
            answers.Clear();
        return answers.GetOrAdd(Ask(aircraft, run), q => new(() => RunCheck.Check(q.Around, q.Run, new LadderEffort()))).Value;
    }

    /// <summary>The answer if it is there already.</summary>
    public RunAnswer? Ready(Aircraft aircraft, Run run) =>
        answers.TryGetValue(Ask(aircraft, run), out var found) && found.IsValueCreated ? found.Value : null;

    /// <summary>A run's answer rests on the aircraft, but not on the other runs.</summary>
    private static Question Ask(Aircraft aircraft, Run run) => new(aircraft with { Runs = [] }, run);
}
