using System.Globalization;

namespace Throwright.Shapes.Solids;

/// <summary>What can be wrong with a body's boundary.</summary>
public enum Defect
{
    /// <summary>A number is not finite, or an edge or a face has no extent.</summary>
    Degenerate,

    /// <summary>An edge is not used exactly twice, once each way.</summary>
    EdgeUse,

    /// <summary>A loop does not run head to tail, or does not close about a round surface.</summary>
    LoopOpen,

    /// <summary>A vertex is not where its edge begins or ends.</summary>
    VertexOff,

    /// <summary>An edge leaves a surface it bounds.</summary>
    EdgeOff,

    /// <summary>Two vertices in one place.</summary>
    TwinVertices,

    /// <summary>A face's loops do not run as its outward side asks.</summary>
    Sense,

    /// <summary>A hole of a flat face is not inside its outline.</summary>
    HoleOutside,

    /// <summary>Not one connected shell.</summary>
    Apart,

    /// <summary>Vertices, edges, faces and holes do not add up to a closed surface, or to the expected number of through holes.</summary>
    Count,

    /// <summary>The material is on the outside, or the volume is not the expected one.</summary>
    Volume,
}

/// <summary>One defect of a body.</summary>
public sealed record AuditFinding(Defect Defect, string What);

/// <summary>Checks of a body's boundary that ask nothing of how it was made.</summary>
public static class Audit
{
    /// <summary>Largest gap between what should touch, m: a millionth of a micrometre.</summary>
    public const double Gap = 1e-12;

    private const int Samples = 9;

    /// <summary>Everything wrong with the body; empty: a closed, outward-facing, connected shell.</summary>
    /// <param name="volume">What it should be, m^3, if known: held to a share of 1e-12.</param>
    /// <param name="throughHoles">How many holes go through, if known.</param>
    public static IReadOnlyList<AuditFinding> Find(Solid solid, double? volume = null, int? throughHoles = null)
    {
        var found = new List<AuditFinding>();
        if (!Sound(solid, found))
            return found;
        OfEdges(solid, found);
        OfVertices(solid, found);
        OfFaces(solid, found);
        if (found.Count > 0)
            return found;
        OfShell(solid, throughHoles, found);
        var measured = Measure.Of(solid).Volume;
        if (!(measured > 0))
            found.Add(new(Defect.Volume, Say($"the volume is {measured:R} m3: the material is on the outside")));
        else if (volume is { } expected && !(Math.Abs(measured - expected) <= 1e-12 * expected))
            found.Add(new(Defect.Volume, Say($"the volume is {measured:R} m3, not {expected:R} m3")));
        return found;
    }

    private static bool Sound(Solid solid, List<AuditFinding> found)
    {
        bool IsVertex(int i) => i >= 0 && i < solid.Vertices.Count;

        for (var i = 0; i < solid.Vertices.Count; i++)
        {
            if (!double.IsFinite(solid.Vertices[i].Size))
                found.Add(new(Defect.Degenerate, $"vertex {i} is no place"));
        }

        for (var i = 0; i < solid.Edges.Count; i++)
        {
            var edge = solid.Edges[i];
            if (!IsVertex(edge.From) || !IsVertex(edge.To) || edge.From == edge.To)
                found.Add(new(Defect.Degenerate, $"edge {i} has not two ends"));
            else if (!(edge.End > edge.Start) || !double.IsFinite(edge.At(0.5).Size) || !((edge.At(0.5) - edge.At(0)).Size > Gap))
                found.Add(new(Defect.Degenerate, $"edge {i} has no length"));
        }

        for (var i = 0; i < solid.Faces.Count; i++)
        {
            var face = solid.Faces[i];
            if (face.Loops.Count == 0 || face.Loops.Any(l => l.Uses.Count < 2) || face.Loops.Any(l => l.Uses.Any(u => u.Edge < 0 || u.Edge >= solid.Edges.Count)))
                found.Add(new(Defect.Degenerate, $"face {i} has no edge round it"));
            if (face.Surface is Cylinder { Radius: var radius } && !(radius > Gap && double.IsFinite(radius)))
                found.Add(new(Defect.Degenerate, $"face {i} lies on a cylinder without a radius"));
        }

        if (solid.Faces.Count == 0)
            found.Add(new(Defect.Degenerate, "there is no face"));
        return found.Count == 0;
    }

    private static void OfEdges(Solid solid, List<AuditFinding> found)
    {
        var (ahead, back) = (new int[solid.Edges.Count], new int[solid.Edges.Count]);
        foreach (var use in solid.Faces.SelectMany(f => f.Loops).SelectMany(l => l.Uses))
            (use.Forward ? ahead : back)[use.Edge]++;
        for (var i = 0; i < solid.Edges.Count; i++)
        {
            if (ahead[i] != 1 || back[i] != 1)
                found.Add(new(Defect.EdgeUse, $"edge {i} is used {ahead[i]} times forward and {back[i]} times back"));
            var edge = solid.Edges[i];
            var off = Math.Max((edge.At(0) - solid.Vertices[edge.From]).Size, (edge.At(1) - solid.Vertices[edge.To]).Size);
            if (!(off <= Gap))
                found.Add(new(Defect.VertexOff, Say($"edge {i} ends {off:E2} m from its vertex")));
        }
    }

    private static void OfVertices(Solid solid, List<AuditFinding> found)
    {
        var used = solid.Edges.SelectMany(e => (int[])[e.From, e.To]).ToHashSet();
        for (var i = 0; i < solid.Vertices.Count; i++)
        {
            if (!used.Contains(i))
                found.Add(new(Defect.Count, $"vertex {i} belongs to no edge"));
            for (var k = 0; k < i; k++)
            {
                if (!((solid.Vertices[i] - solid.Vertices[k]).Size > Gap))
                    found.Add(new(Defect.TwinVertices, $"vertices {k} and {i} are in one place"));
            }
        }
    }

