using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Files.Form;
using Throwright.Papers.Board;
using Throwright.Papers.Ladder;
using Throwright.Web.Editing;
using Throwright.Web.Pages;
using Throwright.Web.Parts;

namespace Throwright.Web.Tests;

/// <summary>The parts of the page, each by itself: what it shows, and what a hand on it does to the file.</summary>
public sealed class ComponentTests : BunitContext
{
    private const string Radius = "$.runs[0].leverEnd.arm.radius";
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;
    private readonly AircraftFolder folder;
    private readonly EditingSession session;
    private readonly Checks checks = new();

    public ComponentTests()
    {
        // Without its bodies: what is tried here has little to prove. The sheet stays: the conduits begin at it.
        var demo = AircraftFolder.DemoText();
        var bare = demo[..demo.IndexOf("  \"bodies\": [", StringComparison.Ordinal)] + demo[demo.IndexOf("  \"runs\": [", StringComparison.Ordinal)..];
        File.WriteAllText(Path.Combine(root, "demo.throwright.json"), bare);
        folder = new(root);
        session = folder.Open("demo")!;
        Services.AddSingleton(folder);
        Services.AddSingleton(checks);
        Services.AddSingleton(TimeProvider.System);
        Services.AddScoped<Viewer>();
        JSInterop.Mode = JSRuntimeMode.Loose;
        // A loaded machine is slow, not wrong.
        DefaultWaitTimeout = TimeSpan.FromMinutes(2);
    }

    private Aircraft Aircraft => session.File.Aircraft!;

