namespace PileController.Records.Export;

/// <summary>Writes what a record was asked for as CSV (RFC 4180), units in the header.</summary>
public static class CsvExport
{
    /// <summary>Writes a series: time, least, mean, most, count. A gap has empty fields and count 0.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="series">Name of the series; its unit goes into the header.</param>
    /// <param name="points">What <see cref="IPileRecord.SamplesAsync"/> answered.</param>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public static void Samples(TextWriter to, string series, IEnumerable<SeriesPoint> points)
    {
        RecordSeries found = RecordSeries.Find(series);
        string unit = found.Unit.Length == 0 ? "" : $" [{found.Unit}]";
        Csv.Line(to, "time [UTC]", $"{found.Name} least{unit}", $"{found.Name} mean{unit}", $"{found.Name} most{unit}", "count");
        foreach (SeriesPoint point in points)
        {
            Csv.Line(
                to, Csv.Moment(point.UtcMilliseconds), Csv.Number(point.Least), Csv.Number(point.Mean), Csv.Number(point.Most),
                point.Count.ToString());
        }
    }

    /// <summary>Writes decision lines in the order given.</summary>
    /// <param name="to">Where to.</param>
    /// <param name="lines">What <see cref="IPileRecord.DecisionsAsync"/> answered.</param>
    public static void Decisions(TextWriter to, IEnumerable<DecisionLine> lines)
    {
        Csv.Line(
            to, "sequence", "time [UTC]", "kinds", "mode", "curb", "want [W]", "means [W]", "grant [W]", "water draw [W]",
            "active zone [°C]", "house [°C]", "why", "note");
        foreach (DecisionLine line in lines)
        {
            Csv.Line(
                to, line.Sequence.ToString(), Csv.Moment(line.UtcMilliseconds), line.Kinds.ToString(), line.Mode.ToString(),
                line.Curb.ToString(), Csv.Number(line.WantWatts), Csv.Number(line.MeansWatts), Csv.Number(line.GrantWatts),
                Csv.Number(line.WaterWatts), Csv.Number(line.ActiveZoneCelsius), Csv.Number(line.HouseCelsius), Csv.Typed(line.Why),
                Csv.Typed(line.Note ?? ""));
        }
    }
}
