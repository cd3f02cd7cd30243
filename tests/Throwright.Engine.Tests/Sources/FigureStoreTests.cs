using Throwright.Engine.Sources;

namespace Throwright.Engine.Tests.Sources;

/// <summary>What the reader of the data files refuses, and that it says where.</summary>
public sealed class FigureStoreTests
{
    private const string Source = """{ "sources": [ { "id": "book", "title": "A book", "by": "", "edition": "", "date": "", "kind": "textbook", "binds": "none" } ] }""";

    private const string Figure = """
        { "id": "wire/a", "name": "a", "value": 2, "unit": "GPa", "source": "book", "place": "p. 1", "evidence": "read", "range": "", "note": "" }
        """;

    private const string Table = """
        { "id": "wire/t", "name": "t", "source": "book", "place": "p. 1", "evidence": "read", "range": "", "note": "",
          "columns": [ { "id": "d", "name": "d", "unit": "in" } ], "rows": [ { "d": 1 }, { "d": "1 1/2" } ] }
        """;

    private const string Rule = """
        { "id": "r", "cite": "R", "source": "book", "place": "p. 1", "evidence": "read", "says": "so", "note": "" }
        """;

    [Fact]
    public void Read_ASoundFile_GivesItsFigures()
    {
        var store = Read($$"""{ "figures": [ {{Figure}} ], "tables": [ {{Table}} ], "rules": [ {{Rule}} ] }""");
        Assert.Equal(2e9, store.Figures["wire/a"].Value);
        Assert.Equal("2 GPa", store.Figures["wire/a"].Text);
        Assert.Equal(0.0381, store.Tables["wire/t"].Rows[1].Si("d"), 15);
        Assert.Equal("so", store.Rules["r"].Says);
    }

    [Fact]
    public void Read_ABandWithoutNominal_TakesItsMiddleAndKeepsBothEnds()
    {
        var datum = Read($$"""{ "figures": [ {{Figure.Replace("\"value\": 2", "\"low\": 2.0, \"high\": 3")}} ] }""").Figures["wire/a"];
        Assert.Equal((2e9, 2.5e9, 3e9), (datum.Low, datum.Value, datum.High));
        Assert.Equal("2.0 to 3 GPa", datum.Text);
    }

    [Fact]
    public void Read_ABandWithNominal_KeepsAllThree()
    {
        var datum = Read($$"""{ "figures": [ {{Figure.Replace("\"value\": 2", "\"value\": 2, \"low\": 1, \"high\": 4")}} ] }""").Figures["wire/a"];
        Assert.Equal((1e9, 2e9, 4e9), (datum.Low, datum.Value, datum.High));
        Assert.Equal("2 (1 to 4) GPa", datum.Text);
    }

    [Fact]
    public void Read_AnIdTwice_IsRefused()
    {
        Refused($$"""{ "figures": [ {{Figure}}, {{Figure}} ] }""", "/figures/1/id", "second time");
        Refused($$"""{ "tables": [ {{Table}}, {{Table}} ] }""", "/tables/1/id", "second time");
        Refused($$"""{ "rules": [ {{Rule}}, {{Rule}} ] }""", "/rules/1/id", "second time");
        Refused($$"""{ "figures": [ {{Figure}} ], "tables": [ {{Table.Replace("wire/t", "wire/a")}} ] }""", "/tables/0/id", "second time");
    }

