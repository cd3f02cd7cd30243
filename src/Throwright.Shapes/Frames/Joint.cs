namespace Throwright.Shapes.Frames;

/// <summary>What a joint lets a body do.</summary>
public enum JointKind
{
    /// <summary>Turn about an axis, rad.</summary>
    Turn,

    /// <summary>Slide along an axis, m.</summary>
    Slide,
}

/// <summary>One joint with its limits, measured with every joint of the chain at zero.</summary>
/// <param name="Name">What a person calls it; two bodies share a joint when the joints are equal.</param>
/// <param name="Through">A point of the axis, m, outer axes; of no meaning for a slide.</param>
/// <param name="Axis">Direction of the axis, outer axes.</param>
/// <param name="From">Lower limit, rad or m.</param>
/// <param name="To">Upper limit; may equal From (a joint that is locked).</param>
public sealed record Joint(string Name, JointKind Kind, Vector3 Through, Vector3 Axis, double From, double To)
{
    public Vector3 Axis { get; init => field = value.Unit(); } = Axis.Unit();

    public Vector3 Through { get; init => field = Finite(value); } = Finite(Through);

    public double From { get; init; } = double.IsFinite(From) && double.IsFinite(To) && From <= To
        ? From
        : throw new ArgumentException($"Joint {Name}: limits {From} .. {To} must be finite and in order.", nameof(From));

    public static Joint Turn(string name, Vector3 through, Vector3 axis, double from, double to) => new(name, JointKind.Turn, through, axis, from, to);

    public static Joint Slide(string name, Vector3 axis, double from, double to) => new(name, JointKind.Slide, default, axis, from, to);

    public Pose At(double position) => Kind == JointKind.Slide ? Pose.Slide(Axis, position) : Pose.TurnAbout(Through, Axis, position);

    private static Vector3 Finite(Vector3 v) =>
        double.IsFinite(v.Size) ? v : throw new ArgumentException("A joint needs a finite place.", nameof(v));
}

/// <summary>Joints from the ground outward: the first one listed moves everything after it.</summary>
/// <remarks>
/// Every axis is given in outer axes with all joints at zero, so a chain at q is J1(q1) J2(q2) ... Jn(qn) times the pose of
/// the body at zero (product of exponentials).
/// </remarks>
public sealed record JointChain(EquatableList<Joint> Joints)
{
    public static JointChain Fixed { get; } = new(EquatableList<Joint>.Empty);

    /// <summary>Outer axes from the body's axes at zero.</summary>
    public Pose At(ReadOnlySpan<double> positions)
    {
        if (positions.Length != Joints.Count)
            throw new ArgumentException($"{Joints.Count} joint positions wanted, {positions.Length} given.", nameof(positions));
        var pose = Pose.None;
        for (var i = 0; i < Joints.Count; i++)
            pose *= Joints[i].At(positions[i]);
        return pose;
    }

    public JointChain Then(Joint joint) => new([.. Joints, joint]);
}
