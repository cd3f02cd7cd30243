using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Throwright.Shapes.Distance;

public static partial class ConvexDistance
{
    private readonly record struct Face(int I, int J, int K, Vector256<double> Normal, double Offset);

    /// <summary>The polytope that grows inside a difference of two cores. One a thread, used again: nothing is allocated once it has its size.</summary>
    private sealed class Polytope
    {
        private const int MostFaces = 2000;

        private static readonly ThreadLocal<Polytope> Each = new(() => new());

        private Face[] faces = new Face[64], kept = new Face[64];

        // Where each face stands off the origin, beside the faces: looked through at every step.
        private double[] offsets = new double[64];
        private (int From, int To)[] rim = new (int, int)[32];
        private int faceCount;

        public static Polytope Own => Each.Value!;

        public Vertex[] Points { get; private set; } = new Vertex[32];

        public int Count { get; private set; }

        public Face[] Faces => faces;

        public void Clear() => (Count, faceCount) = (0, 0);

        public void Add(Vertex next)
        {
            if (Count == Points.Length)
            {
                var more = Points;
                Array.Resize(ref more, 2 * Count);
                Points = more;
            }

            Points[Count++] = next;
        }

        /// <summary>Takes a point that the first ones do not hold in their flat; the first four span a volume.</summary>
        public void Grow(Vertex next, double scale)
        {
            if (Count < 4 && OffFlat(next.P) > 1e-10 * scale)
                Add(next);
        }

        /// <summary>The four faces of the first four points.</summary>
        public void Begin()
        {
            faceCount = 0;
            Keep(Outward(0, 1, 2, 3));
            Keep(Outward(0, 1, 3, 2));
            Keep(Outward(0, 2, 3, 1));
            Keep(Outward(1, 2, 3, 0));
            Swap();
        }

        /// <summary>The face nearest the origin; of equals the first.</summary>
        public int Nearest()
        {
            var nearest = 0;
            var least = offsets[0];
            for (var i = 1; i < faceCount; i++)
            {
                if (offsets[i] < least)
                    (least, nearest) = (offsets[i], i);
            }

            return nearest;
        }

        /// <summary>Takes a point outside and closes the polytope about it; false: it can't be closed or has grown too large.</summary>
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public bool Expand(Vertex w, Vector256<double> inside, double slack)
        {
            Add(w);
            var (at, edges, before) = (Count - 1, 0, faceCount);
            faceCount = 0;
            for (var i = 0; i < before; i++)
            {
                ref readonly var face = ref faces[i];
                if (Triple.Dot(face.Normal, w.P) - face.Offset <= slack)
                {
                    Keep(in face);
                    continue;
                }

                edges = Toggle(edges, face.I, face.J);
                edges = Toggle(edges, face.J, face.K);
                edges = Toggle(edges, face.K, face.I);
            }

            // In the order of their corners, whatever order they came in.
            rim.AsSpan(0, edges).Sort();
            for (var i = 0; i < edges; i++)
            {
                if (From(rim[i].From, rim[i].To, at, inside) is { } face)
                    Keep(in face);
            }

            var count = faceCount;
            if (count is < 4 or > MostFaces)
                return false;
            Swap();
            return true;
        }

        /// <summary>An edge is on the rim where only one of its two faces is seen.</summary>
        private int Toggle(int edges, int from, int to)
        {
            var isThere = false;
            for (var i = 0; i < edges; i++)
            {
                isThere |= rim[i].From == from && rim[i].To == to;
                if (rim[i].From != to || rim[i].To != from)
                    continue;
                rim[i] = rim[edges - 1];
                return edges - 1;
            }

            if (isThere)
                return edges;
            if (edges == rim.Length)
                Array.Resize(ref rim, 2 * edges);
            rim[edges] = (from, to);
            return edges + 1;
        }

        private void Keep(in Face face)
        {
            if (faceCount == kept.Length)
            {
                Array.Resize(ref kept, 2 * faceCount);
                Array.Resize(ref offsets, 2 * faceCount);
            }

            offsets[faceCount] = face.Offset;
            kept[faceCount++] = face;
        }

        private void Swap()
        {
            (faces, kept) = (kept, faces);
            if (kept.Length < faces.Length)
                kept = new Face[faces.Length];
        }

        private double OffFlat(Vector256<double> p)
        {
            if (Count == 0)
                return double.PositiveInfinity;
            var d = p - Points[0].P;
            if (Count == 1)
                return Triple.Size(d);
            var e = Triple.Unit(Points[1].P - Points[0].P);
            if (Count == 2)
                return Triple.Size(d - (Triple.Dot(d, e) * e));
            return Math.Abs(Triple.Dot(d, Triple.Unit(Triple.Cross(e, Points[2].P - Points[0].P))));
        }

        private Face Outward(int i, int j, int k, int other)
        {
            var normal = Triple.Unit(Triple.Cross(Points[j].P - Points[i].P, Points[k].P - Points[i].P));
            if (Triple.Dot(normal, Points[other].P - Points[i].P) > 0)
                (normal, j, k) = (-normal, k, j);
            return new(i, j, k, normal, Triple.Dot(normal, Points[i].P));
        }

        private Face? From(int i, int j, int k, Vector256<double> inside)
        {
            var normal = Triple.Cross(Points[j].P - Points[i].P, Points[k].P - Points[i].P);
            var size = Triple.Size(normal);
            if (!(size > 1e-30))
                return null;
            normal = (1 / size) * normal;
            return Triple.Dot(normal, Points[i].P - inside) < 0 ? null : new(i, j, k, normal, Triple.Dot(normal, Points[i].P));
        }
    }
}
