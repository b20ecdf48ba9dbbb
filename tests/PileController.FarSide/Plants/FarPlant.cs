using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.FarSide.Plants;

/// <summary>
/// The holding behind the lines: given what they show and how long, it tells what the probes and the meter's wheel come to.
/// Knows no clock and no file.
/// </summary>
public sealed class FarPlant
{
    private readonly ProbeSpot[] _spots;
    private readonly double[] _shownC;
    private readonly int[] _milliC;
    private double _runDuty;

    /// <summary>A holding built as Alder Bank is, which goes on from a state; its probes have settled.</summary>
    /// <param name="state">The state.</param>
    /// <param name="weather">The weather it stands in.</param>
    /// <param name="spots">Where the thermometers hang.</param>
    /// <param name="pulsesPerLitre">Pulses of the flow meter, 1/L.</param>
    /// <param name="valveTravelSeconds">Time its motor valve takes from shut to open, s; 0 for none.</param>
    public FarPlant(
        PlantState state, WeatherSeries weather, IReadOnlyList<ProbeSpot> spots, double pulsesPerLitre, double valveTravelSeconds)
    {
        LoopBuild loop = new() { ValveTravelSeconds = valveTravelSeconds };
        PlantBuild build = new(new HeapBuild(), new HouseBuild(), loop, new PowerBuild());
        Plant = new Plant(build, weather, state);
        Resting = new Plant(build, weather, state);
        Valve = new ValveBody(valveTravelSeconds);
        Wheel = new PulseWheel(pulsesPerLitre);
        _spots = [.. spots];
        _shownC = [.. spots.Select(spot => spot.TrueC(Plant))];
        _milliC = new int[spots.Count];
        Show();
    }

    /// <summary>Heap, loop, house and weather.</summary>
    public Plant Plant { get; }

    /// <summary>The same, had everything been off from the start: what the house would be without its heap.</summary>
    public Plant Resting { get; }

    /// <summary>The motor valve.</summary>
    public ValveBody Valve { get; }

    /// <summary>The flow meter's wheel.</summary>
    public PulseWheel Wheel { get; }

    /// <summary>How often the pump was started.</summary>
    public int PumpStarts { get; private set; }

    /// <summary>What each thermometer shows, 1/1000 °C, in the order of their places.</summary>
    public IReadOnlyList<int> MilliC => _milliC;

    /// <summary>Lives for a while.</summary>
    /// <param name="lines">What the lines showed all that time.</param>
    /// <param name="seconds">How long, s (above 0, at most an hour).</param>
    public void Live(in LinesSeen lines, double seconds)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(seconds);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(seconds, 3600);
        PumpStarts += lines.PumpDuty > 0 && _runDuty <= 0 ? 1 : 0;
        _runDuty = lines.PumpDuty;
        double opening = Valve.Run(lines, seconds);
        Plant.Step(new PlantInputs(lines.PumpDuty, opening, lines.BlowerDuty, BackupOn: false, FlowShareLost: 0), seconds);
        Resting.Step(default, seconds);
        Wheel.Turn(Plant.FlowLitresPerMinute, seconds);
        for (int i = 0; i < _spots.Length; i++)
        {
            _shownC[i] += (_spots[i].TrueC(Plant) - _shownC[i]) * (1 - Math.Exp(-seconds / _spots[i].LagSeconds));
        }

        Show();
    }

    private void Show()
    {
        for (int i = 0; i < _milliC.Length; i++)
        {
            _milliC[i] = (int)Math.Round(1000 * _shownC[i]);
        }
    }
}
