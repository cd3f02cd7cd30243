using Throwright.Engine.Cushion;
using Throwright.Engine.HandForce;
using Throwright.Engine.Model;
using Throwright.Engine.Sources;
using Throwright.Engine.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Chain;

/// <summary>Fills the cases of hand force and cushion from the model and from earlier answers.</summary>
/// <param name="byLie">Bends and length of the cable are those of its lie, not typed.</param>
/// <param name="like">The forces of a run with the same lever end, if one is at hand.</param>
internal sealed class ChainInputs(Aircraft aircraft, Run run, LeverPlacement placement, Sweep sweep, Stops stops, HandForceCase? like, ICollection<Need> needs, bool byLie = false)
{
    private readonly Cable cable = run.Cable ?? new();
    private readonly LeverEnd lever = run.LeverEnd!;
    private readonly CockpitEnd cockpit = run.CockpitEnd ?? new();

    /// <summary>Bore less core diameter, with both sets of limits; null when either is not known.</summary>
    private (double Nominal, Limits Limits)? Clearance =>
        cable is { Core.Diameter: var d, Conduit.Bore: { } bore }
            ? (bore.Nominal.Metres - d.Nominal.Metres, Limits.Of(bore).Less(Limits.Of(d)))
            : null;

    /// <summary>Bend total with its limits: typed, or the sum of the bends.</summary>
    private (double Nominal, Limits Limits)? BendTotal =>
        cable.Bends.Count > 0
            ? (cable.Bends.Sum(b => b.Angle.Nominal.Radians), new(cable.Bends.Sum(b => b.Angle.Minus), cable.Bends.Sum(b => b.Angle.Plus)))
            : cable.BendTotal is { } total ? (total.Nominal.Radians, Limits.Of(total)) : null;

    public HandForceCase? ForceCase()
    {
        if (lever.Load is not { } load || (load.Torque is null && load.TorqueTable.Count == 0))
            needs.Add(Need.Load);
        if (cable.Friction is null)
            needs.Add(Need.Friction);
        if (BendTotal is null)
            needs.Add(Need.BendTotal);
        if (cable.Bends.Count == 0 && BendTotal is { Nominal: > 0 } && cable.Core is { Kind: CoreKind.Solid })
            needs.Add(Need.Bends);
        if (cable.Bends.Count > 0 && cable.Conduit?.MinRadius is null)
            needs.Add(Need.MinRadius);
        if (cable.Core is null)
            needs.Add(Need.Core);
        if (cable.Core is not null && cable.Conduit?.Bore is null)
            needs.Add(Need.Bore);
        if (cable.Length is null)
            needs.Add(Need.ConduitLength);
        if (lever.Load is not { } known || (known.Torque is null && known.TorqueTable.Count == 0) || cable.Friction is not { } mu || BendTotal is not { } bends)
            return null;
        var way = cable.Bends.Count > 0
            ? cable.Bends.Select(b => new BendOnWay(b.Angle.Nominal.Radians, b.Radius.Nominal.Metres)).ToEquatableList()
            : [new BendOnWay(bends.Nominal, double.NaN)];
        return new()
        {
            // The same lever end under the same load: the same places.
            Places = like is not null && like.Load == known ? like.Places : PlacesFor(known),
            Load = known,
            Friction = AtLeastZero(Of(mu)),
            Bends = way,
            BendFactor = bends.Nominal == 0
                ? Spread3.Exact(1)
                : new(1, Math.Max(0, bends.Nominal - bends.Limits.Minus) / bends.Nominal, (bends.Nominal + bends.Limits.Plus) / bends.Nominal),
            BendsAreKnown = cable.Bends.Count > 0,
            KnobDrag = cable.KnobDrag.Newtons,
            DeviceDrag = cable.DeviceDrag.Newtons,
            LockHolds = cockpit.LockHolds?.Newtons ?? (cockpit.Lock == LockKind.None ? 0 : null),
            Core = CoreOf(),
            Clearance = Clearance?.Nominal,
            ClearanceLimits = Clearance is { } gap ? new(gap.Nominal, gap.Nominal - gap.Limits.Minus, gap.Nominal + gap.Limits.Plus) : null,
            AngleLimits = cable.Bends.Select(b => AtLeastZero(Of(b.Angle))).ToEquatableList(),
            RadiusLimits = cable.Bends.Select(b => Of(b.Radius)).ToEquatableList(),
            EstimateFactor = EstimateFactor,
            ConduitLength = cable.Length is { } length ? Of(length) : null,
            LongestStraight = cable.LongestStraight?.Metres,
            LongestBareWire = LongestWire() - lever.Tip.Least,
            ConduitPullStiffness = cable.Conduit?.PullStiffness is { } pull ? Of(pull) : null,
            ConduitPushStiffness = cable.Conduit?.PushStiffness is { } push ? Of(push) : null,
            // Measured before worked out.
            BracketStiffness = lever.BracketStiffness is { } bracket ? Of(bracket) : MadeParts.BracketStiffness(run),
        };
    }

