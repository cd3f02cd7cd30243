using System.Text;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Solids;
using Throwright.Shapes.Tests.Solids;

namespace Throwright.Formats.Tests.ThreeMf;

public class OutsideThreeMfTests
{
    // Calls of the library's plain C interface, version 1.
    private const string Script = """
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

    /// <summary>lib3mf in its strict mode reads the package without a warning and finds every mesh manifold and oriented.</summary>
    [Fact]
    public void Lib3mf_Strict_ReadsWithoutWarning()
    {
        var python = OutsideReaders.Find(OutsideReaders.Python, "python3");
        if (!Directory.EnumerateDirectories("/usr/lib", "*-linux-gnu").Any(d => File.Exists(Path.Combine(d, "lib3MF.so.1"))))
            OutsideReaders.Missing("lib3MF.so.1", "lib3mf1");
        using var folder = new OutsideReaders.Folder();
        var script = folder.Put("read.py", Encoding.UTF8.GetBytes(Script));
        foreach (var body in SolidCases.All)
        {
            var mesh = Mesh.Of(body.Solid, 0.02e-3);
            var file = folder.Put("a.3mf", ThreeMfWriter.Write([new(body.Name, mesh, 2)], body.Name));
            var (exit, said) = OutsideReaders.Run(python, folder.Place, [script, file]);
            Assert.True(exit == 0, $"{exit} {said}");
            // Unit 1: millimetre.
            Assert.Equal($"warnings 0 unit 1\nmesh True {mesh.Vertices.Count} {mesh.Triangles.Count}\n", said);
        }
    }
}
