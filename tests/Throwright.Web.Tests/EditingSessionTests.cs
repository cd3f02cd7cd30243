using Throwright.Engine.Chain;
using Throwright.Files.Form;
using Throwright.Web.Editing;

namespace Throwright.Web.Tests;

public sealed class EditingSessionTests : IDisposable
{
    private const string Radius = "$.runs[0].leverEnd.arm.radius";
    private readonly string root = Directory.CreateTempSubdirectory("throwright-").FullName;
    private readonly string path;

    public EditingSessionTests()
    {
        path = Path.Combine(root, "demo.throwright.json");
        File.WriteAllText(path, AircraftFolder.DemoText());
    }

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void Edit_IsInTheFileAtOnce_AndCommentsStay()
    {
        using var session = EditingSession.Open(path);
        Assert.True(session.TryEdit("arm radius", [Edit.Text(Radius, "1 1/4 in ± 1/64 in")], out _));
        var text = File.ReadAllText(path);
        Assert.Equal("1 1/4 in ± 1/64 in", FileValues.Of(text).At(Radius)!.Shown);
        Assert.StartsWith("// A two-seat side-by-side amphibian", text, StringComparison.Ordinal);
        Assert.Equal(AircraftFolder.DemoText().Replace("\"radius\": \"1 1/2 in ± 1/64 in\", \"holes\": [\"1 in\", \"1 1/4 in\", \"1 1/2 in\"], \"zero\"", "\"radius\": \"1 1/4 in ± 1/64 in\", \"holes\": [\"1 in\", \"1 1/4 in\", \"1 1/2 in\"], \"zero\"", StringComparison.Ordinal), text);
    }

    [Theory]
    [InlineData("1,5 in")]
    [InlineData("-1 in")]
    [InlineData("4 lbf")]
    [InlineData("")]
    public void Edit_ThatTheReaderRefuses_ChangesNothing(string value)
    {
        using var session = EditingSession.Open(path);
        var before = File.ReadAllText(path);
        Assert.False(session.TryEdit("arm radius", [Edit.Text(Radius, value)], out var problem));
        Assert.Equal(Radius, problem!.JsonPath);
        Assert.NotEmpty(problem.Expected);
        Assert.Equal(before, File.ReadAllText(path));
        Assert.Null(session.UndoName);
    }

    [Fact]
    public void UndoAndRedo_GoThroughEverything_AndReachTheFile()
    {
        using var session = EditingSession.Open(path);
        var texts = new List<string> { session.Text };
        foreach (var value in (string[])["1 1/4 in", "1 in", "1 3/8 in"])
        {
            Assert.True(session.TryEdit("arm radius " + value, [Edit.Text(Radius, value)], out _));
            texts.Add(session.Text);
        }

        Assert.True(session.TryEdit("note", [Edit.Text("$.runs[1].note", "Ä 😀 \" \\")], out _));
        texts.Add(session.Text);
        for (var i = texts.Count - 2; i >= 0; i--)
        {
            session.Undo();
            Assert.Equal(texts[i], session.Text);
            Assert.Equal(texts[i], File.ReadAllText(path));
        }

        Assert.Null(session.UndoName);
        for (var i = 1; i < texts.Count; i++)
        {
            session.Redo();
            Assert.Equal(texts[i], File.ReadAllText(path));
        }

        session.Undo();
        Assert.True(session.TryEdit("other way", [Edit.Text(Radius, "2 in")], out _));
        Assert.Null(session.RedoName);
    }

