using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Benchmarks.Bounds;

/// <summary>What a run leaves for the prices: the whole plant each hour, and what moves fast every ten minutes.</summary>
internal sealed class Trace
{
    public const double MarkSeconds = 600;
    public const int MarksAnHour = 6;

    public List<PlantState> Hours { get; } = [];

    public List<Mark> Marks { get; } = [];

    /// <summary>Hour from which the plan may draw; the count of hours when the heap never lit.</summary>
    public int LitHour { get; set; } = int.MaxValue;
}

/// <summary>An instant of a run. Mean flow, blower duty and load of the battery are those of the ten minutes that follow; so is whether it held anything back.</summary>
internal readonly record struct Mark(
    WeatherSample Sky, double WallC, double WallWPerK, double DuctShellC, double DrumC, double TankC, double HouseC,
    double ActiveZoneC, double FlowLitresPerMinute, double BlowerDuty, double LoadW, bool Held);
