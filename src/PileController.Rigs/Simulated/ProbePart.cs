using PileController.Control.Readings;

namespace PileController.Rigs.Simulated;

/// <summary>How the part behind a channel falls short of the truth.</summary>
/// <param name="LagSeconds">Time constant of its first-order lag, s; 0 for none.</param>
/// <param name="NoiseSigma">Standard deviation of its noise, in the channel's unit.</param>
/// <param name="Tolerance">Largest error of one reading from offset, noise and grain together, in the channel's unit.</param>
/// <param name="GainTolerance">Largest fixed error in proportion to the value, as a share.</param>
/// <param name="Grain">Smallest step of the part itself, in the channel's unit; 0 where it is finer than the channel's quantum.</param>
/// <param name="Least">Smallest value the part can report.</param>
/// <param name="Most">Largest value the part can report.</param>
internal sealed record ProbePart(
    double LagSeconds, double NoiseSigma, double Tolerance, double GainTolerance, double Grain, double Least, double Most)
{
    /// <summary>Largest fixed offset that leaves room for noise and grain inside the tolerance.</summary>
    public double MostOffset => Math.Max(0, Tolerance - (SplitMix64.MostSigmas * NoiseSigma) - (Grain / 2));

    /// <summary>The part behind a channel.</summary>
    public static ProbePart Of(Channel channel) => channel switch
    {
        Channel.HeapCore or Channel.HeapMiddle or Channel.HeapTurns or Channel.HeapEdge => Thermometer(120),
        Channel.Supply or Channel.Return or Channel.Tank => Thermometer(15),
        Channel.Floor => Thermometer(120),
        Channel.House or Channel.Outside or Channel.DuctAir => Thermometer(60),

        // A silicon-cell pyranometer: 5 % of the reading (common practice, no source).
        Channel.Sun => new(5, 1, 0, 0.05, 0, 0, 2000),

        // Flow error limit of a class 2 heat meter near its rated flow, 2 % (SEN-051: EN 1434-1 as quoted in a
        // meter's technical description); the pulses give the grain.
        Channel.Flow => new(0, 0, 0, 0.02, 0, 0, 120),

        // Shunt monitor: 1 % and steps of 20 mW (common practice, no source).
        Channel.PumpPower or Channel.BlowerPower => new(1, 0.05, 0, 0.01, 0.02, 0, 1000),

        // Divider and converter: steps of 4 mV, 0.5 % (common practice, no source).
        Channel.Battery => new(1, 0.005, 0, 0.005, 0.004, 0, 60),

        // SHT4x: 2 %, repeatable to 0.08 %, 0 to 100 %; a hood of felt round it slows it to a minute (data sheet, from
        // memory; hood: common practice, no source).
        Channel.Humidity => new(60, 0.08, 2, 0, 0.01, 0, 100),

        // SCD4x: 40 ppm and 5 % of the reading, tells 0 to 40,000 ppm (data sheet, April 2021), repeatable to 10 ppm, follows
        // within 60 s (from memory).
        Channel.CarbonDioxide => new(60, 10, 40, 0.05, 1, 0, 40_000),
        Channel.SpareOne or Channel.SpareTwo => Thermometer(15),
        Channel.SpareThree or Channel.SpareFour => Thermometer(120),

        _ => new(0, 0, 0, 0, 0, 0, 1),
    };

    // Digital thermometer of 12 bit: steps of 1/16 °C (SEN-001...010), error at most 0.5 °C from -10 to +85 °C
    // (SEN-020, DS18B20 data sheet rev 042208), range -55 to 125 °C (SEN-010, SEN-001).
    // Time constants - steel sleeve in the bed 120 s, pocket in water 15 s, still air 60 s - and the noise of half
    // a step: common practice, no source.
    private static ProbePart Thermometer(double lagSeconds) => new(lagSeconds, 0.03, 0.5, 0, 1.0 / 16, -55, 125);
}
