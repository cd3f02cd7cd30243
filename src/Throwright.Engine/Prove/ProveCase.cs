using Throwright.Engine.Model;
using Throwright.Shapes;

namespace Throwright.Engine.Prove;

/// <summary>What the rules of installation need to know of one run.</summary>
public sealed record ProveCase
{
    public required Run Run { get; init; }

    /// <summary>"the cowl flap"; what it does at its push and at its pull stop.</summary>
    public required string Device { get; init; }
    public required string PushEnd { get; init; }
    public required string PullEnd { get; init; }

    /// <summary>The stop that the declared safe end names; null: none declared, or it names neither stop.</summary>
    public DeviceStop? Safe { get; init; }

    /// <summary>The safe end is declared "as set": the device shall stay where it was.</summary>
    public bool SafeAsSet { get; init; }
    public required LooseDevice Loose { get; init; }

    /// <summary>The same with its spring broken; null: no spring.</summary>
    public LooseDevice? WithoutSpring { get; init; }

    /// <summary>Dead centres inside the sweep; empty: none, or no sweep.</summary>
    public EquatableList<DeadPlace> DeadPlaces { get; init; } = [];

    /// <summary>Friction of the cable alone keeps the device from moving the knob, lock or no lock; null: forces not worked out.</summary>
    public bool? CableHolds { get; init; }

    /// <summary>Largest hand force of normal use, worst case, N; null: not worked out. Pull and push.</summary>
    public double? Pull { get; init; }
    public double? Push { get; init; }

    /// <summary>Pivot to hole, its largest, m; null: not known.</summary>
    public double? ArmRadius { get; init; }

    /// <summary>Anchor's bracket under the limit force; null: not described.</summary>
    public BracketUnderLimit? Bracket { get; init; }

    /// <summary>What the chosen pilot's hand can give.</summary>
    public HandStrength Hand { get; init; } = HandStrength.Published(null, pinched: true);

    /// <summary>Hand on the control's side; null: the file does not say where the shoulder is.</summary>
    public BodySide? HandSide { get; init; }

    /// <summary>Knob travel between the device's stops, light hand, and the whole stroke, m; null: not worked out.</summary>
    public double? Travel { get; init; }
    public double? Stroke { get; init; }

    /// <summary>What else in the file can move near the handle, each with its least distance over all positions, m; null: nothing described.</summary>
    public EquatableList<MovingNear>? Moving { get; init; }
    public Display Display { get; init; } = new();

    /// <summary>Highest temperature where the joint sits, degC; null: not known.</summary>
    public double? JointHottest { get; init; }

    /// <summary>Smallest cushion at the knob, worst case, m; null: no ladder.</summary>
    public double? LeastCushion { get; init; }

    /// <summary>How far the anchor's bracket gives under the limit force, m; null: stiffness not known.</summary>
    public double? BracketGives { get; init; }
}

/// <summary>A body that can move while the hand works the control.</summary>
public sealed record MovingNear(string Name, double Least);
