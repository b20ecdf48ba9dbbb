namespace PileController.Plans.Sketch;

/// <summary>
/// What can be said of a holding within a second, without a season of the controller: sums on the heap, coil, loop,
/// air, house, and what to change. Names are those of the JSON; SI, unit in the key.
/// </summary>
/// <param name="Heap">The heap by itself, week by week.</param>
/// <param name="Coil">What the turns can take, here and at other radii.</param>
/// <param name="Loop">The pump on its loop.</param>
/// <param name="Air">A closed duct beside air drawn through the heap.</param>
/// <param name="House">The house on its design night and over the season.</param>
/// <param name="Advice">What to change and what it brings, the best first, what is not worth it last.</param>
/// <param name="Claims">What is wished for against what the heap holds.</param>
/// <param name="Cautions">What can hurt someone here; local codes and licensed trades decide.</param>
internal sealed record PlanSketch(
    SketchHeap Heap, SketchCoil Coil, SketchLoop Loop, SketchAir Air, SketchHouse House,
    IReadOnlyList<PlanWords> Advice, IReadOnlyList<PlanWords> Claims, IReadOnlyList<PlanWords> Cautions);

/// <summary>A sentence for people in both unit systems, with the figure it turns on.</summary>
/// <param name="Kind">What it is about, a word in camelCase: turns, radius, pump, curtain, rewetting, quietHeap, scald…</param>
/// <param name="Metric">The sentence in °C, W, L.</param>
/// <param name="Us">The sentence in °F, BTU, gal.</param>
/// <param name="Watts">What it brings, W on the season's mean; null where it is not a matter of watts.</param>
/// <param name="Worth">False for a change that brings too little for its trouble.</param>
internal sealed record PlanWords(string Kind, string Metric, string Us, double? Watts = null, bool Worth = true);

/// <summary>The heap by itself.</summary>
internal sealed record SketchHeap(
    double RadiusM, double HeightM, double WetMassKg, double MoisturePercent, double DryMassKg, double DegradableKg,
    double MostHeatKWh, double VolumeM3, double SurfaceM2, double BulkDensityKgPerM3, double FreeAirSpacePercent,
    double? LitOnDay, double? FadesOnDay, double WaterLostKg, double DrumLitres, IReadOnlyList<SketchWeek> Weeks);

/// <summary>One week of the heap under the largest draw that holds its floor; means over the week.</summary>
internal sealed record SketchWeek(
    int Week, double GeneratedWatts, double LostWatts, double DrawnWatts, double ActiveZoneC, double TurnsC);

/// <summary>What the turns can take out of the heap. Conduction in the bed is the limit.</summary>
internal sealed record SketchCoil(
    double RadiusM, double LengthM, double Turns, double OuterDiameterM, double FirstHourWPerK, double MonthWPerK,
    double MeanDrawnWatts, IReadOnlyList<SketchPlace> Places);

/// <summary>The same length of pipe at another radius.</summary>
internal sealed record SketchPlace(double RadiusM, double MeanDrawnWatts);

/// <summary>The pump on its loop at full duty, valve open. Per flow and time round the loop are null where nothing flows.</summary>
internal sealed record SketchLoop(
    double FlowLitresPerMinute, double HeadM, double PumpWatts, double? WattsPerLitrePerMinute, double WattHoursPerDay,
    double VelocityMPerS, double Reynolds, bool PurgesAir, double? TransitSeconds, double? MinutesToFreezeStill);

/// <summary>The blower's air in a closed duct, and the same air drawn through the heap.</summary>
internal sealed record SketchAir(
    double FlowM3PerS, double ClosedWatts, double ClosedOutletC, double ThroughSensibleWatts, double ThroughLatentWatts,
    double ThroughWaterLostKgPerDay, double OxygenSuppliedKgPerDay, double OxygenDemandKgPerDay);

/// <summary>The house on its design night and over the season.</summary>
internal sealed record SketchHouse(
    double DesignOutsideC, double InsideC, double DesignLossWatts, double DegreeHours, double SeasonLossKWh,
    IReadOnlyList<SketchWhatIf> WhatIfs);

/// <summary>One change to the house.</summary>
internal sealed record SketchWhatIf(string Kind, double DesignLossWatts, double SeasonLossKWh);