    private static void OfFaces(Solid solid, List<AuditFinding> found)
    {
        for (var i = 0; i < solid.Faces.Count; i++)
        {
            var face = solid.Faces[i];
            foreach (var loop in face.Loops)
            {
                for (var k = 0; k < loop.Uses.Count; k++)
                {
                    if (solid.EndOf(loop.Uses[k]) != solid.StartOf(loop.Uses[(k + 1) % loop.Uses.Count]))
                        found.Add(new(Defect.LoopOpen, $"a loop of face {i} does not run head to tail"));
                }

                var off = loop.Uses.Max(u => Enumerable.Range(0, Samples).Max(s => face.Surface.Off(solid.Edges[u.Edge].At(s / (Samples - 1.0)))));
                if (!(off <= Gap))
                    found.Add(new(Defect.EdgeOff, Say($"an edge of face {i} lies {off:E2} m off its surface")));
                else if (face.Surface.IsRound && Math.Abs(Turns(solid, face, loop)) > 1e-6)
                    found.Add(new(Defect.LoopOpen, $"a loop of face {i} runs round the axis"));
            }

            var outer = Measure.AreaOf(solid, face, face.Loops[0]);
            // No face is smaller than a square with a side of the gap.
            if (!(Math.Abs(outer) > Gap * Gap))
                found.Add(new(Defect.Degenerate, $"face {i} has no area"));
            if (outer > 0 != face.Outward)
                found.Add(new(Defect.Sense, $"the outline of face {i} runs the wrong way round"));
            foreach (var hole in face.Loops.Skip(1))
            {
                if (Measure.AreaOf(solid, face, hole) > 0 == face.Outward)
                    found.Add(new(Defect.Sense, $"a hole of face {i} runs the wrong way round"));
                if (face.Surface.IsRound || !IsWithin(solid, face, hole))
                    found.Add(new(Defect.HoleOutside, $"a hole of face {i} is not inside its outline"));
            }
        }
    }

    /// <summary>Angle turned about a round surface's axis, rad: 0 for a loop that closes on the surface.</summary>
    private static double Turns(Solid solid, Face face, Loop loop)
    {
        const int Steps = 32;
        var turned = 0.0;
        foreach (var use in loop.Uses)
        {
            var edge = solid.Edges[use.Edge];
            var last = face.Surface.Of(edge.At(0)).P;
            for (var i = 1; i <= Steps; i++)
            {
                var p = face.Surface.Of(edge.At(i / (double)Steps)).P;
                var step = p - last;
                turned += (use.Forward ? 1 : -1) * (step - (2 * Math.PI * Math.Round(step / (2 * Math.PI))));
                last = p;
            }
        }

        return turned;
    }

    /// <summary>A hole's loop lies inside the outline and outside the other holes, looked at 32 places per edge.</summary>
    private static bool IsWithin(Solid solid, Face face, Loop hole)
    {
        var outlines = face.Loops.Select(l => Flat(solid, face, l)).ToList();
        var own = face.Loops.ToList().IndexOf(hole);
        for (var i = 0; i < outlines.Count; i++)
        {
            if (i != own && outlines[own].Any(p => Holds(outlines[i], p) != (i == 0)))
                return false;
        }

        return true;
    }

    private static List<(double X, double Y)> Flat(Solid solid, Face face, Loop loop)
    {
        const int Steps = 32;
        var points = new List<(double X, double Y)>();
        foreach (var use in loop.Uses)
        {
            var count = solid.Edges[use.Edge].Curve is Straight ? 1 : Steps;
            for (var i = 0; i < count; i++)
                points.Add(face.Surface.Of(solid.Edges[use.Edge].At(use.Forward ? i / (double)count : 1 - (i / (double)count))));
        }

        return points;
    }

    private static bool Holds(List<(double X, double Y)> outline, (double X, double Y) p)
    {
        var inside = false;
        for (var i = 0; i < outline.Count; i++)
        {
            var (a, b) = (outline[i], outline[(i + 1) % outline.Count]);
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)))
                inside = !inside;
        }

        return inside;
    }

    private static void OfShell(Solid solid, int? throughHoles, List<AuditFinding> found)
    {
        var faceOfEdge = new List<int>[solid.Edges.Count];
        for (var i = 0; i < solid.Faces.Count; i++)
        {
            foreach (var use in solid.Faces[i].Loops.SelectMany(l => l.Uses))
                (faceOfEdge[use.Edge] ??= []).Add(i);
        }

        var seen = new HashSet<int> { 0 };
        var open = new Stack<int>([0]);
        while (open.TryPop(out var face))
        {
            foreach (var next in solid.Faces[face].Loops.SelectMany(l => l.Uses).SelectMany(u => faceOfEdge[u.Edge]))
            {
                if (seen.Add(next))
                    open.Push(next);
            }
        }

        if (seen.Count < solid.Faces.Count)
            found.Add(new(Defect.Apart, $"only {seen.Count} of {solid.Faces.Count} faces hang together"));
        // Euler and Poincare: V - E + F - (inner loops) = 2 (1 - through holes) for one shell.
        var euler = solid.Vertices.Count - solid.Edges.Count + solid.Faces.Count - solid.Faces.Sum(f => f.Loops.Count - 1);
        if (euler % 2 != 0 || euler > 2)
            found.Add(new(Defect.Count, $"vertices, edges, faces and holes add up to {euler}"));
        else if (throughHoles is { } expected && euler != 2 * (1 - expected))
            found.Add(new(Defect.Count, $"{(2 - euler) / 2} holes go through, not {expected}"));
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
