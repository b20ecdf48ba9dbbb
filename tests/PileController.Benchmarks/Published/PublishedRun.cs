using PileController.Physics;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Benchmarks.Published;

/// <summary>
/// A reported heap run by the heap model with no controller: drawn on at its flow for its hours, and every day written
/// down. Each step finds the draw together with the cooling it causes.
/// </summary>
internal sealed class PublishedRun
{
    private const double StepSeconds = 900;
    private const double DaySeconds = 86_400;
    private const double GroundC = 9;

    private readonly List<double> _zoneC = [];
    private readonly List<double> _coreC = [];
    private readonly List<double> _outletC = [];
    private readonly List<double> _restedC = [];
    private readonly double _carriedWPerK;
    private readonly double _pipeKPerW;
    private readonly double _inletC;

    public PublishedRun(PublishedHeap heap, HeapBuild build, WeatherSeries weather, long startUtcMilliseconds, double inletC)
    {
        Days = heap.Days;
        DryKg = build.WetMassKg * (1 - build.MoistureFraction);
        _inletC = inletC;
        _pipeKPerW = LoopCircuit.PipeWallKPerW(build.Coil);
        _carriedWPerK = heap.Draw.FlowLitresPerMinute <= 0
            ? 0
            : Water.MassFlowKgPerS(heap.Draw.FlowLitresPerMinute, inletC) * Water.SpecificHeatJPerKgK(inletC);
        Heap body = new(build);
        int perDay = (int)(DaySeconds / StepSeconds);
        for (int day = 0; day < heap.Days; day++)
        {
            double zone = 0, core = 0, outlet = 0, drawnHours = 0;
            for (int i = 0; i < perDay; i++)
            {
                double hour = 24.0 * i / perDay;
                bool runs = day >= heap.Draw.FromDay && hour < heap.Draw.HoursPerDay && _carriedWPerK > 0;
                double watts = runs ? Taken(body) : 0;
                body.StepQuick(StepSeconds, watts * StepSeconds, 0, 0);
                WeatherSample sky = weather.At(startUtcMilliseconds + (long)(((day * DaySeconds) + ((i + 0.5) * StepSeconds)) * 1000));
                body.StepSlow(StepSeconds, new HeapSite(sky.OutsideC, sky.Humidity, sky.WindMPerS, GroundC, 0));
                zone += body.ActiveZoneC / perDay;
                core += body.AtRadiusC(0) / perDay;
                outlet += runs ? inletC + (watts / _carriedWPerK) : 0;
                drawnHours += runs ? 1 : 0;
            }

            _zoneC.Add(zone);
            _coreC.Add(core);
            _outletC.Add(drawnHours > 0 ? outlet / drawnHours : inletC);
            _restedC.Add(body.TurnsShellC);
        }

        Ledger = body.Ledger;
    }

    /// <summary>How long it was followed.</summary>
    public int Days { get; }

    /// <summary>Dry matter as built, kg.</summary>
    public double DryKg { get; }

    /// <summary>The sums at the end.</summary>
    public HeapLedger Ledger { get; }

    /// <summary>Mean heat made over all days, W.</summary>
    public double GeneratedWatts => Ledger.GeneratedJ / (Days * DaySeconds);

    /// <summary>Mean heat drawn over all days, W.</summary>
    public double DrawnWatts => Ledger.DrawnJ / (Days * DaySeconds);

    /// <summary>Hottest day of the core, °C.</summary>
    public double PeakCoreC => _coreC.Max();

    /// <summary>Hottest day of the active zone, °C.</summary>
    public double PeakZoneC => _zoneC.Max();

    /// <summary>First day on which the core is within 2 K of its hottest.</summary>
    public int PeakDay => _coreC.FindIndex(c => c >= PeakCoreC - 2) + 1;

    /// <summary>Weeks for which the core stays within 5 K of its hottest.</summary>
    public double WeeksNearPeak => _coreC.Count(c => c >= PeakCoreC - 5) / 7.0;

    /// <summary>Mean core over a span of days, °C.</summary>
    public double CoreC(int fromDay, int toDay) => _coreC.Skip(fromDay).Take(toDay - fromDay).Average();

    /// <summary>Mean active zone over a span of days, °C.</summary>
    public double ZoneC(int fromDay, int toDay) => _zoneC.Skip(fromDay).Take(toDay - fromDay).Average();

    /// <summary>Mean outlet of the coil while it runs over a span of days, °C.</summary>
    public double OutletC(int fromDay, int toDay) => _outletC.Skip(fromDay).Take(toDay - fromDay).Average();

    /// <summary>Shell of the turns at the end of a day, after its rest, °C.</summary>
    public double RestedC(int day) => _restedC[day - 1];

    /// <summary>Days for which the active zone is at or above a temperature, from the first such day to the first below it.</summary>
    public double? DaysHeld(double celsius)
    {
        int first = _zoneC.FindIndex(c => c >= celsius);
        if (first < 0)
        {
            return null;
        }

        int end = _zoneC.FindIndex(first, c => c < celsius);
        return (end < 0 ? _zoneC.Count : end) - first;
    }

    private double Taken(Heap body)
    {
        double conductance = 1 / ((1 / body.WallWPerK) + _pipeKPerW);
        double reach = _carriedWPerK * (1 - Portable.Exp(-conductance / _carriedWPerK));
        (double undrawnC, double kelvinPerWatt) = body.WallAfter(StepSeconds);
        return Math.Max(0, reach * (undrawnC - _inletC) / (1 + (reach * kelvinPerWatt)));
    }
}
