namespace PileController.Control.Readings;

/// <summary>One probe's answer. A reading that is not <see cref="ReadingQuality.Good"/> is never acted on as a number.</summary>
/// <param name="Quanta">The value as a whole number of the channel's quanta.</param>
/// <param name="Quality">How far it may be believed.</param>
/// <param name="AgeMilliseconds">Time since it was measured; 0 when measured for this tick.</param>
public readonly record struct Reading(int Quanta, ReadingQuality Quality, int AgeMilliseconds)
{
    /// <summary>The answer of a probe that is not there.</summary>
    public static Reading NotFitted => default;

    /// <summary>True when the number may be acted on.</summary>
    public bool IsGood => Quality == ReadingQuality.Good;

    /// <summary>The value in the channel's unit.</summary>
    public double ValueOf(Channel channel) => Quanta * ChannelTable.Of(channel).Quantum;

    /// <summary>Makes a reading from a value, rounded to the channel's quantum (half away from zero).</summary>
    public static Reading FromValue(
        Channel channel, double value, ReadingQuality quality = ReadingQuality.Good, int ageMilliseconds = 0) =>
        new((int)Math.Round(value / ChannelTable.Of(channel).Quantum, MidpointRounding.AwayFromZero), quality, ageMilliseconds);
}
