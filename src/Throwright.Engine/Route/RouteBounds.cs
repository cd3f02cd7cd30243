
namespace Throwright.Engine.Route;

/// <summary>Lengths below which there is no route.</summary>
internal static class RouteBounds
{
    public static RouteBound Find(RoutePlanCase of)
    {
        var straight = (of.End - of.Start).Size;
        var radius = of.WantedRadius;
        var oneEnded = Math.Max(ShortestWay.From(of.StartAlong, of.End - of.Start, radius), ShortestWay.From(-of.EndAlong, of.Start - of.End, radius));
        return oneEnded > straight * (1 + 1e-12) ? new(oneEnded, RouteBoundKind.OneEnded) : new(straight, RouteBoundKind.Straight);
    }
}
