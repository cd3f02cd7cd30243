using Throwright.Engine.Model;
using Throwright.Engine.Tests.Throw;
using Throwright.Shapes;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Chain;

/// <summary>An invented cockpit: a panel that faces aft, a handle in it, and what it can meet. mm, degrees.</summary>
internal static class Cockpits
{
    public static PointAt At(double station, double buttline, double waterline, double half = 0) => new(Levers.Mm(station, half), Levers.Mm(buttline, half), Levers.Mm(waterline, half));

    public static Length Mm(double mm) => Length.FromMillimetres(mm);

    public static Angle Deg(double degrees) => Angle.FromDegrees(degrees);

    public static Sheet Panel { get; } = new() { Id = "panel", At = At(1000, 0, 700), Normal = new(1, 0, 0), Thickness = Levers.Mm(1.6) };

    /// <summary>A run with a round knob of 30 mm, 40 mm of stroke and 20 mm of shank, its hole at the middle of the panel.</summary>
    public static Run Handle(string id, double buttline = 0, double waterline = 700) => new()
    {
        Id = id,
        CockpitEnd = new()
        {
            Stroke = Levers.Mm(40),
            Sheet = Panel,
            Hole = At(1000, buttline, waterline),
            Knob = KnobShape.Round,
            KnobSize = new() { Diameter = Levers.Mm(30), Length = Levers.Mm(20) },
            Shank = new() { Diameter = Levers.Mm(8), Out = Levers.Mm(20) },
            Bushing = new() { Thread = "M12x1", Length = Levers.Mm(30), Diameter = Levers.Mm(12), Nut = Levers.Mm(19), NutHeight = Levers.Mm(6), Hole = Levers.Mm(12.2) },
        },
    };

    public static Run WithEnd(this Run run, Func<CockpitEnd, CockpitEnd> change) => run with { CockpitEnd = change(run.CockpitEnd!) };

    /// <summary>A ball of 20 mm that slides along buttline from 0 to 100 mm to the right of where it is drawn.</summary>
    public static Body Ball(double station, double buttline, double waterline) => new()
    {
        Id = "ball",
        Joints = [new SlideJoint("over", new(0, 1, 0), Mm(0), Mm(100))],
        Parts = [new("ball", new SphereShape(At(station, buttline, waterline), Levers.Mm(20)))],
    };

    public static Aircraft Of(Run run, params Body[] bodies) => new() { Name = "A", Sheets = [Panel], Runs = [run], Bodies = bodies.ToEquatableList() };

    /// <summary>Everything moved and turned together: nothing that clearance or mount says may change.</summary>
    public static Aircraft Moved(Aircraft aircraft, Pose pose)
    {
        PointAt P(PointAt p)
        {
            var at = pose * new Vector3(p.Station.Nominal.Metres, p.Buttline.Nominal.Metres, p.Waterline.Nominal.Metres);
            return new(Of(at.X), Of(at.Y), Of(at.Z));
            static Toleranced<Length> Of(double metres) => Toleranced<Length>.Exact(new(metres));
        }

        DirectionAt D(DirectionAt d)
        {
            var to = pose.Turn * new Vector3(d.Aft, d.Right, d.Up);
            return new(to.X, to.Y, to.Z);
        }

        Sheet S(Sheet s) => s with { At = P(s.At), Normal = D(s.Normal), Up = D(s.Up ?? new(0, 0, 1)), Outline = s.Outline.Select(P).ToEquatableList() };
        PartShape Shape(PartShape s) => s switch
        {
            SphereShape b => b with { Centre = P(b.Centre) },
            CapsuleShape c => c with { From = P(c.From), To = P(c.To) },
            ConeShape c => c with { From = P(c.From), To = P(c.To) },
            BoxShape b => b with { Centre = P(b.Centre), Along = D(b.Along), Up = D(b.Up) },
            PlaneShape p => new PlaneShape(P(p.At), D(p.Normal)),
            _ => throw new NotSupportedException(),
        };
        BodyJoint J(BodyJoint j) => j switch
        {
            SlideJoint s => s with { Axis = D(s.Axis) },
            TurnJoint t => t with { Axis = D(t.Axis), About = P(t.About) },
            _ => throw new NotSupportedException(),
        };
        return aircraft with
        {
            Sheets = aircraft.Sheets.Select(S).ToEquatableList(),
            Bodies = aircraft.Bodies.Select(b => b with
            {
                Joints = b.Joints.Select(J).ToEquatableList(),
                Parts = b.Parts.Select(p => p with { Shape = Shape(p.Shape) }).ToEquatableList(),
            }).ToEquatableList(),
            Runs = aircraft.Runs.Select(r => r.WithEnd(e => e with { Sheet = S(e.Sheet!), Hole = P(e.Hole!) })).ToEquatableList(),
        };
    }
}
