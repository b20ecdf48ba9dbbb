using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "record".</summary>
internal static class RecordFields
{
    public static readonly FieldTable<RecordSettings> Table = new()
    {
        { "keep", Days(1, 3660), r => r.KeepDays, (r, v) => r with { KeepDays = v }, "Time of running for which single ticks are kept; summaries and decisions outlive them." },
        { "keepMinutes", Days(1, 36_600), r => r.KeepMinutesDays, (r, v) => r with { KeepMinutesDays = v }, "Time of running for which summaries of a minute are kept; coarser ones are kept for ever." },
    };
}
