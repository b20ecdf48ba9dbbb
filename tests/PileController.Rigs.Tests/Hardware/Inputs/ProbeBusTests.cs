using Microsoft.Extensions.Time.Testing;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Tests.Hardware.Inputs;

public sealed class ProbeBusTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly FakeTimeProvider _time = new();
    private readonly Seen _brisk = new(wantsGlances: true);
    private readonly Seen _plain = new(wantsGlances: false);

    public void Dispose()
    {
        _brisk.Looks.Dispose();
        _plain.Looks.Dispose();
    }

    [Fact]
    public async Task Glances_EverySecond_GoToThoseThatWantThemOnly()
    {
        using ProbeBus bus = new([_plain, _brisk], _time, BusLimits.I2c);
        await bus.Sweep().WaitAsync(Patience);
        for (int second = 0; second < 3; second++)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            Assert.True(await _brisk.Looks.WaitAsync(Patience));
        }

        await bus.Sweep().WaitAsync(Patience);
        Assert.Equal((2, 2), (_plain.Asked, _brisk.Asked));
        Assert.Equal(0, _plain.Looks.CurrentCount);
    }

    [Fact]
    public async Task Glance_ThatHangs_SitsOutAsASweepWould()
    {
        _brisk.OnLook = () => _time.Advance(TimeSpan.FromSeconds(0.9));
        using ProbeBus bus = new([_brisk], _time, BusLimits.I2c);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.True(await _brisk.Looks.WaitAsync(Patience));
        for (int sweep = 0; sweep < 5; sweep++)
        {
            await bus.Sweep().WaitAsync(Patience);
        }

        Assert.Equal(0, _brisk.Asked);
        await bus.Sweep().WaitAsync(Patience);
        Assert.Equal(1, _brisk.Asked);
    }

    [Fact]
    public async Task Dispose_WhileGlancesAreDue_EndsThem()
    {
        ProbeBus bus = new([_brisk], _time, BusLimits.I2c);
        await bus.Sweep().WaitAsync(Patience);
        bus.Dispose();
        _time.Advance(TimeSpan.FromSeconds(5));

        Assert.Equal(0, _brisk.Looks.CurrentCount);
    }

    private sealed class Seen(bool wantsGlances) : IStation
    {
        public SemaphoreSlim Looks { get; } = new(0);

        public int Asked { get; private set; }

        public Action? OnLook { get; set; }

        public bool WantsGlances => wantsGlances;

        public IReadOnlyList<Measured> Ask()
        {
            Asked++;
            return [Measured.Good(1)];
        }

        public void Glance()
        {
            OnLook?.Invoke();
            Looks.Release();
        }
    }
}
