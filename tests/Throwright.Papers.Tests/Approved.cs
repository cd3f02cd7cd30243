using Throwright.Tests;

namespace Throwright.Papers.Tests;

/// <summary>The approved drawings of these tests.</summary>
internal static class Approved
{
    public static void Check(string name, string content) => ApprovedText.Matches($"tests/approved/Throwright.Papers.Tests/{name}", content);
}
