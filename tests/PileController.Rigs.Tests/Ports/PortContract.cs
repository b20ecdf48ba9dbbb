using PileController.Control.Readings;

namespace PileController.Rigs.Tests.Ports;

/// <summary>What every probe owes, whatever is behind it. One derived contract a kind of port, one derived class an adapter.</summary>
public abstract class PortContract : IDisposable
{
    private readonly IPortBench _bench;

    private protected PortContract(IPortBench bench) => _bench = bench;

    /// <summary>What the probe tells.</summary>
    protected abstract Channel Channel { get; }

    /// <summary>A value it can have.</summary>
    protected abstract double Some { get; }

    [Fact]
    public async Task ReadAsync_CutOff_IsAQualityAndNoNumberToActOn()
    {
        await using IRig rig = _bench.Make();
        await _bench.SetAsync(rig, Some);
        Assert.True((await _bench.ReadAsync(rig)).IsGood);
        _bench.Break();

        Assert.False((await _bench.ReadAsync(rig)).IsGood);
    }

    [Fact]
    public async Task ReadAsync_Twice_IsStillGood()
    {
        await using IRig rig = _bench.Make();
        await _bench.SetAsync(rig, Some);
        await _bench.ReadAsync(rig);

        Assert.Equal(ReadingQuality.Good, (await _bench.ReadAsync(rig)).Quality);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _bench.Dispose();
        GC.SuppressFinalize(this);
    }

    /// <summary>What the probe says of a truth.</summary>
    protected async Task<double> SaysAsync(double truth)
    {
        await using IRig rig = _bench.Make();
        await _bench.SetAsync(rig, truth);
        Reading reading = await _bench.ReadAsync(rig);
        Assert.Equal(ReadingQuality.Good, reading.Quality);
        return reading.ValueOf(Channel);
    }
}
