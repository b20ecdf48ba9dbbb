using PileController.Control.Readings;
using static PileController.Alarms.AlarmPriority;
using static PileController.Alarms.Signs;

namespace PileController.Alarms.Rows;

/// <summary>The greenhouse, and the night ahead of it.</summary>
internal static class HouseRows
{
    private const double Hour = 3600;
    private const double Minute = 60;

    // Between the morning the statement reaches to and noon it speaks of a night that is far off.
    private const double NoonHour = 12;
    private const double EveningHour = Control.Foresight.Tonight.EveningHour;
    private const double DarkHour = EveningHour + 2;
    private const double MorningHour = Control.Foresight.Tonight.MorningHour;
    private const double ChanceDeadBand = 0.1;

    // A spell draws breath for some days, and is one matter: who has put a heater up is not to put it away and be called again
    // (common practice, no source).
    private const double SpellHours = 5 * 24;

    // Ice needs it colder than this in the coldest corner; a probe hangs in the middle (common practice, no source).
    private const double PlantsFreezeC = 1;

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
    [
        new("tonightPoor", "Cold spell: nights likely too cold for the house", Medium, AlarmGroup.House, (facts, standing) => Poor(facts, standing, place.Control.HouseMinimumC))
        {
            Cause = "Nights colder than what the heap can give.",
            Consequence = $"The house falls below its minimum, {place.Control.HouseMinimumC:0.#} °C, and plants suffer.",
            Action = "Close the vents and draw the curtain; set up other heat before dark. A burner needs air and a carbon-monoxide alarm; an electric heater needs residual-current protection and a dry place. Leave the heater in place until this alarm ends, five days after the last such night.",
            ClearSeconds = SpellHours * Hour, DeadBand = ChanceDeadBand, Unit = "of the chance", RemindSeconds = 6 * Hour,
            Reminds = f => f.At.LocalHour is >= EveningHour and < EveningHour + 1 && f.Decision?.Tonight is { Poor: true },
            Detail = f => f.Decision?.Tonight is { } said ? $"tonight {100 * said.ChanceOfHolding:0} % chance of holding; {said.MinimumP50C:0.0} °C expected" : null,
        },
        new(Sources.HouseBlind, "The house probe cannot be believed", Medium, AlarmGroup.Probes, place.Interlock("houseBlind"))
        {
            Cause = "Its cable is torn or wet, it hangs in a plug that corrodes, or it failed.",
            Consequence = "The controller reckons the house from the air outside; a freezing house would go unseen.",
            Action = "Look at the house yourself tonight. Look at the probe's cable and plug; it carries a few volts only.",
            DelaySeconds = Math.Max(5 * Minute, place.Persistence("houseBlind")), BridgeSeconds = 4.5 * Minute, ClearSeconds = 15 * Minute,
            FollowsFrom = [Sources.Rig, Sources.Bus],
            Detail = f => f.Decision is { } d ? Panel.Now.ProbeWords.Quality(d.Readings[Channel.House].Quality) : null,
        },
        new("houseFrost", "The house is about to freeze", High, AlarmGroup.House, Below(f => f.Value(Channel.House), PlantsFreezeC, 2))
        {
            Cause = "A night beyond what the heap can give, an open vent, a torn cover, or a rig that has stopped.",
            Consequence = "Plants die, and pipes in the house freeze.",
            Action = "Close the vents, bring other heat now. A burner needs air and a carbon-monoxide alarm; an electric heater needs residual-current protection and a dry place.",
            DelaySeconds = 10 * Minute, ClearSeconds = 48 * Hour, DeadBand = 2, Unit = "K",
        },
        new("houseCold", "The house is below its minimum", Medium, AlarmGroup.House,
            Below(f => f.Value(Channel.House), place.Control.HouseMinimumC - ColdMarginK, 1 + ColdMarginK))
        {
            Cause = "A colder night than was foretold, an open vent, a torn cover, or less heat from the heap than was granted.",
            Consequence = "Plants suffer.",
            Action = "Close the vents, look that the rig gives heat, bring other heat. A burner needs air and a carbon-monoxide alarm.",
            DelaySeconds = 30 * Minute, ClearSeconds = 48 * Hour, DeadBand = 1 + ColdMarginK, Unit = "K", FollowsFrom = ["tonightPoor", "houseFrost"],
        },
        new("carbonDioxide", "Carbon dioxide in the house: do not go in", High, AlarmGroup.House, place.Interlock("carbonDioxide"))
        {
            Cause = "Gas of the heap that comes over with the air or along the pipes, a burner without a flue, or too little air from outside.",
            Consequence = "Whoever goes in may faint, and whoever follows as well; where there is carbon dioxide of a heap there may be carbon monoxide. The blower is held off.",
            Action = "Do not go in. Open doors and vents from outside and wait until the reading is low; let nobody go in after somebody who fell, call for help. Find where the gas comes in. Limits differ: read your local codes.",
            DelaySeconds = place.Persistence("carbonDioxide"), ClearSeconds = Hour, DeadBand = 500, Unit = "ppm", ProtectsPeople = true,
        },
        new("houseHot", "The house is too warm", Medium, AlarmGroup.House, place.Interlock("houseHot"))
        {
            Cause = "Sun on closed vents, or a house probe that lies.",
            Consequence = "Plants wilt. All draw is held off.",
            Action = "Open the vents; feel whether the house is as warm as the page says.",
            DelaySeconds = Hour, ClearSeconds = 12 * Hour, DeadBand = 2, Unit = "K",
        },
    ];

    // A night that brushes its minimum is what the heap was told to allow.
    private const double ColdMarginK = 0.5;

    private static bool? Poor(AlarmFacts facts, bool standing, double minimumC)
    {
        if (facts.Decision?.Tonight is not { } said)
        {
            return null;
        }

        if (standing)
        {
            return said.ChanceOfHolding < Control.Foresight.Tonight.PoorBelow + ChanceDeadBand;
        }

        // From noon to dark there is time to set up other heat; later only what may be worse than a brush is worth being woken
        // for, and only while heat set up now would still come in time.
        return said.Poor && (facts.At.LocalHour is >= NoonHour and < DarkHour
            || ((facts.At.LocalHour >= DarkHour || facts.At.LocalHour < MorningHour) && said.MinimumP10C < minimumC - ColdMarginK
                && said.FromUtcMilliseconds > facts.At.UtcMilliseconds));
    }
}
