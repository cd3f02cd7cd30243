using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Heat;

/// <summary>Parts of one run, each with the hottest its place gets.</summary>
public sealed record HeatCase
{
    public required EquatableList<PlacedPart> Parts { get; init; }
}

/// <summary>One part at its place.</summary>
/// <param name="Material">As the table of plastics names it; empty: its limit is given.</param>
/// <param name="Zone">Name of the place, for a sentence.</param>
/// <param name="Hottest">degC.</param>
/// <param name="Limit">Its own limit, degC, with source; null: by its material.</param>
/// <param name="Clamped">It must not creep.</param>
public sealed record PlacedPart(string Name, string Material, string Zone, double Hottest, SourceRef HottestFrom, Limit? Limit, bool Clamped, PartPlace Place);

/// <summary>Each part against its place.</summary>
public sealed record HeatAnswer(EquatableList<HeatRow> Rows);

/// <summary>One part: what it stands, what it gets.</summary>
/// <param name="Stands">degC; null: not known.</param>
public sealed record HeatRow(PlacedPart Part, double? Stands, Verdict Verdict, string Why, EquatableList<SourceRef> Sources);
