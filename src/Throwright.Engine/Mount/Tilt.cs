using Throwright.Shapes.Frames;

namespace Throwright.Engine.Mount;

/// <summary>Lean of the shank axis against the sheet's normal, as two slopes: tangents of the lean toward up and toward right.</summary>
/// <remarks>
/// The axis is along n + Up u + Right r in the sheet's own frame (n the normal, u up, r right in the sheet). So
///   total tilt  tan a = sqrt(Up^2 + Right^2),   azimuth = atan2(Right, Up), rad from up toward right.
/// Two turns one after the other would give cos a = cos A cos B instead: 20/15 deg is 24.32 deg here, not 24.81.
/// </remarks>
public readonly record struct Tilt(double Up, double Right)
{
    public static Tilt None => default;

    public static Tilt FromDegrees(double up, double right) => new(Math.Tan(up * (Math.PI / 180)), Math.Tan(right * (Math.PI / 180)));

    public double Slope => Math.Sqrt((Up * Up) + (Right * Right));

    /// <summary>Angle between shank axis and normal, rad.</summary>
    public double Total => Math.Atan(Slope);

    public double Azimuth => Math.Atan2(Right, Up);
}

/// <summary>A rectangle of slopes.</summary>
public readonly record struct TiltRange(double UpFrom, double UpTo, double RightFrom, double RightTo)
{
    public static TiltRange At(Tilt tilt, double play = 0) => new(tilt.Up - play, tilt.Up + play, tilt.Right - play, tilt.Right + play);

    /// <summary>All tilts whose slopes stay within this angle each way.</summary>
    public static TiltRange Within(double angle) => new(-Math.Tan(angle), Math.Tan(angle), -Math.Tan(angle), Math.Tan(angle));

    public Tilt Middle => new(0.5 * (UpFrom + UpTo), 0.5 * (RightFrom + RightTo));

    /// <summary>The tilt of the range that leans least.</summary>
    public Tilt Least => new(Math.Clamp(0, UpFrom, UpTo), Math.Clamp(0, RightFrom, RightTo));

    public double Width => Math.Max(UpTo - UpFrom, RightTo - RightFrom);

    /// <summary>No mount in the range is turned farther than this from the one at the tilt given, rad.</summary>
    /// <param name="play">The same for two tilts that are both off by up to this much, alike.</param>
    /// <remarks>
    /// The mount is turned by A = atan Up about the sheet's right axis and, before that, by B = atan(Right cos A) about its up
    /// axis. |dA| is at most |dUp|; |dB| at most |dRight| + |Right| |dA|; a turn after a turn adds.
    /// </remarks>
    public double FarthestTurnFrom(Tilt tilt, double play = 0)
    {
        var up = Math.Max(Math.Abs(UpFrom - tilt.Up), Math.Abs(UpTo - tilt.Up));
        var right = Math.Max(Math.Abs(RightFrom - tilt.Right), Math.Abs(RightTo - tilt.Right));
        var steepest = Math.Max(Math.Abs(tilt.Right), Math.Max(Math.Abs(RightFrom), Math.Abs(RightTo))) + play;
        return right + (up * (1 + steepest));
    }

    public (TiltRange One, TiltRange Other) Halves() => UpTo - UpFrom >= RightTo - RightFrom
        ? (this with { UpTo = Middle.Up }, this with { UpFrom = Middle.Up })
        : (this with { RightTo = Middle.Right }, this with { RightFrom = Middle.Right });
}

/// <summary>The sheet at the hole: where the shank passes and how the sheet faces. Unit directions square to each other.</summary>
/// <param name="Foot">Where the shank axis meets the middle of the sheet.</param>
/// <param name="Normal">Out of the sheet toward the hand.</param>
/// <param name="Up">Up in the sheet; right is up x normal as the hand sees it from in front.</param>
public sealed record SheetFrame(Vector3 Foot, Vector3 Normal, Vector3 Up)
{
    public Vector3 Normal { get; } = Normal.Unit();

    /// <summary>Made square to the normal.</summary>
    public Vector3 Up { get; } = (Up - (Vector3.Dot(Up, Normal.Unit()) * Normal.Unit())).Unit();

    public Vector3 Right => Vector3.Cross(Up, Normal);

    public Vector3 ShankAt(Tilt tilt) => (Normal + (tilt.Up * Up) + (tilt.Right * Right)).Unit();

    /// <summary>
    /// Two joints that reach every mount of the range, for a handle drawn square to the sheet. A range of one tilt gives two
    /// locked joints.
    /// </summary>
    /// <remarks>
    /// Turning the normal by B about Up and then by A about -Right gives n cos B cos A + u cos B sin A + r sin B, so
    /// Up = tan A exactly and Right = tan B / cos A. B's limits are taken over all A of the range: a little more is covered
    /// than asked for, never less.
    /// </remarks>
    public MountJoints JointsOver(TiltRange range)
    {
        double a0 = Math.Atan(range.UpFrom), a1 = Math.Atan(range.UpTo);
        double cosLeast = Math.Min(Math.Cos(a0), Math.Cos(a1)), cosMost = a0 <= 0 && a1 >= 0 ? 1 : Math.Max(Math.Cos(a0), Math.Cos(a1));
        var b0 = Math.Atan(range.RightFrom * (range.RightFrom < 0 ? cosMost : cosLeast));
        var b1 = Math.Atan(range.RightTo * (range.RightTo < 0 ? cosLeast : cosMost));
        return new(Joint.Turn("tilt up", Foot, -Right, a0, a1), Joint.Turn("tilt right", Foot, Up, Math.Min(b0, b1), Math.Max(b0, b1)));
    }
}

/// <summary>The two joints of a mount, the outer one first.</summary>
public sealed record MountJoints(Joint Up, Joint Right);