    public LadderCase? LadderCase(HandForces? forces)
    {
        if (aircraft.Environment is null)
            needs.Add(Need.Environment);
        if (cockpit.Stroke is not { } stroke)
        {
            needs.Add(Need.Stroke);
            return null;
        }

        var notCounted = new List<string>();
        if (Clearance is null || BendTotal is null)
            notCounted.Add(Cushion.LadderCase.NoLostMotion);
        if (forces is null)
            notCounted.Add(Cushion.LadderCase.NoStretch);
        else
            notCounted.AddRange(forces.NotCounted);
        var heat = HeatOf();
        if (heat is null)
            notCounted.Add(Cushion.LadderCase.NoHeat);
        var (pushLimits, pullLimits) = sweep.PushTurnsUp ? (placement.To, placement.From) : (placement.From, placement.To);
        var (kind, setting, proposed) = SettingOf();
        var load = lever.Load ?? new();
        var atPush = DeviceTorque.At(load, sweep.PushAngle, sweep.PushAngle, sweep.PullAngle, EstimateFactor);
        var atPull = DeviceTorque.At(load, sweep.PullAngle, sweep.PushAngle, sweep.PullAngle, EstimateFactor);
        var swivelPlay = lever.Swivel.Play ?? default;
        var knobPlay = cockpit.Play ?? default;
        var values = new LadderValue[Cushion.LadderCase.InputCount];

        void Put(LadderInput input, string name, string path, QuantityKind k, double nominal, Limits limits) =>
            values[(int)input] = new(input, name, path, k, nominal, limits.Minus, limits.Plus, limits.Spread);
        void Whole<T>(LadderInput input, string name, string path, Toleranced<T> value)
            where T : struct, IQuantity<T> => Put(input, name, path, T.Kind, value.Nominal.Si, Limits.Of(value));
        // Extremes of a derived value stand for its tolerance.
        void Derived(LadderInput input, string name, string path, QuantityKind k, Spread3 value) =>
            Put(input, name, path, k, value.Nominal, new(value.Nominal - value.Least, value.Most - value.Nominal));

        Whole(LadderInput.Stroke, "stroke", "cockpitEnd.stroke", stroke);
        values[(int)LadderInput.Setting] = setting;
        Put(LadderInput.Radius, "arm radius", LeverPlacement.RadiusPath, QuantityKind.Length, sweep.Case.Radius, placement.Radius);
        Put(LadderInput.PushAngle, "arm angle at the push stop", LeverPlacement.SweepPath, QuantityKind.Angle, sweep.PushAngle, pushLimits);
        Put(LadderInput.PullAngle, "arm angle at the pull stop", LeverPlacement.SweepPath, QuantityKind.Angle, sweep.PullAngle, pullLimits);
        Put(LadderInput.AnchorX, placement.AxisNames.X, placement.AxisPaths.X, QuantityKind.Length, 0, placement.X);
        Put(LadderInput.AnchorY, placement.AxisNames.Y, placement.AxisPaths.Y, QuantityKind.Length, 0, placement.Y);
        Put(LadderInput.AnchorZ, placement.AxisNames.Z, placement.AxisPaths.Z, QuantityKind.Length, 0, placement.Z);
        Put(LadderInput.AlongAxis, "swivel along the lever's axis", "leverEnd.arm.alongAxis", QuantityKind.Length, 0, placement.AlongAxis);
        var (clearance, clearanceLimits) = Clearance ?? default;
        Put(LadderInput.Clearance, "clearance of core in bore", "cable.conduit.bore", QuantityKind.Length, clearance, clearanceLimits);
        var (bends, bendLimits) = BendTotal ?? default;
        Put(LadderInput.BendTotal, "bend total", byLie ? "cable.supports" : cable.Bends.Count > 0 ? "cable.bends" : "cable.bendTotal", QuantityKind.Angle, bends, bendLimits);
        Whole(LadderInput.PinPlay, "play of the swivel's pin", "leverEnd.swivel.play", swivelPlay);
        Whole(LadderInput.KnobPlay, "play of the shank", "cockpitEnd.play", knobPlay);
        Put(LadderInput.TorqueFactor, "torque of the device", "leverEnd.load.torque", QuantityKind.Ratio, 1, TorqueLimits(load, atPush, atPull));
        Put(LadderInput.OwnTorque, "device's own torque", "leverEnd.load.bias.torque", QuantityKind.Torque, 0, OwnTorqueLimits(load));
        Derived(LadderInput.PullGive, "give of cable and bracket, pulled, metres for each newton", "cable.friction", QuantityKind.Ratio, forces?.PullGive ?? default);
        Derived(LadderInput.PushGive, "give of cable and bracket, pushed, metres for each newton", "cable.friction", QuantityKind.Ratio, forces?.PushGive ?? default);
        Derived(LadderInput.PushSlack, "winding of the pushed core", "cable.core", QuantityKind.Length, forces?.PushSlack ?? default);
        Whole(LadderInput.Tip, "conduit tip beyond the anchor", "leverEnd.anchor.tip", lever.Tip);
        Whole(LadderInput.SwivelLength, "length of the swivel", "leverEnd.swivel.length", lever.Swivel.Length);
        Whole(LadderInput.ConduitLength, "length of the conduit", "cable.length", cable.Length ?? default);
        Derived(LadderInput.OwnPull, "stretch by the core's own drag, pulled", "cable.friction", QuantityKind.Length, forces?.OwnPull ?? default);
        Derived(LadderInput.OwnPush, "stretch by the core's own drag, pushed", "cable.friction", QuantityKind.Length, forces?.OwnPush ?? default);
        LadderInput[] measured = [LadderInput.Stroke, LadderInput.Radius, LadderInput.PushAngle, LadderInput.PullAngle];
        var exact = measured.Where(i => values[(int)i].IsExact).Select(i => values[(int)i].Name).ToList();
        if (placement.X is { Minus: 0, Plus: 0 } && placement.Y is { Minus: 0, Plus: 0 } && placement.Z is { Minus: 0, Plus: 0 })
            exact.Add("place of the anchor");
        if (exact.Count > 0)
            notCounted.Add($"tolerance of {string.Join(", ", exact)} (no ± given: taken as exact)");
        return new()
        {
            Values = [.. values],
            SettingKind = kind,
            SettingProposed = proposed,
            Anchor = sweep.Case.Anchor,
            AnchorAxes = placement.Axes,
            TorqueAtPush = atPush.Resist.Nominal,
            TorqueAtPull = atPull.Resist.Nominal,
            // Arriving at the push stop, torque toward the pull stop opposes; and the other way round.
            BiasAtPush = -atPush.TowardPush.Nominal,
            BiasAtPull = atPull.TowardPush.Nominal,
            OwnTorqueOpposes = load.Bias?.Toward switch { DeviceStop.Push => (-1, 1), DeviceStop.Pull => (1, -1), _ => (0, 0) },
            DeviceDrag = forces is null ? 0 : cable.DeviceDrag.Newtons,
            Heat = heat,
            Wanted = run.CushionWanted?.Metres ?? Published.Get("cushion/least").Value,
            NotCounted = notCounted.ToEquatableList(),
        };
    }

