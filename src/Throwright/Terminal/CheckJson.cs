using System.Text.Json;
using Throwright.Engine.Chain;
using Throwright.Engine.Clearance;
using Throwright.Engine.Cushion;
using Throwright.Engine.Findings;
using Throwright.Files;
using Throwright.Papers.Marks;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;
using static Throwright.Cli.Terminal.AnswerJson;

namespace Throwright.Cli.Terminal;

/// <summary>The answer of a check for other programs: docs/reference/check-json.md. SI units throughout.</summary>
/// <remarks>A member is only ever added; when one changes its meaning or goes, <see cref="Version"/> rises.</remarks>
public static class CheckJson
{
    public const int Version = 1;

    public static string Opening => $"{{\n\"throwrightCheck\": {Version},\n\"files\": [\n";

    public static string Closing(int exitCode) => $"\n],\n\"exitCode\": {exitCode}\n}}\n";

    /// <summary>A file that could not be used for a reason outside it.</summary>
    public static string Refused(string path, string why) => Write(json =>
    {
        json.WriteString("file", path);
        json.WriteString("refused", why);
    });

    public static string Of(string path, AircraftFileResult result, AircraftAnswer? answer, bool curves) => Write(json =>
    {
        json.WriteString("file", path);
        json.WriteStartArray("problems");
        foreach (var p in result.Problems)
        {
            json.WriteStartObject();
            json.WriteNumber("line", p.Line);
            json.WriteNumber("column", p.Column);
            json.WriteString("path", p.JsonPath);
            json.WriteString("run", p.Run);
            json.WriteString("found", p.Found);
            json.WriteString("expected", p.Expected);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (answer is null)
            return;
        json.WriteString("aircraft", answer.Aircraft.Name);
        json.WriteString("verdict", GapMark.Word(answer.Verdict));
        json.WriteStartArray("runs");
        foreach (var run in answer.Runs)
            Run(json, run, answer.Aircraft.Basis, curves);
        json.WriteEndArray();
        if (answer.Cockpit is not null)
            Cockpit(json, answer);
    });

    private static void Cockpit(Utf8JsonWriter json, AircraftAnswer answer)
    {
        json.WriteStartObject("cockpit");
        json.WriteString("verdict", GapMark.Word(answer.OwnVerdict));
        json.WriteStartArray("findings");
        foreach (var finding in answer.Findings)
            Finding(json, finding, answer.Aircraft.Basis);
        json.WriteEndArray();
        json.WriteStartArray("figures");
        foreach (var figure in answer.Figures)
            Figure(json, figure);
        json.WriteEndArray();
        Clearance(json, "clearance", answer.Cockpit!.Movers.Select(p => (p, p.Second.Name, AircraftAnswer.FigureOf(p))));
        json.WriteStartArray("allowed");
        foreach (var contact in answer.Allowed)
        {
            json.WriteStartObject();
            json.WriteString("body", contact.FirstBody);
            json.WriteString("part", contact.FirstPart);
            json.WriteString("with", contact.SecondBody);
            json.WriteString("withPart", contact.SecondPart);
            json.WriteString("why", contact.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("leftOut");
        foreach (var left in answer.LeftOut)
        {
            json.WriteStartObject();
            json.WriteString("what", left.What);
            json.WriteString("why", left.Why);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Run(Utf8JsonWriter json, RunAnswer run, Engine.Model.Basis basis, bool curves)
    {
        json.WriteStartObject();
        json.WriteString("id", run.Run.Id);
        json.WriteString("label", run.Run.Label);
        json.WriteString("verdict", GapMark.Word(run.Verdict));
        json.WriteString("sentence", run.Sentence);
        json.WriteStartArray("findings");
        foreach (var finding in run.Findings)
            Finding(json, finding, basis);
        json.WriteEndArray();
        json.WriteStartArray("figures");
        foreach (var figure in run.Figures)
            Figure(json, figure);
        json.WriteEndArray();
        if (run.Ladder is { } ladder)
            Ladder(json, ladder);
        if (run.Proof is { } proof)
            Proof(json, proof);
        if (run.Run.AsBuilt.MaxBy(a => a.Date, StringComparer.Ordinal) is { } newest && Rigging.CaseOf(run, newest) is { } rigged)
            AsBuilt(json, newest.Date, Engine.Rig.RigSolver.Solve(rigged));
        if (run.Clearance is { Handle: not null } clearance)
            Clearance(json, "clearance", clearance.Pairs.Select(p => (p, clearance.Other(p), clearance.FigureOf(p))));
        foreach (var end in run.Ends)
            Clearance(json, $"{end.Id}Clearance", end.Pairs.Select(p => (p, end.Other(p).Name, end.FigureOf(p))));
        json.WriteStartArray("needs");
        foreach (var need in run.Needs)
            json.WriteStringValue(need.Path);
        json.WriteEndArray();
        if (curves && run.Curve is { } curve)
            Curve(json, curve);
        if (curves && run.Route?.Lie is { } lie)
            Lie(json, lie);
        json.WriteEndObject();
    }

    private static void Clearance(Utf8JsonWriter json, string name, IEnumerable<(PairClearance Pair, string Other, string Figure)> pairs)
    {
        json.WriteStartArray(name);
        foreach (var (pair, other, figure) in pairs.OrderBy(p => p.Pair.Lower).ThenBy(p => p.Pair.Upper))
        {
            var found = pair.Found;
            json.WriteStartObject();
            json.WriteString("with", other);
            json.WriteString("figure", figure);
            Number(json, "least", pair.Lower);
            Number(json, "found", pair.Upper);
            json.WriteBoolean("touches", pair.Hits);
            if (found.Overlap > 0)
                Number(json, "overlapFound", found.Overlap);
            json.WriteString("proof", Word(found.Ended));
            json.WriteNumber("boxes", found.Boxes);
            json.WriteStartArray("joints");
            foreach (var (joint, at) in found.Joints.Zip(found.Positions))
            {
                json.WriteStartObject();
                json.WriteString("name", joint.Name);
                json.WriteString("unit", joint.Kind == JointKind.Turn ? "rad" : "m");
                Number(json, "from", joint.From);
                Number(json, "to", joint.To);
                Number(json, "at", at);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("points");
            Place(pair.First.Name, found.FirstPart, found.OnFirst);
            Place(pair.Second.Name, found.SecondPart, found.OnSecond);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();

        void Place(string body, string part, Vector3 at)
        {
            json.WriteStartObject();
            json.WriteString("body", body);
            json.WriteString("part", part);
            Number(json, "station", at.X);
            Number(json, "buttline", at.Y);
            Number(json, "waterline", at.Z);
            json.WriteEndObject();
        }
    }

    private static void Finding(Utf8JsonWriter json, Finding finding, Engine.Model.Basis basis)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("verdict", GapMark.Word(finding.Verdict));
        json.WriteString("sentence", finding.Sentence);
        if (finding.Figure is { } figure)
            json.WriteString("figure", figure);
        if (finding.Limit is { } limit)
        {
            json.WriteStartObject("limit");
            json.WriteString("is", limit.IsLeast ? "least" : "most");
            Number(json, "value", limit.Value);
            json.WriteString("unit", UnitOf(limit.Kind));
            json.WriteEndObject();
        }

        json.WriteStartArray("sources");
        foreach (var source in finding.Sources)
            Source(json, source);
        json.WriteEndArray();
        json.WriteStartArray("rules");
        foreach (var rule in RuleTable.RulesOf(finding))
        {
            json.WriteStartObject();
            json.WriteString("id", rule.Id);
            json.WriteString("cite", rule.Cite);
            json.WriteString("binds", RuleTable.BindsWords(basis, rule.Binds));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("remedies");
        foreach (var remedy in finding.Remedies)
        {
            json.WriteStartObject();
            json.WriteString("text", remedy.Text);
            json.WriteStartArray("try");
            foreach (var change in remedy.Tries)
                json.WriteStringValue(change);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (finding.Why.Length > 0)
            json.WriteString("why", finding.Why);
        json.WriteEndObject();
    }

    private static void Figure(Utf8JsonWriter json, Figure figure)
    {
        json.WriteStartObject();
        json.WriteString("id", figure.Id);
        json.WriteString("name", figure.Name);
        json.WriteString("unit", UnitOf(figure.Kind));
        Number(json, "value", figure.Value);
        Number(json, "least", figure.Least);
        Number(json, "most", figure.Most);
        Number(json, "low95", figure.Low95);
        Number(json, "high95", figure.High95);
        json.WriteString("formula", figure.Formula);
        json.WriteStartArray("sources");
        foreach (var source in figure.Sources)
            Source(json, source);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void AsBuilt(Utf8JsonWriter json, string date, Engine.Rig.RigAnswer fit)
    {
        json.WriteStartObject("asBuilt");
        json.WriteString("date", date);
        Number(json, "cushionIn", fit.CushionIn);
        Number(json, "cushionOut", fit.CushionOut);
        Number(json, "slide", fit.Slide);
        Number(json, "after", fit.After);
        json.WriteBoolean("fits", fit.Fits);
        json.WriteStartArray("estimates");
        foreach (var estimate in fit.Estimates)
        {
            json.WriteStartObject();
            json.WriteString("of", Word(estimate.Of.Unknown));
            Number(json, "off", estimate.Value);
            Number(json, "error", estimate.Error);
            json.WriteString("unit", UnitOf(estimate.Of.Kind));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("inseparable");
        foreach (var pair in fit.Inseparable)
            json.WriteStringValue($"{Word(pair.A)}, {Word(pair.B)}");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Proof(Utf8JsonWriter json, Engine.Prove.ProveAnswer proof)
    {
        Failures(json, proof);
        json.WriteStartObject("limitForce");
        Number(json, "value", proof.LimitForce);
        json.WriteString("unit", UnitOf(QuantityKind.Force));
        json.WriteBoolean("chosen", proof.IsChosen);
        json.WriteEndObject();
        json.WriteStartArray("strength");
        foreach (var row in proof.Strength)
        {
            json.WriteStartObject();
            json.WriteString("part", row.Part);
            json.WriteString("how", row.Why);
            json.WriteString("verdict", GapMark.Word(row.Verdict));
            if (row.Asked.Length > 0)
                json.WriteString("asked", row.Asked);
            if (row.Stands.Length > 0)
                json.WriteString("stands", row.Stands);
            Words("lacks", row.Lacks);
            Sources(row.Sources);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("jam");
        foreach (var (where, load) in proof.JamLoads)
        {
            json.WriteStartObject();
            json.WriteString("where", where);
            json.WriteString("load", load);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        // Left out where the run is no emergency control.
        if (proof.Operating.Count == 0)
            return;
        json.WriteStartArray("operatingCheck");
        foreach (var item in proof.Operating)
        {
            json.WriteStartObject();
            json.WriteString("what", item.What);
            json.WriteString("do", item.Do);
            json.WriteString("expect", item.Expect);
            json.WriteBoolean("known", item.Known);
            Sources(item.Sources);
            json.WriteEndObject();
        }

        json.WriteEndArray();

        void Words(string name, IEnumerable<string> words)
        {
            json.WriteStartArray(name);
            foreach (var word in words)
                json.WriteStringValue(word);
            json.WriteEndArray();
        }

        void Sources(IEnumerable<SourceRef> sources)
        {
            json.WriteStartArray("sources");
            foreach (var source in sources)
                Source(json, source);
            json.WriteEndArray();
        }
    }

    private static void Failures(Utf8JsonWriter json, Engine.Prove.ProveAnswer proof)
    {
        json.WriteStartArray("failures");
        foreach (var row in proof.Failures)
        {
            json.WriteStartObject();
            json.WriteString("failure", Word(row.Failure));
            json.WriteString("what", row.What);
            json.WriteString("device", row.Where);
            if (row.IsSafeEnd is { } safe)
                json.WriteBoolean("isSafeEnd", safe);
            json.WriteString("pilotFeels", row.PilotFeels);
            json.WriteString("foundBy", row.FoundBy);
            json.WriteString("action", row.Action);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Ladder(Utf8JsonWriter json, TravelLadder ladder)
    {
        json.WriteStartObject("ladder");
        json.WriteString("unit", "m");
        Number(json, "stroke", ladder.Stroke);
        Number(json, "throw", ladder.Throw);
        Number(json, "lostMotion", ladder.LostMotion);
        Number(json, "stretchPull", ladder.StretchPull);
        Number(json, "stretchPush", ladder.StretchPush);
        Number(json, "pushStopPlace", ladder.PushStopPlace);
        Number(json, "pullStopPlace", ladder.PullStopPlace);
        Cushion(json, "knobIn", ladder.KnobIn);
        Cushion(json, "knobOut", ladder.KnobOut);
        Cushion(json, "tipAtPull", ladder.TipAtPull);
        Cushion(json, "tipAtPush", ladder.TipAtPush);
        Number(json, "wanted", ladder.Wanted);
        json.WriteStartObject("setting");
        json.WriteString("kind", Word(ladder.Setting.Kind));
        json.WriteBoolean("proposed", ladder.Setting.Proposed);
        Number(json, "wireLength", ladder.Setting.WireLength);
        Number(json, "knobOutAtPushStop", ladder.Setting.KnobOutAtPushStop);
        Number(json, "knobOutAtPullStop", ladder.Setting.KnobOutAtPullStop);
        json.WriteEndObject();
        json.WriteStartArray("notCounted");
        foreach (var part in ladder.NotCounted)
            json.WriteStringValue(part);
        json.WriteEndArray();
        json.WriteNumber("samples", ladder.Samples);
        json.WriteNumber("seed", ladder.Seed);
        json.WriteEndObject();
    }

    private static void Cushion(Utf8JsonWriter json, string name, CushionRange range)
    {
        json.WriteStartObject(name);
        Number(json, "nominal", range.Nominal);
        Number(json, "least", range.Least);
        Number(json, "most", range.Most);
        Number(json, "leastFound", range.LeastFound);
        json.WriteString("proof", range.Outcome.ToString().ToLowerInvariant());
        Number(json, "low95", range.Low95);
        Number(json, "high95", range.High95);
        Number(json, "rootSumSquare", range.RootSumSquare);
        Number(json, "outsideRootSumSquare", range.OutsideRootSumSquare);
        Number(json, "shareAboveLow", range.ShareAbove.Low);
        Number(json, "shareAboveHigh", range.ShareAbove.High);
        json.WriteStartArray("shares");
        foreach (var share in range.Shares)
        {
            json.WriteStartObject();
            json.WriteString("input", share.Input);
            json.WriteString("path", share.Path);
            Number(json, "moves", share.Moves);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Lie(Utf8JsonWriter json, Engine.Route.Lie lie)
    {
        json.WriteStartArray("lie");
        foreach (var node in lie.Shape.Nodes)
        {
            json.WriteStartObject();
            Number(json, "at", node.At);
            Number(json, "station", node.Point.X);
            Number(json, "buttline", node.Point.Y);
            Number(json, "waterline", node.Point.Z);
            Number(json, "curvature", node.Curvature.Size);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Curve(Utf8JsonWriter json, TravelCurve curve)
    {
        json.WriteStartArray("curve");
        foreach (var p in curve.Points)
        {
            json.WriteStartObject();
            Number(json, "armAngle", p.ArmAngle);
            Number(json, "knobPulling", p.KnobPulling);
            Number(json, "knobPushing", p.KnobPushing);
            Number(json, "pull", p.Pull.Nominal);
            Number(json, "pullLeast", p.Pull.Least);
            Number(json, "pullMost", p.Pull.Most);
            Number(json, "push", p.Push.Nominal);
            Number(json, "pushLeast", p.Push.Least);
            Number(json, "pushMost", p.Push.Most);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string UnitOf(QuantityKind kind) => kind switch
    {
        QuantityKind.Length => "m",
        QuantityKind.Angle => "rad",
        QuantityKind.Force => "N",
        QuantityKind.Torque => "N m",
        QuantityKind.Temperature => "degC",
        QuantityKind.Stiffness => "N/m",
        QuantityKind.TorsionRate => "N m/rad",
        QuantityKind.BendingStiffness => "N m2",
        QuantityKind.LineWeight => "N/m",
        QuantityKind.Stress => "Pa",
        _ => "1",
    };
}
