using Throwright.Engine.Chain;
using Throwright.Engine.Model;
using Throwright.Engine.Throw;
using Throwright.Shapes.Frames;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Tests.Throw;

/// <summary>Lever ends as they are measured, in mm and degrees.</summary>
internal static class Levers
{
    public const double Degree = Math.PI / 180;

    public static Toleranced<Length> Mm(double nominal, double half = 0) => Toleranced<Length>.PlusMinus(Length.FromMillimetres(nominal), half / 1000);

    public static Toleranced<Angle> Degrees(double nominal, double half = 0) => Toleranced<Angle>.PlusMinus(Angle.FromDegrees(nominal), half * Degree);

    public static PointAt At(Vector3 mm, double half = 0) => new(Mm(mm.X, half), Mm(mm.Y, half), Mm(mm.Z, half));

    public static DirectionAt Toward(Vector3 v) => new(v.X, v.Y, v.Z);

    /// <summary>Bench form; the sweep lies half to each side of arm angle 0.</summary>
    public static LeverEnd Bench(double radius, double distance, double half, AnchorRule rule, double? offset = null, double tolerance = 0) => new()
    {
        Radius = Mm(radius, tolerance),
        From = Degrees(-half),
        To = Degrees(half),
        Bench = new() { Distance = Mm(distance, tolerance), Rule = rule, Offset = offset is { } o ? Mm(o, tolerance) : null },
    };

    /// <summary>Spatial form, from the lever's axis, the pin at arm angle 0 and the anchor.</summary>
    public static LeverEnd Placed(Vector3 pivot, Vector3 axis, Vector3 pin, Vector3 anchor, Vector3? along, double from, double to)
    {
        var unit = axis.Unit();
        var arm = pin - pivot;
        var onAxis = Vector3.Dot(arm, unit);
        return new()
        {
            Radius = Mm((arm - (onAxis * unit)).Size),
            From = Degrees(from),
            To = Degrees(to),
            Placed = new()
            {
                Pivot = At(pivot),
                Axis = Toward(axis),
                Zero = Toward(arm),
                AlongAxis = Mm(onAxis),
                Anchor = At(anchor),
                Along = along is { } a ? Toward(a) : null,
            },
        };
    }

    public static Sweep Sweep(LeverEnd end) => SweepSolver.Solve(LeverPlacement.Of(end, [])!.Case)!;
}
