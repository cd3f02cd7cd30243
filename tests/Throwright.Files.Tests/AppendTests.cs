using Throwright.Files.Form;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Tests;

public class AppendTests
{
    [Theory]
    [InlineData("{ \"a\": [] }", "{ \"a\": [9] }")]
    [InlineData("{ \"a\": [ // none yet\n] }", "{ \"a\": [9 // none yet\n] }")]
    [InlineData("{ \"a\": [1, 2] }", "{ \"a\": [1, 2, 9] }")]
    [InlineData("{ \"a\": [1, 2,] }", "{ \"a\": [1, 2, 9] }")]
    [InlineData("{\n  \"a\": [\n    1, // one\n    2 // two\n  ]\n}", "{\n  \"a\": [\n    1, // one\n    2,\n    9 // two\n  ]\n}")]
    [InlineData("{ \"b\": 1 }", "{ \"b\": 1, \"a\": [9] }")]
    public void Append_ToAList_KeepsEverythingElse(string text, string expected)
    {
        Assert.True(TextEdit.TryAppend(text, "$.a", "9", out var edited, out _));
        Assert.Equal(expected, edited);
    }

    [Fact]
    public void Append_ToNoList_IsRefused()
    {
        Assert.False(TextEdit.TryAppend("{ \"a\": 1 }", "$.a", "9", out _, out var problem));
        Assert.Contains("not a list", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Form_HoldsEveryMember_WithItsFormAndLimits()
    {
        var radius = FileForm.Find(FileForm.Run, "leverEnd.arm.radius")!;
        Assert.Equal((FieldForm.Quantity, QuantityKind.Length, true, "1 mm to 2 m"), (radius.Form, radius.Quantity!.Value, radius.MayHaveTolerance, radius.Limits));
        var sweep = FileForm.Find(FileForm.Run, "leverEnd.sweep")!;
        Assert.Equal((FieldForm.Members, FieldForm.Quantity), (sweep.Form, sweep.Brief!.Form));
        Assert.Equal(["from", "to"], sweep.Inside.Select(f => f.Name));
        var bends = FileForm.Find(FileForm.Run, "cable.bends")!;
        Assert.Equal((FieldForm.List, FieldForm.Members), (bends.Form, bends.Entry));
        Assert.Equal(FieldForm.Quantity, FileForm.Find(FileForm.Run, "cable.bends[0].angle")!.Form);
        Assert.Contains(FileForm.Find(FileForm.Run, "function")!.Choices, c => c.Text == "cowlFlap");
        Assert.Equal(FieldForm.Note, FileForm.Find(FileForm.Run, "note")!.Form);
        Assert.NotNull(FileForm.Find(FileForm.Aircraft, "environment.cabin"));
        Assert.Null(FileForm.Find(FileForm.Run, "leverEnd.nothing"));
    }

    [Fact]
    public void Values_AreShownAsTyped()
    {
        var values = FileValues.Of("{ \"a\": { \"b\": \"1 3/4 in ± 1/64 in\" }, \"c\": [1, 0, 0] }");
        Assert.Equal("1 3/4 in ± 1/64 in", values.At("$.a.b")!.Shown);
        Assert.Equal("[1, 0, 0]", values.At("$.c")!.Raw);
        Assert.Equal(3, values.At("$.c")!.Entries);
        Assert.Null(values.At("$.a.x"));
        Assert.Equal(["b"], values.NamesIn("$.a"));
    }
}
