using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CsCheck;
using Throwright.Files.Description;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Tests;

/// <summary>The schema follows what the reader does; faults it must see are in <see cref="RefusalTests"/>.</summary>
public class SchemaTests
{
    private static readonly QuantityKind[] Kinds =
    [
        QuantityKind.Length, QuantityKind.Angle, QuantityKind.Force, QuantityKind.Torque, QuantityKind.Temperature, QuantityKind.Ratio, QuantityKind.Stiffness, QuantityKind.TorsionRate, QuantityKind.BendingStiffness, QuantityKind.LineWeight,
    ];

    [Fact]
    public void SoundFiles_AreAccepted()
    {
        Assert.True(PublishedSchema.Accepts(SoundFiles.Bench));
        Assert.True(PublishedSchema.Accepts(SoundFiles.Spatial));
        Assert.True(PublishedSchema.Accepts(SoundFiles.Cockpit));
        Assert.True(PublishedSchema.Accepts(SoundFiles.Routed));
        Assert.True(PublishedSchema.Accepts(SoundFiles.Installed));
        Assert.True(PublishedSchema.Accepts("""{"format":1,"aircraft":{"name":"A"}}"""));
    }

    [Fact]
    public void Schema_DescribesEveryMember()
    {
        var schema = JsonNode.Parse(AircraftFile.Schema())!.AsObject();
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", (string?)schema["$schema"]);
        foreach (var shape in ReferencePageWriter.Objects(AircraftDescription.File))
        {
            var properties = (shape.Definition == "file" ? schema : schema["$defs"]![shape.Definition])!["properties"]!.AsObject();
            Assert.Equal(shape.Members.Select(m => m.Name), properties.Select(p => p.Key));
            Assert.All(properties, p => Assert.False(string.IsNullOrEmpty((string?)p.Value!["description"])));
        }
    }

    [Fact]
    public void Examples_ReadAsTheirKind()
    {
        foreach (var kind in Kinds)
        {
            foreach (var exact in (bool[])[true, false])
            {
                if (!exact && kind == QuantityKind.Temperature)
                    continue;
                Assert.All(QuantityReader.Examples(kind, exact), e =>
                {
                    Assert.True(UnitText.TryRead(kind, e, out var value, out var problem), problem);
                    Assert.False(exact && value.Minus != 0);
                    Assert.Matches(new Regex(QuantityPattern.Of(kind, exact), RegexOptions.ECMAScript), e);
                });
            }
        }
    }

    /// <summary>An editor must not mark red what the program reads.</summary>
    [Fact]
    public void Pattern_AcceptsWhateverTheProgramReads()
    {
        var patterns = Kinds.ToDictionary(k => k, k => (Toleranced: new Regex(QuantityPattern.Of(k, exact: false), RegexOptions.ECMAScript), Exact: new Regex(QuantityPattern.Of(k, exact: true), RegexOptions.ECMAScript)));
        var number = Gen.OneOf<string>("1", "0", "12.5", ".5", "5.", "1e-3", "2E+2", "3/4", "1 3/4", "1-3/4", "1 3⁄4", "1,5", "x", "");
        var blank = Gen.OneOf<string>("", " ", "  ", "\u00A0", "\u2009", "·", "*");
        var sign = Gen.OneOf<string>("", "", "", "-", "+", "−", "–", "- ");
        var read = 0;
        var kind = Gen.OneOf<QuantityKind>(Kinds);
        var mark = Gen.OneOf<string>("", "", "±", "+/-", "+-", "-/+", "+/−", " +", " -", "+");
        var unit = Gen.Int[0, 40];
        Gen.Select(Gen.Select(kind, sign, number, blank, unit), Gen.Select(blank, mark, number, blank, unit), Gen.Select(Gen.OneOf<string>("", "/-", "/ -", " -", "/+", "-"), number, unit, Gen.OneOf<string>("", " normal", "normal", " "))).Sample(
            (value, limit, second) =>
            {
                var units = UnitText.UnitsOf(value.Item1).Select(u => u.Unit).SelectMany(u => (string[])[u, u.Replace(' ', '-'), u.Replace(' ', '·')]).Append("").Append("%").Append("ft 2 1/2 in").Append("' 3\"").ToArray();
                var text = value.Item2 + value.Item3 + value.Item4 + units[value.Item5 % units.Length];
                if (limit.Item2.Length > 0)
                    text += limit.Item1 + limit.Item2 + limit.Item3 + limit.Item4 + units[limit.Item5 % units.Length];
                if (second.Item1.Length > 0 && limit.Item2.Length > 0)
                    text += second.Item1 + second.Item2 + units[second.Item3 % units.Length];
                text += second.Item4;
                if (!UnitText.TryRead(value.Item1, text, out var quantity, out _))
                    return;
                Interlocked.Increment(ref read);
                Assert.True(patterns[value.Item1].Toleranced.IsMatch(text), $"{value.Item1}: {text}");
                if (limit.Item2.Length == 0 && quantity.Spread == Spread.Uniform)
                    Assert.True(patterns[value.Item1].Exact.IsMatch(text), $"{value.Item1}, exact: {text}");
            },
            iter: 200_000);
        Assert.InRange(read, 2_000, int.MaxValue);
    }

    [Theory]
    [InlineData("1,5 mm")]
    [InlineData("44.5")]
    [InlineData("44.5 lbf")]
    [InlineData("mm")]
    [InlineData("NaN mm")]
    [InlineData("1 2 mm")]
    [InlineData("44.5 mm ±")]
    [InlineData("44.5 mm ± 0.5 lbf")]
    [InlineData("44.5 mm mm")]
    public void Pattern_RefusesWhatIsNoLength(string text) => Assert.DoesNotMatch(new Regex(QuantityPattern.Of(QuantityKind.Length, exact: false), RegexOptions.ECMAScript), text);
}
