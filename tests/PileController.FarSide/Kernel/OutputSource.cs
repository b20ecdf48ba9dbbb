using System.Globalization;

namespace PileController.FarSide.Kernel;

/// <summary>Where the signal of pump or blower is seen.</summary>
internal sealed class OutputSource
{
    private const string Allowed =
        "gpio:LINE, pwm:CHANNEL or i2c:ADDRESS:CHANNEL, such as gpio:17 or i2c:0x40:0; with + between them those in series";

    private readonly Func<double> _duty;

    private OutputSource(Func<double> duty) => _duty = duty;

    private OutputSource(KernelFile file, Func<string, double> dutyOf)
        : this(() => file.Read() is { } text ? dutyOf(text) : 0)
    {
    }

    /// <summary>Duty it shows now, 0 to 1; 0 when it is not there.</summary>
    public double Duty => _duty();

    /// <summary>A line that is on or off.</summary>
    public static OutputSource OfLine(Places places, int line) =>
        new(new GpioBank(places.GpioConfig).Level(line), text => text.StartsWith('1') ? 1 : 0);

    /// <summary>Reads "gpio:17", "pwm:0" or "i2c:0x40:0", or several in series: "gpio:17+pwm:0".</summary>
    /// <param name="option">The option it was given by, for the message.</param>
    /// <param name="text">The text.</param>
    /// <param name="places">Where the devices are.</param>
    /// <exception cref="ArgumentException">It is none of them.</exception>
    public static OutputSource Parse(string option, string text, Places places)
    {
        OutputSource[] row = [.. text.Split('+').Select(part => One(option, text, part, places))];
        return new OutputSource(() => row.Aggregate(1.0, (duty, source) => duty * source.Duty));
    }

    private static OutputSource One(string option, string text, string part, Places places)
    {
        string[] words = part.Split(':');
        if (words is ["gpio", _] && TryWhole(words[1], 511, out int line))
        {
            return OfLine(places, line);
        }

        if (words is ["pwm", _] && TryWhole(words[1], 63, out int channel))
        {
            return new OutputSource(new KernelFile(() => places.PwmState, FileAccess.Read), state => Signals.BoardDuty(state, channel));
        }

        if (words is ["i2c", { Length: 4 } hex, _] && hex.StartsWith("0x", StringComparison.Ordinal) && TryWhole(words[2], 15, out int output)
            && int.TryParse(hex[2..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int address))
        {
            return new OutputSource(
                new KernelFile(() => places.I2cRegisters, FileAccess.Read), registers => Signals.ChipDuty(registers, address, output));
        }

        throw new ArgumentException($"{option} is \"{text}\"; allowed: {Allowed}.");
    }

    private static bool TryWhole(string text, int most, out int value) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value <= most;
}
