using PileController.Control.Readings;
using PileController.Records.Packing;

namespace PileController.Records.Queries;

/// <summary>Reads one series out of packed batches without opening the others.</summary>
internal sealed class SeriesReader
{
    private readonly ChannelInfo? _channel;
    private readonly int _figure;

    /// <summary>A reader of the named series.</summary>
    /// <exception cref="ArgumentException">There is no such series.</exception>
    public SeriesReader(string name)
    {
        string found = RecordSeries.Find(name).Name;
        if (ChannelTable.TryFind(found, out ChannelInfo channel))
        {
            _channel = channel;
        }
        else
        {
            _figure = found == RecordSeries.ModeName ? -1 : DecisionSeries.All.ToList().FindIndex(f => f.Name == found);
        }
    }

    /// <summary>The values of a batch, one a tick; NaN where there is none that may be believed.</summary>
    public double[] Values(PackedBatch batch)
    {
        if (_channel is not null)
        {
            return Readings(batch, _channel);
        }

        if (_figure < 0)
        {
            return [.. batch.Column(TickColumns.Mode).Select(mode => (double)mode)];
        }

        double perUnit = DecisionSeries.All[_figure].PerUnit;
        return [.. batch.Column(TickColumns.FirstFigure + _figure)
            .Select(cell => cell == TickColumns.NoFigure ? double.NaN : cell / perUnit)];
    }

    private static double[] Readings(PackedBatch batch, ChannelInfo channel)
    {
        long[] quanta = batch.Column(TickColumns.Of(channel.Channel, TickColumns.RawQuanta));
        long[] shift = batch.Column(TickColumns.Of(channel.Channel, TickColumns.QuantaShift));
        long[] quality = batch.Column(TickColumns.Of(channel.Channel, TickColumns.Quality));
        double[] values = new double[quanta.Length];
        for (int row = 0; row < values.Length; row++)
        {
            values[row] = quality[row] == (long)ReadingQuality.Good ? (quanta[row] + shift[row]) * channel.Quantum : double.NaN;
        }

        return values;
    }
}
