using Throwright.Formats.Step;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Step;

public class StepTests
{
    internal static readonly StepHead Head = new("TR-1", "Test part", new(2026, 1, 2));

    public static TheoryData<string> Names => [.. SolidCases.All.Select(c => c.Name)];

    internal static SolidCase Case(string name) => SolidCases.All.Single(c => c.Name == name);

    /// <summary>The gate: what was written, read back by a reader that shares no code with the writer, has no defect.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Step_ReadBack_HasNoDefectAndItsClosedFormVolume(string name)
    {
        var body = Case(name);
        foreach (var schema in Enum.GetValues<StepSchema>())
        {
            var text = StepWriter.Write(body.Solid, Head, schema);
            Assert.Equal([], StepReader.Audit(text, body.Volume, body.ThroughHoles));
            var back = StepReader.Read(text).Solid!;
            Assert.Equal((body.Solid.Faces.Count, body.Solid.Edges.Count, body.Solid.Vertices.Count), (back.Faces.Count, back.Edges.Count, back.Vertices.Count));
            Assert.Equal(body.Volume, Measure.Of(back).Volume, 1e-12 * body.Volume);
        }
    }

    [Fact]
    public void Step_Twice_GivesTheSameBytes()
    {
        var washer = SolidCases.Keyed;
        Assert.Equal(StepWriter.Write(washer.Build(), Head), StepWriter.Write(washer.Build(), Head));
        Assert.Contains("'2026-01-02T00:00:00'", StepWriter.Write(washer.Build(), Head), StringComparison.Ordinal);
    }

    [Fact]
    public void Step_TwoSchemas_DifferInThreeLinesOnly()
    {
        var solid = SolidCases.Worked.Build();
        string[] one = StepWriter.Write(solid, Head).Split('\n'), two = StepWriter.Write(solid, Head, StepSchema.Ap242).Split('\n');
        Assert.Equal(one.Length, two.Length);
        Assert.Equal(3, one.Zip(two).Count(p => p.First != p.Second));
        Assert.Contains("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));", one);
        Assert.Contains("FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }'));", two);
    }

    [Fact]
    public void Step_NameWithQuotesAndLetters_ComesBack()
    {
        var text = StepWriter.Write(SolidCases.Worked.Build(), Head with { Number = "O'Hara \\ Ø 12°" });
        Assert.All(text, c => Assert.InRange(c, '\n', '~'));
        Assert.Equal("O'Hara \\ Ø 12°", StepReader.Read(text).Number);
    }

    [Fact]
    public void Step_Sizes_AreWrittenInPlainMillimetres()
    {
        var text = StepWriter.Write(SolidCases.Worked.Build(), Head);
        Assert.Contains(",16.)", text, StringComparison.Ordinal);
        Assert.Contains(",5.6)", text, StringComparison.Ordinal);
        Assert.Contains("SI_UNIT(.MILLI.,.METRE.)", text, StringComparison.Ordinal);
    }
}
