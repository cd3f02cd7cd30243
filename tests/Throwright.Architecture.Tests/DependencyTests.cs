using System.Reflection;
using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Throwright.Engine.Chain;
using Throwright.Files;
using Throwright.Formats.Drawing;
using Throwright.Papers.Ladder;
using Throwright.Shapes.Frames;
using Throwright.Web.Host;

namespace Throwright.Architecture.Tests;

/// <summary>Who may use whom: docs/decisions and CONTRIBUTING.md.</summary>
public class DependencyTests
{
    private static readonly System.Reflection.Assembly Shapes = typeof(Vector3).Assembly;
    private static readonly System.Reflection.Assembly Formats = typeof(Sketch).Assembly;
    private static readonly System.Reflection.Assembly Engine = typeof(RunCheck).Assembly;
    private static readonly System.Reflection.Assembly Files = typeof(AircraftFile).Assembly;
    private static readonly System.Reflection.Assembly Papers = typeof(LadderDrawing).Assembly;
    private static readonly System.Reflection.Assembly Web = typeof(WebApp).Assembly;

    private static readonly ArchUnitNET.Domain.Architecture Code = new ArchLoader().LoadAssemblies(Shapes, Formats, Engine, Files, Papers, Web).Build();

    private static readonly string[] Stages = ["Throw", "Cushion", "HandForce", "Measure", "Route", "Clearance", "Mount", "Make", "Prove", "Heat", "Rig", "Order", "Maintain"];

    /// <summary>Stages that are ready but not on the chain yet: the aircraft file does not carry what they need. May only shrink.</summary>
    private static readonly string[] NotOnTheChainYet = [];

    public static TheoryData<string, string[]> AssembliesDownward => new()
    {
        { "Throwright.Shapes", [] },
        { "Throwright.Formats", ["Throwright.Shapes"] },
        { "Throwright.Engine", ["Throwright.Shapes"] },
        // Formats: it reads the meshes beside an aircraft file.
        { "Throwright.Files", ["Throwright.Engine", "Throwright.Formats", "Throwright.Shapes"] },
        { "Throwright.Papers", ["Throwright.Engine", "Throwright.Formats", "Throwright.Shapes"] },
        { "Throwright.Web", ["Throwright.Engine", "Throwright.Files", "Throwright.Formats", "Throwright.Papers", "Throwright.Shapes"] },
    };

