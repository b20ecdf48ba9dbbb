using Microsoft.Extensions.Logging.Abstractions;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Forecasts;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Forecasts;

public sealed class ForecastWatchTests : IDisposable
{
    private const long Now = 1_769_576_400_000; // 2026-01-28T05:00Z
    private readonly string _path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
    private readonly CommandInbox _inbox = new(1);
    private readonly ForecastWatch _watch;

    public ForecastWatchTests()
    {
        PanelFeed feed = new(TimeProvider.System);
        Instant at = new(Now, Now, 0);
        Decision decision = new CannedControl().Step(new ControlSettings(), Memory.Fresh, MadeUp.Readings(at), [], at).Decision;
        feed.Publish(new TickNews(decision, decision.Readings, new FakeRecord().Health, Memory.Fresh));
        _watch = new ForecastWatch(new ForecastFile(_path), _inbox, feed, TimeProvider.System, NullLogger<ForecastWatch>.Instance);
    }

    public void Dispose()
    {
        _watch.Dispose();
        File.Delete(_path);
    }

    [Fact]
    public void Look_AtAFileThatChanges_HandsItOverOnceAChange()
    {
        Assert.Empty(Looked());
        Write("2026-01-28T05:00:00Z,1.5", 1);
        Assert.Equal([1.5], Assert.Single(Looked()).Forecast.OutsideC);
        Assert.Empty(Looked());
        Write("2026-01-28T05:00:00Z,2.5", 2);
        Assert.Equal([2.5], Assert.Single(Looked()).Forecast.OutsideC);
    }

    [Theory]
    [InlineData("2026-01-28T05:00:00Z,warm")]
    [InlineData("2026-01-28T05:00:00Z,99")]
    [InlineData("2025-01-28T05:00:00Z,1")]
    public void Look_AtAFileThatIsWrongOrPast_HandsNothingOver(string row)
    {
        Write(row, 1);
        Assert.Empty(Looked());
    }

    private void Write(string row, int minute)
    {
        File.WriteAllText(_path, $"utc,outsideC\n{row}\n");
        File.SetLastWriteTimeUtc(_path, new DateTime(2026, 1, 1, 0, minute, 0, DateTimeKind.Utc));
    }

    private TakeForecast[] Looked()
    {
        _watch.Look();
        return [.. _inbox.Drain(1).OfType<TakeForecast>()];
    }
}
