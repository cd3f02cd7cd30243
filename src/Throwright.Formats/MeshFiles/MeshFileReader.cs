using Throwright.Shapes.Distance;

namespace Throwright.Formats.MeshFiles;

/// <summary>Triangles of a mesh file, or what is wrong with it.</summary>
public sealed record MeshReading
{
    /// <summary>In the file's own unit and axes; null: the file is at fault.</summary>
    public Skin? Skin { get; init; }

    /// <summary>What the file, or the standard of its format, says of its unit: "millimeter", "metre"; null: nothing.</summary>
    public string? StatedUnit { get; init; }

    /// <summary>That unit, m; null: nothing is said.</summary>
    public double? MetresPerUnit { get; init; }

    /// <summary>What is wrong, and what belongs there; empty: nothing.</summary>
    public string Found { get; init; } = "";
    public string Expected { get; init; } = "";
}

/// <summary>Reads triangles from scans and exports: STL, OBJ, 3MF, glTF. Whatever the bytes are, it ends soon and in bounded memory.</summary>
/// <remarks>
/// Nothing outside the bytes is ever opened: no material, no texture, no external buffer. Every count is held against the bytes
/// there are before memory is taken for it.
/// </remarks>
public static class MeshFileReader
{
    /// <summary>Larger files are refused, bytes.</summary>
    public const int MostBytes = 256 * 1024 * 1024;

    public const int MostTriangles = 2_000_000;

    /// <summary>Coordinates beyond this are refused: no cockpit is that far from its origin in any unit.</summary>
    public const double MostCoordinate = 1e6;

    public const string Formats = ".stl, .obj, .3mf, .glb or .gltf";

    /// <param name="name">Only its ending counts.</param>
    public static MeshReading Read(string name, byte[] bytes, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(bytes);
        try
        {
            if (bytes.Length == 0)
                throw new MeshFault("the file is empty", "triangles");
            if (bytes.Length > MostBytes)
                throw new MeshFault($"the file has {bytes.Length / 1024 / 1024} MB", $"at most {MostBytes / 1024 / 1024} MB");
            var into = new MeshBuilder(cancel);
            double? unit = null;
            string? stated = null;
            switch (Path.GetExtension(name).ToUpperInvariant())
            {
                case ".STL":
                    StlReader.Read(bytes, into);
                    break;
                case ".OBJ":
                    ObjReader.Read(bytes, into);
                    break;
                case ".3MF":
                    (stated, unit) = ThreeMfReader.Read(bytes, into);
                    break;
                case ".GLB" or ".GLTF":
                    GltfReader.Read(bytes, into);
                    (stated, unit) = ("metre", 1);
                    break;
                default:
                    throw new MeshFault($"\"{Path.GetExtension(name)}\" is no mesh that can be read", $"{Formats}; export a STEP or CAD model as one of them");
            }

            return new() { Skin = into.ToSkin(), StatedUnit = stated, MetresPerUnit = unit };
        }
        catch (MeshFault fault)
        {
            return new() { Found = fault.Found, Expected = fault.Expected };
        }
    }
}
