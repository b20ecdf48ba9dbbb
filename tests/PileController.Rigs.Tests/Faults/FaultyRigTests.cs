using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;
using PileController.Rigs.Tests.Simulated;

namespace PileController.Rigs.Tests.Faults;

public sealed class FaultyRigTests : IAsyncDisposable
{
    private readonly FaultBoard _board = new();
    private readonly RecordingRig _inner = new();

    public ValueTask DisposeAsync() => _inner.DisposeAsync();

    [Fact]
    public async Task ReadAsync_ProbeFault_ShowsOverAnyRig()
    {
        await using FaultyRig rig = new(_inner, _board);
        Assert.Same(_inner.Says, await rig.ReadAsync(Ticks.At(0), CancellationToken.None));
        _board.Add(new Fault(FaultKind.Open, Channel.House));
        RigReadings shown = await rig.ReadAsync(Ticks.At(1), CancellationToken.None);

        Assert.Equal(ReadingQuality.NoAnswer, shown[Channel.House].Quality);
    }

    [Fact]
    public async Task ApplyAsync_DeadPumpAndJammedValve_ReachTheRig()
    {
        await using FaultyRig rig = new(_inner, _board);
        await rig.ApplyAsync(new Outputs(1, 0.4, 0.3, true), CancellationToken.None);
        _board.Add(new Fault(FaultKind.DeadPump));
        _board.Add(new Fault(FaultKind.ValveJammed));
        await rig.ApplyAsync(new Outputs(0.9, 1, 0.2, false), CancellationToken.None);
        await rig.ApplyAsync(new Outputs(0.9, 0, 0.2, false), CancellationToken.None);
        _board.Clear();
        await rig.ApplyAsync(new Outputs(0.9, 0, 0.2, false), CancellationToken.None);

        Assert.Equal(
            [new Outputs(1, 0.4, 0.3, true), new(0, 0.4, 0.2, false), new(0, 0.4, 0.2, false), new(0.9, 0, 0.2, false)],
            _inner.Told);
    }

    [Fact]
    public async Task ApplyHeldAsync_Wrapped_ReachesTheRigAsHeld()
    {
        await using FaultyRig rig = new(_inner, _board);
        await rig.ApplyAsync(Outputs.Safe, CancellationToken.None);
        await rig.ApplyHeldAsync(Outputs.Safe, CancellationToken.None);

        Assert.Equal((2, 1), (_inner.Told.Count, _inner.Held));
    }

    [Fact]
    public async Task DisposeAsync_Wrapped_DisposesTheRig()
    {
        await new FaultyRig(_inner, _board).DisposeAsync();

        Assert.True(_inner.Disposed);
    }

    [Fact]
    public void Ctor_SimulatedRigWithItsOwnBoard_IsRefused()
    {
        SimulatedRig simulated = new(new FakePlant(), new RigSettings(), 30, _board);

        Assert.Throws<ArgumentException>(() => new FaultyRig(simulated, _board));
    }

    private sealed class RecordingRig : IRig
    {
        public RigReadings Says { get; } =
            RigReadings.None.With(Channel.House, Reading.FromValue(Channel.House, 9));

        public List<Outputs> Told { get; } = [];

        public int Held { get; private set; }

        public bool Disposed { get; private set; }

        public ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation) => ValueTask.FromResult(Says);

        public ValueTask ApplyHeldAsync(Outputs outputs, CancellationToken cancellation)
        {
            Held++;
            return ApplyAsync(outputs, cancellation);
        }

        public ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation)
        {
            Told.Add(outputs);
            return ValueTask.CompletedTask;
        }

        public ValueTask DisposeAsync()
        {
            Disposed = true;
            return ValueTask.CompletedTask;
        }
    }
}
