using PileController.Panel.Queries;
using PileController.Records;
using PileController.Service;

namespace PileController.Tests.Panel.Queries;

public class HealthApiTests
{
    private static readonly RecordHealth Sound = new(true, 1, 0, 0, null);

    [Theory]
    [InlineData(30, true)]
    [InlineData(31, false)]
    public void Judge_AgeOfTheLastTick_DecidesAtThreeTicks(double ageSeconds, bool healthy)
    {
        HealthBody body = HealthApi.Judge(TimeSpan.FromSeconds(ageSeconds), TimeSpan.FromSeconds(10), new TickCounts(), Sound);

        Assert.Equal(healthy, body.Healthy);
        Assert.Equal(healthy ? 0 : 1, body.Reasons.Count);
    }

    [Fact]
    public void Judge_NoTickYet_IsNotHealthy() =>
        Assert.False(HealthApi.Judge(null, TimeSpan.FromSeconds(10), new TickCounts(), Sound).Healthy);

    [Fact]
    public void Judge_RecordFails_WarnsButStaysHealthy()
    {
        HealthBody body = HealthApi.Judge(TimeSpan.Zero, TimeSpan.FromSeconds(10), new TickCounts(), Sound with { Accepting = false, Fault = "The disk is full." });

        Assert.True(body.Healthy);
        Assert.Contains("The disk is full.", Assert.Single(body.Warnings));
    }

    [Fact]
    public void Judge_RecordDamaged_WarnsButStaysHealthy()
    {
        RecordHealth damaged = Sound with { Damage = new RecordDamage(2, 3, "ticks-000000000001.pile", 7, 5) };

        HealthBody body = HealthApi.Judge(TimeSpan.Zero, TimeSpan.FromSeconds(10), new TickCounts(), damaged);

        Assert.True(body.Healthy);
        Assert.Contains("2 files set aside, 3 parts", Assert.Single(body.Warnings));
        Assert.Equal(("ticks-000000000001.pile", 5), (body.Damage!.Newest, body.Damage.SinceUtcMs));
    }
}
