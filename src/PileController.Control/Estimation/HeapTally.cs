namespace PileController.Control.Estimation;

/// <summary>What was metered since the observer last took anything in.</summary>
/// <param name="Seconds">How long ago that was, s.</param>
/// <param name="WaterJ">Heat the water took, J.</param>
/// <param name="FlowJPerK">Water × heat capacity that ran, J/K.</param>
/// <param name="ReturnJ">The same times the temperature it came in with, J.</param>
/// <param name="DuctJ">Heat the air of closed ducts took, J.</param>
/// <param name="BlownM3">Air drawn through the heap itself, m³.</param>
/// <param name="OutsideKelvinSeconds">Air outside × time, °C·s.</param>
/// <param name="UnmeteredSeconds">Time in which no meter told the flow, s.</param>
/// <param name="BlindSeconds">Time in which supply or return were not told, s.</param>
public readonly record struct HeapTally(
    double Seconds, double WaterJ, double FlowJPerK, double ReturnJ, double DuctJ, double BlownM3, double OutsideKelvinSeconds,
    double UnmeteredSeconds, double BlindSeconds)
{
    /// <summary>Metered heat to the water, W.</summary>
    public double WaterWatts => Mean(WaterJ);

    /// <summary>The water that ran, as a mean over the time.</summary>
    public HeapFlow Flow => FlowJPerK > 0 ? new(Mean(FlowJPerK), ReturnJ / FlowJPerK) : default;

    /// <summary>Air outside, °C.</summary>
    public double OutsideC => Mean(OutsideKelvinSeconds);

    /// <summary>What bears on the heap besides the water.</summary>
    /// <param name="groundC">Deep ground, °C.</param>
    public HeapLoad Load(double groundC) => new(0, 0, Mean(DuctJ), OutsideC, groundC, Mean(BlownM3));

    private double Mean(double sum) => Seconds > 0 ? sum / Seconds : 0;
}
