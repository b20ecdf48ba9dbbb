using System.Device.Gpio;
using PileController.Control.Decisions;
using PileController.Control.Regulation;
using PileController.Rigs.Hardware;
using PileController.Rigs.Hardware.Loads;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Loads;

/// <summary>A motor valve on two fake lines, driven whenever it asks for it; its motor runs by what the lines say.</summary>
internal sealed class ValveTrial : IDisposable
{
    public const int Open = 5;
    public const int Shut = 6;
    public const int OpenEnd = 7;
    public const int ShutEnd = 8;
    public const double Travel = 40;

    private readonly FakeGpioDriver _driver = new();
    private readonly double _opensFaster;

    public ValveTrial(
        double position = 0, bool ends = false, ValveSafe safe = ValveSafe.Stays, double opensFaster = 0, double deadSeconds = 1)
    {
        Position = position;
        _opensFaster = opensFaster;
        _driver.Writing = (_, _) => Overlaps |= _driver.IsHigh(Open) && _driver.IsHigh(Shut);
        GpioController controller = new(_driver);
        Valve = new MotorValve(
            new LineOutput(controller, "valve", Open, false), new LineOutput(controller, "valve", Shut, false),
            ends ? new ValveEnds(controller, OpenEnd, ShutEnd, false) : null,
            new ValveMotion(Travel, ends ? ValveFeedback.EndSwitches : ValveFeedback.None),
            new ValveSettings { OpenLine = Open, ShutLine = Shut, Safe = safe, DeadTimeSeconds = deadSeconds });
        Report();
    }

    public MotorValve Valve { get; }

    /// <summary>Where it truly stands.</summary>
    public double Position { get; private set; }

    public double Seconds { get; private set; }

    /// <summary>Whether both lines were ever on together.</summary>
    public bool Overlaps { get; private set; }

    /// <summary>Time between two beats, s.</summary>
    public double BeatSeconds { get; set; } = 1;

    /// <summary>True when the motor does nothing.</summary>
    public bool IsJammed { get; set; }

    /// <summary>Which end switches are dead.</summary>
    public HashSet<int> DeadEnds { get; } = [];

    public HashSet<int> BrokenLines => _driver.BrokenPins;

    public List<string> News { get; } = [];

    public List<RigFaultException> Faults { get; } = [];

    /// <summary>Every change of what the lines say, in order: 1 open, −1 shut, 0 rest.</summary>
    public List<(double At, int Direction)> Turns { get; } = [];

    public (double At, int Direction)[] Starts => [.. Turns.Where(turn => turn.Direction != 0)];

    public (double At, int Direction)[] Stops => [.. Turns.Where(turn => turn.Direction == 0)];

    public int Direction => (_driver.IsHigh(Open) ? 1 : 0) - (_driver.IsHigh(Shut) ? 1 : 0);

    public void Want(double opening) => Valve.Want(new Outputs(1, opening, 0, false), valveIsHeld: false);

    /// <summary>Sets an end switch's input from outside.</summary>
    public void Force(int line, bool high) => _driver.Pull(line, high);

    /// <summary>Lets time pass: beat by beat, and between whenever the valve asks.</summary>
    public void Run(double seconds)
    {
        double end = Seconds + seconds;
        Drive();
        while (Seconds < end - 1e-9)
        {
            double step = Math.Min(Math.Min(BeatSeconds, Valve.DueSeconds ?? BeatSeconds), end - Seconds);
            Move(Math.Max(step, 1e-3));
            Drive();
        }
    }

    public void Dispose() => _driver.Dispose();

    private void Drive()
    {
        int before = Direction;
        if (Valve.Drive(Seconds, News) is { } fault)
        {
            Faults.Add(fault);
        }

        if (Direction != before)
        {
            Turns.Add((Seconds, Direction));
        }
    }

    private void Move(double seconds)
    {
        double rate = Direction > 0 ? 1 + _opensFaster : Direction < 0 ? -1 : 0;
        Position = IsJammed ? Position : Math.Clamp(Position + (rate * seconds / Travel), 0, 1);
        Seconds += seconds;
        Report();
    }

    private void Report()
    {
        foreach ((int line, bool there) in ((int, bool)[])[(OpenEnd, Position >= 1), (ShutEnd, Position <= 0)])
        {
            if (!DeadEnds.Contains(line))
            {
                _driver.Pull(line, there);
            }
        }
    }
}
