using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Rigs.Tests.Faults;

public class FaultBoardTests
{
    private readonly FaultBoard _board = new();

    [Fact]
    public void Add_SameKindAndProbe_ReplacesTheFirst()
    {
        _board.Add(new Fault(FaultKind.Drift, Channel.House, 1));
        _board.Add(new Fault(FaultKind.Open, Channel.House));
        _board.Add(new Fault(FaultKind.Drift, Channel.House, 2));

        Assert.Equal([new Fault(FaultKind.Open, Channel.House), new Fault(FaultKind.Drift, Channel.House, 2)], _board.Active);
    }

    [Fact]
    public void Add_SenselessFault_IsRefusedAndLeavesTheBoard()
    {
        Assert.Throws<ArgumentException>(() => _board.Add(new Fault(FaultKind.Open)));
        Assert.Empty(_board.Active);
    }

    [Fact]
    public void Remove_OneOfTwo_LeavesTheOther()
    {
        _board.Add(new Fault(FaultKind.Open, Channel.House));
        _board.Add(new Fault(FaultKind.Open, Channel.Floor));

        Assert.True(_board.Remove(FaultKind.Open, Channel.House));
        Assert.False(_board.Remove(FaultKind.Open, Channel.House));
        Assert.Equal([new Fault(FaultKind.Open, Channel.Floor)], _board.Active);
    }

    [Fact]
    public void Active_AfterAChange_IsANewListAndTheOldStays()
    {
        IReadOnlyList<Fault> before = _board.Active;
        Assert.Same(before, _board.Active);
        _board.Add(new Fault(FaultKind.DeadPump));

        Assert.Empty(before);
        Assert.Single(_board.Active);
        _board.Clear();
        Assert.Empty(_board.Active);
    }

    [Fact]
    public void Ctor_FaultsOfTheSettings_AreIn() =>
        Assert.Equal([new Fault(FaultKind.SlowBus)], new FaultBoard([new Fault(FaultKind.SlowBus)]).Active);

    [Fact]
    public void Add_FromManyThreads_LosesNone()
    {
        Parallel.ForEach(ChannelTable.All, info => _board.Add(new Fault(FaultKind.Open, info.Channel)));

        Assert.Equal(ChannelTable.Count, _board.Active.Select(fault => fault.Channel).Distinct().Count());
    }
}
