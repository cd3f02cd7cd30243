using Throwright.Shapes.Curves;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Numerics;

namespace Throwright.Shapes.Tests.Curves.Oracle;

/// <summary>A chain of 24 equal legs, nearly rigid springs, whose corners resist turning; damped motion until it rests.</summary>
internal static class PolygonRelaxation
{
    private const int Legs = 24;

    public static double Energy(ElasticProblem problem, CounterRandom random)
    {
        var h = problem.Length!.Value / Legs;
        Vector3 t0 = problem.StartDirection!.Value.Unit(), t1 = problem.EndDirection!.Value.Unit(), end = problem.End!.Value;
        var p = new Vector3[Legs + 1];
        for (var i = 0; i <= Legs; i++)
        {
            double u = (double)i / Legs, bump = 4 * u * (1 - u);
            p[i] = problem.Start + (u * (end - problem.Start)) + (bump * new Vector3(0.3 * (random.Uniform(0) - 0.5), random.Uniform(1) - 0.5, random.Uniform(2) - 0.5));
        }

        // The clamps act on the first and last leg: half a corner's length lies outside, hence the factor 2 on those corners.
        var speed = new Vector3[Legs + 1];
        const double Spring = 3e4, Pace = 2e-4;
        var force = new Vector3[Legs + 1];
        for (var round = 0; round < 15000; round++)
        {
            Array.Clear(force);
            for (var i = 0; i < Legs; i++)
            {
                var leg = p[i + 1] - p[i];
                var pull = Spring * (leg.Size - h) / leg.Size * leg;
                force[i] += pull;
                force[i + 1] -= pull;
            }

            for (var i = 0; i <= Legs; i++)
                Corner(p, force, i, h, t0, t1);
            var power = 0.0;
            for (var i = 1; i < Legs; i++)
                power += Vector3.Dot(force[i], speed[i]);
            for (var i = 1; i < Legs; i++)
            {
                speed[i] = (power < 0 ? default : 0.999 * speed[i]) + (Pace * 5 * force[i]);
                p[i] += Pace * speed[i];
            }
        }

        var energy = 0.0;
        for (var i = 0; i <= Legs; i++)
        {
            var (a, b, weight) = Sides(p, i, t0, t1);
            var turn = Vector3.AngleBetween(a, b);
            energy += 0.5 * weight * turn * turn / h;
        }

        return energy;
    }

    private static (Vector3 Before, Vector3 After, double Weight) Sides(Vector3[] p, int i, Vector3 t0, Vector3 t1) => (
        i == 0 ? t0 : p[i] - p[i - 1],
        i == Legs ? t1 : p[i + 1] - p[i],
        i is 0 or Legs ? 2 : 1);

    /// <summary>Energy weight (1 - cos turn)/h, which is turn^2/2h for small turns; its force on the three points.</summary>
    private static void Corner(Vector3[] p, Vector3[] force, int i, double h, Vector3 t0, Vector3 t1)
    {
        var (a, b, weight) = Sides(p, i, t0, t1);
        double sa = a.Size, sb = b.Size;
        Vector3 ua = (1 / sa) * a, ub = (1 / sb) * b;
        var cos = Vector3.Dot(ua, ub);
        var byA = (weight / (h * sa)) * (ub - (cos * ua));
        var byB = (weight / (h * sb)) * (ua - (cos * ub));
        if (i > 0)
        {
            force[i] += byA;
            force[i - 1] -= byA;
        }

        if (i < Legs)
        {
            force[i + 1] += byB;
            force[i] -= byB;
        }
    }
}
