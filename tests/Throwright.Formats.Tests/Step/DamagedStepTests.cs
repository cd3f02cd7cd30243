using System.Globalization;
using System.Text.RegularExpressions;
using Throwright.Formats.Step;
using Throwright.Shapes;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.Step;

/// <summary>Damage that a CAD program was seen to read as one sound solid, or to repair in silence: each must be caught.</summary>
public partial class DamagedStepTests
{
    // Cylinders, cones, ellipses, inner loops and a blind hole.
    private static readonly SolidCase Body = StepTests.Case("wedge with chamfers and pin hole");

    private static readonly string Sound = StepWriter.Write(Body.Solid, StepTests.Head);

    private static IReadOnlyList<string> Audit(string text) => StepReader.Audit(text, Body.Volume, Body.ThroughHoles);

    private static void Caught(string damaged, string by)
    {
        Assert.NotEqual(Sound, damaged);
        Assert.Contains(Audit(damaged), f => f.Contains(by, StringComparison.Ordinal));
    }

    [Fact]
    public void Sound_IsNotCaught() => Assert.Equal([], Audit(Sound));

    [Fact]
    public void BoreFaceSenses_Flipped() => Caught(BoreFace().Replace(Sound, m => m.Groups[1].Value + ".T.);"), "Sense");

    [Fact]
    public void AllFaceSenses_Flipped() => Caught(AnyFace().Replace(Sound, m => m.Groups[1].Value + (m.Groups[2].Value == ".T." ? ".F.);" : ".T.);")), "Sense");

    [Fact]
    public void InsideOut_Consistently()
    {
        var flipped = AnyFace().Replace(Sound, m => m.Groups[1].Value + (m.Groups[2].Value == ".T." ? ".F.);" : ".T.);"));
        Caught(AnyBound().Replace(flipped, "$1.F.);"), "Volume");
    }

    [Fact]
    public void InnerBounds_Flipped() => Caught(InnerBound().Replace(Sound, "$1.F.);"), "EdgeUse");

