namespace PileController.Control.Foresight;

/// <summary>What was foretold at some hour, kept until it has come due. Not changed after it was made.</summary>
/// <param name="Hour">When, hours since 1970-01-01T00:00Z.</param>
/// <param name="ForecastEndHour">The first hour a forecast did not cover then.</param>
/// <param name="OutsideC">Air outside at each of <see cref="OutlookErrors.Leads"/>, °C.</param>
public sealed record IssuedOutlook(long Hour, long ForecastEndHour, double[] OutsideC);
