using System.Globalization;

namespace PileController.FarSide.Kernel;

/// <summary>What the state of a PWM channel comes to, read from the devices' own texts.</summary>
public static class Signals
{
    private const int Steps = 4096;
    private const int FullBit = 0x10;

    /// <summary>Duty of a channel of the board's PWM.</summary>
    /// <param name="state">A line a channel: number, 1 when enabled, period and duty in ns, 1 when inverted.</param>
    /// <param name="channel">The channel.</param>
    /// <returns>0 to 1; 0 when it is not there.</returns>
    public static double BoardDuty(string state, int channel)
    {
        foreach (string line in state.Split('\n'))
        {
            string[] words = line.Split(' ');
            if (words.Length >= 4 && Whole(words[0]) == channel && words[1] == "1" && Whole(words[2]) is > 0 and var period)
            {
                return Math.Clamp(Whole(words[3]) / (double)period, 0, 1);
            }
        }

        return 0;
    }

    /// <summary>Duty of a channel of a PCA9685: four registers from 0x06 + 4 · channel on, on and off as 12 bits each, with bits for full (from memory).</summary>
    /// <param name="registers">A line a register: address, register and value, hexadecimal.</param>
    /// <param name="address">The chip's address.</param>
    /// <param name="channel">The channel, 0 to 15.</param>
    /// <returns>0 to 1; 0 when there is no such chip.</returns>
    public static double ChipDuty(string registers, int address, int channel)
    {
        int first = 6 + (4 * channel);
        int[] value = [0, 0, 0, FullBit];
        foreach (string line in registers.Split('\n'))
        {
            string[] words = line.Split(' ');
            if (words.Length >= 3 && Hex(words[0]) == address && Hex(words[1]) - first is >= 0 and <= 3 and var at && words[2].Length == 2)
            {
                value[at] = Hex(words[2]);
            }
        }

        int on = value[0] | ((value[1] & 0x0f) << 8);
        int off = value[2] | ((value[3] & 0x0f) << 8);
        return (value[3] & FullBit) != 0 ? 0
            : (value[1] & FullBit) != 0 ? 1
            : ((off - on + Steps) % Steps) / (double)Steps;
    }

    private static long Whole(string word) =>
        long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out long value) ? value : -1;

    private static int Hex(string word) =>
        int.TryParse(word, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int value) ? value : -1;
}
