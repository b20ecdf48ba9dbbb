using System.Text.Json.Serialization;
using PileController.Control.Decisions;

namespace PileController.Ledgers;

/// <summary>The grower's book: the days that are over, and the seasons they belong to by their date.</summary>
/// <param name="Schema">Form of the file; this program writes <see cref="CurrentSchema"/>.</param>
/// <param name="CountedTo">Where counting goes on; null before the first day is kept.</param>
/// <param name="Days">Stretches of days, in the order in which they were lived. A date may come more than once when the clock was set.</param>
/// <param name="Seasons">The seasons, oldest first; they do not overlap.</param>
internal sealed record Book(int Schema, Edge? CountedTo, IReadOnlyList<DayEntry> Days, IReadOnlyList<SeasonEntry> Seasons)
{
    /// <summary>The form this program writes.</summary>
    public const int CurrentSchema = 1;

    /// <summary>A book with nothing in it.</summary>
    public static Book Empty { get; } = new(CurrentSchema, null, [], []);

    /// <summary>The season that is not closed; null when there is none.</summary>
    [JsonIgnore]
    public SeasonEntry? Open => Seasons.Count > 0 && Seasons[^1].Closed is null ? Seasons[^1] : null;

    /// <summary>The book with one season in another's place.</summary>
    public Book With(SeasonEntry season, SeasonEntry instead) => this with { Seasons = [.. Seasons.Select(s => s == season ? instead : s)] };
}

/// <summary>A place between two ticks at which the running totals are known.</summary>
/// <param name="Sequence">The last tick before it.</param>
/// <param name="Totals">Running totals after that tick.</param>
/// <param name="PumpOn">The pump was told to run at that tick.</param>
/// <param name="SettingsHash">The settings of that tick.</param>
internal sealed record Edge(long Sequence, Totals Totals, bool PumpOn, string SettingsHash);
