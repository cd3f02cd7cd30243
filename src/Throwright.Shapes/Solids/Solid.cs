using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Solids;

/// <summary>A piece of a curve between two vertices. It runs the way the parameter rises.</summary>
/// <param name="From">Index of the vertex where it starts.</param>
/// <param name="To">Index of the vertex where it ends.</param>
/// <param name="Start">Parameter at the start.</param>
/// <param name="End">Parameter at the end, above Start.</param>
public sealed record Edge(int From, int To, Curve Curve, double Start, double End)
{
    /// <summary>A place on the edge; share 0 at its start, 1 at its end.</summary>
    public Vector3 At(double share) => Curve.At(Start + (share * (End - Start)));
}

/// <summary>An edge as part of a loop.</summary>
/// <param name="Edge">Index of the edge.</param>
/// <param name="Forward">The loop follows the edge from its start to its end.</param>
public readonly record struct EdgeUse(int Edge, bool Forward);

/// <summary>A closed chain of edges: seen from outside the material the outer one runs anticlockwise, inner ones clockwise.</summary>
public sealed record Loop(EquatableList<EdgeUse> Uses);

/// <summary>A bounded piece of a surface.</summary>
/// <param name="Outward">The surface's normal points out of the material.</param>
/// <param name="Loops">The outer loop first.</param>
public sealed record Face(Surface Surface, bool Outward, EquatableList<Loop> Loops);

/// <summary>A body by its boundary: one closed shell of planes, cylinders and cones. Lengths in m.</summary>
public sealed record Solid(EquatableList<Vector3> Vertices, EquatableList<Edge> Edges, EquatableList<Face> Faces)
{
    public int StartOf(EdgeUse use) => use.Forward ? Edges[use.Edge].From : Edges[use.Edge].To;

    public int EndOf(EdgeUse use) => use.Forward ? Edges[use.Edge].To : Edges[use.Edge].From;
}
