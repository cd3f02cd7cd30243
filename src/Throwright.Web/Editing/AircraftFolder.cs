using System.Collections.Concurrent;
using System.Reflection;
using Throwright.Files;

namespace Throwright.Web.Editing;

/// <summary>The one folder whose aircraft files the page may read and write, and the files that are open.</summary>
public sealed class AircraftFolder : IDisposable
{
    private const int MostListed = 500;
    private const string DemoFile = "demo-amphibian" + AircraftFile.Extension;
    private readonly ConcurrentDictionary<string, Lazy<EditingSession>> open = new(StringComparer.Ordinal);
    private readonly Timer watch;
    private readonly TimeProvider clock;
    private string? first;

    /// <param name="folder">The folder.</param>
    /// <param name="first">Name of the file to show first; null: none.</param>
    public AircraftFolder(string folder, string? first = null, TimeProvider? clock = null)
    {
        Root = Path.GetFullPath(folder);
        this.first = first;
        this.clock = clock ?? TimeProvider.System;
        watch = new(_ => Look(), null, TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(2));
    }

    public string Root { get; }

    /// <summary>Name without extension of the file that was asked for when the program was started; given out once.</summary>
    public string? TakeFirst() => Interlocked.Exchange(ref first, null);

    /// <summary>Names without extension of the aircraft files in the folder, in order.</summary>
    public IReadOnlyList<string> Names()
    {
        try
        {
            return [.. Directory.EnumerateFiles(Root, "*" + AircraftFile.Extension).Take(MostListed).Select(p => Path.GetFileName(p)[..^AircraftFile.Extension.Length]).Where(n => PathOf(n) is not null).Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>Full path of a file of the folder; null: the name leads elsewhere.</summary>
    public string? PathOf(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (name.Length is 0 or > 120 || name[0] == '.' || name.Any(c => c is '/' or '\\' or ':' or '*' or '?' or '"' or '<' or '>' or '|' || char.IsControl(c)))
            return null;
        var path = Path.Combine(Root, name + AircraftFile.Extension);
        if (Path.GetDirectoryName(Path.GetFullPath(path)) != Root)
            return null;
        try
        {
            // A link that leads out of the folder is not followed.
            var real = File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null;
            return real is null || Path.GetDirectoryName(real) == Root ? path : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    /// <summary>The session of a file; null: there is no such file in the folder.</summary>
    public EditingSession? Open(string name)
    {
        if (PathOf(name) is not { } path || (!open.ContainsKey(name) && !File.Exists(path)))
            return null;
        return open.GetOrAdd(name, n => new(() => EditingSession.Open(path, clock))).Value;
    }

    /// <summary>Writes a new file, never over one that is there. Returns its name; null with the reason.</summary>
    public string? Create(string name, string text, out string problem)
    {
        problem = "";
        if (PathOf(name) is not { } path)
        {
            problem = $"\"{name}\" can't be a file name here: letters, digits, spaces and hyphens are fine.";
            return null;
        }

        var saved = AircraftFile.Save(path, text, readAs: null);
        problem = saved.IsSaved ? "" : saved.Message;
        return saved.IsSaved ? name : null;
    }

    /// <summary>A copy of the invented example in the folder, to try everything on.</summary>
    public string? Demo(out string problem)
    {
        var name = DemoFile[..^AircraftFile.Extension.Length];
        problem = "";
        return PathOf(name) is { } path && File.Exists(path) ? name : Create(name, DemoText(), out problem);
    }

    public static string DemoText()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("demo/amphibian.throwright.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().Replace("  \"$schema\": \"../docs/reference/throwright.schema.json\",\n", "", StringComparison.Ordinal);
    }

    public void Dispose()
    {
        watch.Dispose();
        foreach (var session in open.Values.Where(s => s.IsValueCreated))
            session.Value.Dispose();
    }

    private void Look()
    {
        foreach (var session in open.Values)
        {
            if (session.IsValueCreated)
                session.Value.LookAtDisk();
        }
    }
}