    private (SettingKind Kind, LadderValue Value, bool Proposed) SettingOf()
    {
        LadderValue Value(string name, string path, double nominal, Limits limits) =>
            new(LadderInput.Setting, name, path, QuantityKind.Length, nominal, limits.Minus, limits.Plus, limits.Spread);
        if (lever.Swivel.Rigged is { } rigged)
        {
            var kind = rigged.Stop == DeviceStop.Push ? SettingKind.AtPushStop : SettingKind.AtPullStop;
            return (kind, Value("knob place when rigged", "leverEnd.swivel.rigged.knobOut", rigged.KnobOut.Nominal.Metres, Limits.Of(rigged.KnobOut)), false);
        }

        if (lever.Swivel.At is { } at)
            return (SettingKind.WireLength, Value("place of the swivel on the wire", "leverEnd.swivel.at", at.Nominal.Metres, Limits.Of(at)), false);
        var error = Published.Get("cushion/rigging-tolerance").Value;
        return (SettingKind.Balanced, Value("setting of the swivel", "leverEnd.swivel.at", 0, new(error, error)), true);
    }

    /// <summary>Share by which the torque may differ; with a table the largest share of the two stops.</summary>
    private static Limits TorqueLimits(DeviceLoad load, TorquePair push, TorquePair pull)
    {
        static (double Minus, double Plus) Share(Spread3 t) => t.Nominal > 0 ? ((t.Nominal - t.Least) / t.Nominal, (t.Most - t.Nominal) / t.Nominal) : default;
        var (a, b) = (Share(push.Resist), Share(pull.Resist));
        return new(Math.Max(a.Minus, b.Minus), Math.Max(a.Plus, b.Plus), load.Torque?.Spread ?? Spread.Uniform);
    }

