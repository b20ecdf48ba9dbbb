using PileController.Alarms;
using static PileController.Tests.Alarms.Bench;

namespace PileController.Tests.Alarms;

public sealed class AlarmFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-alarms-").FullName;
    private readonly Bench _bench = new(Row("a", _ => true) with { DelaySeconds = 20 }, Row("b", _ => true), Row("late", _ => true) with { DelaySeconds = 1000 });

    private string Path => System.IO.Path.Combine(_folder, "alarms.json");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Load_WhatWasSaved_GoesOnWhereItWas()
    {
        _bench.Live(60);
        _bench.State = AlarmHands.Shelve(_bench.Table, _bench.State, 1, 600, "Robin", 7).State;
        new AlarmFile(Path).Save(_bench.Table, _bench.State);
        AlarmState loaded = new AlarmFile(Path).Load(_bench.Table, out string? trouble);

        Assert.Null(trouble);
        Assert.Equal(_bench.State.Rows, loaded.Rows);
        Assert.Equal(_bench.State.Recent, loaded.Recent);
        Assert.Equal((_bench.State.Seconds, _bench.State.Number), (loaded.Seconds, loaded.Number));

        // The monotonic clock begins anew with the program: nothing rises twice, and delays and shelves run on.
        Bench after = new(_bench.Table) { State = loaded };
        after.Live(42);
        Assert.Equal(["late"], after.Events.Where(one => one.Kind == AlarmEventKind.Raised).Select(one => one.Key));
        after.Live(20);
        Assert.Contains(after.Events, one => one.Kind == AlarmEventKind.ShelfEnded && one.Key == "b");
    }

    [Fact]
    public void Load_NoFile_IsFresh() => Assert.All(new AlarmFile(Path).Load(_bench.Table, out _).Rows, row => Assert.Equal(AlarmMemory.Fresh, row));

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{ \"version\": 1, \"seconds\":")]
    [InlineData("{ \"version\": 2 }")]
    [InlineData("{ \"version\": 1, \"rows\": { \"a\": { \"phase\": \"dancing\" } } }")]
    public void Load_WhatCannotBeRead_IsSetAsideAndSaid(string text)
    {
        File.WriteAllText(Path, text);
        AlarmState loaded = new AlarmFile(Path).Load(_bench.Table, out string? trouble);
        Assert.Contains("alarms.json", trouble, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Path + ".damaged"));
        Assert.Empty(loaded.Recent);
    }

    [Fact]
    public void Load_TimesOutOfBounds_ShelvesNoLongerThanAllowed()
    {
        File.WriteAllText(Path, """{ "version": 1, "seconds": 100, "rows": { "a": { "shelvedUntilSeconds": 1e12, "beganSeconds": 1e12, "phase": "standing" }, "gone": { "unseen": true }, "b": null } }""");
        AlarmState loaded = new AlarmFile(Path).Load(_bench.Table, out _);
        Assert.Equal(100 + AlarmHands.MostShelvedSeconds, loaded.Rows[0].ShelvedUntilSeconds);
        Assert.Equal(100, loaded.Rows[0].BeganSeconds);
        Assert.Equal(AlarmMemory.Fresh, loaded.Rows[1]);
    }
}
