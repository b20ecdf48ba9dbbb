using PileController.Control.Decisions;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>The three-wire motor valve: driven for a time towards where it is wanted, then stopped.</summary>
internal sealed class MotorValve : ILoad
{
    // A wait so short that a timer takes it for none would call again at once.
    private const double LeastWaitSeconds = 0.005;

    private readonly ValveLines _lines;
    private readonly ValveEnds? _ends;
    private readonly ValvePlace _place;
    private readonly ValveSafe _safe;
    private double? _target;
    private double _before;
    private bool _endsFail;

    /// <summary>Makes one that rests wherever it stands.</summary>
    /// <param name="open">The line that runs it open, off.</param>
    /// <param name="shut">The line that runs it shut, off.</param>
    /// <param name="ends">Its end switches, or null.</param>
    /// <param name="motion">How it moves.</param>
    /// <param name="settings">Dead time and safe value.</param>
    public MotorValve(IOutput open, IOutput shut, ValveEnds? ends, ValveMotion motion, ValveSettings settings)
    {
        _lines = new ValveLines(open, shut, settings.DeadTimeSeconds);
        _ends = ends;
        _place = new ValvePlace(motion);
        _safe = settings.Safe;
    }

    /// <inheritdoc/>
    public bool IsFailing { get; private set; }

    /// <inheritdoc/>
    public double? DueSeconds { get; private set; }

    /// <summary>Where it is believed to stand, 0 (shut) to 1 (open); null until it was driven against a stop.</summary>
    public double? Believed => _place.IsKnown ? _place.Believed : null;

    /// <summary>
    /// Takes the opening. No water wanted and shut is what a rig is told when it is to be safe, whatever air and backup heat do
    /// beside it: then the valve does what is safe, unless a person holds it there.
    /// </summary>
    public void Want(in Outputs outputs, bool valveIsHeld) => _target = !valveIsHeld && outputs is { PumpDuty: 0, ValveOpening: 0 }
        ? _safe switch { ValveSafe.Shut => 0, ValveSafe.Open => 1, _ => null }
        : outputs.ValveOpening;

    /// <inheritdoc/>
    public RigFaultException? Drive(double seconds, List<string> news)
    {
        _place.Pass(_lines.Direction, seconds - _before);
        _before = seconds;
        ValveEnd end = Look(news);
        (int direction, double lasts) = _place.Towards(_target, _lines.Direction, end, out string? silent);
        Tell(silent, news);
        double? rest = _lines.Turn(direction, seconds, out RigFaultException? fault);
        DueSeconds = fault is not null || direction == 0 ? null : Math.Max(LeastWaitSeconds, rest ?? lasts);
        return Failed(fault);
    }

    /// <inheritdoc/>
    public RigFaultException? SwitchOff()
    {
        _target = null;
        DueSeconds = null;
        return Failed(_lines.Stop(_before));
    }

    private ValveEnd Look(List<string> news)
    {
        if (_ends is null)
        {
            return ValveEnd.Neither;
        }

        try
        {
            ValveEnd end = _ends.Read();
            _endsFail = false;
            Tell(_place.See(end, _lines.Direction), news);
            return end;
        }
        catch (Exception error)
        {
            Tell(_endsFail ? null : $"The valve's end switches cannot be read: {error.Message}", news);
            _endsFail = true;
            return ValveEnd.Neither;
        }
    }

    private RigFaultException? Failed(RigFaultException? fault)
    {
        IsFailing = fault is not null;
        if (IsFailing)
        {
            _place.Lose();
        }

        return fault;
    }

    private static void Tell(string? sentence, List<string> news)
    {
        if (sentence is not null)
        {
            news.Add(sentence);
        }
    }
}
