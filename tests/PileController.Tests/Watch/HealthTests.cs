using PileController.Records;
using PileController.Watch;

namespace PileController.Tests.Watch;

public class HealthTests
{
    private static readonly RecordHealth Writing = new(true, 1, 0, 0, null);
    private static readonly VitalSigns Well = new(true, true, true, Writing, TimeSpan.Zero);

    [Fact]
    public void Sickness_AllWell_IsNone()
    {
        Assert.Null(Health.Sickness(Well));
    }

    [Fact]
    public void Sickness_EachThatCounts_StopsTheSign()
    {
        VitalSigns[] sick =
        [
            Well with { TicksOnTime = false },
            Well with { RigAnswers = false },
            Well with { RigObeys = false },
            Well with { ProbesSilentSince = Health.LongestSilence },
            Well with { Record = Writing with { Accepting = false } },
        ];

        Assert.All(sick, signs => Assert.NotNull(Health.Sickness(signs)));
    }

    [Fact]
    public void Sickness_ARecordKnownToBeDead_StopsNothing()
    {
        Assert.Null(Health.Sickness(Well with { Record = Writing with { Accepting = false, Fault = "The disk is full." } }));
    }

    [Fact]
    public void Sickness_ProbesThatNeverAnswered_StopNothing()
    {
        Assert.Null(Health.Sickness(Well with { ProbesSilentSince = null }));
    }

    [Fact]
    public void Sickness_ProbesSilentForAWhile_StopNothingYet()
    {
        Assert.Null(Health.Sickness(Well with { ProbesSilentSince = Health.LongestSilence - TimeSpan.FromSeconds(1) }));
    }
}
