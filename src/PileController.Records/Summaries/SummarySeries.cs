using PileController.Control.Readings;
using PileController.Records.Packing;
using PileController.Records.Queries;

namespace PileController.Records.Summaries;

/// <summary>
/// The series that are summed up, by number: the mode, the figures of a decision, the channels. The order is the file
/// format: new channels go to the end.
/// </summary>
internal static class SummarySeries
{
    public const int Mode = 0;
    public const int FirstFigure = 1;
    public const int FirstChannel = FirstFigure + TickColumns.Figures;
    public const int Count = FirstChannel + ChannelTable.Count;

    // A figure is so many steps a unit, a channel's quantum so much of one; each keeps the bits it has by itself.
    private static readonly double[] Quanta =
        [.. Enumerable.Repeat(1.0, FirstChannel), .. ChannelTable.All.Select(channel => channel.Quantum)];

    private static readonly double[] PerUnit =
        [1, .. DecisionSeries.All.Select(figure => figure.PerUnit), .. Enumerable.Repeat(1.0, ChannelTable.Count)];

    /// <summary>The number of the named series.</summary>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public static int Find(string name)
    {
        string found = RecordSeries.Find(name).Name;
        if (ChannelTable.TryFind(found, out ChannelInfo channel))
        {
            return FirstChannel + (int)channel.Channel;
        }

        return found == RecordSeries.ModeName ? Mode : FirstFigure + DecisionSeries.All.ToList().FindIndex(f => f.Name == found);
    }

    /// <summary>
    /// The cells of a batch, one a tick, in whole quanta; <see cref="TickColumns.NoFigure"/> where there is none that
    /// may be believed.
    /// </summary>
    public static long[] Cells(int series, PackedBatch batch)
    {
        if (series == Mode)
        {
            return batch.Column(TickColumns.Mode);
        }

        return series < FirstChannel
            ? Figures(batch.Column(TickColumns.FirstFigure + series - FirstFigure))
            : Readings(batch, (Channel)(series - FirstChannel));
    }

    /// <summary>A number of quanta in the unit of the series.</summary>
    public static double ToUnit(int series, double quanta) => quanta * Quanta[series] / PerUnit[series];

    // A build that knew no bound may have kept larger figures.
    private static long[] Figures(long[] cells)
    {
        foreach (ref long cell in cells.AsSpan())
        {
            cell = cell is >= -TickColumns.MostFigure and <= TickColumns.MostFigure ? cell : TickColumns.NoFigure;
        }

        return cells;
    }

    private static long[] Readings(PackedBatch batch, Channel channel)
    {
        long[] quanta = batch.Column(TickColumns.Of(channel, TickColumns.RawQuanta));
        long[] shift = batch.Column(TickColumns.Of(channel, TickColumns.QuantaShift));
        long[] quality = batch.Column(TickColumns.Of(channel, TickColumns.Quality));
        for (int row = 0; row < quanta.Length; row++)
        {
            quanta[row] = quality[row] == (long)ReadingQuality.Good ? quanta[row] + shift[row] : TickColumns.NoFigure;
        }

        return quanta;
    }
}
