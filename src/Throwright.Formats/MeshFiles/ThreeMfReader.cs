using System.Globalization;
using System.Xml;
using Throwright.Formats.ThreeMf;
using Throwright.Shapes.Frames;

namespace Throwright.Formats.MeshFiles;

/// <summary>3MF, core specification 1.4.0: objects, components, the build with its transforms, the unit.</summary>
internal static class ThreeMfReader
{
    private const string Core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02";
    private const string ModelRelation = "http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel";

    /// <summary>Of the model when unpacked, bytes: about 100 for a triangle and its share of the corners.</summary>
    private const int MostModelBytes = 400 * 1024 * 1024;
    private const int MostRelationBytes = 1024 * 1024;

    /// <summary>Objects placed, components of components counted each time.</summary>
    private const int MostPlacings = 1_000_000;

    private const string Again = "a sound 3MF file: export it again";

    /// <summary>Row vectors: x' = x m, the fourth row is the shift.</summary>
    private readonly record struct Transform(Vector3 X, Vector3 Y, Vector3 Z, Vector3 Shift)
    {
        public static Transform None => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

        public Vector3 Of(Vector3 v) => Turned(v) + Shift;

        public static Transform operator *(Transform outer, Transform inner) => new(outer.Turned(inner.X), outer.Turned(inner.Y), outer.Turned(inner.Z), outer.Of(inner.Shift));

        private Vector3 Turned(Vector3 v) => (v.X * X) + (v.Y * Y) + (v.Z * Z);
    }

    private sealed class Body
    {
        public List<Vector3> Corners { get; } = [];
        public List<(int A, int B, int C)> Triangles { get; } = [];
        public List<(int Body, Transform Place)> Components { get; } = [];

        /// <summary>All triangles, components' too.</summary>
        public long Total { get; set; }
    }

    public static (string Unit, double Metres) Read(byte[] file, MeshBuilder into)
    {
        if (ZipReader.Open(file, out var problem) is not { } zip)
            throw new MeshFault(problem, Again);
        var model = zip.Read(ModelPart(zip), MostModelBytes, out problem) ?? throw new MeshFault(problem, Again);
        try
        {
            return Model(model, into);
        }
        catch (XmlException e)
        {
            throw new MeshFault($"the model in it{Said(e)}", Again);
        }
    }

    private static string ModelPart(ZipReader zip)
    {
        if (zip.Read("_rels/.rels", MostRelationBytes, out _) is not { } relations)
            return ThreeMfWriter.ModelPath;
        try
        {
            using var xml = Open(relations);
            while (xml.Read())
            {
                if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "Relationship" && xml.GetAttribute("Type") == ModelRelation && xml.GetAttribute("Target") is { } target)
                    return target.TrimStart('/');
            }
        }
        catch (XmlException e)
        {
            throw new MeshFault($"its list of parts{Said(e)}", Again);
        }

