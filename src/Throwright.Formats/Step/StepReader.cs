using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.Step;

/// <summary>What a STEP file holds, or why it can't be taken.</summary>
/// <param name="Solid">Lengths in m; null when there is a fault.</param>
public sealed record StepReading(Solid? Solid, string Number, EquatableList<StepFault> Faults);

/// <summary>Reads back one solid of planes, cylinders and cones: what <see cref="StepWriter"/> writes, by whoever wrote it.</summary>
/// <remarks>
/// It honours every flag of the file and repairs nothing, so that the audit of the body it returns is an audit of the
/// text. It shares no code with the writer.
/// </remarks>
public static class StepReader
{
    public static StepReading Read(string text)
    {
        try
        {
            return new Meaning(Part21.Read(text)).Read();
        }
        catch (StepFaultException fault)
        {
            return new(null, "", [fault.Fault]);
        }
    }

    /// <summary>Everything wrong with a file that should hold one part: faults of the text, then defects of the body.</summary>
    /// <param name="volume">What the part's volume should be, m^3, if known.</param>
    public static IReadOnlyList<string> Audit(string text, double? volume = null, int? throughHoles = null)
    {
        var reading = Read(text);
        return reading.Solid is { } solid
            ? [.. Shapes.Solids.Audit.Find(solid, volume, throughHoles).Select(f => $"{f.Defect}: {f.What}")]
            : [.. reading.Faults.Select(f => f.ToString())];
    }

    private sealed class Meaning(Part21 file)
    {
        private static readonly string[] Schemas = ["AUTOMOTIVE_DESIGN", "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF", "CONFIG_CONTROL_DESIGN"];

        private readonly Dictionary<int, int> vertexOf = [];
        private readonly Dictionary<int, int> edgeOf = [];
        private readonly List<Vector3> vertices = [];
        private readonly List<Edge> edges = [];

        public StepReading Read()
        {
            var schema = file.Header.FirstOrDefault(h => h.Type == "FILE_SCHEMA")?.Items is [Value.Listed { Items: [Value.Words words] }] ? words.Text.Split(' ')[0] : "";
            if (!Schemas.Contains(schema))
                throw new StepFaultException(new(0, 0, $"the schema \"{schema}\" is none of {string.Join(", ", Schemas)}"));
            var bodies = file.Entities.Values.Where(e => e.Parts[0].Type == "MANIFOLD_SOLID_BREP").ToList();
            if (bodies.Count != 1)
                throw new StepFaultException(new(0, 0, $"{bodies.Count} solids where one was expected"));
            var shells = file.Entities.Values.Count(e => e.Parts[0].Type == "CLOSED_SHELL");
            if (shells != 1)
                throw new StepFaultException(new(0, 0, $"{shells} closed shells where one was expected"));
            Units(Only("ADVANCED_BREP_SHAPE_REPRESENTATION", bodies[0].Id));
            var shell = Of(bodies[0], "MANIFOLD_SOLID_BREP", 2)[1];
            var faces = List(Of(Get(shell), "CLOSED_SHELL", 2)[1]).Select(OfFace).ToEquatableList();
            var number = Of(bodies[0], "MANIFOLD_SOLID_BREP", 2)[0] is Value.Words name ? name.Text : "";
            return new(new(vertices.ToEquatableList(), edges.ToEquatableList(), faces), number, []);
        }

        /// <summary>Millimetre and radian, or the file is refused: a wrong unit is a part a thousand times too large.</summary>
        private void Units(Entity representation)
        {
            var context = Get(Of(representation, "ADVANCED_BREP_SHAPE_REPRESENTATION", 3)[2]);
            var part = context.Parts.FirstOrDefault(p => p.Type == "GLOBAL_UNIT_ASSIGNED_CONTEXT")
                ?? throw Fault(context, "no units are given");
            var found = new List<string>();
            foreach (var unit in List(part.Items[0]).Select(Get))
            {
                var kind = unit.Parts.FirstOrDefault(p => p.Type is "LENGTH_UNIT" or "PLANE_ANGLE_UNIT" or "SOLID_ANGLE_UNIT")?.Type;
                var si = unit.Parts.FirstOrDefault(p => p.Type == "SI_UNIT")?.Items;
                if (kind is null || si is not { Count: 2 } || si[1] is not Value.Name name)
                    throw Fault(unit, "a unit that is no SI unit");
                found.Add($"{kind} {(si[0] as Value.Name)?.Text}{name.Text}");
            }

            foreach (var wanted in (string[])["LENGTH_UNIT MILLIMETRE", "PLANE_ANGLE_UNIT RADIAN"])
            {
                if (!found.Contains(wanted))
                    throw Fault(context, $"{wanted} was expected, found {string.Join(", ", found)}");
            }
        }

