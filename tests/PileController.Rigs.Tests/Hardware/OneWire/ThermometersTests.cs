using System.Collections.Concurrent;
using Microsoft.Extensions.Time.Testing;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public sealed class ThermometersTests : IDisposable
{
    private static readonly RigSettings Two = new()
    {
        Probes =
        [
            new(Channel.HeapCore, Address: ProbeTree.Address(1)),
            new(Channel.House, Address: ProbeTree.Address(2), OffsetKelvin: 0.5),
            new(Channel.Tank),
        ],
    };

    private readonly ProbeTree _tree = new();
    private readonly FakeTimeProvider _time = new();
    private readonly ConcurrentDictionary<string, ManualResetEventSlim> _held = new();
    private readonly SemaphoreSlim _asked = new(0);

    public void Dispose()
    {
        foreach (ManualResetEventSlim hold in _held.Values)
        {
            hold.Set();
        }

        _tree.Dispose();
        _asked.Dispose();
    }

    [Fact]
    public async Task ReadAsync_FilesThere_GivesEachChannelItsOwnProbe()
    {
        _tree.Write(1, 57.25);
        _tree.Write(2, -4.5);
        using Thermometers thermometers = Make(Two);
        RigReadings readings = await Read(thermometers);

        Assert.Equal(Reading.FromValue(Channel.HeapCore, 57.25), readings[Channel.HeapCore]);
        Assert.Equal(Reading.FromValue(Channel.House, -4.0), readings[Channel.House]);
        Assert.Equal(Reading.NotFitted, readings[Channel.Tank]);
    }

    [Fact]
    public async Task ReadAsync_AddressesSwappedInTheSettings_SwapsTheChannels()
    {
        _tree.Write(1, 57.25);
        _tree.Write(2, -4.5);
        RigSettings swapped = new()
        {
            Probes = [new(Channel.HeapCore, Address: ProbeTree.Address(2)), new(Channel.House, Address: ProbeTree.Address(1))],
        };
        using Thermometers thermometers = Make(swapped);
        RigReadings readings = await Read(thermometers);

        Assert.Equal(-4.5, readings[Channel.HeapCore].ValueOf(Channel.HeapCore));
        Assert.Equal(57.25, readings[Channel.House].ValueOf(Channel.House));
    }

    [Fact]
    public async Task ReadAsync_ProbeGoesAndComesBack_IsNoAnswerBetween()
    {
        _tree.Write(1, 57.25);
        using Thermometers thermometers = Make(Two);
        Assert.Equal(ReadingQuality.NoAnswer, (await Read(thermometers))[Channel.House].Quality);
        _tree.Write(2, 8);
        Assert.Equal(ReadingQuality.Good, (await Read(thermometers))[Channel.House].Quality);
        _tree.Remove(2);
        Assert.Equal(ReadingQuality.NoAnswer, (await Read(thermometers))[Channel.House].Quality);
    }

    [Theory]
    [InlineData("garbage", ReadingQuality.BadChecksum)]
    [InlineData("", ReadingQuality.NoAnswer)]
    [InlineData("00 00 00 00 00 00 00 00 00 : crc=00 YES\n00 00 00 00 00 00 00 00 00 t=0\n", ReadingQuality.Shorted)]
    [InlineData("50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n", ReadingQuality.PowerOnValue)]
    public async Task ReadAsync_OneProbeOutOfOrder_LeavesTheOtherSound(string text, ReadingQuality quality)
    {
        _tree.Write(1, text);
        _tree.Write(2, 8);
        using Thermometers thermometers = Make(Two);
        RigReadings readings = await Read(thermometers);

        Assert.Equal(quality, readings[Channel.HeapCore].Quality);
        Assert.True(readings[Channel.House].IsGood);
    }

    [Fact]
    public async Task ReadAsync_ProbeThatHangs_DoesNotHoldTheTickAndShowsItsAge()
    {
        _tree.Write(1, 57.25);
        _tree.Write(2, 8);
        using Thermometers thermometers = Make(Two);
        await Read(thermometers);
        ManualResetEventSlim hold = Hold(1);
        _time.Advance(TimeSpan.FromSeconds(10));

        RigReadings soon = await ReadPastTheDeadline(thermometers, Hung());
        Assert.Equal(new Reading((57 * 16) + 4, ReadingQuality.Good, 12_000), soon[Channel.HeapCore]);

        _time.Advance(TimeSpan.FromSeconds(8));
        RigReadings late = await ReadPastTheDeadline(thermometers, Task.CompletedTask);
        Assert.Equal(new Reading((57 * 16) + 4, ReadingQuality.Late, 22_000), late[Channel.HeapCore]);
        Assert.Equal(ReadingQuality.Late, late[Channel.House].Quality);

        _time.Advance(TimeSpan.FromSeconds(58));
        RigReadings dead = await ReadPastTheDeadline(thermometers, Task.CompletedTask);
        Assert.Equal(ReadingQuality.NoAnswer, dead[Channel.HeapCore].Quality);

        hold.Set();
        _held.Clear();
        Assert.True((await Read(thermometers))[Channel.House].IsGood);
    }

    [Fact]
    public async Task ReadAsync_ProbeThatTookTooLong_SitsOutSoThatTheOthersStayFresh()
    {
        _tree.Write(1, 57.25);
        _tree.Write(2, 8);
        using Thermometers thermometers = Make(Two);
        await Read(thermometers);
        ManualResetEventSlim hold = Hold(1);
        await ReadPastTheDeadline(thermometers, Hung());
        _time.Advance(TimeSpan.FromSeconds(8));
        hold.Set();
        await Read(thermometers);

        // It would hang again if it were asked, and this reading would never come.
        hold.Reset();
        RigReadings readings = await Read(thermometers);
        Assert.Equal(Reading.FromValue(Channel.House, 8.5), readings[Channel.House]);
        Assert.Equal(10_000, readings[Channel.HeapCore].AgeMilliseconds);
        hold.Set();
    }

    [Fact]
    public async Task ReadAsync_HangOnOneWire_LeavesTheOtherWireFresh()
    {
        _tree.WriteLinked(1, "w1_bus_master1", 57.25);
        _tree.WriteLinked(2, "w1_bus_master2", 8);
        using Thermometers thermometers = Make(Two, new BusLimits { Dead = TimeSpan.FromDays(1) });
        await Read(thermometers);
        ManualResetEventSlim hold = Hold(1);
        _time.Advance(TimeSpan.FromSeconds(20));

        // The other wire's thread answers when it comes to run; on the same wire it would never.
        RigReadings readings = await ReadPastTheDeadline(thermometers, Hung());
        for (int attempt = 0; attempt < 200 && readings[Channel.House].AgeMilliseconds > 0; attempt++)
        {
            await Task.Delay(1);
            readings = await ReadPastTheDeadline(thermometers, Task.CompletedTask);
        }

        Assert.Equal(ReadingQuality.Late, readings[Channel.HeapCore].Quality);
        Assert.Equal(Reading.FromValue(Channel.House, 8.5), readings[Channel.House]);
        hold.Set();
    }

    [Fact]
    public async Task ReadAsync_Cancelled_Stops()
    {
        _tree.Write(1, 57.25);
        using Thermometers thermometers = Make(Two);
        ManualResetEventSlim hold = Hold(1);
        using CancellationTokenSource cancel = new();
        Task read = thermometers.ReadAsync(new Reading[ChannelTable.Count], cancel.Token);
        await cancel.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => read);
        hold.Set();
    }

    [Theory]
    [InlineData("28-0000055F1020", Channel.House, "28- and twelve digits")]
    [InlineData("28-0000055f1020", Channel.Flow, "only a temperature")]
    [InlineData("28-000000000001", Channel.House, "given twice")]
    public void Ctor_AddressThatCannotBe_IsRefusedByName(string address, Channel channel, string word)
    {
        RigSettings settings = new()
        {
            Probes = [new(Channel.HeapCore, Address: "28-000000000001"), new(channel, Address: address)],
        };

        ArgumentException error = Assert.Throws<ArgumentException>(() => Make(settings).Dispose());
        Assert.Contains(word, error.Message, StringComparison.Ordinal);
        Assert.Contains(address, error.Message, StringComparison.Ordinal);
        Assert.Contains(ChannelTable.Of(channel).Name, error.Message, StringComparison.Ordinal);
    }

    private static async Task<RigReadings> Read(Thermometers thermometers)
    {
        Reading[] readings = new Reading[ChannelTable.Count];

        // The test's own clock stands still: a bus that hangs for good must fail the test, not hold it.
        await thermometers.ReadAsync(readings, CancellationToken.None).WaitAsync(TimeSpan.FromSeconds(30));
        return new RigReadings(readings);
    }

    private Thermometers Make(RigSettings settings, BusLimits? limits = null) => new(
        settings with { Hardware = new HardwareSettings { OneWireRoot = _tree.Root } },
        _time,
        limits ?? new BusLimits(),
        ReadText,
        (_, _) => Assert.Fail("these wires offer no conversion of all probes at once"));

    /// <summary>Lets the deadline pass once the bus hangs, as it would by itself on a real clock.</summary>
    private async Task<RigReadings> ReadPastTheDeadline(Thermometers thermometers, Task hung)
    {
        Task<RigReadings> read = Read(thermometers);
        await hung;
        _time.Advance(TimeSpan.FromSeconds(2));
        return await read;
    }

    /// <summary>Done when a held probe has been asked; gives up where it never is, so that the test fails and ends.</summary>
    private Task<bool> Hung() => _asked.WaitAsync(TimeSpan.FromSeconds(30));

    private ManualResetEventSlim Hold(int number) => _held.GetOrAdd(ProbeTree.Address(number), _ => new ManualResetEventSlim());

    private string ReadText(string path)
    {
        string address = Path.GetFileName(Path.GetDirectoryName(path)!);
        if (_held.TryGetValue(address, out ManualResetEventSlim? hold))
        {
            _asked.Release();
            hold.Wait();
        }

        return File.ReadAllText(path);
    }
}
