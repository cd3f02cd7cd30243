using Throwright.Engine.Chain;
using Throwright.Papers.Ladder;
using Throwright.Shapes;

namespace Throwright.Papers.Tests;

/// <summary>Curves made by hand for the ladders of <see cref="LadderCases"/>: an arm that turns 90 degrees, friction that changes over it.</summary>
internal static class CurveCases
{
    public static TravelCurve For(LadderLayout layout, bool forces = true, int count = 91)
    {
        var body = layout.Body!;
        var shift = body.LostMotion + body.Stretch;
        var points = new List<TravelPoint>();
        for (var i = 0; i < count; i++)
        {
            var t = (double)i / (count - 1);
            var angle = ((t * 90) - 45) * Math.PI / 180;
            var wire = body.Throw * 0.5 * (1 + (Math.Sin(angle) / Math.Sin(Math.PI / 4)));
            double pull = 36 + (18 * (t - 0.4) * (t - 0.4)) + (6 * t), push = 21 + (9 * t * t);
            points.Add(new(
                angle, body.PushStop.Nominal + shift + wire, body.PushStop.Nominal + wire,
                forces ? new(pull, pull * 0.72, pull * 1.33) : ForceBand.Unknown,
                forces ? new(push, push * 0.75, push * 1.3) : ForceBand.Unknown));
        }

        return new(points.ToEquatableList());
    }
}