        return ThreeMfWriter.ModelPath;
    }

    /// <summary>No document type, so no entities; nothing outside is ever fetched.</summary>
    private static XmlReader Open(byte[] bytes) => XmlReader.Create(
        new MemoryStream(bytes, writable: false), new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreWhitespace = true, CloseInput = true });

    /// <summary>A document type is refused before the reader counts lines.</summary>
    private static string Said(XmlException e) => e.LineNumber > 0 ? $", line {e.LineNumber}: {e.Message}" : " declares a document type, or holds what no XML may";

    private static (string Unit, double Metres) Model(byte[] bytes, MeshBuilder into)
    {
        using var xml = Open(bytes);
        var bodies = new List<Body>();
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var build = new List<(int Body, Transform Place)>();
        (string, double)? unit = null;
        Body? now = null;
        long triangles = 0;
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element || xml.NamespaceURI != Core)
                continue;
            switch (xml.LocalName)
            {
                case "model":
                    if (xml.GetAttribute("requiredextensions") is { } needed && needed.Trim().Length > 0)
                        throw Fault(xml, $"the model needs the extensions \"{needed}\"", "a model of the core specification: export it as plain triangles in one part");
                    unit = UnitOf(xml, xml.GetAttribute("unit") ?? "millimeter");
                    break;
                case "object":
                    now = new();
                    if (!numbers.TryAdd(Must(xml, "id"), bodies.Count))
                        throw Fault(xml, $"the object {Must(xml, "id")} a second time", "each id once");
                    bodies.Add(now);
                    break;
                case "vertex" when now is not null:
                    if (now.Corners.Count >= 3 * MeshFileReader.MostTriangles)
                        throw Fault(xml, "too many corners", $"at most {3 * MeshFileReader.MostTriangles}");
                    now.Corners.Add(new(Number(xml, "x"), Number(xml, "y"), Number(xml, "z")));
                    break;
                case "triangle" when now is not null:
                    into.Expect(++triangles);
                    now.Triangles.Add((Corner(xml, "v1", now), Corner(xml, "v2", now), Corner(xml, "v3", now)));
                    now.Total++;
                    break;
                case "component" when now is not null:
                    // Only objects that stand before: so no object can hold itself.
                    var part = BodyOf(xml, numbers, bodies.Count - 1);
                    now.Components.Add((part, PlaceOf(xml)));
                    now.Total += bodies[part].Total;
                    into.Expect(now.Total);
                    break;
                case "item":
                    var built = BodyOf(xml, numbers, bodies.Count);
                    build.Add((built, PlaceOf(xml)));
                    into.Expect(build.Count <= MostPlacings ? bodies[built].Total : int.MaxValue);
                    break;
            }
        }

        if (unit is null)
            throw new MeshFault("there is no model of the 3MF core specification in it", Again);
        var placings = 0;
        var open = new Stack<(int Body, Transform Place)>();
        foreach (var item in build)
        {
            open.Push(item);
            while (open.TryPop(out var next))
            {
                var body = bodies[next.Body];
                // Empty objects, nested, could be placed without end.
                if (body.Total == 0)
                    continue;
                if (++placings > MostPlacings)
                    throw new MeshFault($"more than {MostPlacings} objects placed", "a model that is built up less deeply: export it as one part");
                foreach (var (component, place) in body.Components)
                    open.Push((component, next.Place * place));
                Place(body, next.Place, into);
            }
        }

        return unit.Value;
    }

    private static void Place(Body body, Transform place, MeshBuilder into)
    {
        if (body.Triangles.Count == 0)
            return;
        into.Expect(body.Triangles.Count);
        var first = into.Corners;
        foreach (var corner in body.Corners)
        {
            var (x, y, z) = place.Of(corner);
            into.Corner(x, y, z);
        }

        foreach (var (a, b, c) in body.Triangles)
            into.Triangle(first + a, first + b, first + c);
    }

    private static (string, double) UnitOf(XmlReader xml, string unit) => unit switch
    {
        "micron" => (unit, 1e-6),
        "millimeter" => (unit, 1e-3),
        "centimeter" => (unit, 1e-2),
        "inch" => (unit, 0.0254),
        "foot" => (unit, 0.3048),
        "meter" => (unit, 1.0),
        _ => throw Fault(xml, $"the unit \"{unit}\"", "micron, millimeter, centimeter, inch, foot or meter"),
    };

    private static int BodyOf(XmlReader xml, Dictionary<string, int> numbers, int before)
    {
        if (xml.MoveToFirstAttribute())
        {
            do
            {
                if (xml.LocalName == "path" && xml.NamespaceURI.Length > 0)
                    throw Fault(xml, "an object that stands in another part of the package", "all objects in one part: export without the production extension");
            }
            while (xml.MoveToNextAttribute());
            xml.MoveToElement();
        }

        return numbers.TryGetValue(Must(xml, "objectid"), out var number) && number < before ? number : throw Fault(xml, $"the object {Must(xml, "objectid")}", "an object that stands before");
    }

    private static Transform PlaceOf(XmlReader xml)
    {
        if (xml.GetAttribute("transform") is not { } text)
            return Transform.None;
        var m = text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out var v) ? v : double.NaN).ToArray();
        return m.Length == 12 && m.All(double.IsFinite)
            ? new(new(m[0], m[1], m[2]), new(m[3], m[4], m[5]), new(m[6], m[7], m[8]), new(m[9], m[10], m[11]))
            : throw Fault(xml, "a transform that is none", "twelve numbers");
    }

    private static int Corner(XmlReader xml, string name, Body body) =>
        int.TryParse(Must(xml, name), NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number < body.Corners.Count
            ? number
            : throw Fault(xml, $"the corner {Must(xml, name)} of a triangle", $"a corner below {body.Corners.Count}");

    private static double Number(XmlReader xml, string name) =>
        double.TryParse(Must(xml, name), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : throw Fault(xml, $"{name}=\"{Must(xml, name)}\"", "a number");

    private static string Must(XmlReader xml, string name) =>
        xml.GetAttribute(name) is { } value ? value.Length > 40 ? value[..40] : value : throw Fault(xml, $"no {name} at <{xml.LocalName}>", $"{name}=\"...\"");

    private static MeshFault Fault(XmlReader xml, string found, string expected) =>
        new($"the model in it, line {(xml as IXmlLineInfo)?.LineNumber ?? 0}: {found}", expected);
}
