using Throwright.Engine.Findings;
using Throwright.Shapes;
using Throwright.Shapes.Frames;

namespace Throwright.Engine.Measure;

/// <summary>One axis of the uncertainty ellipsoid: direction and standard deviation along it, m.</summary>
public sealed record UncertaintyAxis(Vector3 Along, double Sigma);

/// <summary>One reading against the point found.</summary>
/// <param name="Residual">Reading less distance, m.</param>
/// <param name="Spread">Residual over its own standard deviation; 0 where nothing checks this reading.</param>
/// <param name="Checked">Part of an error in this reading that would show in its residual, 0..1.</param>
public sealed record ReadingResidual(TapeReading Reading, double Residual, double Spread, double Checked)
{
    /// <summary>How much too long the reading is if it alone is wrong, m; 0 where nothing checks it.</summary>
    public double Error => Checked > 1e-6 ? Residual / Checked : 0;
}

/// <summary>The next reading to take.</summary>
/// <param name="Sigma">Standard deviation along the worst axis with it, m.</param>
public sealed record NextReading(KnownPoint From, double Sigma);

/// <summary>A reading that may be the wrong one.</summary>
/// <param name="Fall">By how much chi-square falls without it.</param>
/// <param name="Error">How much too long it reads if it alone is wrong, m.</param>
/// <param name="Place">Where the point is if it alone is wrong.</param>
/// <param name="Sigma">Standard deviations of that place, m.</param>
public sealed record Suspect(TapeReading Reading, double Fall, double Error, Vector3 Place, Vector3 Sigma);

/// <summary>One more distance that tells which of the two likeliest suspects is wrong.</summary>
/// <param name="IfFirst">What it reads if the first suspect is the wrong one, m.</param>
/// <param name="IfSecond">What it reads if the second is, m.</param>
/// <param name="Apart">The two over the standard deviation of their difference: above about six they can't be mixed up.</param>
public sealed record TellingReading(KnownPoint From, double IfFirst, double IfSecond, double Apart);

/// <summary>A point found from tape distances.</summary>
public sealed record TapedPoint
{
    public required Vector3 Place { get; init; }

    /// <summary>Square roots of the diagonal of the covariance: standard deviations along station, buttline, waterline, m; widened where the readings disagree.</summary>
    public required Vector3 Sigma { get; init; }

    /// <summary>Three axes at right angles, the worst first; widened where the readings disagree.</summary>
    public required EquatableList<UncertaintyAxis> Axes { get; init; }

    /// <summary>How far the place may be off along each coordinate, m: three deviations, or as far as a suspect's place reaches.</summary>
    public required Vector3 Off { get; init; }

    /// <summary>By how much the deviations were widened: sqrt(chi-square / spare readings) where the readings disagree, else 1.</summary>
    public required double Widened { get; init; }
    public required EquatableList<ReadingResidual> Residuals { get; init; }

    /// <summary>Sum of squares of residual over sigma.</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Readings more than needed.</summary>
    public required int Redundant { get; init; }

    /// <summary>The place mirrored at the plane of the known points that fits about as well; null: none does.</summary>
    public required Vector3? Mirror { get; init; }

    /// <summary>Readings that disagree with the others, the likeliest first; several: can't tell which; none: no one reading is to blame.</summary>
    public required EquatableList<Suspect> Suspects { get; init; }

    /// <summary>Of the spare points, the one whose distance tells the two likeliest suspects apart best; null: one suspect, or no point would.</summary>
    public required TellingReading? Telling { get; init; }

    /// <summary>Of the spare points, the one that would narrow the worst axis most; null: none given.</summary>
    public required NextReading? Next { get; init; }
}

public enum NoPointReason
{
    TooFewReadings,

    /// <summary>All known points on one line: the wanted point may be anywhere on a circle around it.</summary>
    KnownPointsInLine,

    /// <summary>Two places fit and no hint was given.</summary>
    Mirrored,

    /// <summary>Two places fit and the hint does not tell them apart.</summary>
    HintDoesNotTell,

    /// <summary>The distances can't meet in one point.</summary>
    DoNotMeet,

    /// <summary>The point lies in the plane of the known points: across it the distances say next to nothing.</summary>
    InThePlane,
}

/// <summary>Why there is no point.</summary>
/// <param name="Candidates">The two places, where that is the trouble.</param>
public sealed record NoPoint(NoPointReason Reason, EquatableList<Vector3> Candidates)
{
    public string Say(FigureWriter say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return Reason switch
        {
            NoPointReason.TooFewReadings => "Three distances from three known points are needed at least; a fourth checks them.",
            NoPointReason.KnownPointsInLine => "The known points lie in one line: the point can be anywhere on a circle around it. Measure from a point off the line.",
            NoPointReason.Mirrored => $"Two places fit, {Two(say)}. {Sides()}, or measure from a point off the plane of the others.",
            NoPointReason.HintDoesNotTell => $"Two places fit, {Two(say)}, and the side named doesn't tell them apart. {Sides()}.",
            NoPointReason.DoNotMeet => "The distances don't meet in one point: one of them or a known point is wrong.",
            _ => "The point lies in the plane of the known points: how far it is off that plane can't be told. Measure from a point well off the plane.",
        };
    }

    /// <summary>The two words that part the places, as they are typed.</summary>
    private string Sides()
    {
        var way = Candidates[0] - Candidates[1];
        var (x, y, z) = (Math.Abs(way.X), Math.Abs(way.Y), Math.Abs(way.Z));
        var (more, less, at) = x >= y && x >= z ? ("aftOf", "forwardOf", way.X) : y >= z ? ("rightOf", "leftOf", way.Y) : ("above", "below", way.Z);
        var (first, second) = at > 0 ? (more, less) : (less, more);
        return $"Write \"side\": \"{first}\" beside the distances for the first, \"side\": \"{second}\" for the second";
    }

    private string Two(FigureWriter say) => string.Join(" and ", Candidates.Select(c => Numbers(c, say))) + " " + say.LengthUnitName;

    /// <summary>Station, buttline and waterline in brackets, without the unit.</summary>
    internal static string Numbers(Vector3 place, FigureWriter say) => $"({say.LengthNumber(place.X)}, {say.LengthNumber(place.Y)}, {say.LengthNumber(place.Z)})";
}

/// <summary>The point, or why there is none.</summary>
public sealed record TapeAnswer(TapedPoint? Point, NoPoint? Refusal);