        private Face OfFace(Value value)
        {
            var entity = Get(value);
            var items = Of(entity, "ADVANCED_FACE", 4);
            var bounds = List(items[1]).Select(Get).ToList();
            if (bounds.Count(b => b.Parts[0].Type == "FACE_OUTER_BOUND") != 1)
                throw Fault(entity, "not exactly one FACE_OUTER_BOUND");
            var loops = bounds.OrderBy(b => b.Parts[0].Type == "FACE_OUTER_BOUND" ? 0 : 1).Select(OfBound).ToEquatableList();
            return new(OfSurface(Get(items[2])), Flag(entity, items[3]), loops);
        }

        private Loop OfBound(Entity entity)
        {
            var items = Of(entity, entity.Parts[0].Type == "FACE_OUTER_BOUND" ? "FACE_OUTER_BOUND" : "FACE_BOUND", 3);
            var uses = List(Of(Get(items[1]), "EDGE_LOOP", 2)[1]).Select(u => OfUse(Get(u))).ToList();
            if (!Flag(entity, items[2]))
            {
                uses.Reverse();
                uses = uses.ConvertAll(u => u with { Forward = !u.Forward });
            }

            return new(uses.ToEquatableList());
        }

        private EdgeUse OfUse(Entity entity)
        {
            var items = Of(entity, "ORIENTED_EDGE", 5);
            var forward = Flag(entity, items[4]);
            return new(OfEdge(Get(items[3])), forward);
        }

        private int OfEdge(Entity entity)
        {
            if (edgeOf.TryGetValue(entity.Id, out var known))
                return known;
            var items = Of(entity, "EDGE_CURVE", 5);
            int from = OfVertex(Get(items[1])), to = OfVertex(Get(items[2]));
            var curve = OfCurve(Get(items[3]));
            // Against the sense the edge runs the curve backwards: the same edge of the curve turned round.
            if (!Flag(entity, items[4]))
            {
                curve = curve switch
                {
                    Straight line => line with { Direction = -line.Direction },
                    Ellipse oval => oval with { Axes = oval.Axes.Flipped() },
                    _ => throw Fault(entity, "a curve that can't be turned round"),
                };
            }

            double start = curve.Of(vertices[from]), end = curve.Of(vertices[to]);
            if (curve is Ellipse && end <= start)
                end += 2 * Math.PI;
            edges.Add(new(from, to, curve, start, end));
            return edgeOf[entity.Id] = edges.Count - 1;
        }

        private int OfVertex(Entity entity)
        {
            if (vertexOf.TryGetValue(entity.Id, out var known))
                return known;
            vertices.Add(Point(Of(entity, "VERTEX_POINT", 2)[1]));
            return vertexOf[entity.Id] = vertices.Count - 1;
        }

        private Curve OfCurve(Entity entity)
        {
            switch (entity.Parts[0].Type)
            {
                case "LINE":
                    var line = Of(entity, "LINE", 3);
                    return new Straight(Point(line[1]), Direction(Of(Get(line[2]), "VECTOR", 3)[1]));
                case "CIRCLE":
                    var circle = Of(entity, "CIRCLE", 3);
                    var radius = Length(entity, circle[2]);
                    return new Ellipse(Placement(circle[1]), radius, radius);
                case "ELLIPSE":
                    var oval = Of(entity, "ELLIPSE", 4);
                    return new Ellipse(Placement(oval[1]), Length(entity, oval[2]), Length(entity, oval[3]));
                default:
                    throw Fault(entity, $"a curve {entity.Parts[0].Type}");
            }
        }