    [Fact]
    public void Read_ASourceTwice_IsRefused()
    {
        var twice = Source.Replace("[ {", "[ { \"id\": \"book\", \"title\": \"A book\", \"by\": \"\", \"edition\": \"\", \"date\": \"\", \"kind\": \"paper\", \"binds\": \"none\" }, {");
        var fault = Assert.Throws<InvalidDataException>(() => FigureStore.Read([DataFiles.File("data/sources.json", twice)]));
        Assert.Contains("/sources/1/id", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ARowTwice_IsRefused() =>
        Refused($$"""{ "tables": [ {{Table.Replace("\"1 1/2\"", "1")}} ] }""", "/tables/0/rows/1", "second time");

    [Fact]
    public void Read_APropertyTwice_IsRefused() =>
        Refused($$"""{ "figures": [ {{Figure.Replace("\"value\": 2", "\"value\": 2, \"value\": 3")}} ] }""", "data/wire/x.json", "value");

    [Theory]
    [InlineData("\"source\": \"book\"", "\"source\": \"another\"", "/figures/0/source", "\"another\"")]
    [InlineData("\"evidence\": \"read\"", "\"evidence\": \"heard\"", "/figures/0/evidence", "\"heard\"")]
    [InlineData("\"unit\": \"GPa\"", "\"unit\": \"furlong\"", "/figures/0/unit", "\"furlong\"")]
    [InlineData("\"value\": 2", "\"value\": \"two\"", "/figures/0/value", "two GPa")]
    [InlineData("\"value\": 2", "\"value\": null", "/figures/0/value", "null")]
    [InlineData("\"value\": 2", "\"value\": 2, \"worth\": 3", "/figures/0", "\"worth\"")]
    [InlineData("\"value\": 2", "\"low\": 2", "/figures/0", "half a band")]
    [InlineData("\"value\": 2,", "", "/figures/0", "half a band or nothing")]
    [InlineData("\"value\": 2", "\"low\": 3, \"high\": 2", "/figures/0", "outside its band")]
    [InlineData("\"value\": 2", "\"value\": 5, \"low\": 1, \"high\": 2", "/figures/0", "outside its band")]
    [InlineData("wire/a", "cable/a", "/figures/0/id", "\"cable/a\"")]
    [InlineData("\"name\": \"a\"", "\"name\": \"\"", "/figures/0/name", "words")]
    [InlineData("\"name\": \"a\",", "", "/figures/0", "\"name\"")]
    public void Read_AFaultyFigure_IsRefusedByPlace(string sound, string faulty, string place, string found) =>
        Refused($$"""{ "figures": [ {{Figure.Replace(sound, faulty)}} ] }""", place, found);

    [Theory]
    [InlineData("{ \"d\": 1 }, ", "{ \"d\": 1, \"e\": 2 }, ", "/tables/0/rows/0", "\"e\"")]
    [InlineData("{ \"d\": 1 }, ", "{ \"d\": \"wide\" }, ", "/tables/0/rows/0/d", "wide in")]
    [InlineData("\"unit\": \"in\"", "\"unit\": \"in\", \"text\": true", "/tables/0/columns/0", "both or neither")]
    [InlineData("{ \"d\": 1 }, { \"d\": \"1 1/2\" }", "", "/tables/0", "empty table")]
    [InlineData("[ { \"d\": 1 }, { \"d\": \"1 1/2\" } ]", "3", "/tables/0/rows", "a list")]
    public void Read_AFaultyTable_IsRefusedByPlace(string sound, string faulty, string place, string found) =>
        Refused($$"""{ "tables": [ {{Table.Replace(sound, faulty)}} ] }""", place, found);

    [Theory]
    [InlineData("{ \"figures\": [ ")]
    [InlineData("")]
    [InlineData("[]")]
    public void Read_WhatIsNoDataFile_IsRefusedByFile(string json) => Refused(json, "data/wire/x.json", "");

    [Fact]
    public void Read_FilesInAnyOrder_GivesTheSame()
    {
        var sources = DataFiles.File("data/sources.json", Source);
        var wire = DataFiles.File("data/wire/x.json", $$"""{ "figures": [ {{Figure}} ] }""");
        Assert.Equal(FigureStore.Read([sources, wire]).Figures["wire/a"], FigureStore.Read([wire, sources]).Figures["wire/a"]);
    }

    private static FigureStore Read(string json) =>
        FigureStore.Read([DataFiles.File("data/sources.json", Source), DataFiles.File("data/wire/x.json", json)]);

    private static void Refused(string json, string place, string found)
    {
        var fault = Assert.Throws<InvalidDataException>(() => Read(json));
        Assert.StartsWith("data/wire/x.json: ", fault.Message, StringComparison.Ordinal);
        Assert.Contains(place, fault.Message, StringComparison.Ordinal);
        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
    }
}
