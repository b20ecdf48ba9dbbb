using PileController.Physics.Houses;

namespace PileController.Plans.Sketch;

/// <summary>The house on its design night and over the season. Losses only: the sun comes on top and helps.</summary>
internal static class HouseSketching
{
    public static SketchHouse Of(SketchTrials trials, HouseLoad load)
    {
        HouseBuild house = trials.Settings.House;
        double insideC = trials.Settings.Control.HouseNightC;
        return new SketchHouse(
            load.DesignOutsideC, insideC, load.DesignWatts(house, insideC), load.NightDegreeHours + load.DayDegreeHours,
            load.SeasonKWh(house), [.. HouseChange.For(house).Select(change => WhatIf(trials, load, change))]);
    }

    public static SketchWhatIf WhatIf(SketchTrials trials, HouseLoad load, HouseChange change)
    {
        HouseBuild house = change.Change(trials.Settings.House);
        HouseLoad lowered = change.LowerKelvin > 0 ? HouseLoad.Of(trials, change.LowerKelvin) : load;
        double insideC = trials.Settings.Control.HouseNightC - change.LowerKelvin;
        return new SketchWhatIf(
            change.Kind, Math.Max(0, load.DesignWatts(house, insideC) - change.NightStoreWatts), lowered.SeasonKWh(house));
    }
}
