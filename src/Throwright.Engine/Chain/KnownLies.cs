using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Throwright.Engine.Model;
using Throwright.Engine.Route;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Chain;

/// <summary>One end of a conduit.</summary>
/// <param name="Limits">What its place may be off, each way.</param>
/// <param name="Words">What it is, in words.</param>
internal readonly record struct EndPlace(Vector3 Place, Vector3 Along, PlaceLimits Limits, string Words);

/// <summary>How far a place may lie below and above its coordinates along each axis, m.</summary>
internal readonly record struct PlaceLimits(Vector3 Less, Vector3 More);

/// <summary>All that a lie and its spread rest on.</summary>
/// <param name="Cable">Supports, ends, conduit and lengths; nothing of the wire in it.</param>
internal sealed record LieBasis(Cable Cable, EndPlace Start, EndPlace End);

/// <summary>Lies that were worked out, kept by all that they rest on: a run of which something else changes is not laid anew.</summary>
/// <remarks>Whoever asks again and again hands the same one in. Safe for many threads; what it answers does not depend on what it holds.</remarks>
public sealed class KnownLies
{
    // A long one takes half a megabyte; what was dropped is worked out again.
    private const int Most = 80;
    private readonly ConcurrentDictionary<LieBasis, Lazy<RunRoute?>> routes = new();
    private readonly ConditionalWeakTable<Lie, ConcurrentDictionary<double, Lazy<OtherLength>>> others = [];

    internal RunRoute? Of(LieBasis basis, Func<LieBasis, RunRoute?> make)
    {
        if (routes.Count > Most)
            routes.Clear();
        return routes.GetOrAdd(basis, b => new(() => make(b))).Value;
    }

    /// <summary>The lie with a little more or less conduit.</summary>
    internal OtherLength Near(Lie planned, double change) =>
        others.GetOrCreateValue(planned).GetOrAdd(change, c => new(() => LengthToOrder.Near(planned, c))).Value;
}
