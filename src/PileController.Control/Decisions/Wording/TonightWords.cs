using System.Globalization;
using System.Text;

namespace PileController.Control.Decisions.Wording;

/// <summary>Warns of a night that is likely to be too cold, once in the evening before it.</summary>
internal static class TonightWords
{
    public static void Add(StringBuilder text, Decision decision, Figures figures)
    {
        if (!decision.Kinds.HasFlag(DecisionKinds.Tonight) || decision.Tonight is not { } tonight)
        {
            return;
        }

        text.Append(" Tonight the house is likely to fall to ").Append(figures.Celsius(tonight.MinimumP50C));
        text.Append(" about ").Append(Clock(tonight.AtUtcMilliseconds, decision.At.OffsetMinutes));
        text.Append(", in one night of ten to ").Append(figures.Celsius(tonight.MinimumP10C));
        text.Append("; the chance that it holds its minimum is ").Append(Figures.Share(tonight.ChanceOfHolding)).Append('.');
        if (tonight is { BackupWatts: { } watts, FromUtcMilliseconds: { } from })
        {
            text.Append(" With ").Append(figures.Watts(watts)).Append(" of other heat from ");
            text.Append(Clock(from, decision.At.OffsetMinutes)).Append(" it would hold in nine nights of ten.");
        }
    }

    private static string Clock(long utcMilliseconds, int offsetMinutes) =>
        DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).AddMinutes(offsetMinutes).ToString("HH:mm", CultureInfo.InvariantCulture);
}
