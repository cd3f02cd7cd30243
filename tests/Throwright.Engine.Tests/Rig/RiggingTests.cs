using Throwright.Engine.Chain;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Engine.Rig;
using Throwright.Engine.Tests.Chain;
using Throwright.Engine.Tests.Prove;
using Throwright.Shapes.Numerics;

namespace Throwright.Engine.Tests.Rig;

/// <summary>Planted errors, seen again through the readings of a real travel ladder.</summary>
public sealed class RiggingTests
{
    private static readonly FigureWriter Say = new(Runs.Aircraft.Display);

    private static readonly RunAnswer Answer = Runs.Sound.Check();

    private static RigCase Case(AsBuilt? read = null) => Rigging.CaseOf(Answer, read ?? new() { Date = "2026-03-01" })!;

    /// <summary>Readings the aircraft would give, with errors of measuring added.</summary>
    private static RigCase Read(RigCase of, IReadOnlyList<double> planted, Random random, params RigReading[] which)
    {
        var truth = of.Predict(planted);
        return of with
        {
            Readings = [.. of.Readings.Select((r, i) => r with { Measured = which.Length == 0 || which.Contains(r.Reading) ? truth[i] + (r.Error * Normal(random)) : null })],
        };
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Fact]
    public void Fit_OfAThousandRiggings_HoldsThePlantedErrorsInItsStatedRange()
    {
        var of = Case();
        var random = new Random(4711);
        const int runs = 1000;
        var held = new int[of.Unknowns.Count];
        var fitting = 0;
        for (var i = 0; i < runs; i++)
        {
            var planted = of.Unknowns.Select(u => u.Before * (u.Unknown == RigUnknown.Swivel ? 0.3 : 1) * Normal(random)).ToArray();
            var answer = RigSolver.Solve(Read(of, planted, random));
            for (var j = 0; j < planted.Length; j++)
            {
                if (Math.Abs(answer.Estimates[j].Value - planted[j]) <= 1.96 * answer.Estimates[j].Error)
                    held[j]++;
            }

            fitting += answer.Fits ? 1 : 0;
        }

        // 95 % of 1,000 with its own chance: 950 give or take three times 6.9. A prior that is wider than what is planted may hold more.
        Assert.All(of.Unknowns.Zip(held), p => Assert.True(p.Second >= 930, $"{p.First.Name}: {p.Second} of {runs}"));
        Assert.True(fitting >= 990, $"{fitting} of {runs} fit");
    }

    [Fact]
    public void Swivel_PlantedAlone_IsSeenAndNothingElseIsBlamed()
    {
        var of = Case();
        var planted = new double[of.Unknowns.Count];
        planted[0] = 4e-3;
        var answer = RigSolver.Solve(Read(of, planted, new Random(1)));
        Assert.Equal(4e-3, answer.Estimates[0].Value, 8e-4);
        Assert.All(answer.Estimates.Skip(1), e => Assert.True(Math.Abs(e.Value) < 2.5 * Math.Max(e.Error, 1e-12), e.Of.Name));
    }

    [Fact]
    public void WithoutTheTipGap_SwivelAndConduitEnd_CannotBeSeparated()
    {
        var of = Case();
        var without = RigSolver.Solve(Read(of, new double[of.Unknowns.Count], new Random(2), RigReading.KnobAtPush, RigReading.KnobAtPull));
        var pair = Assert.Single(without.Inseparable, p => p is { A: RigUnknown.Swivel, B: RigUnknown.Anchor });
        Assert.Contains("can't separate the swivel's place on the wire from the conduit's end: measure the gap at the tip", RigRules.InWords(of, pair), StringComparison.Ordinal);
        var with = RigSolver.Solve(Read(of, new double[of.Unknowns.Count], new Random(2), RigReading.KnobAtPush, RigReading.KnobAtPull, RigReading.TipGap));
        Assert.True(with.Estimates[0].Error < without.Estimates[0].Error);
    }

    [Fact]
    public void Slide_AsAdvised_SharesTheCushionsOutEqually()
    {
        // The advice needs no fit; here it is carried out on the model and read again.
        var of = Case();
        var random = new Random(3);
        for (var i = 0; i < 200; i++)
        {
            var planted = of.Unknowns.Select(u => u.Before * 0.5 * Normal(random)).ToArray();
            var exact = of with { Readings = [.. of.Readings.Zip(of.Predict(planted), (r, y) => r with { Measured = y })] };
            var answer = RigSolver.Solve(exact);
            planted[0] += answer.Slide!.Value;
            var again = RigSolver.Solve(of with { Readings = [.. of.Readings.Zip(of.Predict(planted), (r, y) => r with { Measured = y })] });
            Assert.Equal(again.CushionIn!.Value, again.CushionOut!.Value, 1e-12);
            Assert.Equal(answer.After!.Value, again.CushionIn.Value, 1e-12);
            Assert.Equal(0, again.Slide!.Value, 1e-12);
        }
    }

