using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Files.Description;
using Throwright.Files.Json;
using Throwright.Formats.MeshFiles;
using Throwright.Shapes.Distance;
using Throwright.Shapes.Quantities;

namespace Throwright.Files;

/// <summary>Reads the meshes that an aircraft file names. Nothing outside its own folder is opened.</summary>
public static class MeshesBeside
{
    /// <summary>Of all meshes of one aircraft together.</summary>
    private const int MostTriangles = 4_000_000;

    /// <summary>No cockpit is larger, and nothing in it that is worth a mesh is smaller, m.</summary>
    private const double Largest = 50, Smallest = 1e-3;

    /// <summary>The result with its meshes; each that is at fault is a problem at its place in the file, and left out.</summary>
    /// <param name="path">Where the aircraft file lies.</param>
    public static AircraftFileResult Read(string path, AircraftFileResult result, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(result);
        if (result.Aircraft is not { } aircraft || !aircraft.Bodies.Any(b => b.Parts.Any(p => p.Shape is MeshShape)))
            return result;
        var json = JsonText.Parse(result.Text);
        var reading = new Reading(path, json);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        var read = new Dictionary<string, MeshReading>(StringComparer.Ordinal);
        var meshes = new Dictionary<MeshShape, Skin>();
        var triangles = 0;
        foreach (var (body, i) in aircraft.Bodies.Select((b, i) => (b, i)))
        {
            foreach (var (part, j) in body.Parts.Select((p, j) => (p, j)))
            {
                if (part.Shape is not MeshShape shape)
                    continue;
                var node = json.Root!.Member("bodies")!.Items[i].Member("shapes")!.Items[j].Member("mesh")!;
                Node file = node.Member("file")!, unit = node.Member("unit")!;
                if (!read.TryGetValue(shape.File, out var mesh))
                {
                    read.Add(shape.File, mesh = Read(folder, shape.File, cancel));
                    triangles += mesh.Skin?.Triangles ?? 0;
                }

                if (mesh.Skin is not { } skin)
                    reading.AtValue(file, $"{shape.File}: {mesh.Found}", mesh.Expected);
                else if (triangles > MostTriangles)
                    reading.AtValue(file, $"{triangles} triangles in the meshes up to this one", $"at most {MostTriangles} in all meshes together");
                else if (UnitFault(shape, mesh, skin) is var (found, expected))
                    reading.AtValue(unit, found, expected);
                else
                    meshes[shape] = skin;
            }
        }

        return result with { Meshes = meshes, Problems = [.. result.Problems, .. reading.InOrder()] };
    }

    /// <summary>The unit is typed by a person, and never guessed: but where it can't be right, that is told.</summary>
    private static (string Found, string Expected)? UnitFault(MeshShape shape, MeshReading mesh, Skin skin)
    {
        var metres = PlacedMesh.Metres(shape.Unit);
        if (mesh.MetresPerUnit is { } stated && Math.Abs((stated / metres) - 1) > 1e-9)
            return ($"another unit than {shape.File} states: {mesh.StatedUnit}", stated switch { 1e-3 => "\"mm\"", 1e-2 => "\"cm\"", 1 => "\"m\"", 0.0254 => "\"in\"", 0.3048 => "\"ft\"", _ => "a mesh exported in mm" });
        var (low, high) = skin.Extents();
        var across = Math.Max(high.X - low.X, Math.Max(high.Y - low.Y, high.Z - low.Z));
        if (across * metres is >= Smallest and <= Largest)
            return null;
        return (
            $"{shape.File} is {FigureText.Plain(across * metres, 3)} m across in this unit",
            $"a unit in which it is 1 mm to {Largest:0} m across: in mm it is {Across(1e-3)}, in inches {Across(0.0254)}, in metres {Across(1)}");

        string Across(double unit) => $"{FigureText.Plain(across * unit, 3)} m";
    }

    private static MeshReading Read(string folder, string name, CancellationToken cancel)
    {
        static MeshReading Refuse(string found, string expected) => new() { Found = found, Expected = expected };
        try
        {
            // The description has refused absolute names and "..": what is left could lead away is a link.
            var way = folder;
            foreach (var step in name.Split('/'))
            {
                way = Path.Combine(way, step);
                FileSystemInfo at = Directory.Exists(way) ? new DirectoryInfo(way) : new FileInfo(way);
                if (at.LinkTarget is not null)
                    return Refuse("a link to another place", "a file in the folder of the aircraft file itself");
            }

            if (Directory.Exists(way))
                return Refuse("a folder", $"a file: {MeshFileReader.Formats}");
            // Devices and pipes have no length, and may never end.
            if (new FileInfo(way).Length == 0)
                return Refuse("the file is empty", "triangles");
            using var stream = new FileStream(way, new FileStreamOptions { Mode = FileMode.Open, Access = FileAccess.Read, Share = FileShare.ReadWrite | FileShare.Delete, BufferSize = 0 });
            if (stream.Length > MeshFileReader.MostBytes)
                return Refuse($"{stream.Length / 1024 / 1024} MB", $"at most {MeshFileReader.MostBytes / 1024 / 1024} MB: decimate the mesh");
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return MeshFileReader.Read(name, bytes, cancel);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Refuse("no such file", $"a mesh beside the aircraft file: {MeshFileReader.Formats}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refuse($"the file can't be opened: {e.Message}", "a file that can be read");
        }
    }
}
