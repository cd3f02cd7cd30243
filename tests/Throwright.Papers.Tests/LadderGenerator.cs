using CsCheck;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Papers.Ladder;

namespace Throwright.Papers.Tests;

/// <summary>Ladders of every size, with overruns, no room at all, wild tolerances and labels that want to break out.</summary>
internal static class LadderGenerator
{
    private static readonly string[] Words =
    [
        "open", "shut", "", "fully open with the locking pin withdrawn and the spring slack", "</text><script>alert(1)</script>", "a&b \"quoted\" 'single'", "\u001b[31mred\u001b[0m",
        "vorn zu, Kühlklappe", "закрыто", "開閉弁", "\u202Ereversed\u202C", "e\u0301\u0301\u0301\u0301", "\0\u0007bell", "\uD800half", "one\ntwo\tthree", "MMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMMM", "🛩 up",
    ];

    private static readonly Gen<string> Word = Gen.Int[0, Words.Length - 1].Select(i => Words[i]);

    private static readonly Gen<Verdict?> Judged = Gen.Int[0, 4].Select(i => i == 0 ? null : (Verdict?)(i - 1));

    public static Gen<LadderLabels> Labels { get; } = Gen.Select(Word, Word, Word, Gen.Select(Judged, Judged, Judged), (device, push, pull, verdicts) => new LadderLabels
    {
        Run = device,
        Device = device,
        PushMeans = push,
        PullMeans = pull,
        KnobIn = verdicts.Item1,
        KnobOut = verdicts.Item2,
        Tip = verdicts.Item3,
    });

    private static readonly Gen<double> Share = Gen.Double[0, 1];

    public static Gen<LadderLayout> Layouts { get; } = Gen.Select(
        Gen.Select(Gen.Double[Math.Log(0.05), Math.Log(20)], Gen.Double[-0.3, 0.6], Gen.Double[0.01, 1.3], Gen.Double[-0.1, 1]),
        Gen.Select(Share, Share, Share, Share),
        Labels,
        Gen.Bool,
        Gen.Int[0, 2],
        (size, small, labels, inches, notCounted) =>
        {
            var stroke = Math.Exp(size.Item1);

            // Half of the small parts are nothing at all; the rest grow fast.
            double Part(double share) => share < 0.5 ? 0 : stroke * 0.15 * Math.Pow((2 * share) - 1, 2);
            return LadderDrawing.Layout(
                LadderCases.Inches(
                    stroke, size.Item2 * stroke, Part(small.Item1), Part(small.Item2), Part(small.Item3), size.Item3 * stroke, size.Item4 * stroke, Part(small.Item4) * 2,
                    notCounted: [.. Enumerable.Range(0, notCounted).Select(i => Words[(7 * i) + 3])]),
                labels,
                new() { Length = inches ? LengthUnit.Inch : LengthUnit.Millimetre, Force = inches ? ForceUnit.PoundForce : ForceUnit.Newton });
        });
}
