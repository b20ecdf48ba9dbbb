using System.Device.Gpio;
using PileController.Rigs.Hardware;

namespace PileController.Rigs.Tests.Hardware;

public sealed class SafeLinesTests : IDisposable
{
    private readonly FakeGpioDriver _driver = new();

    public void Dispose() => _driver.Dispose();

    [Theory]
    [InlineData(false, "low")]
    [InlineData(true, "high")]
    public void Set_AnyPolarity_SwitchesEveryLoadOff(bool activeLow, string off)
    {
        using GpioController controller = new(_driver);

        IReadOnlyList<string> faults = SafeLines.Set(controller, new HardwareSettings { PumpPin = 17, BlowerPin = 27, ActiveLow = activeLow });

        Assert.Empty(faults);
        Assert.Contains($"output 17 {off}", _driver.Deeds);
        Assert.Contains($"output 27 {off}", _driver.Deeds);
    }

    [Fact]
    public void Set_ALineThatCannotBeTaken_IsToldAndTheOthersAreSwitchedOff()
    {
        using GpioController controller = new(_driver);
        _driver.BrokenPins.Add(17);

        IReadOnlyList<string> faults = SafeLines.Set(controller, new HardwareSettings { PumpPin = 17, BlowerPin = 27 });

        Assert.Contains("pump", Assert.Single(faults));
        Assert.Contains("output 27 low", _driver.Deeds);
    }

    [Fact]
    public void Set_NothingFitted_IsSafeAlready()
    {
        using GpioController controller = new(_driver);

        Assert.Empty(SafeLines.Set(controller, new HardwareSettings()));
        Assert.Empty(_driver.Deeds);
    }
}
