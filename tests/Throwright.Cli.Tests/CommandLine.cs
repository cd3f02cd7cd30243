using System.Diagnostics;

namespace Throwright.Cli.Tests;

/// <summary>The program as a shell runs it: arguments in, two streams and an exit code out.</summary>
internal static class CommandLine
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "throwright.dll");

    public sealed record Answer(int Exit, string Out, string Error);

    public static Answer Run(params string[] arguments) => RunIn(Throwright.Tests.ApprovedText.Root, arguments);

    public static Answer RunIn(string folder, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Program, .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output.ReplaceLineEndings("\n"), error.Result.ReplaceLineEndings("\n"));
    }
}

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class Workbench : IDisposable
{
    public Workbench() => Directory.CreateDirectory(Folder);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "throwright-" + Guid.NewGuid().ToString("N"));

    public string Put(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    public void PutCopy(string name, string from)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.Copy(from, path);
    }

    /// <summary>A copy of a file of the examples.</summary>
    public string Copy(string example)
    {
        var target = Path.Combine(Folder, Path.GetFileName(example));
        File.Copy(Path.Combine(Throwright.Tests.ApprovedText.Root, "examples", example), target);
        return target;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
