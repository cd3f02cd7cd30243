using CsCheck;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain.Laws;

/// <summary>A missing input is named by its path; what does not wait for it is still answered.</summary>
public sealed class NeedsTests
{
    private sealed record Removal(string Path, Func<Aircraft, Run, (Aircraft, Run)> Take, bool Sweep, bool Forces, bool Ladder)
    {
        /// <summary>xunit shows the path.</summary>
        public override string ToString() => Path;
    }

    private static Removal OfRun(string path, Func<Run, Run> take, bool sweep = true, bool forces = true, bool ladder = true) => new(path, (a, r) => (a, take(r)), sweep, forces, ladder);

    private static readonly Removal[] All =
    [
        OfRun("leverEnd.arm.radius", r => r.Lever(e => e with { Radius = null }), false, false, false),
        OfRun("leverEnd.sweep", r => r.Lever(e => e with { From = null, To = null }), false, false, false),
        OfRun("leverEnd.sweep", r => r.Lever(e => e with { To = null }), false, false, false),
        OfRun("leverEnd.bench", r => r.Lever(e => e with { Bench = null }), false, false, false),
        OfRun("cockpitEnd.stroke", r => r.Cockpit(c => c with { Stroke = null }), ladder: false),
        OfRun("cockpitEnd.stroke", r => r with { CockpitEnd = null }, ladder: false),
        OfRun("leverEnd.load.torque", r => r.Lever(e => e with { Load = null }), forces: false),
        OfRun("leverEnd.load.torque", r => r.Lever(e => e with { Load = e.Load! with { Torque = null } }), forces: false),
        OfRun("cable.friction", r => r.Cable(c => c with { Friction = null }), forces: false),
        OfRun("cable.friction", r => r with { Cable = null }, forces: false),
        OfRun("cable.bendTotal", r => r.Cable(c => c with { Bends = [] }), forces: false),
        OfRun("cable.core", r => r.Cable(c => c with { Core = null })),
        OfRun("cable.conduit.bore", r => r.Cable(c => c with { Conduit = c.Conduit! with { Bore = null } })),
        OfRun("cable.conduit.bore", r => r.Cable(c => c with { Conduit = null })),
        OfRun("cable.length", r => r.Cable(c => c with { Length = null })),
        OfRun("cable.limits.pull", r => r.Cable(c => c with { PullLimit = null })),
        OfRun("cable.limits.push", r => r.Cable(c => c with { PushLimit = null })),
        new("environment", (a, r) => (a with { Environment = null }, r), true, true, true),
        new("handForceMost", (a, r) => (a with { Yardstick = Yardstick.User }, r), true, true, true),
    ];

    [Fact]
    public void Input_EachRemoved_IsNamedByItsPath_AndTheRestIsAnswered() => Assert.All(All, removal =>
    {
        var (aircraft, run) = removal.Take(Runs.Aircraft, Runs.Sound);
        var answer = RunCheck.Check(aircraft, run, Runs.Quick);
        Assert.Equal(Verdict.NeedsInput, answer.Of("input/" + removal.Path)!.Verdict);
        Assert.Contains(removal.Path, answer.Of("input/" + removal.Path)!.Why, StringComparison.Ordinal);
        // Without a cockpit end the knob counts as one for fingers, which is a caution of its own.
        Assert.True(run.CockpitEnd is null ? answer.Verdict >= Verdict.NeedsInput : answer.Verdict == Verdict.NeedsInput);
        Assert.Equal(removal.Sweep, answer.Sweep is not null);
        Assert.Equal(removal.Forces, answer.Forces is not null);
        Assert.Equal(removal.Ladder, answer.Ladder is not null);
    });

    [Fact]
    public void Inputs_AnyRemoved_NeverThrow_AndAreAllNamed() => Gen.Int[0, All.Length - 1].Array[0, 8].Sample(
        which =>
        {
            Aircraft aircraft = Runs.Aircraft;
            var run = Runs.Sound;
            foreach (var i in which)
            {
                try
                {
                    (aircraft, run) = All[i].Take(aircraft, run);
                }
                catch (NullReferenceException)
                {
                    // The part it belongs to is gone already.
                }
            }

            var answer = RunCheck.Check(aircraft, run, Runs.Quick);
            Assert.NotEmpty(answer.Sentence);
            if (which.Length > 0)
                Assert.NotEqual(Verdict.Clear, answer.Verdict);
        },
        iter: 60);

    [Fact]
    public void Run_WithNothingButItsName_NeedsInput()
    {
        var answer = RunCheck.Check(new Aircraft { Name = "empty" }, new Run { Id = "x" }, Runs.Quick);
        Assert.Equal(Verdict.NeedsInput, answer.Verdict);
        Assert.Equal(4, answer.Needs.Count);
    }

    [Fact]
    public void BenchFile_AsSmallAsItGets_HasThrowAndCushion()
    {
        var run = new Run
        {
            Id = "cabin-heat",
            CockpitEnd = new() { Stroke = Runs.Sound.CockpitEnd!.Stroke },
            LeverEnd = new() { Radius = Runs.Sound.LeverEnd!.Radius, From = Runs.Sound.LeverEnd.From, To = Runs.Sound.LeverEnd.To, Bench = Runs.Sound.LeverEnd.Bench },
        };
        var answer = RunCheck.Check(new Aircraft { Name = "small" }, run, Runs.Quick);
        Assert.NotNull(answer.Sweep);
        Assert.NotNull(answer.Ladder);
        Assert.Null(answer.Forces);
        Assert.Contains("lost motion by clearance in the bends", answer.Ladder.NotCounted);
        Assert.Contains("stretch of cable and bracket under load", answer.Ladder.NotCounted);
        Assert.Contains("heat and cold", answer.Ladder.NotCounted);
    }

