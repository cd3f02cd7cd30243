using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Order;

/// <summary>Works out the order of one run. Theory: docs/theory/order.md.</summary>
public static class OrderSolver
{
    private const string Ask = "ask before ordering";

    public static OrderAnswer Solve(OrderCase of, FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(of);
        ArgumentNullException.ThrowIfNull(say);
        return new()
        {
            Run = of.Name,
            Cable = CableLines(of, say).ToEquatableList(),
            Hardware = HardwareLines(of, say).ToEquatableList(),
            Cuts = Cuts(of, say).ToEquatableList(),
            Weight = WeightOf(of),
        };
    }

    private static IEnumerable<OrderLine> CableLines(OrderCase of, FigureWriter say)
    {
        var run = of.Run;
        var end = run.CockpitEnd;
        OrderLine Line(string what, string? value, string note = "", bool confirm = false) => new(what, value ?? Ask, value is null || confirm, note);
        yield return Line("quantity", "1");
        yield return Line("stroke, knob IN stop to OUT stop", end?.Stroke is { } s ? say.Size(s.Nominal.Metres) : null, end?.Stroke is { } stroke && (stroke.Minus > 0 || stroke.Plus > 0) ? $"within {say.Length(Math.Max(stroke.Minus, stroke.Plus))}" : "");
        yield return Line("conduit length, end to end", of.Conduit is { } c ? say.Length(c, Rounding.Up) : null, of.Wire is null ? "measured along its lie; round up, never down" : "worked out along its lie, rounded up to the order step");
        yield return Line("bare core beyond the conduit at the device, knob IN", of.BareWire is { } b ? say.Length(b, Rounding.Up) : null, of.Wire is null ? $"and {say.Move(3 * Length.MetresPerInch)} more to trim" : "to the pin, its tail and what is trimmed: the whole length below");
        if (of.Wire is { } wire)
            yield return Line("core, whole length", say.Length(wire, Rounding.Up), "from the lie, with what the fittings take and what is trimmed");
        var core = run.Cable?.Core;
        yield return Line("core", core is null ? null : $"{core.Kind switch { CoreKind.Solid => "solid", CoreKind.Strand1x7 => "strand 1x7", CoreKind.Strand1x19 => "strand 1x19", CoreKind.Strand7x7 => "strand 7x7", _ => "strand 7x19" }}, {say.Length(core.Diameter.Nominal.Metres)}, {(core.Material == CoreMaterial.MusicWire ? "music wire (ASTM A228)" : "stainless spring wire (ASTM A313, type 302)")}");
        var conduit = run.Cable?.Conduit;
        yield return Line("conduit", conduit is null ? null : $"{(conduit.Material == ConduitMaterial.CarbonSteel ? "steel" : "stainless")} coil{(conduit.Bore is { } bore ? $", bore {say.Length(bore.Nominal.Metres)}" : "")}{(conduit.Outside is { } o ? $", outside {say.Length(o.Nominal.Metres)}" : "")}", run.Installation?.Liner is { Length: > 0 } liner ? $"liner {liner}" : "");
        yield return Line("least bend radius it must stand", of.TightestBend is { } r ? say.Length(r, Rounding.Down) : null, conduit?.MinRadius is { } least ? $"tightest place of the lie; the cable in the file is allowed {say.Size(least.Metres)}" : "");
        yield return Line("working pull and push of the core", of is { Pull: { } pull, Push: { } push } ? $"{say.Force(pull)} and {say.Force(push)}" : null, "worst case; the maker's limits shall be above");
        yield return Line("end at the knob", end is null ? null : $"{end.Knob switch { KnobShape.Round => "round knob", KnobShape.THandle => "T-handle", _ => "lever handle" }}{SizeOf(end.KnobSize, say)}{(end.KnobColour.Length > 0 ? ", " + end.KnobColour : "")}", end?.KnobColour.Length > 0 ? "" : "colour: red only for an emergency control", end?.KnobColour.Length == 0);
        yield return Line("bushing thread", end?.Bushing?.Thread is { Length: > 0 } thread ? thread : null, "with panel nut and lock washer; state usable thread length");
        yield return Line("lock", end?.Lock switch { LockKind.None => "none", LockKind.PressToRelease => "held until a button is pressed", LockKind.Twist => "twist to lock", LockKind.Vernier => "vernier, coarse by button", LockKind.Friction => "adjustable friction", _ => null }, end?.LockHolds is { } holds ? $"holds {say.Force(holds.Newtons, Rounding.Down)} along the shank" : "");
        yield return Line("end at the device", run.LeverEnd is null ? null : $"plain core; end tube {say.Length(run.LeverEnd.Tip.Nominal.Metres)} beyond the anchor, {(run.LeverEnd.TipSwivels.Radians > 0 ? $"swivelling {say.Angle(run.LeverEnd.TipSwivels.Radians, Rounding.Down)} each way" : "fixed")}");
        yield return Line("weight per length", conduit?.Weight is { } perLength ? say.Text(QuantityKind.LineWeight, perLength.Nominal.Si) : null, conduit?.Weight is null ? "ask the maker to state it: weight and balance wants it" : "");
        yield return Line("temperatures", of is { Coldest: { } cold, Hottest: { } hot } ? $"{FigureText.Plain(cold, 0)} °C to {FigureText.Plain(hot, 0)} °C at the device end" : null);
        // No demand is told only where the run keeps out of the engine compartment.
        var isAhead = run.LeverEnd?.Zone == HeatZone.EngineBay;
        yield return Line("in a fire", run.Installation?.ConduitFire switch { FireClass.FireResistant => "fire resistant in the engine compartment", FireClass.Fireproof => "fireproof in the engine compartment", _ when isAhead || run.Function == ControlFunction.FuelShutoff => null, _ => "no demand" }, isAhead && (run.Installation?.ConduitFire ?? FireClass.NotStated) == FireClass.NotStated ? "it ends in the engine compartment: say whether conduit and liner must stand a fire (installation.conduitFire)" : "");
        yield return Line("marking on the knob or plate", run.Label.Length > 0 ? run.Label + (run.How.Length > 0 ? ", " + run.How : "") : null, of.LetterHeight is { } h ? $"letters {say.Length(h, Rounding.Up)} high or more" : "letters 0.006 of the viewing distance");
    }

