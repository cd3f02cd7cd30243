using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Measure;

/// <summary>A point whose place is known.</summary>
public sealed record KnownPoint(string Name, Vector3 Place);

/// <summary>A distance read off a tape, from a known point to the wanted one.</summary>
/// <param name="Sigma">Standard deviation of the reading, with that of the known point, m.</param>
public sealed record TapeReading(KnownPoint From, double Distance, double Sigma);

/// <summary>Which of two mirrored places is meant; aircraft axes: x aft (station), y right (buttline), z up (waterline).</summary>
public enum Side
{
    RightOf,
    LeftOf,
    Above,
    Below,
    ForwardOf,
    AftOf,
}

/// <summary>Tape distances to one wanted point. Lengths in m.</summary>
/// <param name="Hint">Which of the two places, where the known points lie in one plane; null: not said.</param>
/// <param name="Spare">Known points not measured from yet, to choose the next reading from.</param>
public sealed record TapeCase(EquatableList<TapeReading> Readings, Side? Hint = null, EquatableList<KnownPoint>? Spare = null);
