using PileController.FarSide.Plants;

namespace PileController.FarSide.Kernel;

/// <summary>The one place that touches the kernel's files: outputs in, probes and pulses out.</summary>
internal sealed class KernelLines
{
    private readonly OutputSource _pump;
    private readonly OutputSource _blower;
    private readonly OutputSource? _valveOpens;
    private readonly OutputSource? _valveShuts;
    private readonly KernelFile? _openEnd;
    private readonly KernelFile? _shutEnd;
    private readonly KernelFile _flow;
    private readonly KernelFile _probes;
    private string _shown = "";
    private (bool Open, bool Shut)? _ends;

    public KernelLines(FarOptions options, Places places)
    {
        GpioBank bank = new(places.GpioConfig);
        _pump = OutputSource.Parse("--pump", options.Pump, places);
        _blower = OutputSource.Parse("--blower", options.Blower, places);
        if (options.Valve is { } valve)
        {
            _valveOpens = OutputSource.OfLine(places, valve.OpenLine);
            _valveShuts = OutputSource.OfLine(places, valve.ShutLine);
            _openEnd = bank.Pull(valve.OpenEndLine);
            _shutEnd = bank.Pull(valve.ShutEndLine);
        }

        _flow = bank.Pull(options.FlowLine);
        _probes = new KernelFile(() => places.ProbeMilliC, FileAccess.Write);
    }

    /// <summary>What the outputs show now.</summary>
    public LinesSeen See() => new(_pump.Duty, _blower.Duty, _valveOpens?.Duty > 0, _valveShuts?.Duty > 0);

    /// <summary>Lets probes and end switches show what the plant comes to.</summary>
    public void Show(FarPlant plant)
    {
        string shown = string.Join(',', plant.MilliC);
        if (shown != _shown)
        {
            _probes.Write(_shown = shown);
        }

        (bool, bool) ends = (plant.Valve.StandsOpen, plant.Valve.StandsShut);
        if (_openEnd is not null && _ends != ends)
        {
            _ends = ends;
            Pull(_openEnd, plant.Valve.StandsOpen);
            Pull(_shutEnd!, plant.Valve.StandsShut);
        }
    }

    /// <summary>Gives the flow meter's line its level.</summary>
    public void Turn(bool isHigh) => Pull(_flow, isHigh);

    private static void Pull(KernelFile line, bool up) => line.Write(up ? "pull-up" : "pull-down");
}