    private RunAnswer Answer(string id) => checks.Of(Aircraft, Aircraft.Runs.Single(r => r.Id == id));

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        folder.Dispose();
        if (Directory.Exists(root))
            Directory.Delete(root, recursive: true);
    }

    private IRenderedComponent<Field> RenderField(string path, string member, Func<Display>? display = null, Action<string>? attempt = null)
    {
        var host = new FieldHost(session, display ?? (() => Aircraft.Display), attempt ?? (_ => { }), () => { });
        return Render<Field>(p => p.AddCascadingValue(host).Add(f => f.Of, FileForm.Find(FileForm.Run, member)!).Add(f => f.Path, path));
    }

    /// <summary>The cabin heat before anyone was at its lever with a tape.</summary>
    private Run Unmeasured => Aircraft.Runs.Single(r => r.Id == "cabin-heat") with { LeverEnd = null, Cable = null };

    private string? InFile(string path) => FileValues.Of(File.ReadAllText(Path.Combine(root, "demo.throwright.json"))).At(path)?.Shown;

    [Fact]
    public void Field_ShowsTheTextAsTyped_WithUnitAndTolerance_UnderItsName()
    {
        var field = RenderField(Radius, "leverEnd.arm.radius");
        var input = field.Find("input");
        Assert.Equal("1 1/2 in ± 1/64 in", input.GetAttribute("value"));
        Assert.Equal("pivot to hole", field.Find($"label[for={input.Id}]").TextContent);
        // What it means is said to a screen reader too.
        Assert.NotEmpty(field.Find("#" + input.GetAttribute("aria-describedby")).TextContent);
        Assert.Empty(field.FindAll(".error"));
    }

    [Theory]
    [InlineData("1,5 in")]
    [InlineData("1 1/2 lbf")]
    [InlineData("-1 in")]
    [InlineData("a lot")]
    public void Field_ThatTheReaderRefuses_SaysSoBesideIt_AndTheOldValueHolds(string typed)
    {
        var field = RenderField(Radius, "leverEnd.arm.radius");
        field.Find("input").Input(typed);
        var input = field.Find("input");
        var error = field.Find("[role=alert]");
        Assert.Contains("The old value, 1 1/2 in ± 1/64 in, still holds.", error.TextContent, StringComparison.Ordinal);
        Assert.Contains(error.Id!, input.GetAttribute("aria-describedby")!.Split(' '));
        Assert.Equal(("true", typed), (input.GetAttribute("aria-invalid"), input.GetAttribute("value")));
        field.Find("input").KeyDown(Key.Enter);
        Assert.Equal("1 1/2 in ± 1/64 in", InFile(Radius));
        // It is not lost either, until it is dropped.
        Assert.Equal(typed, session.DraftAt(Radius));
        field.Find("input").KeyDown(Key.Escape);
        Assert.Equal(("1 1/2 in ± 1/64 in", null), (field.Find("input").GetAttribute("value"), session.DraftAt(Radius)));
        Assert.Empty(field.FindAll("[role=alert]"));
    }

    [Fact]
    public void Field_WhileTyped_IsTriedAndNotKept_UntilEnter()
    {
        var tried = new List<string>();
        var field = RenderField(Radius, "leverEnd.arm.radius", attempt: tried.Add);
        field.Find("input").Input("1 1/4 in");
        Assert.Equal("1 1/4 in", FileValues.Of(Assert.Single(tried)).At(Radius)!.Shown);
        Assert.Equal("1 1/2 in ± 1/64 in", InFile(Radius));
        field.Find("input").KeyDown(Key.Enter);
        Assert.Equal(("1 1/4 in", "pivot to hole 1 1/4 in"), (InFile(Radius), session.UndoName));
    }

    [Theory]
    [InlineData(false, "1 9/16 in ± 1/64 in")]
    [InlineData(true, "1 33/64 in ± 1/64 in")]
    public void Field_ArrowKey_StepsAsATapeIsMarked(bool shift, string expected)
    {
        var field = RenderField(Radius, "leverEnd.arm.radius");
        field.Find("input").KeyDown(new KeyboardEventArgs { Key = "ArrowUp", ShiftKey = shift });
        Assert.Equal(expected, field.Find("input").GetAttribute("value"));
        Assert.Equal("1 1/2 in ± 1/64 in", InFile(Radius));
    }

    [Fact]
    public void Field_NumberWithoutAUnit_IsReadInTheUnitsThatTheWindowShows()
    {
        // Nothing is said of it yet: no unit of its own to follow.
        const string path = "$.runs[0].cushion.most";
        var unit = LengthUnit.Inch;
        var field = RenderField(path, "cushion.most", () => Aircraft.Display with { Length = unit });
        unit = LengthUnit.Millimetre;
        field.Find("input").Input("12");
        field.Find("input").KeyDown(Key.Enter);
        Assert.Equal("12 mm", InFile(path));
        field.Find("input").Input("13");
        unit = LengthUnit.Inch;
        // Now it has a unit: it stays in that.
        field.Find("input").KeyDown(Key.Enter);
        Assert.Equal("13 mm", InFile(path));
    }

    [Fact]
    public void FieldGroup_OfAList_AddsAndTakesOut_UnderTheListsName()
    {
        var host = new FieldHost(session, () => Aircraft.Display, _ => { }, () => { });
        var group = Render<FieldGroup>(p => p.AddCascadingValue(host).Add(f => f.Of, FileForm.Find(FileForm.Run, "leverEnd.arm.holes")!).Add(f => f.Path, "$.runs[0].leverEnd.arm.holes"));
        Assert.Equal(3, group.FindAll("input").Count);
        group.Find("button[aria-label='Add to holes of the arm']").Click();
        Assert.Equal("1 1/2 in", InFile("$.runs[0].leverEnd.arm.holes[3]"));
        group.Render();
        Assert.Equal(4, group.FindAll("input").Count);
        group.Find("button[aria-label='Take out holes of the arm 1']").Click();
        Assert.Equal("1 1/4 in", InFile("$.runs[0].leverEnd.arm.holes[0]"));
    }

    [Theory]
    [InlineData(Verdict.Clear, "clear")]
    [InlineData(Verdict.Caution, "caution")]
    [InlineData(Verdict.Fail, "fail")]
    [InlineData(Verdict.NeedsInput, "needs input")]
    public void Mark_AlwaysHasItsWord(Verdict verdict, string word)
    {
        Assert.Equal(word, Render<Mark>(p => p.Add(m => m.Verdict, verdict)).Find(".mark").TextContent.Trim());
        Assert.Equal(word, Render<Mark>(p => p.Add(m => m.Verdict, verdict).Add(m => m.Bare, true)).Find(".unseen").TextContent);
        Assert.Equal("3 " + word, Render<Mark>(p => p.Add(m => m.Verdict, verdict).Add(m => m.Count, 3)).Find(".unseen").TextContent);
        Assert.Equal("true", Render<Mark>(p => p.Add(m => m.Verdict, verdict)).Find("svg").GetAttribute("aria-hidden"));
    }

    [Fact]
    public void LadderTable_SaysWhatTheLadderDraws_EachFigureWithItsUnit_AndItClosesOnTheStroke()
    {
        var answer = Answer("cowl-flap");
        var layout = RunLadder.LayoutOf(answer, Aircraft.Display);
        var table = Render<LadderTable>(p => p.Add(t => t.Layout, layout));
        var rows = table.FindAll("tbody tr");
        Assert.True(rows.Count >= 5, $"{rows.Count} rows");
        Assert.All(table.FindAll("tbody td").Where(c => c.TextContent.Any(char.IsAsciiDigit)), c => Assert.EndsWith("in", c.TextContent, StringComparison.Ordinal));
        Assert.All(table.FindAll("thead th"), h => Assert.Equal("col", h.GetAttribute("scope")));
        Assert.All(rows, r => Assert.NotEmpty(r.QuerySelector("th[scope=row]")!.TextContent));
        // In millimetres the same table, and no inch left in it.
        var metric = Render<LadderTable>(p => p.Add(t => t.Layout, RunLadder.LayoutOf(answer, Aircraft.Display with { Length = LengthUnit.Millimetre })));
        Assert.All(metric.FindAll("tbody td").Where(c => c.TextContent.Any(char.IsAsciiDigit)), c => Assert.EndsWith("mm", c.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void LadderTable_OfARunThatLacksInput_NamesWhatIsNeeded() =>
        Assert.Contains("Needed: ", Render<LadderTable>(p => p.Add(t => t.Layout, RunLadder.LayoutOf(checks.Of(Aircraft, Unmeasured), Aircraft.Display))).Markup, StringComparison.Ordinal);

    [Fact]
    public void Finding_WithARemedy_TriesKeepsAndExplains()
    {
        var answer = Answer("cowl-flap");
        var finding = answer.Findings.First(f => f.Rule == "cushion/knob-out");
        Assert.Equal(Verdict.Fail, finding.Verdict);
        var tried = new List<Tried>();
        var kept = new List<Tried>();
        var dropped = 0;
        var view = Render<FindingView>(p => p.Add(v => v.Finding, finding).Add(v => v.Answer, answer).Add(v => v.Display, Aircraft.Display).Add(v => v.Link, "/a/demo/run/cowl-flap")
            .Add(v => v.OnTry, tried.Add).Add(v => v.OnKeep, kept.Add).Add(v => v.OnDrop, () => dropped++));
        // The word, what is the matter, the figure with its worst case and its limit, and where the limit comes from.
        Assert.Equal("fail", view.Find("h2 .mark").TextContent.Trim());
        Assert.Contains("The knob reaches its OUT stop before the cowl flap is shut in the worst case.", view.Find("h2").TextContent, StringComparison.Ordinal);
        Assert.Matches("worst case .* in, wanted .* in", view.Find(".bands").TextContent);
        Assert.StartsWith("From: ", view.Find(".sources").TextContent, StringComparison.Ordinal);
        Assert.Contains(finding.Remedies[0].Text, view.Markup.Replace("&#xB1;", "±", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Empty(view.FindAll("[data-key=k]"));
        view.Find("button[data-key=t]").Click();
        Assert.Equal(finding.Remedies[0].Text, Assert.Single(tried).Remedy.Text);

        // Tried: what it would give stands beside it, and only then can it be kept.
        view.Render(p => p.Add(v => v.Trying, tried[0] with { Answer = answer }));
        Assert.Contains("Tried, not kept. This would be: fail.", view.Find("[role=status]").TextContent, StringComparison.Ordinal);
        view.Find("button[data-key=k]").Click();
        Assert.Single(kept);
        view.FindAll("button").Single(b => b.TextContent == "Undo the try").Click();
        Assert.Equal(1, dropped);

        // Why: formula, inputs that lead to their fields, source.
        var why = view.Find(".why-button");
        Assert.Equal("false", why.GetAttribute("aria-expanded"));
        why.Click();
        Assert.Equal("true", view.Find(".why-button").GetAttribute("aria-expanded"));
        Assert.Contains("=", view.Find(".formula").TextContent, StringComparison.Ordinal);
        var link = view.FindAll(".explained a").First(a => a.GetAttribute("href")!.EndsWith("#f-runs-0-leverEnd-arm-radius", StringComparison.Ordinal));
        Assert.StartsWith("/a/demo/run/cowl-flap/arm", link.GetAttribute("href"), StringComparison.Ordinal);
    }

    [Fact]
    public void BoardRow_NamesTheControl_ItsVerdict_WhatIsTheMatter_AndOneRemedy()
    {
        var run = Aircraft.Runs.Single(r => r.Id == "cowl-flap");
        var options = BoardStrip.Fit(Aircraft.Runs, new());
        var row = Render<BoardRow>(p => p.Add(r => r.Run, run).Add(r => r.Answer, Answer("cowl-flap")).Add(r => r.Aircraft, Aircraft).Add(r => r.Options, options).Add(r => r.Address, "/a/demo/run/cowl-flap"));
        Assert.Equal("COWL FLAP", row.Find("a.placard").TextContent);
        Assert.Equal("fail", row.Find("[data-run=cowl-flap]").GetAttribute("data-verdict"));
        Assert.Equal("fail", row.Find(".verdict .mark").TextContent.Trim());
        Assert.Contains("OUT stop", row.Find(".sentence").TextContent, StringComparison.Ordinal);
        Assert.Matches("cushion .* in, worst .* in · hand .* lbf", row.Find(".figures").TextContent.Replace("−", "-", StringComparison.Ordinal).Replace("worst -", "worst ", StringComparison.Ordinal).Replace(" ·", " in ·", StringComparison.Ordinal));
        Assert.Equal("/a/demo/run/cowl-flap?try=cushion%2Fknob-out", row.Find(".remedy a").GetAttribute("href"));

        // Not worked out yet, and worked out but for clearance: neither says clear.
        row.Render(p => p.Add(r => r.Answer, null));
        Assert.Contains("working", row.Markup, StringComparison.Ordinal);
        Assert.Empty(row.FindAll(".mark"));
        row.Render(p => p.Add(r => r.Run, Aircraft.Runs.Single(r => r.Id == "carb-heat")).Add(r => r.Answer, Answer("carb-heat") with { Findings = [.. Answer("carb-heat").Findings.Where(f => f.Verdict == Verdict.Clear)] }).Add(r => r.IsWhole, false));
        Assert.Empty(row.FindAll(".mark"));
        Assert.Contains("clearance: working", row.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void BoardRow_ThatWaitsForInput_LeadsToTheFieldsPart()
    {
        var run = Unmeasured;
        var row = Render<BoardRow>(p => p.Add(r => r.Run, run).Add(r => r.Answer, checks.Of(Aircraft, run)).Add(r => r.Aircraft, Aircraft).Add(r => r.Options, BoardStrip.Fit(Aircraft.Runs, new())).Add(r => r.Address, "/a/demo/run/cabin-heat"));
        Assert.Equal("needs input", row.Find(".verdict .mark").TextContent.Trim());
        Assert.StartsWith("Type in the ", row.Find(".remedy a").TextContent, StringComparison.Ordinal);
        Assert.StartsWith("opens ", row.Find(".figures").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Drawn_HasATitle_OrIsHiddenWhereTextSaysTheSame()
    {
        var picture = RunLadderPicture();
        var shown = Render<Drawn>(p => p.Add(d => d.Picture, picture));
        Assert.Equal("img", shown.Find("svg").GetAttribute("role"));
        Assert.NotEmpty(shown.Find("svg title").TextContent);
        var hidden = Render<Drawn>(p => p.Add(d => d.Picture, picture).Add(d => d.Hidden, true));
        Assert.Equal("true", hidden.Find("svg").GetAttribute("aria-hidden"));
        // Colours come from the page's style: none is written into the drawing.
        Assert.DoesNotMatch("#[0-9a-f]{6}", shown.Markup);
    }

    private Throwright.Formats.Drawing.Picture RunLadderPicture() => LadderDrawing.Page(RunLadder.LayoutOf(Answer("cowl-flap"), Aircraft.Display)).Picture;

    [Fact]
    public void SaveLine_InAConflict_ShowsBothTexts_AndEitherCanHold()
    {
        Assert.Empty(Render<SaveLine>(p => p.Add(s => s.Session, session)).FindAll("section"));
        var path = Path.Combine(root, "demo.throwright.json");
        var theirs = session.Text.Replace("Heron demo", "Other demo", StringComparison.Ordinal);
        File.WriteAllText(path, theirs);
        Assert.True(session.LookAtDisk());
        var line = Render<SaveLine>(p => p.Add(s => s.Session, session));
        Assert.Equal("alert", line.Find("section").GetAttribute("role"));
        line.FindAll("button").Single(b => b.TextContent == "Show the difference").Click();
        Assert.Contains("Other demo", line.Find(".difference .theirs").TextContent, StringComparison.Ordinal);
        Assert.Contains("Heron demo", line.Find(".difference .mine").TextContent, StringComparison.Ordinal);
        line.FindAll("button").Single(b => b.TextContent == "Take theirs").Click();
        Assert.Equal((theirs, SaveState.Saved), (session.Text, session.State));
    }

    private IRenderedComponent<RunPage> RenderRun(string id, string part) => Render<RunPage>(p => p.Add(r => r.File, "demo").Add(r => r.Id, id).Add(r => r.Part, part));

    [Fact]
    public void RunPage_DrawsLadderCurvesAndLever_OnOneScale_AndSaysTheSameInATable()
    {
        var page = RenderRun("cowl-flap", "arm");
        var ladder = page.Find(".ladder svg");
        foreach (var word in (string[])["lever angle", "hand force", "pull", "push"])
            Assert.Contains(word, ladder.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.NotEmpty(page.Find(".lever svg title").TextContent);
        Assert.NotEmpty(page.FindAll("details.table tbody tr"));
        // Every part of the chain is a link with its verdict's word.
        Assert.Equal(["Device", "Arm", "Anchor and tip", "Conduit", "Sheet and mount", "Knob"], page.FindAll(".tabs a b").Select(b => b.TextContent));
        Assert.Equal("Arm", page.Find(".tabs a[aria-current=true] b").TextContent);
    }

    [Fact]
    public void RunPage_Scriber_SaysKnobLeverAndForce()
    {
        var page = RenderRun("cowl-flap", "arm");
        page.Find("#scriber").Input("400");
        page.WaitForAssertion(() => Assert.Matches(@"1\.575 in out · lever .*° · pulling .* lbf", page.Find("#readout").TextContent));
        Assert.Equal(page.Find("#readout").TextContent, page.Find("#scriber").GetAttribute("aria-valuetext"));
    }

    [Fact]
    public async Task RunPage_InMillimetres_ShowsThem_AndTheTextAsTypedStays()
    {
        var page = RenderRun("cowl-flap", "arm");
        Assert.Contains(" in,", page.Find(".bands").TextContent, StringComparison.Ordinal);
        await page.InvokeAsync(() => Services.GetRequiredService<Viewer>().Choose(LengthUnit.Millimetre));
        page.WaitForAssertion(() => Assert.Contains(" mm,", page.Find(".bands").TextContent, StringComparison.Ordinal));
        Assert.Equal("1 1/2 in ± 1/64 in", page.Find("#f-runs-0-leverEnd-arm-radius").GetAttribute("value"));
        Assert.Equal("1 1/2 in ± 1/64 in", InFile(Radius));
    }

    [Fact]
    public void RunPage_RemedyKept_ChangesTheSentence_AndNamesTheUndo()
    {
        var page = RenderRun("cowl-flap", "arm");
        var before = page.Find("h1").TextContent;
        page.Find(".finding[data-rule='cushion/knob-out'] button[data-key=t]").Click();
        page.WaitForElement(".finding[data-rule='cushion/knob-out'] button[data-key=k]").Click();
        page.WaitForAssertion(() => Assert.NotEqual(before, page.Find("h1").TextContent));
        page.WaitForAssertion(() => Assert.Empty(page.FindAll(".finding[data-rule='cushion/knob-out'][data-verdict=fail]")));
        Assert.StartsWith("slide the swivel", session.UndoName, StringComparison.Ordinal);
        page.Find("#undo").Click();
        page.WaitForAssertion(() => Assert.Equal(before, page.Find("h1").TextContent));
    }

    [Fact]
    public void RunPage_WithoutTheRun_SaysSo_AndLeadsBack()
    {
        var page = RenderRun("no-such", "arm");
        Assert.Contains("no run", page.Find("h1").TextContent, StringComparison.Ordinal);
        Assert.Equal("/a/demo", page.Find("main a").GetAttribute("href"));
    }

    [Fact]
    public void Caution_StandsOnEveryPageOfARun()
    {
        Assert.Equal("WARNING", RenderRun("cowl-flap", "arm").Find(".warning .rank").TextContent);
        Assert.Equal("WARNING", Render<Board>(p => p.Add(b => b.File, "demo")).Find(".warning .rank").TextContent);
        Assert.Equal("WARNING", Render<Start>().Find(".warning .rank").TextContent);
    }

    [Theory]
    [InlineData("leverEnd.arm.zero", "$.runs[3].leverEnd.arm.zero", "up", "down", "[0, 0, -1]")]
    [InlineData("leverEnd.arm.zero", "$.runs[3].leverEnd.arm.zero", "up", "0.2, 0, 1", "[0.2, 0, 1]")]
    [InlineData("leverEnd.pivot", "$.runs[0].leverEnd.pivot", "cowl-pivot", "cowl-anchor", "\"cowl-anchor\"")]
    [InlineData("leverEnd.pivot", "$.runs[0].leverEnd.pivot", "cowl-pivot", "40 in, -6 1/2 in, 21 in", "[\"40 in\", \"-6 1/2 in\", \"21 in\"]")]
    public void Field_OfAPlaceOrDirection_IsReadAndWrittenInWords_NotInBrackets(string member, string path, string shown, string typed, string raw)
    {
        var field = RenderField(path, member);
        Assert.Equal(shown, field.Find("input").GetAttribute("value"));
        field.Find("input").Input(typed);
        field.Find("input").KeyDown(Key.Enter);
        Assert.Empty(field.FindAll("[role=alert]"));
        Assert.Equal(raw, FileValues.Of(session.Text).At(path)!.Raw);
        Assert.Equal(typed, field.Find("input").GetAttribute("value"));
    }

    [Theory]
    [InlineData("1,5 in, 2 in")]
    [InlineData("40 in, 6 in")]
    [InlineData("40, 6, 21")]
    public void Field_OfAPlace_WithCommasThatAreNoPlace_IsRefused(string typed)
    {
        var field = RenderField("$.runs[0].leverEnd.pivot", "leverEnd.pivot");
        field.Find("input").Input(typed);
        Assert.Single(field.FindAll("[role=alert]"));
    }

    [Fact]
    public void Finding_Tried_TellsItsOwnVerdictApartFromWhatIsLeft()
    {
        var answer = Answer("cowl-flap");
        var finding = answer.Findings.First(f => f.Rule == "cushion/knob-out");
        var other = finding with { Rule = "clearance/pair", Figure = null, Sentence = "The yoke strikes the handle: at 57°." };
        var then = answer with { Findings = [other, finding with { Verdict = Verdict.Clear }] };
        var view = Render<FindingView>(p => p.Add(v => v.Finding, finding).Add(v => v.Answer, answer).Add(v => v.Display, Aircraft.Display).Add(v => v.Trying, new Tried(finding.Rule, finding.Remedies[0]) { Answer = then, IsWhole = false }));
        var said = view.Find("[role=status]").TextContent;
        Assert.StartsWith("Tried, not kept. This would be: clear. Left then, fail: The yoke strikes the handle. Clearance is not counted as yet", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Finding_OfClearance_LeadsToTheCockpit()
    {
        var answer = Answer("cowl-flap");
        var finding = answer.Findings[0] with { Rule = "clearance/pair", Figure = null, Remedies = [] };
        var view = Render<FindingView>(p => p.Add(v => v.Finding, finding).Add(v => v.Answer, answer).Add(v => v.Display, Aircraft.Display).Add(v => v.Cockpit, "/a/demo/cockpit/cowl-flap"));
        Assert.Equal("/a/demo/cockpit/cowl-flap", view.Find("a.see").GetAttribute("href"));
        view.Render(p => p.Add(v => v.Finding, finding with { Verdict = Verdict.Clear }));
        Assert.Empty(view.FindAll("a.see"));
    }

    [Fact]
    public void BoardRow_ThatWaitsForAnAnswer_LeadsWhereItsSentenceSpeaksOf()
    {
        var measured = Aircraft.Runs.Single(r => r.Id == "cabin-heat");
        var run = measured with { SafeEnd = "as set", LeverEnd = measured.LeverEnd! with { Swivel = measured.LeverEnd.Swivel with { At = null, Rigged = null } } };
        var answer = checks.Of(Aircraft, run);
        Assert.StartsWith("The file does not say where the swivel sits", answer.Sentence, StringComparison.Ordinal);
        var row = Render<BoardRow>(p => p.Add(r => r.Run, run).Add(r => r.Answer, answer).Add(r => r.Aircraft, Aircraft).Add(r => r.Options, BoardStrip.Fit(Aircraft.Runs, new())).Add(r => r.Address, "/a/demo/run/cabin-heat"));
        Assert.Equal("/a/demo/run/cabin-heat/arm", row.Find(".remedy a").GetAttribute("href"));
        Assert.Equal("Answer it at: Arm", row.Find(".remedy a").TextContent);
    }
}
