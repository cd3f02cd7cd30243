using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Order;

/// <summary>A torque range, N m.</summary>
public readonly record struct TorqueRange(double Low, double High, double Most);

/// <summary>One bolt chosen for a stack.</summary>
/// <param name="Number">Standard part number.</param>
/// <param name="Grip">m.</param>
/// <param name="Washers">Part numbers with their count.</param>
/// <param name="ThreadsOut">Threads that stand out of a nut of planning height.</param>
public sealed record BoltChoice(string Number, double Grip, double Length, EquatableList<(string Number, int Count)> Washers, double ThreadsOut, SourceRef Source);

/// <summary>Standard hardware from the published tables.</summary>
public static class Hardware
{
    /// <summary>Grip is what is left of the shank without its thread.</summary>
    public static double Grip(double shank, double threaded) => shank - threaded;

    /// <summary>Length of a solid rivet: grip and one and a half diameters.</summary>
    public static double RivetLength(double diameter, double grip) => (Published.Get("order/rivet-length").Value * diameter) + grip;

    /// <summary>Clamp force of a screw by its torque: T / (K d), N.</summary>
    public static double ClampForce(double torque, double diameter, double k = 0.2) => torque / (k * diameter);

    /// <summary>Table torque with the nut's measured friction drag added: AC 43.13-1B 7-40(d).</summary>
    public static TorqueRange? Torque(string thread, bool tensionNut, double drag)
    {
        var row = Published.Table("order/torque").Rows.FirstOrDefault(r => r.Find("thread")?.Text == thread);
        var kind = tensionNut ? "tension" : "shear";
        return row is null ? null : new(row.Si(kind + "-low") + drag, row.Si(kind + "-high") + drag, row.Si(kind + "-most") + drag);
    }

    /// <summary>Sizes that the tables know, smallest and largest.</summary>
    public static string Smallest => Published.Table("order/sizes").Rows[0].Find("bolt")!.Text;
    public static string Largest => Published.Table("order/sizes").Rows[^1].Find("bolt")!.Text;

    /// <summary>The AN bolt whose shank is this; null: none of the table.</summary>
    public static TableRow? SizeOf(double diameter) =>
        Published.Table("order/sizes").Rows.FirstOrDefault(r => Math.Abs(r.Si("diameter") - diameter) < 1e-4);

    /// <summary>
    /// Shortest bolt whose grip fills the stack but for 1/32 in, with washers under the nut so that the nut does not
    /// run out of thread: at least one, at most three. Null: none of the table.
    /// </summary>
    public static BoltChoice? BoltFor(TableRow size, double stack, bool drilled)
    {
        ArgumentNullException.ThrowIfNull(size);
        var name = size.Find("bolt")!.Text;
        double slack = Published.Get("order/shank-short").Value, full = size.Si("washer-thickness"), thin = size.Si("thin-thickness"), nut = size.Si("nut");
        var most = (int)Published.Get("order/washers-most").Value;
        var pitch = Length.MetresPerInch / double.Parse(size.Find("thread")!.Text.Split('-')[1], System.Globalization.CultureInfo.InvariantCulture);
        foreach (var row in Published.Table("order/bolts").Rows.Where(r => r.Find("bolt")!.Text == name).OrderBy(r => r.Si("length")))
        {
            double grip = row.Si("grip"), length = row.Si("length");
            if (grip < stack - slack)
                continue;
            // Fewest and thinnest washers that keep the nut off the shank.
            var choice = (from a in Enumerable.Range(0, most + 1)
                          from b in Enumerable.Range(0, most + 1 - a)
                          where a + b >= 1 && stack + (a * full) + (b * thin) >= grip
                          orderby a + b, (a * full) + (b * thin)
                          select ((int Full, int Thin)?)(a, b)).FirstOrDefault();
            if (choice is not { } w)
                continue;
            var threads = (length - stack - (w.Full * full) - (w.Thin * thin) - nut) / pitch;
            if (threads < Published.Get("order/threads-out").Value)
                continue;
            var washers = new List<(string, int)>();
            if (w.Full > 0)
                washers.Add((size.Find("washer")!.Text, w.Full));
            if (w.Thin > 0)
                washers.Add((size.Find("thin")!.Text, w.Thin));
            return new($"{name}-{row.Find("dash")!.Text}{(drilled ? "" : "A")}", grip, length, washers.ToEquatableList(), threads, row.Source);
        }

        return null;
    }

    /// <summary>Nut for how a joint is held, with its cotter if it has one.</summary>
    public static (string Number, string What) NutFor(Joint joint, string bolt)
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(bolt);
        var size = bolt[^1];
        return joint.HeldBy.Contains(JointLock.SelfLockingCastleNut) ? ("(by thread)", "self-locking castle nut")
            : joint.HeldBy.Contains(JointLock.CastleNut) ? ($"AN320-{size}", "castle nut, shear")
            : joint.HeldBy.Contains(JointLock.AllMetalNut) ? ($"MS21042-{size}", "all-metal self-locking nut")
            : joint.HeldBy.Contains(JointLock.SelfLockingNut) ? ("MS20364 (by thread)", "fibre or nylon lock nut, shear, to 250 °F")
            : ("(by thread)", "nut");
    }

    /// <summary>"10-32, shear nut: 12 to 15 lbf in and the nut's own drag."</summary>
    public static string TorqueWords(Joint joint, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(say);
        if (joint.Kind == PinKind.ClevisPin || joint.Diameter is not { } d || SizeOf(d.Metres) is not { } size)
            return "as its maker says.";
        var thread = size.Find("thread")!.Text;
        if (Torque(thread, false, 0) is not { } t)
            return "as its maker says.";
        var castle = joint.HeldBy.Any(h => h is JointLock.CastleNut or JointLock.SelfLockingCastleNut);
        return joint.Turns
            ? $"{thread} bolt that turns: nut snug only, so that the swivel stays free; then the cotter."
            : $"{thread}, shear nut: {say.TightenTo(t.Low, t.High)} plus the nut's measured drag{(castle ? ", start low and go to the next slot" : "")}.";
    }
}
