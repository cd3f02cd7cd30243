using System.Globalization;
using System.Text;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Solids;

namespace Throwright.Formats.Step;

/// <summary>The application protocol a STEP file declares. The data are the same.</summary>
public enum StepSchema
{
    /// <summary>ISO 10303-214: read by nearly everything.</summary>
    Ap214,

    /// <summary>ISO 10303-242, for shops that ask for it.</summary>
    Ap242,
}

/// <summary>What a STEP file says about its part.</summary>
/// <param name="Number">Part number, also the name of the solid.</param>
/// <param name="Dated">Day in the head of the file: given, so that the same part gives the same bytes.</param>
public sealed record StepHead(string Number, string Description, DateOnly Dated, string Author = "", string Organisation = "");

/// <summary>Writes a body as a STEP file (ISO 10303-21): millimetres, radians, one solid, one closed shell.</summary>
public static class StepWriter
{
    /// <summary>Largest gap the file declares, mm.</summary>
    public const double Uncertainty = 1e-6;

    public static string Write(Solid solid, StepHead head, StepSchema schema = StepSchema.Ap214) => new Entities(solid, head, schema).ToString();

    private sealed class Entities
    {
        private readonly StringBuilder data = new();
        private readonly StepHead head;
        private readonly StepSchema schema;
        private int last;

        public Entities(Solid solid, StepHead head, StepSchema schema)
        {
            (this.head, this.schema) = (head, schema);
            var application = Add($"APPLICATION_CONTEXT({Part21Text.Quoted(schema == StepSchema.Ap214 ? "core data for automotive mechanical design processes" : "managed model based 3d engineering")})");
            Add($"APPLICATION_PROTOCOL_DEFINITION('international standard',{(schema == StepSchema.Ap214 ? "'automotive_design',2000" : "'ap242_managed_model_based_3d_engineering',2014")},{application})");
            var productContext = Add($"PRODUCT_CONTEXT('',{application},'mechanical')");
            var product = Add($"PRODUCT({Part21Text.Quoted(head.Number)},{Part21Text.Quoted(head.Number)},{Part21Text.Quoted(head.Description)},({productContext}))");
            Add($"PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,({product}))");
            var formation = Add($"PRODUCT_DEFINITION_FORMATION('','',{product})");
            var designContext = Add($"PRODUCT_DEFINITION_CONTEXT('part definition',{application},'design')");
            var definition = Add($"PRODUCT_DEFINITION('design','',{formation},{designContext})");
            var shape = Add($"PRODUCT_DEFINITION_SHAPE('','',{definition})");
            var millimetre = Add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
            var radian = Add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
            var steradian = Add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
            var gap = Add($"UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE({Part21Text.Real(Uncertainty)}),{millimetre},'distance_accuracy_value','largest gap')");
            var context = Add($"(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT(({gap}))GLOBAL_UNIT_ASSIGNED_CONTEXT(({millimetre},{radian},{steradian}))REPRESENTATION_CONTEXT('',''))");
            var body = Body(solid);
            var origin = Placement(Axes.World);
            var representation = Add($"ADVANCED_BREP_SHAPE_REPRESENTATION({Part21Text.Quoted(head.Number)},({origin},{body}),{context})");
            Add($"SHAPE_DEFINITION_REPRESENTATION({shape},{representation})");
        }

        public override string ToString()
        {
            var stamp = head.Dated.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + "T00:00:00";
            var name = schema == StepSchema.Ap214
                ? "AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }"
                : "AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }";
            return $"""
                ISO-10303-21;
                HEADER;
                FILE_DESCRIPTION(({Part21Text.Quoted(head.Description)}),'2;1');
                FILE_NAME({Part21Text.Quoted(head.Number)},'{stamp}',({Part21Text.Quoted(head.Author)}),({Part21Text.Quoted(head.Organisation)}),'','Throwright','');
                FILE_SCHEMA(('{name}'));
                ENDSEC;
                DATA;
                {data}ENDSEC;
                END-ISO-10303-21;

                """.ReplaceLineEndings("\n");
        }

        private string Add(string entity)
        {
            data.Append(CultureInfo.InvariantCulture, $"#{++last}={entity};\n");
            return $"#{last}";
        }

        private string Body(Solid solid)
        {
            var vertices = solid.Vertices.Select(v => Add($"VERTEX_POINT('',{Place(v)})")).ToList();
            // Every edge runs as its curve does, so the sense is always true.
            var edges = solid.Edges.Select(e => Add($"EDGE_CURVE('',{vertices[e.From]},{vertices[e.To]},{Curve(e.Curve)},.T.)")).ToList();
            var faces = solid.Faces.Select(f => OfFace(f, edges)).ToList();
            var shell = Add($"CLOSED_SHELL('',({string.Join(',', faces)}))");
            return Add($"MANIFOLD_SOLID_BREP({Part21Text.Quoted(head.Number)},{shell})");
        }

        private string OfFace(Face face, List<string> edges)
        {
            var bounds = new List<string>();
            foreach (var loop in face.Loops)
            {
                var uses = loop.Uses.Select(u => Add($"ORIENTED_EDGE('',*,*,{edges[u.Edge]},{Flag(u.Forward)})")).ToList();
                var around = Add($"EDGE_LOOP('',({string.Join(',', uses)}))");
                bounds.Add(Add($"{(bounds.Count == 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND")}('',{around},.T.)"));
            }

            return Add($"ADVANCED_FACE('',({string.Join(',', bounds)}),{Surface(face.Surface)},{Flag(face.Outward)})");
        }

        private string Curve(Curve curve) => curve switch
        {
            Straight line => Add($"LINE('',{Place(line.Start)},{Add($"VECTOR('',{Direction(line.Direction)},1.)")})"),
            Ellipse { IsCircle: true } circle => Add($"CIRCLE('',{Placement(circle.Axes)},{Part21Text.Millimetres(circle.AlongX)})"),
            Ellipse oval => Add($"ELLIPSE('',{Placement(oval.Axes)},{Part21Text.Millimetres(oval.AlongX)},{Part21Text.Millimetres(oval.AlongY)})"),
            _ => throw new ArgumentException($"Unknown curve {curve.GetType().Name}.", nameof(curve)),
        };

        private string Surface(Surface surface) => surface switch
        {
            Plane plane => Add($"PLANE('',{Placement(plane.Axes)})"),
            Cylinder round => Add($"CYLINDRICAL_SURFACE('',{Placement(round.Axes)},{Part21Text.Millimetres(round.Radius)})"),
            Cone cone => Add($"CONICAL_SURFACE('',{Placement(cone.Axes)},{Part21Text.Millimetres(cone.Radius)},{Part21Text.Real(Math.Atan(cone.Slope))})"),
            _ => throw new ArgumentException($"Unknown surface {surface.GetType().Name}.", nameof(surface)),
        };

        private string Placement(Axes axes) => Add($"AXIS2_PLACEMENT_3D('',{Place(axes.Origin)},{Direction(axes.Z)},{Direction(axes.X)})");

        private string Place(Vector3 at) => Add($"CARTESIAN_POINT('',({Part21Text.Millimetres(at.X)},{Part21Text.Millimetres(at.Y)},{Part21Text.Millimetres(at.Z)}))");

        private string Direction(Vector3 of) => Add($"DIRECTION('',({Part21Text.Real(of.X)},{Part21Text.Real(of.Y)},{Part21Text.Real(of.Z)}))");

        private static string Flag(bool value) => value ? ".T." : ".F.";
    }
}
