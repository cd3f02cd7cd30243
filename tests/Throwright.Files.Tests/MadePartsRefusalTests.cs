namespace Throwright.Files.Tests;

public class MadePartsRefusalTests
{
    private const string Bracket = "\"bracket\": { \"material\": \"6061-T6\", \"thickness\": \"1.6 mm\", \"radius\": \"4.8 mm\", \"base\": \"46 mm\", \"standing\": \"36 mm\", \"width\": \"30 mm\", \"conduit\": { \"at\": \"22 mm\", \"diameter\": \"7 mm\" }, \"fasteners\": [ { \"at\": \"18 mm\", \"diameter\": \"4.8 mm\" } ] }";

    private static string File(string bracket = Bracket, string wedge = "{ }") =>
        $"{{ \"format\": 1, \"aircraft\": {{ \"name\": \"Demo\" }}, \"runs\": [ {{ \"id\": \"r\", \"cockpitEnd\": {{ \"wedge\": {wedge} }}, \"leverEnd\": {{ {bracket} }} }} ] }}";

    [Fact]
    public void Parts_AsDescribed_AreRead()
    {
        var result = AircraftFile.Parse("x", File());
        Assert.Empty(result.Problems);
        Assert.Equal(0.046, result.Aircraft!.Runs[0].LeverEnd!.Bracket!.Base.Metres, 1e-12);
        Assert.Equal(Math.PI / 2, result.Aircraft.Runs[0].LeverEnd!.Bracket!.Bend.Radians, 1e-12);
    }

    [Theory]
    [InlineData("\"base\": \"46 mm\"", "\"base\": \"9 mm\"", "$.runs[0].leverEnd.bracket.base")]
    [InlineData("\"width\": \"30 mm\"", "\"width\": \"8 mm\"", "$.runs[0].leverEnd.bracket.width")]
    [InlineData("\"at\": \"22 mm\"", "\"at\": \"34 mm\"", "$.runs[0].leverEnd.bracket.conduit")]
    [InlineData("\"at\": \"18 mm\"", "\"at\": \"6 mm\"", "$.runs[0].leverEnd.bracket.fasteners[0]")]
    [InlineData("\"thickness\": \"1.6 mm\", ", "", "$.runs[0].leverEnd.bracket.thickness")]
    [InlineData("\"radius\": \"4.8 mm\"", "\"radius\": \"4.8 deg\"", "$.runs[0].leverEnd.bracket.radius")]
    public void Bracket_ThatCannotBe_IsRefusedAtItsPlace(string was, string now, string path)
    {
        Assert.Contains(was, Bracket, StringComparison.Ordinal);
        var result = AircraftFile.Parse("x", File(Bracket.Replace(was, now, StringComparison.Ordinal)));
        Assert.Contains(path, result.Problems.Select(p => p.JsonPath));
    }

    private const string Plain = "\"standing\": \"36 mm\", ";

    [Theory]
    [InlineData("\"top\": { \"shape\": \"z\", \"length\": \"25 mm\" }, \"conduitIn\": \"top\", \"conduitAbove\": \"6 mm\"", "\"at\": \"16 mm\"", "")]
    [InlineData("\"top\": { \"shape\": \"u\", \"length\": \"25 mm\", \"bend\": \"80 deg\", \"radius\": \"3 mm\" }", "\"at\": \"16 mm\"", "")]
    [InlineData("\"top\": { \"shape\": \"z\", \"length\": \"9 mm\" }", "\"at\": \"16 mm\"", ".top")]
    [InlineData("\"top\": { \"shape\": \"u\", \"length\": \"40 mm\", \"bend\": \"110 deg\", \"radius\": \"2 mm\" }", "\"at\": \"16 mm\"", ".top")]
    [InlineData("\"top\": { \"shape\": \"hat\", \"length\": \"25 mm\" }", "\"at\": \"16 mm\"", ".top.shape")]
    [InlineData("\"top\": { \"shape\": \"z\", \"length\": \"25 mm\" }", "\"at\": \"30 mm\"", ".conduit")]
    [InlineData("\"top\": { \"shape\": \"z\", \"length\": \"25 mm\" }, \"conduitIn\": \"top\"", "\"at\": \"22 mm\"", ".conduit")]
    [InlineData("\"conduitIn\": \"top\"", "\"at\": \"22 mm\"", ".conduitIn")]
    public void Bracket_OfTwoBends_IsReadOrRefusedAtItsPlace(string more, string conduitAt, string path)
    {
        var text = Bracket.Replace(Plain, $"{Plain}{more}, ", StringComparison.Ordinal).Replace("\"at\": \"22 mm\"", conduitAt, StringComparison.Ordinal);
        var problems = AircraftFile.Parse("x", File(text)).Problems.Select(p => p.JsonPath).ToList();
        if (path.Length == 0)
            Assert.Empty(problems);
        else
            Assert.Equal($"$.runs[0].leverEnd.bracket{path}", Assert.Single(problems));
    }

    [Theory]
    [InlineData("{ \"key\": \"flat\" }", "flatAt")]
    [InlineData("{ \"key\": \"glue\" }", "key")]
    [InlineData("{ \"kerf\": \"1 m\" }", "kerf")]
    public void Wedge_ThatCannotBe_IsRefused(string wedge, string names) =>
        Assert.Contains(AircraftFile.Parse("x", File(wedge: wedge)).Problems, p => p.ToString()!.Contains(names, StringComparison.Ordinal));
}