    [Fact]
    public void Reading_MistypedByAnInch_DoesNotFit_AndIsNamed()
    {
        var of = Case();
        var read = Read(of, new double[of.Unknowns.Count], new Random(5));
        var wrong = read with { Readings = [.. read.Readings.Select(r => r.Reading == RigReading.TipGap ? r with { Measured = r.Measured + 0.0254 } : r)] };
        Assert.True(RigSolver.Solve(read).Fits);
        var answer = RigSolver.Solve(wrong);
        Assert.False(answer.Fits);
        Assert.Contains(RigRules.Find(wrong, answer, "2026-03-01", Say), f => f.Rule == RigRules.Fit && f.Verdict == Verdict.Caution);
    }

    [Fact]
    public void Readings_InTheFile_SpeakAsAFinding_WithOneStep()
    {
        var expected = Answer.Ladder!.Setting;
        AsBuilt Rigged(double off) => new() { Date = "2026-03-01", KnobAtPush = new(expected.KnobOutAtPushStop + off), KnobAtPull = new(expected.KnobOutAtPullStop + off) };
        Finding Of(double off) => (Runs.Sound with { AsBuilt = [Rigged(off)] }).Prove().Of(RigRules.AsBuilt)!;
        var good = Of(0);
        Assert.Equal(Verdict.Clear, good.Verdict);
        Assert.Equal("Within limits: leave it.", good.Why);
        var bad = Of(-7.5e-3);
        Assert.True(bad.Verdict >= Verdict.Caution, bad.Sentence);
        Assert.StartsWith("Slide the swivel", bad.Why, StringComparison.Ordinal);
        Assert.Contains("away from the tip", bad.Why, StringComparison.Ordinal);
        // The newest reading speaks.
        var both = (Runs.Sound with { AsBuilt = [Rigged(0) with { Date = "2027-03-01" }, Rigged(-7.5e-3)] }).Prove();
        Assert.Equal(Verdict.Clear, both.Of(RigRules.AsBuilt)!.Verdict);
    }

    [Fact]
    public void Response_OfTheSwivel_IsOneToOneAtTheKnob_AndNothingAtTheTip()
    {
        var response = RigSolver.Response(Case());
        Assert.Equal(1, response[(int)RigReading.KnobAtPush][0], 1e-9);
        Assert.Equal(1, response[(int)RigReading.KnobAtPull][0], 1e-9);
        Assert.Equal(0, response[(int)RigReading.TipGap][0], 1e-9);
        // The conduit's end away from the arm: knob in, gap wider, by nearly as much.
        Assert.InRange(response[(int)RigReading.KnobAtPush][1], -1.0001, -0.9);
        Assert.InRange(response[(int)RigReading.TipGap][1], 0.9, 1.0001);
    }

    [Fact]
    public void Card_TakesEachReadingOnce_WithLimitsThatKeepBothCushions()
    {
        var card = Rigging.CardOf(Runs.Aircraft, Answer);
        var readings = card.Steps.Where(s => s.Reading is not null).ToList();
        Assert.Equal(readings.Count, readings.DistinctBy(s => s.Reading).Count());
        RigStep Of(string name) => readings.Single(s => s.Reading == name);
        var ladder = Answer.Ladder!;
        foreach (var (push, pull) in new[] { (Of("knobAtPush").Least!.Value, Of("knobAtPull").Least!.Value), (Of("knobAtPush").Most!.Value, Of("knobAtPull").Most!.Value) })
        {
            var answer = RigSolver.Solve(Case(new() { Date = "2026-03-01", KnobAtPush = new(push), KnobAtPull = new(pull) }));
            Assert.True(answer.CushionIn >= ladder.Wanted - 1e-12);
            Assert.True(answer.CushionOut >= ladder.Wanted - 1e-12);
        }
    }

    /// <summary>Limits between two marks of the rule are told in decimals: "1/64 to 1/64" would be a range of nothing. A figure without a limit has no unit.</summary>
    [Fact]
    public void Limits_NarrowerThanTheRulesMarks_AreNotToldAsOneMark()
    {
        var inches = new Display { Length = LengthUnit.Inch };
        for (var fraction = 1; fraction <= 64; fraction *= 2)
        {
            var card = Rigging.CardOf(Runs.Aircraft with { Display = inches with { Fraction = fraction } }, Answer);
            Assert.All(card.Steps, s => Assert.False(s.MustBe.Split([" to ", " in"], StringSplitOptions.None) is [var a, var b, ..] && a == b, $"{fraction}: {s.MustBe}"));
        }

        Assert.Equal("no limit", new FigureWriter(inches).Text(Throwright.Shapes.Quantities.QuantityKind.Force, double.PositiveInfinity));
    }

