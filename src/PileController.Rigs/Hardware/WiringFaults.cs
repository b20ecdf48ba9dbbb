using PileController.Control.Readings;

namespace PileController.Rigs.Hardware;

/// <summary>One thing wrong with how a probe is wired.</summary>
/// <param name="Probe">Its place in the list of probes.</param>
/// <param name="Key">Which part of its wiring, as in the settings: "line".</param>
/// <param name="Given">What is given.</param>
/// <param name="Allowed">What is allowed instead.</param>
public sealed record WiringFault(int Probe, string Key, string Given, string Allowed);

/// <summary>What cannot be wired as it is told, or would tell something else than it seems to.</summary>
public static class WiringFaults
{
    /// <summary>Everything wrong, in the order of the probes. Probes wired to nothing are left alone.</summary>
    public static IEnumerable<WiringFault> Of(RigSettings settings)
    {
        for (int i = 0; i < settings.Probes.Count; i++)
        {
            ProbeFit fit = settings.Probes[i];
            if (fit.OffsetKelvin != 0 && !ChannelKinds.IsThermometer(fit.Channel))
            {
                yield return new WiringFault(i, "offset", $"{fit.OffsetKelvin:G6} K", "thermometers only; leave it out here");
            }

            if (fit.Source is not { } source)
            {
                foreach (WiringPart part in WiringPart.All.Where(part => part.Given(fit.Wiring) is not null))
                {
                    yield return new WiringFault(i, part.Key, part.Given(fit.Wiring)!, "\"from\" beside it, which says how this probe is read");
                }

                continue;
            }

            WiringFault[] own = [.. Own(i, fit, source)];
            foreach (WiringFault fault in own.Length > 0 ? own : Shared(i, fit, settings))
            {
                yield return fault;
            }
        }
    }

    /// <summary>Throws at the first.</summary>
    /// <exception cref="ArgumentException">Names the probe, what was given and what is allowed.</exception>
    internal static void Require(RigSettings settings)
    {
        if (Of(settings).FirstOrDefault() is { } fault)
        {
            string name = ChannelTable.Of(settings.Probes[fault.Probe].Channel).Name;
            throw new ArgumentException($"Probes: {name} has {fault.Key} {fault.Given}; allowed: {fault.Allowed}.", nameof(settings));
        }
    }

