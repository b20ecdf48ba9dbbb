using PileController.Physics.Hydraulics;

namespace PileController.Physics.Plants;

/// <summary>A lead battery under a solar panel, as far as its voltage tells.</summary>
internal sealed class Battery(PowerBuild build, double charge, double volts)
{
    /// <summary>Charge, 0 empty to 1 full.</summary>
    public double Charge { get; private set; } = charge;

    /// <summary>Terminal voltage: rest voltage by charge, lifted while charging (common practice, no source).</summary>
    public double Volts { get; private set; } = volts;

    /// <summary>True when there is nothing left to run pump and blower.</summary>
    public bool Empty => build.BatteryWattHours > 0 && Charge <= 0;

    public void Step(double seconds, double loadW, double sunWPerM2)
    {
        if (build.BatteryWattHours <= 0)
        {
            return;
        }

        double chargeW = build.PanelWatts * DayPower.Yield * sunWPerM2 * 0.001;
        double netW = chargeW - loadW - build.IdleWatts;
        Charge = Math.Clamp(Charge + (netW * seconds / (3600 * build.BatteryWattHours)), 0, 1);
        Volts = 10.9 + (1.8 * Charge) + Math.Clamp(netW * 0.006, -0.15, 0.8);
    }
}
