using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Engine.Model;

/// <summary>What is known of one aircraft: the description as the file gives it. What is not known is null.</summary>
public sealed record Aircraft
{
    public required string Name { get; init; }
    public string Builder { get; init; } = "";
    public string Note { get; init; } = "";
    public Display Display { get; init; } = new();
    public Surroundings? Environment { get; init; }
    public Basis Basis { get; init; } = Basis.AmateurBuilt;
    public Yardstick Yardstick { get; init; } = Yardstick.Mil1472;

    /// <summary>Measured places by name; others refer to them.</summary>
    public EquatableList<NamedPoint> Points { get; init; } = [];

    public Pilot? Pilot { get; init; }

    /// <summary>Sheets that carry bushings.</summary>
    public EquatableList<Sheet> Sheets { get; init; } = [];

    /// <summary>What handles must not meet: stick, yoke, knees, frames.</summary>
    public EquatableList<Body> Bodies { get; init; } = [];

    public EquatableList<Run> Runs { get; init; } = [];
}

/// <summary>How figures are shown to this builder.</summary>
public sealed record Display
{
    public LengthUnit Length { get; init; } = LengthUnit.Inch;
    public ForceUnit Force { get; init; } = ForceUnit.PoundForce;

    /// <summary>Fractions of an inch are written to this denominator: 16, 32 or 64.</summary>
    public int Fraction { get; init; } = 64;
}

public enum LengthUnit
{
    Inch,
    Millimetre,
}

public enum ForceUnit
{
    PoundForce,
    Newton,
}

/// <summary>The published list of hand forces that the aircraft is measured against.</summary>
public enum Yardstick
{
    /// <summary>MIL-STD-1472E 5.4.3.1.8.7: a guide for everybody.</summary>
    Mil1472,

    /// <summary>14 CFR 23.143(c) before Amendment 64, for comparison: written for flight controls.</summary>
    Fac23,

    /// <summary>The builder's own limit, named at each run.</summary>
    User,
}

/// <summary>Material of the structure that spans the distances, and the temperatures it sees.</summary>
public sealed record Surroundings
{
    public required AirframeMaterial Airframe { get; init; }

    /// <summary>Temperature at which the controls are rigged.</summary>
    public required Temperature Rigged { get; init; }

    /// <summary>Coldest morning on the ramp: the whole aircraft.</summary>
    public required Temperature Coldest { get; init; }

    /// <summary>Hottest by zone.</summary>
    public required Temperature Cabin { get; init; }
    public required Temperature EngineBay { get; init; }

    /// <summary>Hottest anywhere else in the structure (tail cone, wing, float).</summary>
    public required Temperature Elsewhere { get; init; }
}

public enum AirframeMaterial
{
    Aluminium,
    SteelTube,
    CarbonComposite,
    GlassComposite,
    Wood,
}

/// <summary>A place in the aircraft: station (aft), buttline (right), waterline (up).</summary>
/// <param name="At">Not known where the readings give no place.</param>
/// <param name="Taped">How it was measured; null: typed as coordinates.</param>
public sealed record NamedPoint(string Name, PointAt At, TapedPlace? Taped = null);

/// <summary>Three coordinates with limits, in aircraft axes: station aft, buttline right, waterline up.</summary>
public sealed record PointAt(Toleranced<Length> Station, Toleranced<Length> Buttline, Toleranced<Length> Waterline)
{
    /// <summary>The named point that was referred to; empty: typed in place.</summary>
    public string Name { get; init; } = "";

    /// <summary>False: the readings of the named point give no place.</summary>
    public bool IsKnown => double.IsFinite(Station.Nominal.Metres + Buttline.Nominal.Metres + Waterline.Nominal.Metres);

    public static PointAt NotKnown(string name)
    {
        var none = Toleranced<Length>.Exact(new(double.NaN));
        return new(none, none, none) { Name = name };
    }
}

/// <summary>A direction in aircraft axes, any length above zero.</summary>
public sealed record DirectionAt(double Aft, double Right, double Up);