    [Fact]
    public void EllipseHalfAxes_Swapped() => Caught(AnyEllipse().Replace(Sound, "$1$3,$2);"), "VertexOff");

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(8)]
    public void Points_Rounded(int decimals) => Caught(
        AnyPoint().Replace(Sound, m => m.Groups[1].Value + string.Join(',', m.Groups[2].Value.Split(',')
            .Select(n => Math.Round(double.Parse(n, CultureInfo.InvariantCulture), decimals).ToString("0.0#########", CultureInfo.InvariantCulture))) + "));"),
        "VertexOff");

    [Fact]
    public void Reals_WithoutPoint() => Caught(Sound.Replace("(0.,0.,", "(0,0,", StringComparison.Ordinal), "without a point where a real was expected");

    [Fact]
    public void EachFace_LeftOut()
    {
        var faces = Shell().Match(Sound).Groups[1].Value.Split(',');
        Assert.Equal(Body.Solid.Faces.Count, faces.Length);
        foreach (var face in faces)
            Caught(Shell().Replace(Sound, $"CLOSED_SHELL('',({string.Join(',', faces.Where(f => f != face))}));"), "EdgeUse");
    }

    [Fact]
    public void EachEdgeSense_Flipped()
    {
        foreach (Match edge in AnyEdge().Matches(Sound))
            Assert.NotEmpty(Audit(Sound.Remove(edge.Index, edge.Length).Insert(edge.Index, edge.Groups[1].Value + ".F.);")));
    }

    [Fact]
    public void EachOrientedEdge_Flipped()
    {
        foreach (Match use in AnyUse().Matches(Sound))
        {
            var damaged = Sound.Remove(use.Index, use.Length).Insert(use.Index, use.Groups[1].Value + (use.Groups[2].Value == ".T." ? ".F.);" : ".T.);"));
            Caught(damaged, "EdgeUse");
        }
    }

    [Fact]
    public void ConeAngle_InDegrees() => Caught(Cone().Replace(Sound, "${1}45.);"), "half angle of 45 rad");

    [Fact]
    public void ConeAngle_AHundredthOff() => Caught(Cone().Replace(Sound, "${1}0.79);"), "EdgeOff");

    [Fact]
    public void Metre_InsteadOfMillimetre() => Caught(Sound.Replace(".MILLI.", "$", StringComparison.Ordinal), "LENGTH_UNIT MILLIMETRE was expected, found LENGTH_UNIT METRE");

    [Theory]
    [InlineData("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT(.MILLI.,.RADIAN.))", "PLANE_ANGLE_UNIT RADIAN was expected")]
    [InlineData("(CONVERSION_BASED_UNIT('DEGREE',#1)NAMED_UNIT(#1)PLANE_ANGLE_UNIT())", "a unit that is no SI unit")]
    public void AnotherUnit_InsteadOfRadian(string unit, string found) =>
        Caught(Sound.Replace("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))", unit, StringComparison.Ordinal), found);

    [Fact]
    public void CylinderRadius_AMicrometreOff() => Caught(Cylinder().Replace(Sound, m => $"{m.Groups[1].Value}{(double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture) + 0.001).ToString(CultureInfo.InvariantCulture)});"), "EdgeOff");

    [Fact]
    public void SolidTwice_IsCaught() =>
        Caught(ManifoldLine().Replace(Sound, m => m.Value + "\n#99999=" + m.Groups[1].Value), "2 solids");

    [Fact]
    public void MinorHalfAxisFirst_IsLegalAndIsNotCaught()
    {
        // The same ellipses, their axes named the other way round.
        var edges = Body.Solid.Edges.Select(e => e.Curve is Ellipse { IsCircle: false } oval
            ? e with
            {
                Curve = new Ellipse(new(oval.Axes.Origin, oval.Axes.Y, -oval.Axes.X, oval.Axes.Z), oval.AlongY, oval.AlongX),
                Start = e.Start - (Math.PI / 2),
                End = e.End - (Math.PI / 2),
            }
            : e);
        var text = StepWriter.Write(Body.Solid with { Edges = edges.ToEquatableList() }, StepTests.Head);
        Assert.NotEqual(Sound, text);
        Assert.Equal([], Audit(text));
    }

    [Fact]
    public void CutShort_IsRefusedByPlace()
    {
        for (var length = 0; length < Sound.Length - 1; length += 997)
        {
            var reading = StepReader.Read(Sound[..length]);
            Assert.Null(reading.Solid);
            Assert.Single(reading.Faults);
        }
    }

    [Theory]
    [InlineData("#1=", "#2=", "#2: the number for the second time")]
    [InlineData("AUTOMOTIVE_DESIGN {", "EXPLICIT_DRAUGHTING {", "the schema \"EXPLICIT_DRAUGHTING\"")]
    [InlineData("(LENGTH_UNIT()NAMED_UNIT(*)", "(NAMED_UNIT(*)LENGTH_UNIT()", "alphabetical order")]
    [InlineData("CYLINDRICAL_SURFACE", "TOROIDAL_SURFACE", "a surface TOROIDAL_SURFACE")]
    [InlineData("FACE_OUTER_BOUND", "FACE_BOUND", "not exactly one FACE_OUTER_BOUND")]
    [InlineData("END-ISO-10303-21;", "END-ISO-10303-21;\nmore", "after the end")]
    [InlineData("EDGE_CURVE('',#", "EDGE_CURVE('',#9", "not in the file")]
    public void Text_AtFault_IsRefusedByPlace(string sound, string damaged, string found)
    {
        var reading = StepReader.Read(Sound.Replace(sound, damaged, StringComparison.Ordinal));
        Assert.Null(reading.Solid);
        Assert.Contains(found, reading.Faults[0].ToString(), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"(=ADVANCED_FACE\(.*,)\.F\.\);")]
    private static partial Regex BoreFace();

    [GeneratedRegex(@"(=ADVANCED_FACE\(.*,)(\.[TF]\.)\);")]
    private static partial Regex AnyFace();

    [GeneratedRegex(@"(=FACE_(?:OUTER_)?BOUND\(.*,)\.T\.\);")]
    private static partial Regex AnyBound();

    [GeneratedRegex(@"(=FACE_BOUND\(.*,)\.T\.\);")]
    private static partial Regex InnerBound();

    [GeneratedRegex(@"(=ELLIPSE\('',#\d+,)([0-9.]+),([0-9.]+)\);")]
    private static partial Regex AnyEllipse();

    [GeneratedRegex(@"(=CARTESIAN_POINT\('',\()([^)]*)\)\);")]
    private static partial Regex AnyPoint();

    [GeneratedRegex(@"CLOSED_SHELL\('',\(([^)]*)\)\);")]
    private static partial Regex Shell();

    [GeneratedRegex(@"(=EDGE_CURVE\(.*,)\.T\.\);")]
    private static partial Regex AnyEdge();

    [GeneratedRegex(@"(=ORIENTED_EDGE\(.*,)(\.[TF]\.)\);")]
    private static partial Regex AnyUse();

    [GeneratedRegex(@"(=CONICAL_SURFACE\('',#\d+,[0-9.]+,)[0-9.]+\);")]
    private static partial Regex Cone();

    [GeneratedRegex(@"(=CYLINDRICAL_SURFACE\('',#\d+,)([0-9.]+)\);")]
    private static partial Regex Cylinder();

    [GeneratedRegex(@"#\d+=(MANIFOLD_SOLID_BREP\(.*\);)")]
    private static partial Regex ManifoldLine();
}
