using PileController.Benchmarks.Scores;

namespace PileController.Tests.Plans;

/// <summary>What the scoreboard says of rules beside the bound.</summary>
public class CaptureTests
{
    [Theory]
    [InlineData(100, 20, 60, 0.5)]
    [InlineData(100, 20, 20, 1)]
    [InlineData(100, 20, 100, 0)]
    [InlineData(100, 20, 120, -0.25)]
    public void Share_OfWhatTheBoundAvoids(double none, double bound, double rule, double share) =>
        Assert.Equal(share, Capture.Share(none, bound, rule)!.Value, 12);

    [Fact]
    public void Share_WhereNothingCanBeWon_IsNone() => Assert.Null(Capture.Share(10, 10, 12));

    [Fact]
    public void Filled_WithABoundBesideThem_ShareScoreAndCertificateAreThere()
    {
        Cell means = Capture.Filled(Board(100, 40, 20)).Single(c => c.Policy == "means");
        Assert.Equal(0.75, means.Captured!.Value, 12);
        Assert.Equal(0.5, means.CapturedByCutout!.Value, 12);
        Assert.Equal(3, means.Certificate);
        Assert.True(means.Scored);
    }

    [Fact]
    public void Filled_WithLittleToWin_IsToldButNotScored()
    {
        Cell means = Capture.Filled(Board(69.9, 40, 20)).Single(c => c.Policy == "means");
        Assert.NotNull(means.Captured);
        Assert.False(means.Scored);
        Assert.True(Capture.Filled(Board(70, 40, 20)).Single(c => c.Policy == "means").Scored);
    }

    [Fact]
    public void Filled_WithoutABound_StaysEmpty()
    {
        Cell[] cells = Capture.Filled([.. Board(100, 40, 20).Where(c => c.Policy != Cell.Bound)]);
        Assert.All(cells, c => Assert.Null(c.Captured));
        Assert.All(cells, c => Assert.False(c.Scored));
    }

    [Fact]
    public void Filled_WithABoundBelowTheFloor_IsHeldAgainstNoCold()
    {
        Cell[] cells = Capture.Filled([.. Board(100, 40, 20).Select(c => c.Policy == Cell.Bound ? c with { HoursBelowFloor = 9 } : c)]);
        Cell means = cells.Single(c => c.Policy == "means");
        Assert.Null(means.Captured);
        Assert.False(means.Scored);
        Assert.Equal(0.6, Capture.AtLeast(cells, means)!.Value, 12);
        Assert.DoesNotContain(Summary.Lines(cells), line => line.Contains("where the bound had none", StringComparison.Ordinal));
    }

    [Fact]
    public void Filled_BoundOfAnotherWinter_IsNotTaken()
    {
        Cell[] cells = Capture.Filled([.. Board(100, 40, 20).Select(c => c.Policy == Cell.Bound ? c with { Weather = "another" } : c)]);
        Assert.All(cells, c => Assert.Null(c.Captured));
    }

    [Fact]
    public void Summary_OfTwoRigs_TellsMedianWorstAndDifferences()
    {
        Cell[] cells = Capture.Filled([.. Board(100, 40, 20), .. Board(220, 120, 20).Select(c => c with { Rig = "other" })]);
        string[] lines = [.. Summary.Lines(cells)];
        Assert.Contains("means: captured in 2 scored cells: median 0.625, worst 0.500.", lines);
        Assert.Contains("means beats cutout in 1 of 2 scored cells (50 %).", lines);
        Assert.Contains("means − cutout, avoided: 0.0 K·h (other, winter).", lines);
        Assert.Contains("means − cutout, avoided: +20.0 K·h (rig, winter).", lines);
        Assert.Contains("means: 4.0 h below the floor where the bound had none.", lines);
    }

    // Cutout lies half way between none and bound: above means on the first board, level with it on the second.
    private static Cell[] Board(double none, double means, double bound) =>
    [
        One("none", none), One("means", means), One("cutout", 0.5 * (none + bound)),
        One(Cell.Bound, bound) with { HoursBelowFloor = 0, Certificate = 3 },
    ];

    private static Cell One(string policy, double cold) => new(
        $"rig, winter, {policy}", "rig", "winter", policy, 2, 0, cold, null, null, 10, null, 0, 5, 2, 0.95, 1, 0.1, null, false);
}
