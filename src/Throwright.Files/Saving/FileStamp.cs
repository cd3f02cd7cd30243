using System.Security.Cryptography;

namespace Throwright.Files.Saving;

/// <summary>What a file held at one moment: SHA-256 of its bytes, and how many there were.</summary>
public sealed record FileStamp(string Sha256, long Length)
{
    public static FileStamp Of(ReadOnlySpan<byte> bytes) => new(Convert.ToHexString(SHA256.HashData(bytes)), bytes.Length);
}
