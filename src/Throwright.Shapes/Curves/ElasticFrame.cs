using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>What holds the curve, in the solver's own measure: total length about 1, stiffness 1.</summary>
/// <param name="Points">Start, supports, end; the end's entry is unused where it is free.</param>
/// <param name="Directions">Unit tangents where they are held, else null.</param>
/// <param name="Load">Force per length.</param>
internal sealed record ElasticFrame(Vector3[] Points, Vector3?[] Directions, Vector3 Load, bool FreeEnd)
{
    public int Spans => Points.Length - 1;

    public int Closures => Spans - (FreeEnd ? 1 : 0);

    public bool IsClosed(int span) => !FreeEnd || span < Spans - 1;

    public Vector3 Chord(int span) => Points[span + 1] - Points[span];
}
