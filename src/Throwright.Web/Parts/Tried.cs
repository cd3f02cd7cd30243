using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Files;
using Throwright.Web.Editing;

namespace Throwright.Web.Parts;

/// <summary>A remedy that is tried on the drawing before it is kept.</summary>
public sealed record Tried(string Rule, Remedy Remedy)
{
    /// <summary>The run as it would be.</summary>
    public RunAnswer? Answer { get; init; }

    /// <summary>Clearance counts in it.</summary>
    public bool IsWhole { get; init; } = true;

    /// <summary>What the undo button says of it: the remedy up to its colon.</summary>
    public string Name
    {
        get
        {
            var colon = Remedy.Text.IndexOf(':', StringComparison.Ordinal);
            var name = colon > 0 ? Remedy.Text[..colon] : Remedy.Text;
            return char.ToLowerInvariant(name[0]) + name[1..];
        }
    }

    /// <summary>The edits of the file that make it; null: they don't fit this text.</summary>
    public IReadOnlyList<Edit>? Edits(string text)
    {
        var edits = new List<Edit>();
        foreach (var change in Remedy.Tries)
        {
            // Nothing behind the sign: the member goes.
            if (change.EndsWith('='))
            {
                var slash = change.IndexOf('/', StringComparison.Ordinal);
                if (slash < 1 || AircraftFile.RunIndex(text, change[..slash]) is not { } index)
                    return null;
                edits.Add(new($"$.runs[{index}].{change[(slash + 1)..^1]}", null));
                continue;
            }

            if (!RunChange.TryRead(text, change, out var path, out var json, out _))
                return null;
            edits.Add(new(path, json));
        }

        return edits;
    }
}
