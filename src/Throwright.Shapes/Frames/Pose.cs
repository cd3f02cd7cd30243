namespace Throwright.Shapes.Frames;

/// <summary>A turned set of right-handed axes: where x, y and z of the inner frame point in the outer one.</summary>
public readonly record struct Rotation(Vector3 X, Vector3 Y, Vector3 Z)
{
    public static Rotation None => new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1));

    /// <summary>Turn about an axis through the origin, rad, right-handed.</summary>
    public static Rotation About(Vector3 axis, double angle)
    {
        var a = axis.Unit();
        var (s, c) = Math.SinCos(angle);
        return new(Turned(new(1, 0, 0)), Turned(new(0, 1, 0)), Turned(new(0, 0, 1)));

        // Rodrigues: along the axis nothing changes, the rest w turns to c w + s (a x w).
        Vector3 Turned(Vector3 v)
        {
            var along = Vector3.Dot(a, v) * a;
            return along + (c * (v - along)) + (s * Vector3.Cross(a, v));
        }
    }

    /// <summary>The shortest turn that takes one direction to another; about any square axis when they are opposite.</summary>
    public static Rotation Between(Vector3 from, Vector3 to)
    {
        var axis = Vector3.Cross(from.Unit(), to.Unit());
        var angle = Vector3.AngleBetween(from, to);
        if (axis.Size > 1e-12)
            return About(axis, angle);
        return Vector3.Dot(from, to) > 0 ? None : About(SquareTo(from), Math.PI);
    }

    /// <summary>Some unit direction square to the given one.</summary>
    public static Vector3 SquareTo(Vector3 direction)
    {
        var d = direction.Unit();
        var other = Math.Abs(d.X) < 0.6 ? new Vector3(1, 0, 0) : new Vector3(0, 1, 0);
        return Vector3.Cross(d, other).Unit();
    }

    public static Vector3 operator *(Rotation r, Vector3 v) => (v.X * r.X) + (v.Y * r.Y) + (v.Z * r.Z);
    public static Rotation operator *(Rotation outer, Rotation inner) => new(outer * inner.X, outer * inner.Y, outer * inner.Z);

    /// <summary>The direction as the inner frame sees it.</summary>
    public Vector3 Back(Vector3 v) => new(Vector3.Dot(X, v), Vector3.Dot(Y, v), Vector3.Dot(Z, v));

    public Rotation Inverse() => new(new(X.X, Y.X, Z.X), new(X.Y, Y.Y, Z.Y), new(X.Z, Y.Z, Z.Z));
}

/// <summary>Where one frame stands in another. Named outerFromInner, so that outerFromInner * pointInInner reads right.</summary>
public readonly record struct Pose(Rotation Turn, Vector3 At)
{
    public static Pose None => new(Rotation.None, default);

    public static Pose Slide(Vector3 axis, double distance) => new(Rotation.None, distance * axis.Unit());

    /// <summary>Turn about a line, rad.</summary>
    public static Pose TurnAbout(Vector3 through, Vector3 axis, double angle)
    {
        var turn = Rotation.About(axis, angle);
        return new(turn, through - (turn * through));
    }

    public static Vector3 operator *(Pose outerFromInner, Vector3 point) => (outerFromInner.Turn * point) + outerFromInner.At;

    public static Pose operator *(Pose outerFromMiddle, Pose middleFromInner) =>
        new(outerFromMiddle.Turn * middleFromInner.Turn, outerFromMiddle * middleFromInner.At);

    public Vector3 Back(Vector3 point) => Turn.Back(point - At);

    public Pose Inverse() => new(Turn.Inverse(), -Turn.Back(At));
}
