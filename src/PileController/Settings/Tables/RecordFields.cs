using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "record".</summary>
internal static class RecordFields
{
    public static readonly FieldTable<RecordSettings> Table = new()
    {
        { "keep", Days(1, 3660), r => r.KeepDays, (r, v) => r with { KeepDays = v }, "Time for which single ticks are kept; summaries outlive them." },
    };
}