    private static IEnumerable<WiringFault> Own(int i, ProbeFit fit, ProbeSource source)
    {
        ProbeSource[] fitting = SourceTable.For(fit.Channel);
        if (!fitting.Contains(source))
        {
            string allowed = fitting.Length == 0
                ? "nothing yet: no adapter reads this channel; leave the probe out"
                : $"{string.Join(" or ", fitting.Select(s => $"\"{SourceTable.Word(s)}\""))} for {ChannelTable.Of(fit.Channel).Name}";
            yield return fit.Wiring.Source is null
                ? new WiringFault(i, "address", $"\"{fit.Address}\"", allowed)
                : new WiringFault(i, "from", $"\"{SourceTable.Word(source)}\"", allowed);
            yield break;
        }

        if (source != ProbeSource.OneWire && fit.Address is not null)
        {
            yield return new WiringFault(i, "address", $"\"{fit.Address}\"", "1-Wire probes only; leave it out here");
        }

        if (source == ProbeSource.OneWire && fit.Address is null)
        {
            yield return new WiringFault(i, "address", "none", "the probe's 1-Wire address, \"28-\" and twelve digits 0-9 or a-f");
        }

        foreach (WiringPart part in WiringPart.All)
        {
            bool wanted = part.IsWanted(fit, source);
            string? given = part.Given(fit.Wiring);
            if (given is null ? wanted : !wanted && !part.IsWelcome(fit, source))
            {
                yield return given is null
                    ? new WiringFault(i, part.Key, "none", part.Meaning)
                    : new WiringFault(i, part.Key, given, $"nothing here: {SourceTable.Word(source)} for {ChannelTable.Of(fit.Channel).Name} does not use it");
            }
        }

        if (fit.Wiring.Device is int device && SourceTable.Addresses(source) is ({ } least, { } most) && (device < least || device > most))
        {
            yield return new WiringFault(i, "device", $"\"0x{device:x2}\"", least == most
                ? $"\"0x{least:x2}\", the one address {SourceTable.Word(source)} has"
                : $"\"0x{least:x2}\" to \"0x{most:x2}\", the addresses {SourceTable.Word(source)} can have");
        }

        if (source == ProbeSource.Ads1115 && fit.Wiring.ExcitationVolts is null && fit.Wiring.ExcitationInput is null)
        {
            yield return new WiringFault(i, "excitation", "none", "the divider's voltage, or excitationInput, at which it is measured");
        }

        if (fit.Wiring is { ExcitationVolts: { } volts, ExcitationInput: not null })
        {
            yield return new WiringFault(i, "excitation", $"{volts:G6} V", "either excitation or excitationInput, not both");
        }
    }

    private static IEnumerable<WiringFault> Shared(int i, ProbeFit fit, RigSettings settings)
    {
        ProbeWiring wiring = fit.Wiring;
        if (wiring.Line is int line)
        {
            if (HardwareLines.All.FirstOrDefault(one => one.Line(settings.Hardware) == line) is { } row)
            {
                yield return new WiringFault(i, "line", $"{line}", $"another line than rig.hardware.{row.Setting}, which has it already");
            }
        }

        if (wiring.Device is int taken && OnPwmChip(wiring, settings.Hardware))
        {
            yield return new WiringFault(
                i, "device", $"\"0x{taken:x2}\"", $"another address on bus {wiring.Bus} than rig.hardware.i2cPwm, whose PWM chip answers there");
        }

        for (int before = 0; before < i; before++)
        {
            ProbeFit other = settings.Probes[before];
            if (Clash(fit, other) is ({ } key, { } given, { } allowed))
            {
                yield return new WiringFault(i, key, given, $"{allowed}; rig.probes[{before}] ({ChannelTable.Of(other.Channel).Name}) has it already");
                yield break;
            }
        }

        // Looked for over the whole list, since the input may be told before or after.
        int measured = settings.Probes.ToList().FindIndex(other => OnOneDevice(fit, other) && other.Wiring.ExcitationInput == wiring.Input);
        if (wiring.Input is int input && measured >= 0)
        {
            yield return new WiringFault(i, "input", $"{input}", $"another input than the one at which rig.probes[{measured}] measures its excitation");
        }
    }

    private static bool OnPwmChip(ProbeWiring wiring, HardwareSettings hardware) =>
        (hardware.Pump.Drive == LoadDrive.I2cPwm || hardware.Blower.Drive == LoadDrive.I2cPwm)
        && wiring.Device == hardware.I2cPwm.Address && wiring.Bus == hardware.I2cPwm.Bus;

    private static (string Key, string Given, string Allowed)? Clash(ProbeFit fit, ProbeFit other)
    {
        ProbeWiring wiring = fit.Wiring;
        if (wiring.Line is int line && other.Wiring.Line == line)
        {
            return ("line", $"{line}", "a line of its own");
        }

        if (!OnOneDevice(fit, other))
        {
            return null;
        }

        string device = $"\"0x{wiring.Device:x2}\"";
        if (fit.Source != other.Source)
        {
            return ("device", device, $"an address of its own on bus {wiring.Bus}");
        }

        bool isVoltage = fit.Channel == Channel.Battery || other.Channel == Channel.Battery;
        return fit.Source switch
        {
            // One air probe tells one place's temperature and humidity.
            ProbeSource.Sht4x when (fit.Channel == Channel.Humidity) == (other.Channel == Channel.Humidity) => ("device", device, "a device of its own"),
            ProbeSource.Sht4x when fit.Channel is not (Channel.House or Channel.Humidity) || other.Channel is not (Channel.House or Channel.Humidity) =>
                ("device", device, "a device of its own: humidity is that of the house"),
            ProbeSource.Ina219 when !isVoltage => ("device", device, "a device of its own: one shunt measures one load"),
            ProbeSource.Ads1115 when wiring.Input == other.Wiring.Input => ("input", $"{wiring.Input}", "an input of its own"),
            _ => null,
        };
    }

    private static bool OnOneDevice(ProbeFit fit, ProbeFit other) =>
        fit.Wiring.Device is not null && fit.Wiring.Device == other.Wiring.Device && fit.Wiring.Bus == other.Wiring.Bus;
}