    [Fact]
    public void Torque_OnACard_StandsInTheFilesUnitFirst()
    {
        string Of(Display display) => string.Join("\n", Rigging.CardOf(Runs.Aircraft with { Display = display }, Answer).Steps.Select(s => s.Do));
        Assert.Contains("1.13 N m (10 lbf in)", Of(new() { Length = LengthUnit.Millimetre, Force = ForceUnit.Newton }), StringComparison.Ordinal);
        Assert.Contains("10 lbf in (1.13 N m)", Of(new()), StringComparison.Ordinal);
    }

    /// <summary>
    /// Any aircraft within the tolerances, read at any shop temperature: whatever it really has left under a working hand, coldest or
    /// hottest, is no less than what its readings are said to leave. Also with a conduit so straight that the airframe carries its ends.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void CushionsAsRead_OfAnyAircraftWithinTolerances_AreNotLessInTruth(bool straight)
    {
        var random = new Random(20260304);
        var run = Runs.Sound with { Cable = Runs.Sound.Cable! with { Bends = straight ? [Runs.Bend(12, 900, 2)] : Runs.Sound.Cable.Bends } };
        var answer = run.Check();
        var of = answer.LadderCase!;
        var heat = of.Heat!;
        Assert.Equal(straight, heat.ConduitOther is not null);
        double closest = double.PositiveInfinity;
        for (var i = 0; i < 500; i++)
        {
            // Corners of the box more than its inside.
            var x = of.Values.Select(v => new Real(random.Next(3) switch { 0 => v.Least, 1 => v.Most, _ => v.Least + (random.NextDouble() * (v.Most - v.Least)) })).ToArray();
            var rigged = LadderFormula.Evaluate<Real>(of, x, LadderHeat.At.Rigging);
            var worst = LadderFormula.Evaluate<Real>(of, x, LadderHeat.At.WorstTemperature);
            // Its own airframe: one expansion of the band, the conduit's ends carried or not.
            var change = -45 + (80 * random.NextDouble());
            double Warmed(double free) => (((heat.Wire - (random.Next(2) == 0 ? heat.Conduit : heat.ConduitOther ?? heat.Conduit)) * x[(int)LadderInput.ConduitLength].Value)
                + ((heat.Wire - (random.Next(2) == 0 ? heat.BracketLow : heat.BracketHigh)) * free)) * change;
            var told = RigSolver.Solve(Rigging.CaseOf(answer, new()
            {
                Date = "2026-03-01",
                KnobAtPush = new(rigged.PushStop.Value + rigged.StretchPush.Value + Warmed(rigged.LengthPush.Value)),
                KnobAtPull = new(rigged.PullStop.Value - rigged.StretchPull.Value + Warmed(rigged.LengthPull.Value)),
                Temperature = new(heat.Rigged + change),
            })!);
            // The free wire's own tolerance counts in heat alone: well below a hundredth of a millimetre.
            Assert.True(told.CushionIn <= worst.CushionIn.Value + 1e-5, $"{i}: in {told.CushionIn} told, {worst.CushionIn.Value} true");
            Assert.True(told.CushionOut <= worst.CushionOut.Value + 1e-5, $"{i}: out {told.CushionOut} told, {worst.CushionOut.Value} true");
            closest = Math.Min(closest, Math.Min(worst.CushionIn.Value - told.CushionIn!.Value, worst.CushionOut.Value - told.CushionOut!.Value));
        }

        // And it is not told far too little either.
        Assert.InRange(closest, -1e-5, 4e-4);
    }

    [Fact]
    public void KnobLimits_OfTheCard_AreThoseOfTheLadder()
    {
        var rigged = Rigging.ToRig(Runs.Aircraft, Answer);
        var card = Rigging.CardOf(Runs.Aircraft, rigged);
        var places = rigged.Ladder!.ToRig!.Value;
        Assert.Equal((places.PushLeast, places.PushMost), (card.Steps.Single(s => s.Reading == "knobAtPush").Least, card.Steps.Single(s => s.Reading == "knobAtPush").Most));
        Assert.Equal((places.PullLeast, places.PullMost), (card.Steps.Single(s => s.Reading == "knobAtPull").Least, card.Steps.Single(s => s.Reading == "knobAtPull").Most));
        // What is left under a working hand, hot and cold, is the wanted cushion exactly.
        Assert.Equal(rigged.Ladder.Wanted, places.PushLeast - rigged.Ladder.TakenAtPush, 1e-12);
        Assert.Equal(rigged.Ladder.Wanted, rigged.Ladder.StrokeLeast - places.PullMost - rigged.Ladder.TakenAtPull, 1e-12);
    }
}
