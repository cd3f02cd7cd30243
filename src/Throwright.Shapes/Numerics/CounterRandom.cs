using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Numerics;

/// <summary>Random numbers by position: number n of stream s is always the same, whoever asks and in whatever order.</summary>
/// <remarks>
/// The 64-bit mixing function of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014, section 4) applied to a key that depends
/// on seed, stream and position. So a million samples give the same bytes with one thread or sixteen.
/// </remarks>
public readonly struct CounterRandom(ulong seed, int stream)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;
    private readonly ulong key = Mix(seed + Mix((ulong)stream + Golden));

    /// <summary>Uniform in (0, 1), never an end: 52 random bits and a half.</summary>
    public double Uniform(long position) =>
        BitConverter.UInt64BitsToDouble((Mix(key + ((ulong)position * Golden)) >> 12) | 0x3FF0000000000000) - (1 - (1.0 / (1L << 53)));

    /// <summary>The numbers at position, position + step, position + 2 step and so on, as many as a <see cref="Lane"/> is wide.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector512<double> UniformLane(long position, int step = 1)
    {
        var z = Vector512.Create(key + ((ulong)position * Golden)) + (Vector512.Create(0UL, 1, 2, 3, 4, 5, 6, 7) * ((ulong)step * Golden));
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        z ^= z >> 31;
        return ((z >> 12) | Vector512.Create(0x3FF0000000000000UL)).AsDouble() - Vector512.Create(1 - (1.0 / (1L << 53)));
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
