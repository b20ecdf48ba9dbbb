using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Rigs;

/// <summary>Which rig is used and what is fitted to it. Defaults are Alder Bank's.</summary>
public sealed record RigSettings
{
    /// <summary>True: probes and actuators are simulated over the plant.</summary>
    public bool Simulated { get; init; } = true;

    /// <summary>The probes that are fitted.</summary>
    public IReadOnlyList<ProbeFit> Probes { get; init; } = ProbeFit.AlderBank;

    /// <summary>Pulses of the flow meter a litre of water, 1/L.</summary>
    public double PulsesPerLitre { get; init; } = 450;

    /// <summary>Seed of the simulated probes' noise.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Faults the rig starts with; for trials.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];

    /// <summary>Where the real rig's devices are.</summary>
    public HardwareSettings Hardware { get; init; } = new();
}

/// <summary>One fitted probe.</summary>
/// <param name="Channel">What it tells.</param>
/// <param name="RadiusM">Distance from the heap's axis, m; heap probes only.</param>
/// <param name="HeightM">Height above the heap's base, m; heap probes only.</param>
/// <param name="Address">1-Wire address (28-…) on the real rig, or null.</param>
/// <param name="OffsetKelvin">Calibration: added to what the probe says, K.</param>
public sealed record ProbeFit(
    Channel Channel, double RadiusM = 0, double HeightM = 0, string? Address = null, double OffsetKelvin = 0)
{
    /// <summary>What the grower calls the place of a spare thermometer, or null.</summary>
    public string? Label { get; init; }

    /// <summary>Where it hangs on the real rig, beyond a 1-Wire address.</summary>
    public ProbeWiring Wiring { get; init; } = ProbeWiring.None;

    /// <summary>How it is read on the real rig, or null when it is wired to nothing.</summary>
    public ProbeSource? Source => Wiring.Source ?? (Address is null ? null : ProbeSource.OneWire);

    /// <summary>The probes of the demo holding.</summary>
    public static IReadOnlyList<ProbeFit> AlderBank { get; } =
    [
        new(Channel.HeapCore, 0.45, 1.0), new(Channel.HeapMiddle, 0.75, 1.0),
        new(Channel.HeapTurns, 1.0, 1.0), new(Channel.HeapEdge, 1.6, 1.0),
        new(Channel.Supply), new(Channel.Return), new(Channel.House), new(Channel.Floor), new(Channel.Tank),
        new(Channel.Outside), new(Channel.DuctAir), new(Channel.Flow), new(Channel.PumpPower),
        new(Channel.BlowerPower), new(Channel.Battery), new(Channel.Leak), new(Channel.Level),
        new(Channel.Humidity), new(Channel.CarbonDioxide), new(Channel.SpareOne) { Label = "Drum" },
        new(Channel.SpareTwo) { Label = "Line outside" }, new(Channel.SpareThree) { Label = "Bed" },
        new(Channel.SpareFour) { Label = "Cold frame" },
    ];
}

/// <summary>What keeps exposed water lines whole while water stands in them. A rig that fails safe stands still.</summary>
public enum StandingWater
{
    /// <summary>Nothing: they burst in a frost.</summary>
    Unguarded = 0,

    /// <summary>The lines empty themselves when the pump stops.</summary>
    DrainsBack,

    /// <summary>The water holds antifreeze fit for the lowest frost.</summary>
    Antifreeze,

    /// <summary>A frost device of its own guards the lines, without this controller.</summary>
    FrostDevice,
}

/// <summary>Where the real rig's devices are.</summary>
public sealed record HardwareSettings
{
    /// <summary>Root of the kernel's 1-Wire device files.</summary>
    public string OneWireRoot { get; init; } = "/sys/bus/w1/devices";

    /// <summary>Label of the GPIO chip, as the kernel names it (gpiodetect lists them); the default fits no board and has to be set on a real rig.</summary>
    public string GpioChipLabel { get; init; } = "set-me";

    /// <summary>Line of the pump relay or gate, or null when there is none.</summary>
    public int? PumpPin { get; init; }

    /// <summary>Line of the blower relay or gate, or null when there is none.</summary>
    public int? BlowerPin { get; init; }

    /// <summary>How the pump is driven.</summary>
    public LoadSettings Pump { get; init; } = new();

    /// <summary>How the blower is driven.</summary>
    public LoadSettings Blower { get; init; } = new();

    /// <summary>Line of the relay of backup heat, or null when there is none.</summary>
    public int? BackupLine { get; init; }

    /// <summary>Where the motor valve is wired.</summary>
    public ValveSettings Valve { get; init; } = new();

    /// <summary>Device of the board's PWM chip: the name of its folder below /sys/devices, or the end of its path; null when none is used.</summary>
    public string? PwmChip { get; init; }

    /// <summary>The PWM chip on the I2C bus; looked for only when a load is driven by it.</summary>
    public I2cPwmSettings I2cPwm { get; init; } = new();

    /// <summary>Line that is held while all is well, or null when there is none: let go, it lights a lamp or sounds a buzzer.</summary>
    public int? LampLine { get; init; }

    /// <summary>True when that line is not held still but changes every second while all is well.</summary>
    public bool LampBeats { get; init; }

    /// <summary>Line that changes every second while the service proves its health, or null: it feeds a retriggerable timer in series with the loads.</summary>
    public int? PulseLine { get; init; }

    /// <summary>What keeps exposed lines whole while the outputs are at their safe value, which is off.</summary>
    public StandingWater StandingWater { get; init; }

    /// <summary>True when a low line switches the load on.</summary>
    public bool ActiveLow { get; init; }

    /// <summary>
    /// Period in which a duty is shared out between on and off, s: 10 to 40 in whole seconds behind a solid-state
    /// gate; 0 behind a relay, which is then on from half duty up and off below a quarter.
    /// </summary>
    public double DutyPeriodSeconds { get; init; } = 20;
}
