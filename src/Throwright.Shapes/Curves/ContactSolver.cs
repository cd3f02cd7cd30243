namespace Throwright.Shapes.Curves;

/// <summary>Primal-dual steps to a curve that touches obstacles and does not enter them.</summary>
internal static class ContactSolver
{
    private const double FirstBarrier = 0.1, LastBarrier = 1e-11;
    private const double Reach = 0.3;
    private const double LongestTurn = 0.5;

    /// <summary>Down to a stable curve among the obstacles; false where none was reached.</summary>
    /// <param name="mu">Barrier to begin with.</param>
    /// <param name="plain">First with the plain scheme and a merit that guards every step.</param>
    public static bool Settle(ContactSystem system, double mu, bool plain)
    {
        system.Fine = false;
        system.Place();
        system.FindTouches(Reach, mu);
        if (plain && !Descend(system, ref mu, 1e-5))
            return false;
        system.Fine = true;
        system.Place();
        system.Measure();
        return Polish(system, mu);
    }

    public static double First => FirstBarrier;

    private static bool Descend(ContactSystem system, ref double mu, double until)
    {
        double shift = 1e-6, weight = 1;
        for (var iteration = 0; iteration < 200; iteration++)
        {
            system.Assemble(mu);
            if (!Shifted(system, ref shift))
                return false;
            double turn = system.LargestTurn(), stretch = system.LargestStretch();
            if (!double.IsFinite(turn))
                return false;
            var (slack, push) = system.Bounds(mu);
            if (turn < Math.Max(10 * mu, 1e-7) && system.Error(mu) < 10 * mu && shift <= 1e-6)
            {
                if (mu <= until)
                    return true;
                mu = Math.Max(0.5 * until, Math.Min(0.2 * mu, Math.Pow(mu, 1.5)));
                weight = 1;
                continue;
            }

            weight = Math.Max(weight, 1.5 * Math.Max(system.LargestForce(), system.LargestPush()));
            var part = Math.Min(slack, Math.Min(LongestTurn / turn, stretch > 0 ? 0.05 / stretch : 1));
            var (e0, g0, b0) = system.Merit();
            var merit = e0 + (weight * g0) + (mu * b0);
            system.Keep();
            var accepted = false;
            for (var half = 0; half < 14; half++)
            {
                system.Advance(part);
                var (e, g, b) = system.Merit();
                if (e + (weight * g) + (mu * b) <= merit + (1e-10 * (1 + Math.Abs(merit))))
                {
                    accepted = true;
                    break;
                }

                system.GoBack();
                part *= 0.5;
            }

            if (!accepted)
            {
                system.Place();
                system.Measure();
                shift = Math.Max(1, 10 * shift);
                if (shift > 1e8)
                    return false;
                continue;
            }

            system.AdvanceForces(Math.Min(push, 1), mu);
            shift = part > 0.9 ? (shift <= 1 ? 1e-6 : shift / 8) : shift;
        }

        return false;
    }

    private static bool Shifted(ContactSystem system, ref double shift)
    {
        while (system.Factor(shift) != system.Wanted)
        {
            shift = Math.Max(1, 3 * shift);
            if (shift > 1e8)
                return false;
        }

        return true;
    }

    /// <summary>With the fourth-order element to the last barrier; full steps as far as slacks and pushes stay above zero.</summary>
    private static bool Polish(ContactSystem system, double mu)
    {
        var shift = 1e-6;
        for (var iteration = 0; iteration < 80; iteration++)
        {
            system.Assemble(mu);
            if (!Shifted(system, ref shift))
                return false;
            var turn = system.LargestTurn();
            if (!(turn < 3))
                return false;
            var (slack, push) = system.Bounds(mu);
            var part = Math.Min(slack, Math.Min(1, 0.3 / turn));
            system.Keep();
            system.Advance(part);
            system.AdvanceForces(push, mu);
            shift = shift <= 1 ? 1e-6 : shift / 8;
            if (part > 0.9 && turn < Math.Max(10 * mu, 1e-9) && system.Error(mu) < Math.Max(10 * mu, 1e-11))
            {
                if (mu <= LastBarrier)
                {
                    system.Assemble(mu);
                    return true;
                }

                mu = Math.Max(LastBarrier, Math.Min(0.2 * mu, Math.Pow(mu, 1.5)));
            }
        }

        return false;
    }
}
