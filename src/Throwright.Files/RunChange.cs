using System.Diagnostics.CodeAnalysis;
using Throwright.Files.Json;

namespace Throwright.Files;

/// <summary>A change as remedies and the command line write it: "run/path=value", e.g. "mixture/leverEnd.arm.radius=1 1/2 in".</summary>
public static class RunChange
{
    /// <summary>Where in the file it goes, and the value as JSON.</summary>
    public static bool TryRead(string text, string change, [NotNullWhen(true)] out string? jsonPath, [NotNullWhen(true)] out string? json, [NotNullWhen(false)] out string? problem)
    {
        ArgumentNullException.ThrowIfNull(change);
        (jsonPath, json) = (null, null);
        int slash = change.IndexOf('/', StringComparison.Ordinal), equals = change.IndexOf('=', StringComparison.Ordinal);
        if (slash <= 0 || equals < slash + 2)
        {
            problem = $"\"{change}\" is not a change; write run/path=value, e.g. \"mixture/leverEnd.arm.radius=1 1/2 in\"";
            return false;
        }

        var (run, path, value) = (change[..slash], change[(slash + 1)..equals], change[(equals + 1)..].Trim());
        if (AircraftFile.RunIndex(text, run) is not { } index)
        {
            problem = $"there is no run \"{run}\" in the file";
            return false;
        }

        problem = null;
        jsonPath = $"$.runs[{index}].{path}";
        json = value.StartsWith('{') || value.StartsWith('[') || value is "true" or "false" ? value : JsonText.Quoted(value);
        return true;
    }
}
