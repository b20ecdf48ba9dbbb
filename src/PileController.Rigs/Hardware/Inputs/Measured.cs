using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.Inputs;

/// <summary>What asking a device gave for one channel.</summary>
/// <param name="Quality">How far it may be believed.</param>
/// <param name="Value">The value in the channel's unit; means nothing unless <see cref="HasValue"/>.</param>
internal readonly record struct Measured(ReadingQuality Quality, double Value)
{
    /// <summary>True when there is a number, though it may not be one to act on.</summary>
    public bool HasValue => Quality is ReadingQuality.Good or ReadingQuality.PowerOnValue or ReadingQuality.OutOfRange;

    /// <summary>A value to act on.</summary>
    public static Measured Good(double value) => new(ReadingQuality.Good, value);

    /// <summary>An answer without a number.</summary>
    public static Measured Failed(ReadingQuality quality) => new(quality, 0);

    /// <summary>Good within the range a sound part can report, out of range beyond it.</summary>
    public static Measured Within(double least, double most, double value) => value >= least && value <= most
        ? Good(value)
        : new(ReadingQuality.OutOfRange, double.IsNaN(value) ? most : Math.Clamp(value, least, most));
}
