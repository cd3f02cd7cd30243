using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Measure;

/// <summary>A point whose place is known.</summary>
public sealed record KnownPoint(string Name, Vector3 Place);

/// <summary>A distance from a known point to the wanted one: straight, off a tape, or along one direction only.</summary>
/// <param name="Distance">m; along a direction it may be zero or negative: 0 up is level with the known point.</param>
/// <param name="Sigma">Standard deviation of the reading, with that of the known point, m.</param>
/// <param name="Along">Unit direction of a level, plumb line, string or coordinate; null: the straight distance.</param>
/// <param name="Words">What it is, for sentences; empty: "the distance from A".</param>
public sealed record TapeReading(KnownPoint From, double Distance, double Sigma, Vector3? Along = null, string Words = "")
{
    public string Name => Words.Length > 0 ? Words : $"the distance from {From.Name}";

    /// <summary>What the reading would be at a place.</summary>
    public double At(Vector3 place) => Along is { } along ? Vector3.Dot(place - From.Place, along) : (place - From.Place).Size;

    /// <summary>Direction in which the reading grows.</summary>
    public Vector3 Toward(Vector3 place) => Along ?? ((place - From.Place) is { Size: > 0 } d ? d.Unit() : default);
}

/// <summary>Readings of one wanted point. Lengths in m.</summary>
/// <param name="Hint">Which of the two places, where the known points lie in one plane; null: not said.</param>
/// <param name="Spare">Known points not measured from yet, to choose the next reading from.</param>
/// <param name="Near">A place noted before: of two that fit the nearer one is meant; null: none, or a hint is given.</param>
public sealed record TapeCase(EquatableList<TapeReading> Readings, Side? Hint = null, EquatableList<KnownPoint>? Spare = null, Vector3? Near = null);
