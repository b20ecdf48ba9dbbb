using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "forecast".</summary>
internal static class ForecastFields
{
    private const int LongestPath = 1000;

    public static readonly FieldTable<ForecastSettings> Table = new()
    {
        { "file", Text("the path of a file, or \"\" for none", t => t.Length <= LongestPath), f => f.File, (f, v) => f with { File = v! }, "File with foretold weather, hour by hour, that is read when served and whenever it changes: CSV with the header utc,outsideC,sunWPerM2, or JSON." },
    };
}
