using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>Which faults make sense: the channel and the size each kind takes.</summary>
public static class FaultRules
{
    /// <summary>What is wrong with a fault, in a sentence naming the field, what was given and what is allowed; null when nothing is.</summary>
    public static string? Complaint(Fault fault)
    {
        if (!Enum.IsDefined(fault.Kind))
        {
            return $"Kind {(int)fault.Kind} is no fault; allowed are {string.Join(", ", Enum.GetNames<FaultKind>())}.";
        }

        if (fault.Channel is { } given && !Enum.IsDefined(given))
        {
            return $"Channel {(int)given} is no channel; allowed is 0 to {ChannelTable.Count - 1}.";
        }

        return ChannelComplaint(fault) ?? SizeComplaint(fault);
    }

    private static string? ChannelComplaint(Fault fault)
    {
        switch (fault.Kind)
        {
            case FaultKind.DeadPump or FaultKind.BlockedLine or FaultKind.ValveJammed or FaultKind.SlowBus:
                return fault.Channel is { } extra
                    ? $"Channel is {ChannelTable.Of(extra).Name}; {fault.Kind} is not of one probe and takes none."
                    : null;
            default:
                if (fault.Channel is not { } channel)
                {
                    return $"Channel is missing; {fault.Kind} needs the probe it is put into.";
                }

                string name = ChannelTable.Of(channel).Name;
                return fault.Kind switch
                {
                    FaultKind.Short when !ChannelKinds.IsThermometer(channel) =>
                        $"Channel is {name}; Short is of the probe bus and takes a temperature.",
                    FaultKind.Drift or FaultKind.Spike when ChannelKinds.IsSwitch(channel) =>
                        $"Channel is {name}; {fault.Kind} takes a probe that measures, not a switch.",
                    _ => null,
                };
        }
    }

    private static string? SizeComplaint(Fault fault)
    {
        switch (fault.Kind)
        {
            case FaultKind.BlockedLine:
                return fault.Size is > 0 and <= 1
                    ? null
                    : $"Size is {fault.Size}; BlockedLine takes the share of the flow that is lost, above 0 and at most 1.";
            case FaultKind.Drift or FaultKind.Spike:
                ChannelInfo info = ChannelTable.Of(fault.Channel!.Value);
                double most = info.Most - info.Least;
                string unit = fault.Kind == FaultKind.Drift ? $"{info.Unit} an hour" : info.Unit;
                return fault.Size != 0 && Math.Abs(fault.Size) <= most
                    ? null
                    : $"Size is {fault.Size}; {fault.Kind} of {info.Name} takes {-most} to {most} {unit}, and not 0.";
            default:
                return fault.Size == 0 ? null : $"Size is {fault.Size}; {fault.Kind} takes none (0).";
        }
    }
}
