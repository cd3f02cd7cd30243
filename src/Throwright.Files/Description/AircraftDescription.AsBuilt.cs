using Throwright.Engine.Model;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Description;

internal static partial class AircraftDescription
{
    private static class AsBuiltShape
    {
        /// <summary>Readings outside these years are a slip of the finger: a file has no clock to tell today by.</summary>
        private const int FirstYear = 1950, LastYear = 2100;

        public static readonly Member<string> Date = Needed("date", new TextShape(10, mayBeEmpty: false), "Day of the readings, year-month-day.");
        public static readonly Member<string> By = Words("by", Line, "Who read them.");
        public static readonly Member<string> AboutIt = Words("note", Note, "What was done, and anything worth keeping.");
        public static readonly Member<bool> Again = Yes("rerigged", "Swivel, anchor or a part was moved or replaced just before: drift of the readings counts anew from here.");
        public static readonly Member<Temperature> Degrees = Optional("temperature", new ExactShape<Temperature>("-60 degC", "80 degC"), "In the shop at that moment.");
        public static readonly Member<Length> KnobAtPush = Optional("knobAtPush", new ExactShape<Length>("0 mm", "2 m"), "Knob from its IN stop with the device against its push stop, pushed lightly.");
        public static readonly Member<Length> KnobAtPull = Optional("knobAtPull", new ExactShape<Length>("0 mm", "2 m"), "Knob from its IN stop with the device against its pull stop, pulled lightly.");
        public static readonly Member<Length> TipGap = Optional("tipGap", new ExactShape<Length>("0 mm", "2 m"), "Swivel to conduit tip, device on its pull stop.");
        public static readonly Member<Length> Lost = Optional("lostMotion", new ExactShape<Length>("0 mm", "500 mm"), "Knob movement at a reversal until the device follows, at mid travel.");
        public static readonly Member<Angle> Sweep = Optional("sweep", new ExactShape<Angle>("0.1 deg", "360 deg"), "Arm from stop to stop.");
        public static readonly Member<Force> Pull = Optional("pull", new ExactShape<Force>("0 N", "10000 N"), "Slow pull through mid travel.");
        public static readonly Member<Force> Push = Optional("push", new ExactShape<Force>("0 N", "10000 N"), "Slow push through mid travel.");
        public static readonly Member<Force> Hold = Optional("hold", new ExactShape<Force>("0 N", "10000 N"), "Pull on the wire at the device that the set control held without creeping.");

        public static readonly ObjectShape<AsBuilt> Shape = new(
            "asBuilt",
            "readings on the aircraft",
            [Date, By, AboutIt, Again, Degrees, KnobAtPush, KnobAtPull, TipGap, Lost, Sweep, Pull, Push, Hold],
            g => new()
            {
                Date = g.Must(Date),
                By = g.Or(By),
                Note = g.Or(AboutIt),
                Rerigged = g.Or(Again),
                Temperature = g.Maybe(Degrees),
                KnobAtPush = g.Maybe(KnobAtPush),
                KnobAtPull = g.Maybe(KnobAtPull),
                TipGap = g.Maybe(TipGap),
                LostMotion = g.Maybe(Lost),
                Sweep = g.Maybe(Sweep),
                Pull = g.Maybe(Pull),
                Push = g.Maybe(Push),
                Hold = g.Maybe(Hold),
            },
            new Rule(
                $"`date` is written year-month-day, e.g. 2026-03-01, in the years {FirstYear} to {LastYear}.",
                g =>
                {
                    if (g.Item(Date) is not { } date)
                        return;
                    if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out var day))
                        g.RefuseValue(Date, g.Shown(Date), "a day as year-month-day, e.g. \"2026-03-01\"");
                    else if (day.Year is < FirstYear or > LastYear)
                        g.RefuseValue(Date, g.Shown(Date), $"a day in the years {FirstYear} to {LastYear}");
                }),
            new Rule(
                "The knob stands farther out at the pull stop than at the push stop.",
                g =>
                {
                    if (g.Maybe(KnobAtPull)?.Metres <= g.Maybe(KnobAtPush)?.Metres)
                        g.RefuseValue(KnobAtPull, $"{g.Shown(KnobAtPull)}: not farther out than knobAtPush, {g.Shown(KnobAtPush)}", "a knob place farther out than at the push stop");
                }));
    }
}
