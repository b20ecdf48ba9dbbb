using PileController.Rigs.Hardware.I2c;

namespace PileController.Rigs.Tests.Hardware.I2c;

public sealed class Ads1115Tests : IDisposable
{
    private readonly ConverterChip _chip = new();
    private readonly List<TimeSpan> _pauses = [];

    public void Dispose() => _chip.Dispose();

    [Theory]
    [InlineData(0, 0xC3)]
    [InlineData(1, 0xD3)]
    [InlineData(2, 0xE3)]
    [InlineData(3, 0xF3)]
    public void Volts_AnyInput_AsksForThatInputAgainstGround(int input, byte high)
    {
        _chip.Volts[input] = 1.5;

        Assert.Equal(1.5, Converter().Volts(input)!.Value, Ads1115.VoltsPerStep / 2);
        Assert.Equal([1, high, 0x23], Assert.Single(_chip.Written));
    }

    [Theory]
    [InlineData(4.2)]
    [InlineData(-4.2)]
    public void Volts_BeyondTheRange_IsNoNumber(double volts)
    {
        _chip.Volts[0] = volts;

        Assert.Null(Converter().Volts(0));
    }

    [Fact]
    public void Volts_NotYetConverted_WaitsInsteadOfTakingTheLastOne()
    {
        _chip.BusyLooks = 3;
        _chip.Volts[2] = 0.25;

        Assert.Equal(0.25, Converter().Volts(2)!.Value, Ads1115.VoltsPerStep / 2);
        Assert.Equal(4, _pauses.Count);

        // A sixteenth of a second is the conversion's own length.
        Assert.True(_pauses[0] >= TimeSpan.FromSeconds(1.0 / 16));
    }

    [Fact]
    public void Volts_NeverConverted_GivesUp()
    {
        _chip.BusyLooks = 1000;

        IOException error = Assert.Throws<IOException>(() => Converter().Volts(0));
        Assert.Contains("does not come to an end", error.Message, StringComparison.Ordinal);
    }

    private Ads1115 Converter() => new(_chip, _pauses.Add);
}
