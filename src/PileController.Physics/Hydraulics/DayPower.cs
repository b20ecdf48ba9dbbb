namespace PileController.Physics.Hydraulics;

/// <summary>What a solar panel and a battery bear of a load that runs some hours a day.</summary>
/// <param name="PanelWatts">Panel, W in full sun, 0 for none.</param>
/// <param name="BatteryWattHours">Battery, Wh, 0 for none.</param>
/// <param name="SunHours">Hours of full sun a day, 0 to 24: the day's sunshine over 1 kW/m².</param>
public sealed record DayPower(double PanelWatts, double BatteryWattHours, double SunHours)
{
    /// <summary>Share of the panel's power that reaches the load through wiring and battery (common practice, no source).</summary>
    public const double Yield = 0.75;

    /// <summary>Share of a lead battery's charge that may be used without harm (common practice, no source).</summary>
    public const double UsableShare = 0.5;

    /// <summary>Energy the sun gives the load on such a day, Wh.</summary>
    public double HarvestWattHours => PanelWatts * SunHours * Yield;

    /// <summary>Hours a day the panel keeps a load running, 0 to 24.</summary>
    /// <param name="watts">Load, W, above 0.</param>
    public double SunnyHours(double watts)
    {
        Require.Positive(watts, "W");
        return Math.Min(24, HarvestWattHours / watts);
    }

    /// <summary>Hours the full battery keeps a load running with no sun at all.</summary>
    /// <param name="watts">Load, W, above 0.</param>
    public double DarkHours(double watts)
    {
        Require.Positive(watts, "W");
        return BatteryWattHours * UsableShare / watts;
    }
}
