using PileController.Rigs;
using PileController.Rigs.Hardware;
using PileController.Settings;

namespace PileController.Commands.Rigs;

/// <summary>One wiring whose outputs are made safe.</summary>
/// <param name="Hardware">Where they are.</param>
/// <param name="Motion">How the motor valve moves.</param>
internal sealed record SafeTurn(HardwareSettings Hardware, ValveMotion Motion);

/// <summary>
/// Which outputs are made safe, and in which order: those a service ran with come first, since they are what it may have
/// left on, whatever its settings file has been made to say meanwhile.
/// </summary>
internal static class SafeTurns
{
    /// <summary>Tells the turns.</summary>
    /// <param name="file">What the settings file says now.</param>
    /// <param name="ranWith">What the service ran with that did not end in order; null when there is none, or it is not known.</param>
    /// <returns>The turns, none where nothing is real, and what a person should know of them.</returns>
    public static (IReadOnlyList<SafeTurn> Turns, string? News) Of(PileSettings file, PileSettings? ranWith)
    {
        SafeTurn told = new(file.Rig.Hardware, Derived.Motion(file));
        if (ranWith is null || ranWith.Rig.Simulated)
        {
            return (file.Rig.Simulated ? [] : [told], null);
        }

        SafeTurn used = new(ranWith.Rig.Hardware, Derived.Motion(ranWith));
        if (file.Rig.Simulated)
        {
            return ([used], "The settings file tells of a simulated rig, and the service ran with a real one: its outputs are switched off.");
        }

        if (told == used)
        {
            return ([used], null);
        }

        const string Changed = "The wiring in the settings file is not the one the service ran with";
        return OutputClash.Find(ranWith.Rig, told.Hardware) is { } clash
            ? ([used], $"{Changed}, and {clash}: only the outputs the service ran with are switched off.")
            : ([used, Without(told, used)], $"{Changed}: the outputs it ran with are switched off first, then those of the file.");
    }

    // A valve that has been run where it is safe is not run a second time.
    private static SafeTurn Without(SafeTurn told, SafeTurn used)
    {
        ValveSettings valve = told.Hardware.Valve;
        bool isSame = told.Hardware.GpioChipLabel == used.Hardware.GpioChipLabel
            && valve.OpenLine == used.Hardware.Valve.OpenLine && valve.ShutLine == used.Hardware.Valve.ShutLine;
        return isSame ? told with { Hardware = told.Hardware with { Valve = new ValveSettings() } } : told;
    }
}
