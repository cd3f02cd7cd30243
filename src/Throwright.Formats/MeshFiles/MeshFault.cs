namespace Throwright.Formats.MeshFiles;

/// <summary>A mesh file is at fault; never leaves this folder.</summary>
/// <param name="found">May quote the file: cut where it is long, and nothing in it steers a terminal.</param>
#pragma warning disable CA1032, CA1064 // Carries what a message needs, and nobody outside can catch it.
internal sealed class MeshFault(string found, string expected) : Exception(found)
{
    private const int Most = 200;

    public string Found { get; } = Plain(found);
    public string Expected { get; } = Plain(expected);

    private static string Plain(string text) => new([.. text.Take(Most).Select(c => char.IsControl(c) ? '?' : c)]);
}
