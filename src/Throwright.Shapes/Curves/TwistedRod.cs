using Throwright.Shapes.Frames;

namespace Throwright.Shapes.Curves;

/// <summary>A rod that also twists and may be bent when free. Any consistent units.</summary>
/// <param name="Stiffness">Bending stiffness B, alike to all sides.</param>
/// <param name="TorsionStiffness">Torsion stiffness C.</param>
/// <param name="Set">Curvature when free, toward the mark along its side.</param>
public sealed record Rod(double Length, double Stiffness, double TorsionStiffness, double Set = 0);

/// <summary>A held end: point, unit direction of the rod there, unit direction of the mark along its side.</summary>
public readonly record struct RodEnd(Vector3 Point, Vector3 Along, Vector3 Mark);

/// <summary>The rod at equal arc steps from its start.</summary>
/// <param name="Force">Internal force at the start: what the part beyond pulls with; constant without load.</param>
/// <param name="Moment">Internal moment at the start.</param>
/// <param name="Twist">Twisting moment at the start; constant along a rod without set.</param>
/// <param name="PastNeutral">On the way to this shape the rod passed one in which it could give way without load: it may have snapped.</param>
public sealed record RodShape(EquatableList<CurveNode> Nodes, RodEnd End, Vector3 Force, Vector3 Moment, double Twist, bool PastNeutral)
{
    public double LeastRadius
    {
        get
        {
            var most = Nodes.Max(n => n.Curvature.Size);
            return most > 0 ? 1 / most : double.PositiveInfinity;
        }
    }
}

/// <summary>Kirchhoff rods by shooting from the start. Derived in docs/theory/route.md.</summary>
/// <remarks>
/// r' = t, t' = w x t, mark' = w x mark, M' = F x t; w = M / B across and M / C along, plus the set. Fourth-order Runge-Kutta steps,
/// Newton on the unknown force and moment at the start.
/// </remarks>
public static class TwistedRod
{
    private const int Steps = 240;
    private const int Unknown = 6;

    /// <summary>From a force and moment at the start to the whole rod.</summary>
    public static RodShape Shoot(Rod rod, RodEnd start, Vector3 force, Vector3 moment, bool pastNeutral = false)
    {
        ArgumentNullException.ThrowIfNull(rod);
        var h = rod.Length / Steps;
        var nodes = new CurveNode[Steps + 1];
        var at = new State(start.Point, start.Along, start.Mark, moment);
        for (var i = 0; i <= Steps; i++)
        {
            nodes[i] = new(i * h, at.Point, at.Along, Slope(rod, at, force).Along);
            if (i < Steps)
                at = Step(rod, at, force, h);
        }

        return new(EquatableList.Of<CurveNode>(nodes), new(at.Point, at.Along, at.Mark), force, moment, Vector3.Dot(moment, start.Along), pastNeutral);
    }

    /// <summary>Clamped at the start, a dead force at the other end.</summary>
    /// <returns>Null where the steps in the force do not close.</returns>
    public static RodShape? Hanging(Rod rod, RodEnd start, Vector3 tipForce, int steps = 8)
    {
        ArgumentNullException.ThrowIfNull(rod);
        var x = new double[3];
        for (var step = 1; step <= steps; step++)
        {
            var force = ((double)step / steps) * tipForce;
            if (!Close(x, (moment, rest) =>
            {
                var end = Run(rod, start, force, new(moment[0], moment[1], moment[2])).Moment;
                (rest[0], rest[1], rest[2]) = (end.X / rod.Stiffness, end.Y / rod.Stiffness, end.Z / rod.Stiffness);
            }, rod.Stiffness / rod.Length, out _))
                return null;
        }

        return Shoot(rod, start, tipForce, new(x[0], x[1], x[2]));
    }

    /// <summary>Clamped at both ends; led there from a shape nearby.</summary>
    /// <param name="force">Internal force at the start of the shape nearby.</param>
    /// <param name="moment">Internal moment there.</param>
    /// <param name="toward">The case at a part 0..1 of the way from the shape nearby to the one wanted.</param>
    /// <returns>Null where the way does not close.</returns>
    public static RodShape? Clamped(Vector3 force, Vector3 moment, Func<double, (Rod Rod, RodEnd Start, RodEnd End)> toward, int steps = 8)
    {
        ArgumentNullException.ThrowIfNull(toward);
        double[] x = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
        var sign = 0;
        var past = false;
        for (var step = 0; step <= steps; step++)
        {
            var (rod, start, end) = toward((double)step / steps);
            // In units of the rod: force B/L^2, moment B/L.
            double unit = rod.Stiffness / rod.Length, forceUnit = unit / rod.Length;
            var side = Vector3.Cross(end.Along, end.Mark);
            for (var i = 0; i < Unknown; i++)
                x[i] /= i < 3 ? forceUnit : unit;
            var closed = Close(x, (y, rest) =>
            {
                var at = Run(rod, start, forceUnit * new Vector3(y[0], y[1], y[2]), unit * new Vector3(y[3], y[4], y[5]));
                var d = (1 / rod.Length) * (at.Point - end.Point);
                (rest[0], rest[1], rest[2]) = (d.X, d.Y, d.Z);
                (rest[3], rest[4], rest[5]) = (Vector3.Dot(at.Along, end.Mark), Vector3.Dot(at.Along, side), Vector3.Dot(at.Mark, side));
            }, 1, out var determinant);
            for (var i = 0; i < Unknown; i++)
                x[i] *= i < 3 ? forceUnit : unit;
            if (!closed)
                return null;
            past |= sign != 0 && Math.Sign(determinant) != sign;
            sign = Math.Sign(determinant);
        }

        var (of, from, _) = toward(1);
        return Shoot(of, from, new(x[0], x[1], x[2]), new(x[3], x[4], x[5]), past);
    }

