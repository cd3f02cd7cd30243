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

    /// <summary>What moves it; null: it is free.</summary>
    public JointDrive? Drive { get; init; }

    /// <summary>The joint whose position is free: itself, or the one that drives it.</summary>
    public Joint Free => Drive?.Leader ?? this;

    public static Joint Turn(string name, Vector3 through, Vector3 axis, double from, double to) => new(name, JointKind.Turn, through, axis, from, to);

    public static Joint Slide(string name, Vector3 axis, double from, double to) => new(name, JointKind.Slide, default, axis, from, to);

    /// <summary>The same joint moved by another: at its From when the leader is at its own, at To likewise, straight between.</summary>
    /// <param name="from">May be the larger of the two.</param>
    public static Joint Following(Joint leader, string name, JointKind kind, Vector3 through, Vector3 axis, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(leader);
        if (leader.Drive is not null)
            throw new ArgumentException($"Joint {name} follows {leader.Name}, which follows another itself.", nameof(leader));
        var range = leader.To - leader.From;
        var ratio = range > 0 ? (to - from) / range : 0;
        return new(name, kind, through, axis, Math.Min(from, to), Math.Max(from, to)) { Drive = new(leader, ratio, from - (ratio * leader.From)) };
    }

    /// <summary>The joint as it stands when its base is moved.</summary>
    public Joint Moved(Pose pose) => this with { Axis = pose.Turn * Axis, Through = pose * Through, Drive = Drive is { } d ? d with { Leader = d.Leader.Moved(pose) } : null };

    public Pose At(double position) => Kind == JointKind.Slide ? Pose.Slide(Axis, position) : Pose.TurnAbout(Through, Axis, position);

    private static Vector3 Finite(Vector3 v) =>
        double.IsFinite(v.Size) ? v : throw new ArgumentException("A joint needs a finite place.", nameof(v));
}

/// <summary>One movement that drives several joints: position = Offset + Ratio * position of the leader.</summary>
/// <param name="Leader">A free joint, of this chain or of another.</param>
public sealed record JointDrive(Joint Leader, double Ratio, double Offset);

/// <summary>Positions that a body can't take: the sum of Factor * position over the terms is at most Most.</summary>
/// <param name="Name">What a person calls it.</param>
public sealed record JointGate(string Name, EquatableList<GateTerm> Terms, double Most);

/// <param name="Factor">Per rad or per m of the joint.</param>
public sealed record GateTerm(Joint Joint, double Factor);

/// <summary>Joints from the ground outward: the first one listed moves everything after it.</summary>
/// <remarks>
/// Every axis is given in outer axes with all joints at zero, so a chain at q is J1(q1) J2(q2) ... Jn(qn) times the pose of
/// the body at zero (product of exponentials).
/// </remarks>
public sealed record JointChain(EquatableList<Joint> Joints)
{
    public static JointChain Fixed { get; } = new(EquatableList<Joint>.Empty);

    /// <summary>Limits that joints have together; all of them hold.</summary>
    public EquatableList<JointGate> Gates { get; init; } = [];

    /// <summary>The chain as it stands when its base is moved.</summary>
    public JointChain Moved(Pose pose) => new(Joints.Select(j => j.Moved(pose)).ToEquatableList())
    {
        Gates = Gates.Select(g => g with { Terms = g.Terms.Select(t => t with { Joint = t.Joint.Moved(pose) }).ToEquatableList() }).ToEquatableList(),
    };

    /// <summary>Outer axes from the body's axes at zero, the free joints at these positions.</summary>
    /// <param name="free">Every free joint that the chain has or follows.</param>
    public Pose At(IReadOnlyList<Joint> free, IReadOnlyList<double> positions)
    {
        ArgumentNullException.ThrowIfNull(free);
        return At([.. Joints.Select(joint => PositionOf(joint, free, positions))]);
    }

    /// <summary>Where a joint stands with the free joints at these positions.</summary>
    public static double PositionOf(Joint joint, IReadOnlyList<Joint> free, IReadOnlyList<double> positions)
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(free);
        ArgumentNullException.ThrowIfNull(positions);
        for (var i = 0; i < free.Count; i++)
        {
            if (free[i] == joint.Free)
                return joint.Drive is { } drive ? drive.Offset + (drive.Ratio * positions[i]) : positions[i];
        }

        throw new ArgumentException($"No position is given for {joint.Free.Name}.", nameof(free));
    }

    /// <summary>Outer axes from the body's axes at zero, each joint at its own position, driven ones too.</summary>
    public Pose At(ReadOnlySpan<double> positions)
    {
        if (positions.Length != Joints.Count)
            throw new ArgumentException($"{Joints.Count} joint positions wanted, {positions.Length} given.", nameof(positions));
        var pose = Pose.None;
        for (var i = 0; i < Joints.Count; i++)
            pose *= Joints[i].At(positions[i]);
        return pose;
    }

    public JointChain Then(Joint joint) => this with { Joints = [.. Joints, joint] };
}
