using System.Globalization;
using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>
/// Reads the two lines of the kernel's probe file: the nine bytes with the kernel's verdict on their checksum, and
/// the bytes once more with the temperature. Only the bytes and the verdict are used; the number is worked out here.
/// </summary>
internal static class ProbeText
{
    /// <summary>What a file's text says.</summary>
    public static ProbeAnswer Read(string text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return ProbeAnswer.Failed(ReadingQuality.NoAnswer);
        }

        ReadOnlySpan<char> line = FirstLine(text);
        int colon = line.IndexOf(':');
        Span<byte> bytes = stackalloc byte[Scratchpad.Length];
        if (colon < 0 || !TryReadBytes(line[..colon], bytes))
        {
            return ProbeAnswer.Failed(ReadingQuality.BadChecksum);
        }

        ProbeAnswer answer = Scratchpad.Judge(bytes);

        // The kernel may have seen more than it shows: its "no" stands even where the bytes fit by chance.
        return answer.IsGood && !line.EndsWith(" YES", StringComparison.Ordinal)
            ? ProbeAnswer.Failed(ReadingQuality.BadChecksum)
            : answer;
    }

    private static ReadOnlySpan<char> FirstLine(string text)
    {
        int end = text.IndexOf('\n', StringComparison.Ordinal);
        return (end < 0 ? text : text.AsSpan(0, end)).Trim();
    }

    private static bool TryReadBytes(ReadOnlySpan<char> hex, Span<byte> bytes)
    {
        int count = 0;
        foreach (Range range in hex.Trim().Split(' '))
        {
            ReadOnlySpan<char> token = hex.Trim()[range];
            if (token.Length != 2
                || count == bytes.Length
                || !byte.TryParse(token, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out bytes[count]))
            {
                return false;
            }

            count++;
        }

        return count == bytes.Length;
    }
}
