using PileController.Control.Readings;
using PileController.Records.Queries;

namespace PileController.Records;

/// <summary>A series that can be asked of a record.</summary>
/// <param name="Name">Its name, camelCase.</param>
/// <param name="Unit">°C, W, W/m², L/min, V, or empty for a switch, a share or the mode's number.</param>
public sealed record RecordSeries(string Name, string Unit)
{
    internal const string ModeName = "mode";

    /// <summary>All series: the channels, then the figures of the decisions, then the mode as its number.</summary>
    public static IReadOnlyList<RecordSeries> All { get; } =
    [
        .. ChannelTable.All.Select(channel => new RecordSeries(channel.Name, channel.Unit)),
        .. DecisionSeries.All.Select(figure => new RecordSeries(figure.Name, figure.Unit)),
        new(ModeName, ""),
    ];

    /// <summary>Finds a series by its name, ignoring case.</summary>
    /// <exception cref="ArgumentException">There is none; the message lists all.</exception>
    public static RecordSeries Find(string name) =>
        All.FirstOrDefault(series => string.Equals(series.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException(
            $"There is no series '{name}'. There are: {string.Join(", ", All.Select(series => series.Name))}.", nameof(name));
}
