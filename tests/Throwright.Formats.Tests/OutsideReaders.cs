using System.Diagnostics;

namespace Throwright.Formats.Tests;

/// <summary>Programs of others that read what we write: Debian packages occt-draw, admesh, lib3mf1, python3-ezdxf, qpdf.</summary>
/// <remarks>A test is skipped with a notice where its program is missing, and fails there with THROWRIGHT_REQUIRE_OUTSIDE=1.</remarks>
internal static class OutsideReaders
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Debian's own Python: the one that sees Debian's Python packages.</summary>
    public const string Python = "/usr/bin/python3";

    /// <summary>Path of a program, or the end of the test.</summary>
    public static string Find(string program, string package)
    {
        var found = Path.IsPathRooted(program) && File.Exists(program)
            ? program
            : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, program)).FirstOrDefault(File.Exists);
        if (found is null)
            Missing(program, package);
        return found!;
    }

    public static void Missing(string program, string package)
    {
        var notice = $"{program} is not installed (Debian package {package}): this file format was not read by an outside program";
        if (Environment.GetEnvironmentVariable("THROWRIGHT_REQUIRE_OUTSIDE") == "1")
            Assert.Fail(notice);
        Assert.Skip(notice);
    }

    /// <summary>What the program prints, both streams.</summary>
    public static (int Exit, string Said) Run(string program, string folder, IReadOnlyList<string> arguments, string? libraries = null)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        if (libraries is not null)
            start.Environment["LD_LIBRARY_PATH"] = libraries;
        using var process = Process.Start(start)!;
        var (said, complained) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} did not end: {said.Result}");
        }

        return (process.ExitCode, said.Result + complained.Result);
    }

    /// <summary>Debian's program asks for its libraries by their names without a number, which only the development packages have.</summary>
    public static string OcctLibraries(string folder)
    {
        var links = Directory.CreateDirectory(Path.Combine(folder, "lib")).FullName;
        foreach (var library in Directory.EnumerateDirectories("/usr/lib", "*-linux-gnu").SelectMany(d => Directory.EnumerateFiles(d, "libTK*.so.7")))
            File.CreateSymbolicLink(Path.Combine(links, Path.GetFileNameWithoutExtension(library)), library);
        return links;
    }

    /// <summary>A new folder of its own, deleted by <see cref="Folder.Dispose"/>.</summary>
    internal sealed class Folder : IDisposable
    {
        public string Place { get; } = Directory.CreateTempSubdirectory("throwright-").FullName;

        public string Put(string name, byte[] content)
        {
            var path = Path.Combine(Place, name);
            File.WriteAllBytes(path, content);
            return path;
        }

        public void Dispose() => Directory.Delete(Place, recursive: true);
    }
}