        private Surface OfSurface(Entity entity)
        {
            switch (entity.Parts[0].Type)
            {
                case "PLANE":
                    return new Plane(Placement(Of(entity, "PLANE", 2)[1]));
                case "CYLINDRICAL_SURFACE":
                    var round = Of(entity, "CYLINDRICAL_SURFACE", 3);
                    return new Cylinder(Placement(round[1]), Length(entity, round[2]));
                case "CONICAL_SURFACE":
                    var cone = Of(entity, "CONICAL_SURFACE", 4);
                    var angle = Number(entity, cone[3]);
                    return angle is > 0 and < Math.PI / 2
                        ? new Cone(Placement(cone[1]), Length(entity, cone[2]), Math.Tan(angle))
                        : throw Fault(entity, $"a half angle of {angle} rad; between 0 and pi/2 was expected");
                default:
                    throw Fault(entity, $"a surface {entity.Parts[0].Type}");
            }
        }

        private Axes Placement(Value value)
        {
            var entity = Get(value);
            var items = Of(entity, "AXIS2_PLACEMENT_3D", 4);
            Vector3 z = Direction(items[2]), x = Direction(items[3]);
            if (!(Math.Abs(Vector3.Dot(x, z)) < 1e-9))
                throw Fault(entity, "the two directions are not square to each other");
            return Axes.Along(Point(items[1]), z, x);
        }

        private Vector3 Point(Value value) => 1e-3 * Triple(Get(value), "CARTESIAN_POINT");

        private Vector3 Direction(Value value)
        {
            var entity = Get(value);
            var along = Triple(entity, "DIRECTION");
            return along.Size > 1e-6 ? along.Unit() : throw Fault(entity, "a direction without a length");
        }

        private Vector3 Triple(Entity entity, string type)
        {
            var items = List(Of(entity, type, 2)[1]);
            return items.Count == 3
                ? new(Number(entity, items[0]), Number(entity, items[1]), Number(entity, items[2]))
                : throw Fault(entity, $"{items.Count} numbers where three were expected");
        }

        private static double Length(Entity entity, Value value) => Number(entity, value) is var mm and > 0
            ? mm / 1000
            : throw Fault(entity, "a length that is not above zero");

        private static double Number(Entity entity, Value value) => value switch
        {
            Value.Real real => real.Number,
            Value.Whole whole => throw Fault(entity, $"{whole.Number} without a point where a real was expected"),
            _ => throw Fault(entity, "no number where one was expected"),
        };

        private static bool Flag(Entity entity, Value value) => value switch
        {
            Value.Name { Text: "T" } => true,
            Value.Name { Text: "F" } => false,
            _ => throw Fault(entity, "no .T. or .F. where one was expected"),
        };

        private static IReadOnlyList<Value> List(Value value) =>
            value is Value.Listed list ? list.Items : throw new StepFaultException(new(0, 0, "no list where one was expected"));

        private Entity Get(Value value) => value is Value.Reference { Id: var id } && file.Entities.TryGetValue(id, out var entity)
            ? entity
            : throw new StepFaultException(new(0, (value as Value.Reference)?.Id ?? 0, "an entity that is not in the file"));

        private Entity Only(string type, int holds)
        {
            var all = file.Entities.Values.Where(e => e.Parts[0].Type == type && List(e.Parts[0].Items[1]).Any(i => i is Value.Reference r && r.Id == holds)).ToList();
            return all.Count == 1 ? all[0] : throw new StepFaultException(new(0, 0, $"{all.Count} {type} where one was expected"));
        }

        private static IReadOnlyList<Value> Of(Entity entity, string type, int count)
        {
            var part = entity.Parts[0];
            if (part.Type != type)
                throw Fault(entity, $"{part.Type} where {type} was expected");
            return part.Items.Count == count ? part.Items : throw Fault(entity, $"{part.Items.Count} values where {count} were expected");
        }

        private static StepFaultException Fault(Entity entity, string what) => new(new(entity.Line, entity.Id, what));
    }
}
