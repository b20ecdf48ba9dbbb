using PileController.Control.Readings;
using PileController.Rigs;

namespace PileController.Commands.Rigs;

/// <summary>The lines of the GPIO chip that are read, told from the probes.</summary>
internal static class InputPins
{
    /// <summary>These and the driven ones, by number.</summary>
    public static IReadOnlyList<Pin> AndOutputs(RigSettings rig) =>
    [
        .. PinMap.Of(rig.Hardware)
            .Concat(rig.Probes.Select((fit, i) => (Fit: fit, Setting: $"rig.probes[{i}].line"))
                .Where(probe => probe.Fit.Wiring.Line is not null)
                .Select(probe => Of(probe.Fit, probe.Setting)))
            .OrderBy(pin => pin.Line),
    ];

    private static Pin Of(ProbeFit fit, string setting)
    {
        string name = ChannelTable.Of(fit.Channel).Name;
        bool isSwitch = fit.Source == ProbeSource.Switch;
        (string ill, string well) = (isSwitch, fit.Wiring.WellWhen) switch
        {
            (false, _) => ("rising edge", "either"),
            (_, LineLevel.High) => ("low", "high"),
            _ => ("high", "low"),
        };
        return new Pin(
            fit.Wiring.Line!.Value, isSwitch ? $"{name} switch" : name, "input", ill, well,
            isSwitch ? "nothing: a contact, with a resistor to the level it is not closed to" : "nothing: a meter's pulses", setting);
    }
}
