using System.Collections.Concurrent;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

/// <summary>Eight probes on a wire whose kernel takes the time a real one would: 750 ms a conversion, 15 ms to fetch nine bytes.</summary>
public sealed class BulkConversionTests : IDisposable
{
    // SEN-021, DS18B20 data sheet rev 042208.
    private static readonly TimeSpan Conversion = TimeSpan.FromMilliseconds(750);

    // 160 bits in slots of some 70 µs and a reset (from memory).
    private static readonly TimeSpan Fetch = TimeSpan.FromMilliseconds(15);

    private static readonly Channel[] Eight =
    [
        Channel.HeapCore, Channel.HeapMiddle, Channel.HeapTurns, Channel.HeapEdge, Channel.Supply, Channel.Return, Channel.House,
        Channel.Floor,
    ];

    private readonly ProbeTree _tree = new();
    private readonly FakeTimeProvider _time = new();
    private readonly ConcurrentDictionary<string, bool> _converted = new();
    private int _triggers;
    private bool _isForbidden;

    public BulkConversionTests()
    {
        for (int i = 0; i < Eight.Length; i++)
        {
            _tree.WriteLinked(i + 1, "w1_bus_master1", 20 + i);
        }
    }

    public void Dispose() => _tree.Dispose();

    [Fact]
    public async Task ReadAsync_KernelConvertsAllAtOnce_TakesOneConversionForEight()
    {
        _tree.OfferBulk("w1_bus_master1");

        Assert.InRange(await SweepAsync(), TimeSpan.Zero, TimeSpan.FromSeconds(2.5));
        Assert.Equal(1, _triggers);
    }

    [Fact]
    public async Task ReadAsync_KernelOffersNone_ConvertsOneByOne()
    {
        Assert.Equal(8 * (Conversion + Fetch), await SweepAsync());
        Assert.Equal(0, _triggers);
    }

    [Fact]
    public async Task ReadAsync_NotAllowedToConvertAllAtOnce_ConvertsOneByOne()
    {
        _tree.OfferBulk("w1_bus_master1");
        _isForbidden = true;

        Assert.Equal(8 * (Conversion + Fetch), await SweepAsync());
    }

    /// <summary>Reads all eight and says how long the wire was busy.</summary>
    private async Task<TimeSpan> SweepAsync()
    {
        RigSettings settings = new()
        {
            Probes = [.. Eight.Select((channel, i) => new ProbeFit(channel, Address: ProbeTree.Address(i + 1)))],
            Hardware = new HardwareSettings { OneWireRoot = _tree.Root },
        };
        BusLimits patient = new() { Deadline = TimeSpan.FromDays(1) };
        using Thermometers thermometers = new(settings, _time, patient, ReadText, WriteText);
        long began = _time.GetTimestamp();
        Reading[] readings = new Reading[ChannelTable.Count];
        await thermometers.ReadAsync(readings, CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(30));

        Assert.All(Eight, (channel, i) => Assert.Equal(Reading.FromValue(channel, 20 + i), readings[(int)channel] with { AgeMilliseconds = 0 }));
        return _time.GetElapsedTime(began);
    }

    private string ReadText(string path)
    {
        _time.Advance(_converted.TryRemove(path, out _) ? Fetch : Conversion + Fetch);
        return File.ReadAllText(path);
    }

    private void WriteText(string path, string text)
    {
        Assert.EndsWith("/w1_bus_master1/therm_bulk_read", path, StringComparison.Ordinal);
        Assert.Equal("trigger\n", text);
        if (_isForbidden)
        {
            throw new UnauthorizedAccessException("not allowed");
        }

        _triggers++;
        _time.Advance(Conversion);
        for (int i = 0; i < Eight.Length; i++)
        {
            _converted[Path.Combine(_tree.Root, ProbeTree.Address(i + 1), "w1_slave")] = true;
        }
    }
}
