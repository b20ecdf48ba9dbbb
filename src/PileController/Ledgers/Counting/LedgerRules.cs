using PileController.Records.Accounts;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Ledgers.Counting;

/// <summary>What ticks are held against, from settings.</summary>
internal static class LedgerRules
{
    /// <summary>
    /// The rules of a holding. Its days are those of its time zone, summer time included; a simulated one lives in standard
    /// time all year.
    /// </summary>
    public static AccountRules Of(PileSettings settings)
    {
        int standard = HoldingBuild.StandardOffsetMinutes(settings);
        return new AccountRules(
            settings.Control.TickSeconds, settings.Control.HeapFloorC, settings.Control.HouseMinimumC,
            settings.Rig.Simulated ? _ => standard : settings.Site.OffsetMinutesAt);
    }
}
