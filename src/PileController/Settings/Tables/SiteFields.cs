using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "site".</summary>
internal static class SiteFields
{
    public static readonly FieldTable<Site> Table = new()
    {
        { "name", Text("a name of 1 to 60 letters", t => t.Trim().Length is > 0 and <= 60), s => s.Name, (s, v) => s with { Name = v! }, "Name shown on the page." },
        { "latitude", Number(-90, 90, "degrees north"), s => s.LatitudeDegrees, (s, v) => s with { LatitudeDegrees = v }, "Latitude." },
        { "longitude", Number(-180, 180, "degrees east"), s => s.LongitudeDegrees, (s, v) => s with { LongitudeDegrees = v }, "Longitude." },
        { "timeZone", Text("an offset from UTC, \"-14:00\" to \"+14:00\", or the name of a zone this system knows", Site.KnowsTimeZone), s => s.TimeZone, (s, v) => s with { TimeZone = v! }, "Local time." },
    };
}
