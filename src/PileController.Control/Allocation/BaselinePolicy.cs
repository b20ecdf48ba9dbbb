using PileController.Control.Decisions;
using PileController.Control.Means;
using PileController.Control.Readings;
using PileController.Control.Regulation;

namespace PileController.Control.Allocation;

/// <summary>
/// The rules a season is compared with: same plant, same interlocks, same hardware, only the draw rule differs, and
/// none draws before the heap has lit. They know full and off only.
/// </summary>
internal static class BaselinePolicy
{
    private const double ThermostatBandKelvin = 0.5;

    public static Grant Decide(
        ControlSettings settings, in RegulatorMemory memory, RigReadings readings, in HeapEstimate estimate, in Reach reach,
        double houseC, double localHour)
    {
        double set = WantRule.SetPointC(settings, localHour);
        bool thermostat = memory.ThermostatOn ? houseC < set + ThermostatBandKelvin : houseC < set - ThermostatBandKelvin;
        bool cutOut = memory.CutOut;
        if (readings.TryGet(Channel.HeapTurns, out double turns))
        {
            cutOut = cutOut ? turns < settings.CutoutOnC : turns < settings.CutoutOffC;
        }

        bool night = localHour >= settings.NightBeginsHour || localHour < settings.DayBeginsHour;
        bool wanted = settings.Policy switch
        {
            DrawPolicy.Cutout or DrawPolicy.Thermostat => thermostat,
            DrawPolicy.Timer => night,
            DrawPolicy.Always => true,
            _ => false,
        };
        bool held = settings.Policy == DrawPolicy.Cutout && cutOut;
        double want = wanted ? Math.Max(1, reach.WaterW) : 0;
        bool on = wanted && !held && estimate.Lit;
        Curb curb = !wanted ? Curb.NoWant : !estimate.Lit ? Curb.NotLit : held ? Curb.Floor : Curb.None;
        return new Grant(
            want, want, on ? want : 0, 0, reach.AirW, curb, set, true, thermostat, cutOut, false, true, false);
    }
}
