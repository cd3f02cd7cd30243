using System.Text.Json;
using System.Text.RegularExpressions;

namespace Throwright.Files.Tests;

/// <summary>A finding that asks for a member of the file names one that the file has.</summary>
public sealed partial class NamedMembersTests
{
    [GeneratedRegex("\"((?:installation|cockpitEnd|leverEnd|cable)(?:\\.[a-zA-Z]+)+)\"")]
    private static partial Regex Member();

    private static readonly string[] Forms = ["anyOf", "oneOf", "allOf"];

    [Fact]
    public void Members_NamedInTheEngine_AreInTheSchema()
    {
        using var schema = JsonDocument.Parse(AircraftFile.Schema());
        var run = schema.RootElement.GetProperty("properties").GetProperty("runs");
        var named = Directory.EnumerateFiles(RepositoryFolder.Path("src", "Throwright.Engine"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => Member().Matches(File.ReadAllText(f)))
            .Select(m => m.Groups[1].Value).Distinct().ToList();
        Assert.True(named.Count > 40, $"only {named.Count} found");
        Assert.All(named, path => Assert.True(Has(run, path.Split('.')), path));

        bool Has(JsonElement node, string[] names) => names.Length == 0 || Properties(node).Any(p => p.Name == names[0] && Has(p.Value, names[1..]));

        // Of the object itself, of what stands in its list, and of each form that it may have.
        IEnumerable<JsonProperty> Properties(JsonElement node)
        {
            if (node.ValueKind != JsonValueKind.Object)
                return [];
            if (node.TryGetProperty("$ref", out var at))
                return Properties(at.GetString()!.TrimStart('#', '/').Split('/').Aggregate(schema.RootElement, (n, name) => n.GetProperty(name)));
            var own = node.TryGetProperty("properties", out var members) ? members.EnumerateObject() : Enumerable.Empty<JsonProperty>();
            var forms = Forms.SelectMany(k => node.TryGetProperty(k, out var list) ? list.EnumerateArray() : Enumerable.Empty<JsonElement>());
            return own.Concat(forms.Concat(node.TryGetProperty("items", out var item) ? [item] : []).SelectMany(Properties));
        }
    }
}
