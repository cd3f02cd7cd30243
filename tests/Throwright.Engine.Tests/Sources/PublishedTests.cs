using Throwright.Engine.Findings;
using Throwright.Engine.Sources;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Sources;

public sealed class PublishedTests
{
    /// <summary>Figures that no stage asks for yet. The list may only shrink, or grow together with the data.</summary>
    private static readonly string[] NotUsedYet =
    [
        "buckling/end-fixity",
        "cable/breaking-strength", "cable/classes", "cable/clearance", "cable/coldest", "cable/conduit-outside",
        "cable/core-diameter", "cable/end-tube-swivel", "cable/friction", "cable/good-radius", "cable/hottest",
        "cable/least-radius", "cable/pull-load", "cable/push-load", "cable/travel",
        "expansion/aramid-epoxy-across", "expansion/aramid-epoxy-along", "expansion/carbon-epoxy-across",
        "expansion/carbon-epoxy-along", "expansion/fir-across", "expansion/glass-epoxy-across",
        "expansion/glass-epoxy-along", "expansion/nylon-66", "expansion/oak-across", "expansion/oak-along",
        "expansion/ptfe", "expansion/stainless-17-7ph", "expansion/stainless-316", "expansion/steel-1040",
        "friction/bare-coil-dry", "friction/bare-coil-greased", "friction/cold-factor", "friction/measured",
        "friction/plastic-liner",
        "joint/screw-on-wire-derate",
        "route/bend-total-good",
        "throw/end-tube-swivel", "throw/transmission-angle-texts",
    ];

    /// <summary>Figures that nobody has read at the source. None of them may be the only limit behind clear.</summary>
    private static readonly string[] FromMemory =
    [
        "cable/clearance", "cable/coldest", "cable/conduit-outside", "cable/core-diameter", "cable/end-tube-swivel",
        "cable/friction", "cable/hottest", "cable/least-radius", "cable/travel",
        "clearance/knob-gap",
        "expansion/carbon-quasi-isotropic", "expansion/glass-woven",
        "friction/cold-factor",
        "heat/plastics", "heat/threadlocker",
        "joint/wiring-distance",
        "make/fasteners", "make/materials", "make/sheet-strength",
        "mount/least-knob",
        "route/bend-total-good", "route/bend-total-most",
        "throw/end-tube-swivel", "throw/transmission-angle-texts",
        "wire/elastic-share-302", "wire/fatigue-share",
        "wire/strand-modulus-1x19", "wire/strand-modulus-1x7", "wire/strand-modulus-7x19", "wire/strand-modulus-7x7",
    ];

    [Fact]
    public void Bibliography_EveryEntry_IsCited()
    {
        var cited = References().Select(r => r.Source.Id).Concat(DataFiles.SourcesOfChecks()).ToHashSet();
        Assert.Equal([], Published.Bibliography.Keys.Except(cited));
    }

    [Fact]
    public void Checks_EverySource_IsInTheBibliography() =>
        Assert.Equal([], DataFiles.SourcesOfChecks().Except(Published.Bibliography.Keys));

    [Fact]
    public void References_Everywhere_ResolveAndNameAPlace()
    {
        foreach (var (id, source) in References())
        {
            Assert.True(Published.Bibliography.ContainsKey(source.Id), id);
            Assert.True(Enum.IsDefined(source.Evidence), id);
            // Only a whole section of a regulation needs no place inside it.
            if (Published.Source(source.Id).Kind != SourceKind.Regulation)
                Assert.True(source.Place.Length > 0, id);
        }
    }

    [Fact]
    public void Evidence_OwnChoiceOrMemory_IsNotCreditedToAPublication()
    {
        foreach (var (id, source) in References())
        {
            var isOwn = Published.Source(source.Id).Kind == SourceKind.Project;
            var isSeen = source.Evidence is Evidence.Read or Evidence.ReadInPart or Evidence.Secondary;
            Assert.True(isOwn != isSeen, $"{id}: {source}");
        }
    }

    [Fact]
    public void Figures_Each_AreUsedInTheProgramOrListedAsNotUsedYet()
    {
        var code = string.Concat(DataFiles.SourceFiles().Select(File.ReadAllText));
        var unused = Published.All.Keys.Concat(Published.Tables.Keys)
            .Where(id => !code.Contains($"\"{id}\"", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);
        Assert.Equal(NotUsedYet, unused);
    }

    [Fact]
    public void Figures_FromMemory_AreTheListedOnes()
    {
        var fromMemory = References().Where(r => r.Source.Evidence == Evidence.Memory).Select(r => r.Id)
            .Distinct().Order(StringComparer.Ordinal).ToArray();
        TestContext.Current.TestOutputHelper?.WriteLine("From memory, not verified:\n" + string.Join('\n', fromMemory));
        Assert.Equal(FromMemory, fromMemory);
    }

    [Fact]
    public void Units_Each_BelongToOneKind()
    {
        var kinds = Enum.GetValues<QuantityKind>();
        var units = Published.All.Values.Select(d => d.Unit)
            .Concat(Published.Tables.Values.SelectMany(t => t.Columns).Where(c => c.Kind is not null).Select(c => c.Unit));
        Assert.All(units.Distinct(), unit => Assert.Single(kinds, k => UnitText.UnitsOf(k).Any(u => u.Unit == unit)));
    }

    [Fact]
    public void Text_OfASingleFigure_IsReadBackAsItsValue()
    {
        foreach (var datum in Published.All.Values.Where(d => d.Low == d.High))
        {
            Assert.True(UnitText.TryRead(datum.Kind, datum.Text, out var read, out var problem), $"{datum.Id}: {problem}");
            Assert.Equal(datum.Value, read.Nominal);
        }
    }

    [Fact]
    public void Get_UnknownId_IsAFaultOfTheProgram()
    {
        Assert.Throws<ArgumentException>(() => Published.Get("wire/no-such"));
        Assert.Throws<ArgumentException>(() => Published.Table("wire/no-such"));
        Assert.Throws<ArgumentException>(() => Published.Rule("23.0"));
        Assert.Throws<ArgumentException>(() => Published.Source("no-such"));
    }

    [Fact]
    public void Row_UnknownTextOrColumn_IsAFaultOfTheProgram()
    {
        var table = Published.Table("cable/friction");
        Assert.Equal(0.3, table.Row("class", "A").Si("high"));
        Assert.Throws<ArgumentException>(() => table.Row("class", "E"));
        Assert.Throws<ArgumentException>(() => table.Row("class", "A").Si("middle"));
        Assert.Throws<ArgumentException>(() => table.Row("class", "A").Si("class"));
    }

    [Fact]
    public void Rule_OfARegulation_CarriesWhomItBinds()
    {
        var rule = Published.Rule("23.1141(g)(1)");
        Assert.Equal("14 CFR 23.1141(g)(1)", rule.Cite);
        Assert.Equal(new SourceRef("14cfr-23-1141", "(g)(1)", Evidence.Read), rule.Source);
        Assert.Equal(Binding.TypeCertificated, rule.Binds);
        Assert.Equal(Binding.Guidance, Published.Rule("1472e-5.4.3.1.8.7").Binds);
        Assert.Equal(Binding.None, Published.Rule("25.405").Binds);
    }

    private static IEnumerable<(string Id, SourceRef Source)> References() =>
        Published.All.Values.Select(d => (d.Id, d.Source))
            .Concat(Published.Tables.Values.SelectMany(t => t.Rows.Select(r => (t.Id, r.Source)).Prepend((t.Id, t.Source))))
            .Concat(Published.Rules.Values.Select(r => (r.Id, r.Source)));
}
