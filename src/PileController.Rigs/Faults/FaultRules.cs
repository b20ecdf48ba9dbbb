using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>Which faults make sense: the channel and the size each kind takes. The one place that says so.</summary>
public static class FaultRules
{
    // The palm of a hand, about (from memory).
    private const double HandCelsius = 33;

    /// <summary>No size of any kind on any channel is larger, whatever its unit.</summary>
    public static double LargestSize { get; } = ChannelTable.All.Max(Span);

    /// <summary>True for the faults of a single probe, which need a channel; false for those of the whole rig, which take none.</summary>
    public static bool IsOfOneProbe(FaultKind kind) =>
        kind is FaultKind.Open or FaultKind.Short or FaultKind.Stuck or FaultKind.Drift or FaultKind.Spike or FaultKind.TakenOut;

    /// <summary>The kinds a probe can have.</summary>
    /// <param name="channel">The probe's channel.</param>
    public static IReadOnlyList<FaultKind> KindsOf(Channel channel) =>
        [.. Enum.GetValues<FaultKind>().Where(kind => Find(new Fault(kind, channel, UsualSize(kind))) is null)];

    /// <summary>A size that shows, for one who names none: units an hour, units, or a share; 0 where the kind takes none.</summary>
    public static double UsualSize(FaultKind kind) => kind switch
    {
        FaultKind.Drift => 2,
        FaultKind.Spike => 20,
        FaultKind.BlockedLine => 1,
        FaultKind.TakenOut => HandCelsius,
        _ => 0,
    };

    /// <summary>Least and most size of a kind; 0 and 0 where it takes none. Where a size is taken, 0 itself is not allowed, but of what a probe was put into.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="channel">The channel, for the faults of a single probe.</param>
    public static (double Least, double Most) SizesOf(FaultKind kind, Channel? channel) => kind switch
    {
        FaultKind.BlockedLine => (0, 1),
        FaultKind.TakenOut when channel is { } one => (ChannelTable.Of(one).Least, ChannelTable.Of(one).Most),
        FaultKind.Drift or FaultKind.Spike when channel is { } one => (-Span(ChannelTable.Of(one)), Span(ChannelTable.Of(one))),
        _ => (0, 0),
    };

    /// <summary>What is wrong with a fault, field by field; null when nothing is.</summary>
    public static FaultComplaint? Find(Fault fault)
    {
        if (!Enum.IsDefined(fault.Kind))
        {
            return new("kind", $"{(int)fault.Kind}", string.Join(", ", Enum.GetValues<FaultKind>().Select(Word)));
        }

        if (fault.Channel is { } given && !Enum.IsDefined(given))
        {
            return new("channel", $"{(int)given}", $"0 to {ChannelTable.Count - 1}");
        }

        return FindInChannel(fault) ?? FindInSize(fault);
    }

    private static FaultComplaint? FindInChannel(Fault fault)
    {
        string? name = fault.Channel is { } channel ? ChannelTable.Of(channel).Name : null;
        string? allowed = (fault.Kind, fault.Channel) switch
        {
            (var kind, not null) when !IsOfOneProbe(kind) => $"none: {Word(kind)} is not of a single probe",
            (var kind, null) when IsOfOneProbe(kind) => "the channel of the probe that is to fail, for example \"heapCore\"",
            (FaultKind.Short, { } one) when !ChannelKinds.IsThermometer(one) =>
                "a channel that measures a temperature: short is of the bus of the thermometers",
            (FaultKind.TakenOut, { } one) when !ChannelKinds.IsThermometer(one) =>
                "a channel that measures a temperature: takenOut is of a probe that can be put into a hand or into ice",
            (FaultKind.Drift or FaultKind.Spike, { } one) when ChannelKinds.IsSwitch(one) =>
                $"a channel that measures, not a switch, for {Word(fault.Kind)}",
            _ => null,
        };
        return allowed is null ? null : new("channel", name is null ? "missing" : $"\"{name}\"", allowed);
    }

    private static FaultComplaint? FindInSize(Fault fault)
    {
        (double least, double most) = SizesOf(fault.Kind, fault.Channel);
        bool good = most == 0 ? fault.Size == 0 : (fault.Size != 0 || fault.Kind == FaultKind.TakenOut) && fault.Size >= least && fault.Size <= most;
        return good ? null : new("size", $"{fault.Size}", Sizes(fault));
    }

    private static string Sizes(Fault fault)
    {
        if (fault.Kind == FaultKind.BlockedLine)
        {
            return "the share of the flow that is lost, above 0 and at most 1";
        }

        if (fault.Kind == FaultKind.TakenOut)
        {
            ChannelInfo taken = ChannelTable.Of(fault.Channel!.Value);
            return $"{taken.Least} to {taken.Most} {taken.Unit}, the temperature the probe sits in";
        }

        if (fault.Kind is not (FaultKind.Drift or FaultKind.Spike))
        {
            return $"none or 0: {Word(fault.Kind)} takes none";
        }

        ChannelInfo info = ChannelTable.Of(fault.Channel!.Value);
        string unit = fault.Kind == FaultKind.Drift ? $"{info.Unit} an hour" : info.Unit;
        return $"{-Span(info)} to {Span(info)} {unit}, but not 0";
    }

    private static double Span(ChannelInfo info) => info.Most - info.Least;

    // As it is written in settings and on the wire.
    private static string Word(FaultKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];
}
