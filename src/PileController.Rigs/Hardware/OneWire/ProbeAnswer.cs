using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>What one read of a probe gave.</summary>
/// <param name="Quality">How far it may be believed.</param>
/// <param name="Sixteenths">Temperature in sixteenths of a °C; means nothing unless good or a power-on value.</param>
internal readonly record struct ProbeAnswer(ReadingQuality Quality, int Sixteenths)
{
    /// <summary>True when the number may be acted on.</summary>
    public bool IsGood => Quality == ReadingQuality.Good;

    /// <summary>Temperature, °C.</summary>
    public double Celsius => Sixteenths / 16.0;

    /// <summary>An answer without a number.</summary>
    public static ProbeAnswer Failed(ReadingQuality quality) => new(quality, 0);
}
