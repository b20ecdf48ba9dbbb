using Microsoft.Extensions.Time.Testing;
using PileController.Records.Keeping;
using PileController.Records.Storage;

namespace PileController.Records.Tests.Keeping;

public sealed class DamageTallyTests
{
    private static readonly DateTimeOffset Begins = new(2026, 1, 2, 3, 4, 5, TimeSpan.Zero);
    private static readonly long BeginsMs = Begins.ToUnixTimeMilliseconds();
    private readonly FakeTimeProvider _time = new(Begins);
    private readonly DamageTally _tally;

    public DamageTallyTests() => _tally = new DamageTally(_time);

    [Fact]
    public void Damage_NothingFound_IsNull()
    {
        _tally.Aside([]);

        Assert.Null(_tally.Damage);
    }

    [Fact]
    public void Part_ToldTwice_CountsOnceAndKeepsItsTime()
    {
        _tally.Part("a");
        _time.Advance(TimeSpan.FromSeconds(1));
        _tally.Part("a");

        Assert.Equal(new RecordDamage(0, 1, "a", BeginsMs, BeginsMs), _tally.Damage);
    }

    [Fact]
    public void Aside_WithALog_CountsTheFileAndNotTheLog()
    {
        _tally.Aside([new("ticks-000000000001.pile", 10), new("ticks-000000000001.pile.log", 11), new("ticks-000000000001.pile.log.2", 12)]);

        Assert.Equal(new RecordDamage(1, 0, "ticks-000000000001.pile", 10, 10), _tally.Damage);
    }

    [Fact]
    public void Aside_ThenAPart_TellsTheNewestAndTheOldest()
    {
        _tally.Aside([new("older", 10), new("newer", 20)]);
        Assert.Equal(new RecordDamage(2, 0, "newer", 20, 10), _tally.Damage);

        _tally.Part("a");

        Assert.Equal(new RecordDamage(2, 1, "a", BeginsMs, 10), _tally.Damage);
    }

    [Fact]
    public void Aside_FolderEmptied_IsOver()
    {
        _tally.Aside([new SetAsideFile("older", 10)]);

        _tally.Aside([]);

        Assert.Null(_tally.Damage);
    }
}