    /// <summary>In N m. An estimate counts with what a spring has wound up at the far stop, where that is most.</summary>
    private Limits OwnTorqueLimits(DeviceLoad load)
    {
        if (load.Bias is not { } bias)
            return default;
        var wound = bias.Rate.NewtonMetresPerRadian * (sweep.Case.To - sweep.Case.From);
        return new(bias.Torque.Minus, bias.Torque.Plus + ((EstimateFactor - 1) * (bias.Torque.Most + wound)), bias.Torque.Spread);
    }

    private Cushion.Heat? HeatOf()
    {
        if (aircraft.Environment is not { } at || cable.Length is null || cable.Core is not { } core)
            return null;
        double Zone(HeatZone zone) => zone switch
        {
            HeatZone.Cabin => at.Cabin.Celsius,
            HeatZone.EngineBay => at.EngineBay.Celsius,
            _ => at.Elsewhere.Celsius,
        };
        var lever = Zone(this.lever.Zone);
        var rigged = at.Rigged.Celsius;
        var bracket = Expansion.Of(this.lever.Zone == HeatZone.EngineBay ? AirframeMaterial.Aluminium : at.Airframe);
        return new Cushion.Heat(
            Expansion.Of(core.Material).Value,
            Expansion.Of(cable.Conduit?.Material ?? ConduitMaterial.CarbonSteel).Value,
            // An engine is mostly aluminium; elsewhere the airframe spans anchor and pivot.
            bracket.Value,
            // The temperature of rigging is one that occurs, also when it was done on the coldest or the hottest day.
            Math.Min(0, at.Coldest.Celsius - rigged),
            // One cable lies in two zones; the whole of it taken as hot as the hotter.
            Math.Max(0, Math.Max(lever, at.Cabin.Celsius) - rigged),
            Math.Min(0, at.Coldest.Celsius - rigged),
            Math.Max(0, lever - rigged))
        {
            Rigged = rigged,
            BracketLow = bracket.Low,
            BracketHigh = bracket.High,
            // With hardly a bend there is no curve to take up the airframe's growth: it may carry the conduit's ends along.
            ConduitOther = BendTotal is { } turned && turned.Nominal - turned.Limits.Minus < 20 * Math.PI / 180 ? Expansion.Of(at.Airframe).Value : null,
        };
    }

