namespace PileController.FarSide.Tests;

public class FarOptionsTests
{
    private const string Sound = "--holding h.json --probes bed:0.45,turns,supply --pump gpio:17+pwm:0 --blower gpio:27 --flow 24";

    [Fact]
    public void Options_Sound_AreRead()
    {
        FarOptions options = FarOptions.Parse($"{Sound} --valve 5,6,12,13 --pulses 20".Split(' '));
        Assert.Equal(["bed", "turns", "supply"], options.Probes.Select(spot => spot.Name));
        Assert.Equal(new ValveWires(5, 6, 12, 13), options.Valve);
        Assert.Equal(20, options.PulsesPerLitre);
    }

    [Theory]
    [InlineData("--flow 512", "--flow is \"512\"; allowed: a number from 0 to 511")]
    [InlineData("--look 5", "--look is \"5\"; allowed: a number from 20 to 1000")]
    [InlineData("--valve 5,6", "--valve is \"5,6\"; allowed: four lines")]
    [InlineData("--probes attic", "\"attic\"; allowed: bed:RADIUS, turns")]
    [InlineData("--colour red", "\"--colour\"; allowed")]
    public void Options_Wrong_AreRefusedByNameWithWhatIsAllowed(string wrong, string expected) =>
        Assert.Contains(expected, Assert.Throws<ArgumentException>(() => FarOptions.Parse($"{Sound} {wrong}".Split(' '))).Message, StringComparison.Ordinal);

    [Fact]
    public void Options_WithoutHolding_AreRefused() =>
        Assert.StartsWith("--holding is missing", Assert.Throws<ArgumentException>(() => FarOptions.Parse([])).Message, StringComparison.Ordinal);
}
