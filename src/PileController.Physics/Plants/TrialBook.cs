using PileController.Physics.Heaps;

namespace PileController.Physics.Plants;

/// <summary>Keeps a trial's account: week by week, when it lit and faded, what water it lost and was given.</summary>
internal sealed class TrialBook(Heap heap, TrialDraw draw)
{
    private const double DaySeconds = 86_400;

    private readonly double _startJ = heap.StoredJ;
    private readonly double _startWaterKg = heap.WaterKg;
    private readonly List<TrialWeek> _weeks = [];
    private readonly FadeWatch _fade = new();
    private HeapLedger _weekStart = heap.Ledger;
    private double _dayStartJ;
    private double _seconds;
    private double _weekSeconds;
    private double _zoneSeconds;
    private double _turnsSeconds;
    private double _hotSeconds;
    private double _wettingJ;
    private double _wettedKg;
    private double _weekWettedKg;
    private double _hottestC = double.NegativeInfinity;
    private double? _litOnDay;
    private double? _driesOnDay;

    public bool Lit => _litOnDay is not null;

    /// <summary>Takes in one step that has just been lived.</summary>
    public void Add(Heap heap, double seconds)
    {
        double zone = heap.ActiveZoneC;
        _seconds += seconds;
        _weekSeconds += seconds;
        _zoneSeconds += zone * seconds;
        _turnsSeconds += heap.TurnsShellC * seconds;
        _hottestC = Math.Max(_hottestC, zone);
        _hotSeconds = zone >= draw.LitC ? _hotSeconds + seconds : 0;
        if (_litOnDay is null && _hotSeconds >= DaySeconds)
        {
            _litOnDay = _seconds / DaySeconds;
        }

        if (_weekSeconds >= (7 * DaySeconds) - 1)
        {
            CloseWeek(heap);
        }
    }

    /// <summary>At the end of a day: watches drying and fading, and gives the heap a drink where moisture is held.</summary>
    public void Water(Heap heap, double builtKg, double celsius)
    {
        double day = _seconds / DaySeconds;
        double madeJ = heap.Ledger.GeneratedJ;
        _fade.Add(day, (madeJ - _dayStartJ) / DaySeconds, _litOnDay);
        _dayStartJ = madeJ;
        double moisture = heap.MoistureFraction;
        if (moisture < HeapTrial.DryMoisture)
        {
            _driesOnDay ??= day;
        }

        // A heap that has not lit is left alone: cold water would only put it back.
        if (Lit && moisture < draw.HeldMoisture)
        {
            double shortKg = (draw.HeldMoisture * heap.DryKg / (1 - draw.HeldMoisture)) - heap.WaterKg;
            double kilograms = Math.Min(shortKg, draw.MostWettingShare * builtKg);
            _wettingJ += heap.Wet(kilograms, celsius);
            _wettedKg += kilograms;
            _weekWettedKg += kilograms;
        }
    }

    /// <summary>The account.</summary>
    public HeapTrialResult Result(Heap heap)
    {
        if (_weekSeconds > 0)
        {
            CloseWeek(heap);
        }

        return new HeapTrialResult(
            _seconds / DaySeconds, heap.Ledger, heap.StoredJ - _startJ, _wettingJ, _wettedKg,
            _startWaterKg + _wettedKg - heap.WaterKg, _litOnDay, _fade.FadesOnDay, _driesOnDay, _hottestC, _weeks);
    }

    private void CloseWeek(Heap heap)
    {
        HeapLedger now = heap.Ledger;
        double oxygenInKg = now.OxygenInKg - _weekStart.OxygenInKg;
        _weeks.Add(new TrialWeek(
            _weeks.Count + 1, _weekSeconds / DaySeconds,
            (now.GeneratedJ - _weekStart.GeneratedJ) / _weekSeconds,
            (now.LostJ - _weekStart.LostJ) / _weekSeconds,
            (now.DrawnJ - _weekStart.DrawnJ) / _weekSeconds,
            _zoneSeconds / _weekSeconds, _turnsSeconds / _weekSeconds, heap.MoistureFraction, _weekWettedKg,
            oxygenInKg > 0 ? (now.OxygenTakenKg - _weekStart.OxygenTakenKg) / oxygenInKg : 0));
        _weekStart = now;
        _weekSeconds = 0;
        _zoneSeconds = 0;
        _turnsSeconds = 0;
        _weekWettedKg = 0;
    }
}