    /// <summary>Cores of all kinds, friction from nothing, loads from a feather to what jams the cable.</summary>
    [Fact]
    public void Values_AnyTheFileTakes_GiveLimitsInOrder() =>
        Gen.Select(Runs.Any, Gen.Int[0, 4], Gen.Double[0, 0.4], Gen.Double[0, 1], Gen.Double[-3, 2], Gen.Double[0.3, 6], Gen.Double[0.02, 1], Gen.Bool).Sample(
            (run, kind, mu, share, load, diameter, gap, isTotal) =>
            {
                var any = run.Lever(e => e with { Load = e.Load! with { Torque = Runs.Share<Torque>(Math.Pow(10, load), share) } });
                if (any.Cable is not null)
                {
                    any = any.Cable(c => c with
                    {
                        Core = new() { Kind = (CoreKind)kind, Diameter = Throw.Levers.Mm(diameter, 0.05 * share), Material = isTotal ? CoreMaterial.Stainless302 : CoreMaterial.MusicWire },
                        Conduit = c.Conduit! with { Bore = Throw.Levers.Mm(diameter + gap, 0.9 * gap * share) },
                        Friction = Runs.Number(mu, mu * share),
                        Bends = isTotal ? [] : c.Bends,
                        BendTotal = isTotal ? Toleranced<Angle>.PlusMinus(new(4 * mu), 4 * mu * share) : null,
                    });
                }

                var answer = any.Check();
                Assert.All(answer.LadderCase?.Values ?? [], v => Assert.True(v.Minus >= 0 && v.Plus >= 0 && double.IsFinite(v.Minus + v.Plus + v.Nominal), $"{v.Name}: {v.Nominal} -{v.Minus} +{v.Plus}"));
                Assert.All(answer.Forces?.Places ?? [], p => Assert.All((Engine.HandForce.Spread3[])[p.KnobPull, p.KnobPush, p.WirePull, p.WirePush], f => Assert.True(f.Least <= f.Nominal && f.Nominal <= f.Most, f.ToString())));
                Assert.DoesNotContain("not known", string.Join(" ", answer.Findings.Where(f => f.Rule != Engine.HandForce.HandForceRules.SelfHold).Select(f => f.Sentence)), StringComparison.Ordinal);
                Assert.DoesNotContain("no limit", string.Join(" ", answer.Findings.Select(f => f.Sentence)), StringComparison.Ordinal);
            },
            iter: 40);

    [Fact]
    public void Values_AtTheEdgeOfTheFile_NeverThrow()
    {
        // With the search for remedies, which goes farther afield than the run itself.
        Run[] searched =
        [
            Runs.Sound.Lever(e => Runs.InSpace(e) with { Placed = Runs.InSpace(e).Placed! with { Along = new(0, 0, 1) } }),
            Runs.Sound.Lever(e => e with { From = Throw.Levers.Degrees(-180), To = Throw.Levers.Degrees(180) }),
            Runs.Sound.Lever(e => e with { TipSwivels = default, Tip = Throw.Levers.Mm(400) }),
        ];
        Run[] odd =
        [
            Runs.Sound.Lever(e => e with { Load = new() { Torque = Runs.Share<Torque>(0, 0) } }),
            Runs.Sound.Cable(c => c with { Friction = Runs.Number(0, 0) }),
            Runs.Sound.Cable(c => c with { Bends = [], BendTotal = Toleranced<Angle>.PlusMinus(default, 0.2) }),
            Runs.Sound.Cable(c => c with { Bends = [], BendTotal = Toleranced<Angle>.Exact(default) }),
            Runs.Sound.Lever(e => e with { Tip = Throw.Levers.Mm(400) }),
            Runs.Sound.Lever(e => Runs.InSpace(e) with { Placed = Runs.InSpace(e).Placed! with { Along = null } }),
            Runs.Sound.Cable(c => c with { Core = c.Core! with { Diameter = Throw.Levers.Mm(19) }, Conduit = c.Conduit! with { Bore = Throw.Levers.Mm(20) } }),
            Runs.Sound.Cockpit(c => c with { Stroke = Throw.Levers.Mm(1) }),
            Runs.Sound.Lever(e => e with { Load = new() { Torque = Runs.Share<Torque>(1e5, 0) } }),
        ];
        Assert.All(searched.Select(r => RunCheck.Check(Runs.Aircraft, r, Runs.Quick)).Concat(odd.Select(r => r.Check())), answer =>
        {
            Assert.All(answer.Figures, f => Assert.False(double.IsNaN(f.Value), f.Id));
            Assert.DoesNotContain("NaN", string.Join(" ", answer.Findings.Select(f => f.Sentence + f.Why)), StringComparison.Ordinal);
            Assert.DoesNotContain("not known", string.Join(" ", answer.Findings.Select(f => f.Sentence)), StringComparison.Ordinal);
        });
    }
}