    [Fact]
    public void Undo_WorksOverARestart_AndDraftsComeBack()
    {
        using (var first = EditingSession.Open(path))
        {
            Assert.True(first.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
            Assert.True(first.TryEdit("arm radius 2 in", [Edit.Text(Radius, "2 in")], out _));
            first.Undo();
            first.Draft(Radius, "1 7/");
        }

        using var session = EditingSession.Open(path);
        Assert.Equal(("arm radius 1 in", "arm radius 2 in", "1 7/"), (session.UndoName, session.RedoName, session.DraftAt(Radius)));
        session.Undo();
        Assert.Equal(AircraftFolder.DemoText(), File.ReadAllText(path));
    }

    [Fact]
    public void KilledBetweenJournalAndFile_LosesNothing()
    {
        var before = File.ReadAllText(path);
        using (var first = EditingSession.Open(path))
            Assert.True(first.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
        var after = File.ReadAllText(path);
        // As if the program had been killed after the journal was written and before the file was, with half a line behind it.
        File.WriteAllText(path, before);
        var lines = File.ReadAllLines(path + ".journal");
        File.WriteAllText(path + ".journal", string.Join("\n", lines.Where(l => !l.StartsWith("{\"Saved\"", StringComparison.Ordinal))) + "\n{\"Change\":{\"Na");
        using var session = EditingSession.Open(path);
        Assert.Equal(after, File.ReadAllText(path));
        Assert.Contains("arm radius 1 in", session.Note, StringComparison.Ordinal);
        session.Undo();
        Assert.Equal(before, File.ReadAllText(path));
    }

    [Fact]
    public void ChangedOutside_WhileItRuns_IsAConflict_AndEitherTextCanHold()
    {
        using var session = EditingSession.Open(path);
        var theirs = File.ReadAllText(path).Replace("Heron demo", "Other demo", StringComparison.Ordinal);
        File.WriteAllText(path, theirs);
        Assert.True(session.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
        Assert.Equal(SaveState.Conflict, session.State);
        Assert.Equal(theirs, File.ReadAllText(path));
        Assert.True(session.TryEdit("arm radius 2 in", [Edit.Text(Radius, "2 in")], out _));
        Assert.Equal(theirs, File.ReadAllText(path));
        var mine = session.Text;

        session.TakeTheirs();
        Assert.Equal((SaveState.Saved, theirs), (session.State, session.Text));
        session.Undo();
        Assert.Equal((mine, mine), (session.Text, File.ReadAllText(path)));

        File.WriteAllText(path, theirs);
        Assert.True(session.LookAtDisk());
        Assert.Equal(SaveState.Conflict, session.State);
        session.KeepMine();
        Assert.Equal((SaveState.Saved, mine), (session.State, File.ReadAllText(path)));
        Assert.Equal(theirs, File.ReadAllText(path + ".backup"));
    }

    [Fact]
    public void ConflictThatWasNotSettled_IsStillThereAfterARestart()
    {
        string mine, theirs;
        using (var first = EditingSession.Open(path))
        {
            theirs = File.ReadAllText(path).Replace("Heron demo", "Other demo", StringComparison.Ordinal);
            File.WriteAllText(path, theirs);
            Assert.True(first.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
            mine = first.Text;
        }

        using var session = EditingSession.Open(path);
        Assert.Equal((SaveState.Conflict, mine, theirs), (session.State, session.Text, File.ReadAllText(path)));
    }

    [Fact]
    public void ChangedOutside_WhileItDidNotRun_IsTakenAndCanBeUndone()
    {
        string mine;
        using (var first = EditingSession.Open(path))
        {
            Assert.True(first.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
            mine = first.Text;
        }

        var edited = mine.Replace("Heron demo", "Heron", StringComparison.Ordinal);
        File.WriteAllText(path, edited);
        using var session = EditingSession.Open(path);
        Assert.Equal((SaveState.Saved, edited, "changes made outside"), (session.State, session.Text, session.UndoName));
        session.Undo();
        Assert.Equal(mine, File.ReadAllText(path));
    }

    [Fact]
    public void TwoPrograms_OnOneFile_NeverOverwriteUnseen()
    {
        using var one = EditingSession.Open(path);
        using var two = EditingSession.Open(path);
        Assert.NotEmpty(two.Note);
        Assert.True(one.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
        Assert.True(two.TryEdit("arm radius 2 in", [Edit.Text(Radius, "2 in")], out _));
        Assert.Equal(SaveState.Conflict, two.State);
        Assert.Equal(one.Text, File.ReadAllText(path));
    }

    [Fact]
    public void FileAtFaultElsewhere_CanBeWorkedOn_ButGetsNoNewFault()
    {
        File.WriteAllText(path, File.ReadAllText(path).Replace("\"stroke\": \"2 1/2 in ± 1/32 in\"", "\"stroke\": \"2,5 in\"", StringComparison.Ordinal));
        using var session = EditingSession.Open(path);
        Assert.Single(session.File.RunsLeftOut);
        Assert.True(session.TryEdit("arm radius 1 in", [Edit.Text(Radius, "1 in")], out _));
        Assert.Equal(SaveState.NotSaved, session.State);
        Assert.False(session.TryEdit("arm radius 1,5", [Edit.Text(Radius, "1,5 in")], out _));
        Assert.True(session.TryEdit("stroke", [Edit.Text("$.runs[1].cockpitEnd.stroke", "2 1/2 in")], out _));
        Assert.Equal((SaveState.Saved, session.Text), (session.State, File.ReadAllText(path)));
    }

    [Theory]
    [InlineData("", "abc")]
    [InlineData("abc", "")]
    [InlineData("aaa", "aaaa")]
    [InlineData("a😀b", "a😁b")]
    [InlineData("same", "same")]
    public void Change_Between_DoesAndUndoes(string before, string after)
    {
        var change = Change.Between("x", before, after);
        Assert.True(change.Fits(before));
        Assert.Equal((after, before), (change.Do(before), change.Undo(after)));
    }

    [Fact]
    public void Difference_ShowsBothSides()
    {
        var lines = Difference.Of("a\nb\nc\nd", "a\nb2\nc\nd");
        Assert.Equal([(' ', "a"), ('-', "b"), ('+', "b2"), (' ', "c"), (' ', "d")], lines);
    }

    [Fact]
    public async Task Latest_OfManyQuestions_AnswersTheLast_AndPassesOverOthers()
    {
        var seen = new List<string>();
        using var gate = new SemaphoreSlim(0);
        var ended = new TaskCompletionSource();
        using var latest = new Latest<string, string>((q, stop) => { gate.Wait(stop); return q; }, (_, a) =>
        {
            lock (seen)
                seen.Add(a);
            if (a == "120")
                ended.SetResult();
            return Task.CompletedTask;
        });
        for (var i = 1; i <= 120; i++)
            latest.Want($"{i}");
        gate.Release(200);
        await ended.Task.WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken);
        Assert.Equal("120", seen[^1]);
        Assert.True(seen.Count <= 3, string.Join(" ", seen));
        Assert.True(latest.PassedOver >= 117);
    }

    [Fact]
    public async Task Latest_ThatOvertakes_StopsTheOlderWork_AndShowsOnlyTheNewer()
    {
        var seen = new List<string>();
        var begun = new TaskCompletionSource();
        var ended = new TaskCompletionSource();
        using var latest = new Latest<string, string>(
            (q, stop) =>
            {
                begun.TrySetResult();
                if (q == "old")
                    stop.WaitHandle.WaitOne();
                stop.ThrowIfCancellationRequested();
                return q;
            },
            (_, a) =>
            {
                seen.Add(a);
                ended.TrySetResult();
                return Task.CompletedTask;
            },
            overtakes: true);
        latest.Want("old");
        await begun.Task.WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken);
        latest.Want("new");
        await ended.Task.WaitAsync(TimeSpan.FromMinutes(2), TestContext.Current.CancellationToken);
        Assert.Equal(["new"], seen);
    }

    [Fact]
    public void Typed_ThatTouchesClearance_IsAnsweredAtOnce_AndSaysThatItDoesNotCount()
    {
        using var session = EditingSession.Open(path);
        var aircraft = session.File.Aircraft!;
        var checks = new Checks();
        var (before, isWhole) = checks.Typed(aircraft, aircraft.Runs[0]);
        Assert.False(isWhole);
        Assert.Null(before.Clearance);
        checks.CockpitOf(aircraft);
        // Known of the handle; its arm and conduit are held against the rest afterwards.
        (before, isWhole) = checks.Typed(aircraft, aircraft.Runs[0]);
        Assert.False(isWhole);
        Assert.NotNull(before.Clearance);
        // A run of which only the handle is described needs no more; a changed stroke is another handle.
        var bench = aircraft.Runs[^1] with { LeverEnd = null, Cable = null };
        Assert.False(DeviceEnd.IsDescribed(bench));
        Assert.True(checks.Typed(aircraft, bench).IsWhole);
        var longer = With("$.runs[0].cockpitEnd.stroke", "2 3/4 in");
        Assert.False(checks.Typed(longer, longer.Runs[0]).IsWhole);
        var proved = checks.TypedWhole(longer, longer.Runs[0], TestContext.Current.CancellationToken);
        Assert.NotEmpty(proved.Clearance!.Pairs);
        Assert.Contains(proved.Findings, f => f.Rule.StartsWith("clearance/", StringComparison.Ordinal));

        Throwright.Engine.Model.Aircraft With(string at, string value)
        {
            Assert.True(EditingSession.TryApply(session.Text, [Edit.Text(at, value)], out var text, out _));
            return Throwright.Files.AircraftFile.Parse("typed", text).Aircraft!;
        }
    }
}