    /// <summary>", 1 1/4 in across, 7/8 in long", as far as the file says.</summary>
    private static string SizeOf(KnobSize size, FigureWriter say) => string.Concat(
        size.Width is { } wide ? $", {say.Size(wide.Nominal.Metres)} wide" : "",
        size.Diameter is { } across ? $", {say.Size(across.Nominal.Metres)} {(size.Width is null ? "across" : "thick")}" : "",
        size.Length is { } along ? $", {say.Size(along.Nominal.Metres)} long" : "");

    private static IEnumerable<HardwareLine> HardwareLines(OrderCase of, FigureWriter say)
    {
        var joint = of.Run.Installation?.Joint;
        if (joint is { Kind: PinKind.Bolt, Diameter: { } d, Arm: { } arm } && Hardware.SizeOf(d.Metres) is { } size)
        {
            var stack = arm.Metres + (joint.Swivel?.Metres ?? 0);
            var castle = joint.HeldBy.Any(h => h is JointLock.CastleNut or JointLock.SelfLockingCastleNut);
            if (Hardware.BoltFor(size, stack, castle) is { } bolt)
            {
                yield return new(bolt.Number, $"bolt, {size.Find("thread")!.Text}, grip {say.Length(bolt.Grip)}", 1, 0, castle, $"stack {say.Length(stack)} (arm and swivel){(castle ? "; try the cotter hole against the nut's slots, else change washers" : $"; {FigureText.Plain(bolt.ThreadsOut, 1, Rounding.Down)} threads beyond a nut of planning height")}");
                foreach (var (washer, count) in bolt.Washers)
                    yield return new(washer, "washer under the nut", count, 1, true, "full and thin ones beside them for the cotter hole; its own standard was not read: measure the thickness");
                var (nut, what) = Hardware.NutFor(joint, size.Find("bolt")!.Text);
                yield return new(nut, what, 1, 1, true, $"planned with a height of {say.Length(size.Si("nut"))} (ASME B18.2.2, full nut); no table of its own standard was readable: measure the nut in hand{(castle ? " and its slots" : "")}");
            }

            else
            {
                yield return new(Ask, $"bolt {size.Find("bolt")!.Text} for a stack of {say.Length(stack)}", 1, 0, true, "no length of the table fits this stack: longer or shorter than it goes, or more than three washers");
            }

            if (joint.HeldBy.Contains(JointLock.Cotter))
                yield return new(size.Find("cotter")!.Text, "cotter pin", 1, 3, true, (of.EngineBay is not null && of.Run.LeverEnd?.Zone == HeatZone.EngineBay ? "corrosion-resistant ahead of the firewall; " : "") + "new at each assembly; the largest that hole and slot accept");
        }
        else if (joint is not null)
        {
            yield return new(Ask, joint.Kind == PinKind.ClevisPin ? "clevis pin of the swivel" : "bolt of the swivel", 1, 0, true,
                joint is { Kind: PinKind.Bolt, Diameter: { } other, Arm: not null }
                    ? $"no bolt of {say.Size(other.Metres)} is in the tables, which go from {Hardware.Smallest} to {Hardware.Largest}: take grip and length from its own standard"
                    : "diameter and thicknesses of arm and swivel give the number (installation.joint)");
        }

        if (of.Run.LeverEnd?.Swivel.HoldsBy.Contains(WireHold.SetScrew) == true)
            yield return new("ASME B18.3 (size of the fitting)", "socket set screw, flat or half-dog point", 1, 1, true, $"point wider than the core{(of.Run.Cable?.Core is { } core ? $", {say.Length(core.Diameter.Most)}" : "")}");
        if (of.Run.Cable?.Conduit?.Outside is { } outside)
        {
            // As check names it; a few thousandths of an inch the cushion takes.
            var dash = (int)Math.Ceiling((outside.Nominal.Metres / (Length.MetresPerInch / 16)) - 1e-6);
            var supports = of.Run.Cable.Supports;
            var clamps = supports.Count > 0 ? supports.Count(s => s.Kind != SupportHold.Grommet) : Math.Max(2, of.Run.Cable.Bends.Count * 2);
            if (clamps > 0)
                yield return new($"MS21919-{dash}", "cushioned loop clamp for the conduit", clamps, 1, true, $"dash is sixteenths of an inch; cushion by its place: silicone near exhaust, nitrile near fuel and oil{(supports.Count > 0 ? "" : "; count by the lie")}");
        }
    }

    private static IEnumerable<CutLine> Cuts(OrderCase of, FigureWriter say)
    {
        foreach (var made in of.Made)
            yield return made;
        if (of.Run.Installation is not { } more)
            yield break;
        // A part that is cut above by its sizes needs no second line.
        foreach (var part in more.Parts.Where(p => !of.Made.Any(m => m.What.Split(',')[0].Contains("wedge", StringComparison.OrdinalIgnoreCase) && p.Name.Contains("wedge", StringComparison.OrdinalIgnoreCase))))
            yield return new(part.Name, part.Material, "by its drawing (throwright make)");
        if (of.BareWire is { } wire && more.Joint is not null)
            yield return new("core, trimmed when rigged", "the cable's own", $"{say.Length(wire, Rounding.Up)} beyond the conduit");
    }

    /// <summary>Cable by its weight per length, or its core alone when that is not known.</summary>
    private static Weight? WeightOf(OrderCase of)
    {
        if (of.Conduit is not { } length || of.Run.Cable is not { } cable)
            return null;
        double mass, share;
        string from;
        if (cable.Conduit?.Weight is { } weight)
        {
            (mass, share, from) = (weight.Nominal.Si / Force.NewtonsPerKilogram * length, 0.1, "weight per length typed into the file; knob and fittings not counted");
        }
        else if (cable.Core is { } core)
        {
            // A bare close-wound coil of the same steel weighs two to four times its core.
            var perLength = Published.Get("order/steel-density").Value * Math.PI * 0.25 * core.Diameter.Nominal.Metres * core.Diameter.Nominal.Metres;
            (mass, share, from) = (4 * perLength * length, 0.5, "no weight per length in the file: four times the core's own stands in, and may be half or half as much again. Ask the maker or weigh one metre, and type it (cable.conduit.weight)");
        }
        else
        {
            return null;
        }

        return new(mass, share, of is { KnobStation: { } a, DeviceStation: { } b } ? 0.5 * (a + b) : null, from, cable.Conduit?.Weight is null);
    }

    /// <summary>Rod by length and sheet by area, over all runs.</summary>
    public static EquatableList<StockTotal> Stock(IEnumerable<OrderAnswer> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        return orders.SelectMany(o => o.Cuts).Where(c => c.Kind != CutKind.Other)
            .GroupBy(c => (c.Stock, c.Kind, Across: c.Kind == CutKind.Rod ? c.Across : c.Thick))
            .OrderBy(g => g.Key.Kind).ThenBy(g => g.Key.Stock, StringComparer.Ordinal).ThenBy(g => g.Key.Across)
            .Select(g => new StockTotal(g.Key.Stock, g.Key.Kind, g.Key.Across, g.Sum(c => c.Pieces * (c.Kind == CutKind.Rod ? c.Length : c.Length * c.Across)), g.Sum(c => c.Pieces)))
            .ToEquatableList();
    }
}