    [Theory]
    [MemberData(nameof(AssembliesDownward))]
    public void Assembly_UsesOnlyWhatIsBelow(string name, string[] allowed)
    {
        var assembly = new[] { Shapes, Formats, Engine, Files, Papers, Web }.Single(a => a.GetName().Name == name);
        var own = assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => n.StartsWith("Throwright", StringComparison.Ordinal));
        Assert.Empty(own.Except(allowed));
        // Outside packages: the base library alone; for the page, the web framework that comes with it.
        var outside = assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => !n.StartsWith("Throwright", StringComparison.Ordinal) && !n.StartsWith("System", StringComparison.Ordinal)
            && !(name == "Throwright.Web" && (n.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal) || n.StartsWith("Microsoft.Extensions", StringComparison.Ordinal) || n is "Microsoft.JSInterop" or "Microsoft.Net.Http.Headers")));
        Assert.Empty(outside);
    }

    [Fact]
    public void Engine_KnowsNoFilesConsoleClockOrNetwork()
    {
        string[] never = ["System.Console", "System.IO.File", "System.IO.Directory", "System.IO.Path", "System.IO.FileStream", "System.DateTime", "System.DateTimeOffset", "System.Diagnostics.Stopwatch", "System.Random", "System.Environment", "System.Net"];
        var bad = from type in Code.Types
                  where Within(type, "Throwright.Engine") || Within(type, "Throwright.Shapes")
                  from target in type.Dependencies.Select(d => d.Target)
                  where never.Any(n => target.FullName == n || target.FullName.StartsWith(n + ".", StringComparison.Ordinal))
                  select $"{type.FullName} uses {target.FullName}";
        Assert.Empty(bad.Distinct());
        // The rule sees what it should: the file reader does use files.
        Assert.Contains(Code.Types.Where(t => Within(t, "Throwright.Files")).SelectMany(t => t.Dependencies), d => d.Target.FullName.StartsWith("System.IO.File", StringComparison.Ordinal));
    }

    [Fact]
    public void Stage_NeverUsesAnotherStage_NorTheChain()
    {
        var bad = from type in Code.Types
                  let stage = Stages.FirstOrDefault(s => Within(type, "Throwright.Engine." + s))
                  where stage is not null
                  from target in type.Dependencies.Select(d => d.Target)
                  where Stages.Append("Chain").Any(s => s != stage && Within(target, "Throwright.Engine." + s))
                  select $"{type.FullName} uses {target.FullName}";
        Assert.Empty(bad.Distinct());
        // The rule sees what it should: the chain uses all stages.
        Assert.All(Stages.Except(NotOnTheChainYet), s => Assert.Contains(
            Code.Types.Where(t => Within(t, "Throwright.Engine.Chain")).SelectMany(t => t.Dependencies), d => Within(d.Target, "Throwright.Engine." + s)));
    }

    [Fact]
    public void Folders_HaveNoCycles()
    {
        var edges = (from type in Code.Types
                     let own = FolderOf(type)
                     where own is not null
                     from target in type.Dependencies.Select(d => d.Target)
                     let other = FolderOf(target)
                     where other is not null && other != own
                     select (From: own, To: other)).Distinct().ToLookup(e => e.From, e => e.To);
        var cycle = edges.Select(g => PathBack(g.Key, edges)).FirstOrDefault(p => p is not null);
        Assert.True(cycle is null, cycle is null ? "" : string.Join(" -> ", cycle));
    }

    [Fact]
    public void EveryStage_IsAFolderWithItsReadme()
    {
        foreach (var stage in Stages)
        {
            var folder = Path.Combine(Throwright.Tests.ApprovedText.Root, "src", "Throwright.Engine", stage);
            Assert.True(File.Exists(Path.Combine(folder, "README.md")), $"{stage} has no README.md");
            Assert.True(File.Exists(Path.Combine(Throwright.Tests.ApprovedText.Root, "docs", "theory", TheoryOf(stage))), $"{stage} has no theory page");
        }
    }

    [Fact]
    public void Records_AreImmutable()
    {
        var bad = from assembly in new[] { Shapes, Engine }
                  from type in assembly.GetTypes()
                  where type.IsPublic && !type.IsEnum
                  from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static)
                  let set = property.SetMethod
                  where set is not null && set.IsPublic && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit))
                  select $"{type.FullName}.{property.Name}";
        Assert.Empty(bad);
        var fields = from assembly in new[] { Shapes, Engine }
                     from type in assembly.GetTypes()
                     from field in type.GetFields(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static)
                     where !field.IsInitOnly && !field.IsLiteral && !field.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute)) && !type.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute))
                     select $"{type.FullName}.{field.Name}";
        Assert.Empty(fields);
    }

    [Fact]
    public void Mathematics_HasNoWordOfTheTrade()
    {
        // Drawings have strokes and text anchors of their own.
        string[] trade = ["Knob", "Cable", "Conduit", "Swivel", "Lever", "Cushion", "Cockpit", "Aircraft"];
        var bad = from assembly in new[] { Shapes, Formats }
                  from type in assembly.GetTypes()
                  where type.IsPublic
                  from name in type.GetMembers().Select(m => m.Name).Append(type.Name)
                  where trade.Any(t => name.Contains(t, StringComparison.Ordinal))
                  select $"{type.FullName}: {name}";
        Assert.Empty(bad.Distinct());
    }

    private static string TheoryOf(string stage) => stage == "HandForce" ? "hand-force.md" : stage.ToLowerInvariant() + ".md";

    private static bool Within(IType type, string space)
    {
        var own = type.Namespace?.FullName ?? "";
        return own == space || own.StartsWith(space + ".", StringComparison.Ordinal);
    }

    /// <summary>Namespace of our own code, which is its folder.</summary>
    private static string? FolderOf(IType type)
    {
        var own = type.Namespace?.FullName ?? "";
        return own.StartsWith("Throwright.", StringComparison.Ordinal) ? own : null;
    }

    private static List<string>? PathBack(string start, ILookup<string, string> edges)
    {
        var seen = new HashSet<string>();
        var stack = new Stack<List<string>>([[start]]);
        while (stack.TryPop(out var path))
        {
            foreach (var next in edges[path[^1]])
            {
                if (next == start)
                    return [.. path, start];
                if (seen.Add(next))
                    stack.Push([.. path, next]);
            }
        }

        return null;
    }
}
