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

    // Calls of the library's plain C interface, version 1.
    private const string Lib3mfScript = """
        import ctypes, sys
        lib = ctypes.CDLL("lib3MF.so.1")
        def call(name, *a):
            r = getattr(lib, name)(*a)
            if r != 0:
                sys.exit(f"{name} returned {r:#x}")
        P = ctypes.c_void_p
        model = P(); call("lib3mf_createmodel", ctypes.byref(model))
        reader = P(); call("lib3mf_model_queryreader", model, b"3mf", ctypes.byref(reader))
        call("lib3mf_reader_setstrictmodeactive", reader, ctypes.c_bool(True))
        call("lib3mf_reader_readfromfileutf8", reader, sys.argv[1].encode())
        n = ctypes.c_uint32(); call("lib3mf_reader_getwarningcount", reader, ctypes.byref(n))
        unit = ctypes.c_int(); call("lib3mf_model_getunit", model, ctypes.byref(unit))
        print("warnings", n.value, "unit", unit.value)
        it = P(); call("lib3mf_model_getmeshobjects", model, ctypes.byref(it))
        more = ctypes.c_int()
        call("lib3mf_resourceiterator_movenext", it, ctypes.byref(more))
        while more.value:
            mesh = P(); call("lib3mf_resourceiterator_getcurrent", it, ctypes.byref(mesh))
            good = ctypes.c_int(); call("lib3mf_meshobject_ismanifoldandoriented", mesh, ctypes.byref(good))
            v = ctypes.c_uint32(); call("lib3mf_meshobject_getvertexcount", mesh, ctypes.byref(v))
            t = ctypes.c_uint32(); call("lib3mf_meshobject_gettrianglecount", mesh, ctypes.byref(t))
            print("mesh", bool(good.value), v.value, t.value)
            call("lib3mf_resourceiterator_movenext", it, ctypes.byref(more))
        """;

    /// <summary>What lib3mf in its strict mode says of a package: warnings, unit (1: millimetre), then each mesh, its vertices and triangles.</summary>
    public static (int Exit, string Said) Lib3mf(string file)
    {
        var python = Find(Python, "python3");
        if (!Directory.EnumerateDirectories("/usr/lib", "*-linux-gnu").Any(d => File.Exists(Path.Combine(d, "lib3MF.so.1"))))
            Missing("lib3MF.so.1", "lib3mf1");
        return Run(python, Path.GetDirectoryName(file)!, ["-c", Lib3mfScript, file]);
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
