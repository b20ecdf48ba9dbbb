using PileController.Control;
using PileController.Panel;
using PileController.Records;
using PileController.Rigs;
using PileController.Settings;
using PileController.Settings.Changes;
using PileController.Watch;

namespace PileController.Serving;

/// <summary>What a host is put together from.</summary>
internal sealed record ServeParts(
    PileSettings Settings, IRig Rig, LiteRecord Record, Memory Start, long StartMonotonicMilliseconds, TimeProvider Clock,
    double Speed, Func<long, int> OffsetMinutesAt, IFaultSwitches? Faults, DataFolder Folder, IHeldLine? Lamp = null)
{
    /// <summary>The settings and the way to change them.</summary>
    public SettingsDesk? Desk { get; init; }

    /// <summary>How often the program was started within the hour without having been stopped before.</summary>
    public int Restarts { get; init; }

    /// <summary>Who is told, second by second, that all is well.</summary>
    public IReadOnlyList<ISignOfLife> Signs { get; init; } = [];
}
