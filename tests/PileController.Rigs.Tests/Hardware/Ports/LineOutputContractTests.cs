using System.Device.Gpio;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

public sealed class LineOutputContractTests : OutputContract, IDisposable
{
    private const int Line = 17;

    private readonly FakeGpioDriver _driver = new();

    protected override double Seen => _driver.IsHigh(Line) ? 1 : 0;

    protected override IReadOnlyList<double> SeenSince
    {
        get
        {
            List<double> seen = [];
            foreach (string deed in _driver.Deeds.Where(deed => deed.Contains("high", StringComparison.Ordinal) || deed.Contains("low", StringComparison.Ordinal)))
            {
                double share = deed.EndsWith("high", StringComparison.Ordinal) ? 1 : 0;
                if (seen.Count == 0 || seen[^1] != share)
                {
                    seen.Add(share);
                }
            }

            return seen;
        }
    }

    protected override IReadOnlyList<double> Shares => [1];

    public void Dispose() => _driver.Dispose();

    private protected override IOutput Make() => new LineOutput(new GpioController(_driver), "pump", Line, activeLow: false);

    protected override void LeaveOn() => _driver.Pull(Line, PinValue.High);

    protected override void Disobey() => _driver.DeafPins.Add(Line);
}