    private readonly record struct State(Vector3 Point, Vector3 Along, Vector3 Mark, Vector3 Moment)
    {
        public State Plus(double h, in State slope) => new(Point + (h * slope.Point), Along + (h * slope.Along), Mark + (h * slope.Mark), Moment + (h * slope.Moment));
    }

    private static State Run(Rod rod, RodEnd start, Vector3 force, Vector3 moment)
    {
        var at = new State(start.Point, start.Along, start.Mark, moment);
        for (var i = 0; i < Steps; i++)
            at = Step(rod, at, force, rod.Length / Steps);
        return at;
    }

    private static State Slope(Rod rod, in State at, Vector3 force)
    {
        var along = Vector3.Dot(at.Moment, at.Along);
        // A set toward the mark turns about the axis across both.
        var turn = ((1 / rod.Stiffness) * (at.Moment - (along * at.Along))) + ((along / rod.TorsionStiffness) * at.Along) + (rod.Set * Vector3.Cross(at.Along, at.Mark));
        return new(at.Along, Vector3.Cross(turn, at.Along), Vector3.Cross(turn, at.Mark), Vector3.Cross(force, at.Along));
    }

    private static State Step(Rod rod, in State at, Vector3 force, double h)
    {
        State a = Slope(rod, at, force), b = Slope(rod, at.Plus(0.5 * h, a), force), c = Slope(rod, at.Plus(0.5 * h, b), force), d = Slope(rod, at.Plus(h, c), force);
        return at.Plus(h / 6, a).Plus(h / 3, b).Plus(h / 3, c).Plus(h / 6, d);
    }

    /// <summary>Newton with a Jacobian by differences; halved steps where the rest grows.</summary>
    private static bool Close(double[] x, Action<double[], double[]> rest, double size, out double determinant)
    {
        var n = x.Length;
        double[] r = new double[n], moved = new double[n], other = new double[n];
        var jacobian = new double[n * n];
        determinant = double.NaN;
        rest(x, r);
        for (var iteration = 0; iteration < 40; iteration++)
        {
            for (var c = 0; c < n; c++)
            {
                var e = 1e-6 * size * Math.Max(1, Math.Abs(x[c]) / size);
                x.CopyTo(moved, 0);
                moved[c] += e;
                rest(moved, other);
                for (var i = 0; i < n; i++)
                    jacobian[(i * n) + c] = (other[i] - r[i]) / e;
            }

            var step = (double[])r.Clone();
            determinant = Gauss(jacobian, step, n);
            if (determinant == 0 || !double.IsFinite(determinant))
                return false;
            double before = Norm(r), part = 1;
            for (; part > 1e-4; part *= 0.5)
            {
                for (var c = 0; c < n; c++)
                    moved[c] = x[c] - (part * step[c]);
                rest(moved, other);
                if (Norm(other) < before || Norm(other) < 1e-11)
                    break;
            }

            if (part <= 1e-4)
                return before < 1e-9;
            (moved.AsSpan()).CopyTo(x);
            other.CopyTo(r, 0);
            if (Norm(r) < 1e-12)
                return true;
        }

        return Norm(r) < 1e-9;
    }

    private static double Norm(double[] v) => v.Max(Math.Abs);

    /// <summary>Overwrites the right-hand side with the solution; the determinant.</summary>
    private static double Gauss(double[] a, double[] b, int n)
    {
        var determinant = 1.0;
        for (var k = 0; k < n; k++)
        {
            var p = Enumerable.Range(k, n - k).MaxBy(i => Math.Abs(a[(i * n) + k]));
            if (a[(p * n) + k] == 0)
                return 0;
            if (p != k)
            {
                for (var c = 0; c < n; c++)
                    (a[(k * n) + c], a[(p * n) + c]) = (a[(p * n) + c], a[(k * n) + c]);
                (b[k], b[p]) = (b[p], b[k]);
                determinant = -determinant;
            }

            determinant *= a[(k * n) + k];
            for (var i = k + 1; i < n; i++)
            {
                var l = a[(i * n) + k] / a[(k * n) + k];
                for (var c = k; c < n; c++)
                    a[(i * n) + c] -= l * a[(k * n) + c];
                b[i] -= l * b[k];
            }
        }

        for (var k = n - 1; k >= 0; k--)
        {
            for (var c = k + 1; c < n; c++)
                b[k] -= a[(k * n) + c] * b[c];
            b[k] /= a[(k * n) + k];
        }

        return determinant;
    }
}
