using Throwright.Engine.Model;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

internal static partial class AircraftDescription
{
    private static class TapedShape
    {
        private static readonly OtherPointShape Other = new();

        public static readonly Member<EquatableList<TapeDistance>> Distances = Optional("taped", new DistancesShape(), "Distances off a tape, each under the name of the point it is measured from. Three fix a place, the fourth checks it.", [], "");
        public static readonly Member<Length> Tape = Optional("tape", new HalfShape("0.01 mm", "1 m"), "How far a reading may be off, to either side, where it names no limits of its own. Left out: the published figure.");
        public static readonly Member<Toleranced<Length>> Station = Optional("station", new TolerancedShape<Length>("-100 m", "100 m"), "Station, if it could be read directly.");
        public static readonly Member<Toleranced<Length>> Buttline = Optional("buttline", new TolerancedShape<Length>("-100 m", "100 m"), "Buttline, if it could be read directly.");
        public static readonly Member<Toleranced<Length>> Waterline = Optional("waterline", new TolerancedShape<Length>("-100 m", "100 m"), "Waterline, if it could be read directly.");
        public static readonly Member<string> Level = Optional("level", Other, "A point of the same waterline, by spirit level or water tube with the aircraft levelled.");
        public static readonly Member<string> Plumb = Optional("plumb", Other, "A point straight above or below this one, by plumb line with the aircraft levelled.");
        public static readonly Member<string> SameStation = Optional("sameStation", Other, "A point of the same station, e.g. on the same frame.");
        public static readonly Member<string> SameButtline = Optional("sameButtline", Other, "A point of the same buttline.");
        public static readonly Member<EquatableList<string>> InLine = Optional("inLine", new ListShape<string>(Other, "names of points", 2, least: 2, noneTwice: true), "Two points with which this one is in line, by a string or a straight edge.", [], "");
        public static readonly Member<Length> Within = Optional("within", new HalfShape("0.01 mm", "1 m"), "How far level, plumb line, string and the like may be off, to either side. Left out: the published figure.");
        public static readonly Member<SideAt> Side = Optional("side", new SideShape(), "Which of two mirrored places is meant, where the points measured from lie in one plane: further that way than the other place, or on that side of a named point (\"rightOf datum\").");
        public static readonly Member<PointAt> Noted = Optional("at", Point, "Written by `throwright measure --write`: the coordinates that the readings give. The readings count.");

        public static readonly ObjectShape<TapedPlace> Shape = new(
            "tapedPlace",
            "a place by tape",
            [Distances, Tape, Station, Buttline, Waterline, Level, Plumb, SameStation, SameButtline, InLine, Within, Side, Noted],
            g => new()
            {
                Distances = g.Or(Distances),
                Tape = g.Maybe(Tape),
                Station = g.Maybe(Station),
                Buttline = g.Maybe(Buttline),
                Waterline = g.Maybe(Waterline),
                Level = g.Item(Level) ?? "",
                Plumb = g.Item(Plumb) ?? "",
                SameStation = g.Item(SameStation) ?? "",
                SameButtline = g.Item(SameButtline) ?? "",
                InLine = g.Or(InLine),
                Within = g.Maybe(Within),
                Side = g.Item(Side),
                Noted = g.Item(Noted),
            });
    }
}
