using PileController.Control;
using PileController.Physics.Houses;
using PileController.Physics.Sky.Weather;
using PileController.Plans.Climate;

namespace PileController.Plans.Sketch;

/// <summary>What the weather of the season asks of a house at its set points.</summary>
/// <param name="DesignOutsideC">The design night: 99 of 100 hours of the season are warmer, °C.</param>
/// <param name="NightDegreeHours">Kelvin below the set point over the hours without sun, K·h.</param>
/// <param name="DayDegreeHours">The same over the hours with sun, K·h.</param>
internal sealed record HouseLoad(double DesignOutsideC, double NightDegreeHours, double DayDegreeHours)
{
    private const long HourMilliseconds = 3_600_000;

    // The curtain is drawn when there is no more sun than this, W/m².
    private const double NightSunWPerM2 = 1;

    public static HouseLoad Of(SketchTrials trials, double lowerKelvin = 0)
    {
        ControlSettings control = trials.Settings.Control;
        double night = 0;
        double day = 0;
        for (int hour = 0; hour < 24 * trials.Days; hour++)
        {
            WeatherSample sky = trials.Weather.At(trials.StartUtcMilliseconds + (hour * HourMilliseconds));
            double clock = hour % 24;
            double wanted = clock >= control.DayBeginsHour && clock < control.NightBeginsHour ? control.HouseDayC : control.HouseNightC;
            double kelvin = Math.Max(0, wanted - lowerKelvin - sky.OutsideC);
            if (sky.SunWPerM2 > NightSunWPerM2)
            {
                day += kelvin;
            }
            else
            {
                night += kelvin;
            }
        }

        return new HouseLoad(DesignOutsideOf(trials), night, day);
    }

    /// <summary>Loss at the design night with the curtain drawn, W.</summary>
    public double DesignWatts(HouseBuild house, double insideC) =>
        Math.Max(0, CurtainedWPerK(house) * (insideC - DesignOutsideC));

    /// <summary>Loss over the season at the set points, before any sun, kWh.</summary>
    public double SeasonKWh(HouseBuild house) =>
        ((CurtainedWPerK(house) * NightDegreeHours) + (house.LossWPerK * DayDegreeHours)) / 1000;

    private static double CurtainedWPerK(HouseBuild house) =>
        house.LossWPerK - (house.CurtainSaving * house.GlazingAreaM2 * house.GlazingUWPerM2K);

    /// <summary>The design night of the season, °C.</summary>
    public static double DesignOutsideOf(SketchTrials trials) => ClimateSummary.Of(
        trials.Weather, trials.StartUtcMilliseconds, trials.StartUtcMilliseconds + (24 * HourMilliseconds * trials.Days),
        trials.Settings.Control.HouseNightC).DesignC;
}