    private CoreProperties? CoreOf()
    {
        if (cable.Core is not { } core)
            return null;
        var d = core.Diameter.Nominal.Metres;
        var single = core.Kind == CoreKind.Solid ? core.Diameter.Nominal : new Length(d / CoreSection.WiresAcross(core.Kind));
        var wire = Wire.Modulus(core.Material, single).Value;
        var section = CoreSection.Of(core.Kind, d);
        var nominal = new CoreProperties(
            d,
            single.Metres,
            core.Kind == CoreKind.Solid ? wire : Wire.StrandModulus(core.Kind).Value,
            wire,
            section,
            Wire.TensileStrength(core.Material, single).Found?.Value,
            Wire.ElasticShare(core.Material).Low,
            Wire.Density(core.Material).Value * Force.NewtonsPerKilogram * section.Area);
        CoreSection thin = CoreSection.Of(core.Kind, core.Diameter.Least), thick = CoreSection.Of(core.Kind, core.Diameter.Most);
        var (soft, stiff) = core.Kind == CoreKind.Solid ? (wire, wire) : (Wire.StrandModulus(core.Kind).Low, Wire.StrandModulus(core.Kind).High);
        return nominal with
        {
            BendingLimits = new(nominal.BendingStiffness, wire * thin.SecondMoment, wire * thick.SecondMoment),
            AxialLimits = new(nominal.AxialStiffness, soft * thin.Area, stiff * thick.Area),
        };
    }

    /// <summary>A load that is only an estimate may be larger than its own limits say.</summary>
    private double EstimateFactor => lever.Load is { Measured: false } ? Published.Get("hand/estimated-load-factor").Value : 1;

    /// <summary>Free wire at the push stop, no shorter than any combination of tolerances makes it: no side of a triangle grows by more than the others do.</summary>
    private double LongestWire()
    {
        static double Size(Limits l) => Math.Max(l.Minus, l.Plus);
        var stop = sweep.PushTurnsUp ? placement.To : placement.From;
        return sweep.AtPush.Length + Size(placement.X) + Size(placement.Y) + Size(placement.Z) + Size(placement.AlongAxis)
            + placement.Radius.Plus + ((sweep.Case.Radius + placement.Radius.Plus) * Size(stop));
    }

    /// <summary>The places of the sweep, and those where the torque has a corner or a detent its top: equal steps may miss them.</summary>
    private EquatableList<DevicePlace> PlacesFor(DeviceLoad load)
    {
        var tops = load.TorqueTable.Select(t => t.Arm.Radians)
            .Concat(load.Detents.SelectMany(d => (double[])[d.At.Radians - (0.5 * d.Within.Radians), d.At.Radians + (0.5 * d.Within.Radians)]))
            .Where(a => a > sweep.Case.From + 1e-6 && a < sweep.Case.To - 1e-6)
            .Select(sweep.PlaceAt);
        return sweep.Places.Concat(tops)
            .OrderBy(p => Math.Abs(p.Angle - sweep.PushAngle))
            .DistinctBy(p => p.Angle)
            .Select(p => p == sweep.AtPush ? stops.AtPush : p == sweep.AtPull ? stops.AtPull : placement.DevicePlaceAt(p))
            .ToEquatableList();
    }

    private static Spread3 AtLeastZero(Spread3 value) => new(Math.Max(0, value.Nominal), Math.Max(0, value.Least), Math.Max(0, value.Most));

    private static Spread3 Of<T>(Toleranced<T> value)
        where T : struct, IQuantity<T> => new(value.Nominal.Si, value.Least, value.Most);
}
