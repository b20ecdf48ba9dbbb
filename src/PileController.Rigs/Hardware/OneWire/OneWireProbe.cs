using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.OneWire;

/// <summary>One DS18B20 behind its kernel file. Reading it blocks for as long as the bus takes.</summary>
/// <param name="path">The probe's file.</param>
/// <param name="readText">Reads a file's text, or throws.</param>
internal sealed class OneWireProbe(string path, Func<string, string> readText) : IStation
{
    // A heap probe moves by hundredths of a kelvin between ticks; a probe in water by a few kelvin.
    private const int NearSixteenths = 3 * 16;

    private int? _lastGood;

    /// <inheritdoc/>
    public IReadOnlyList<Measured> Ask()
    {
        ProbeAnswer answer = Read();
        return [new Measured(answer.Quality, answer.Celsius)];
    }

    /// <summary>Reads the probe; once more where the first answer may be the power-on value.</summary>
    public ProbeAnswer Read()
    {
        ProbeAnswer answer = Once();
        if (answer is { IsGood: true, Sixteenths: Scratchpad.PowerOnSixteenths } && !IsNearLast(answer.Sixteenths))
        {
            ProbeAnswer again = Once();

            // A second answer of exactly 85 °C proves nothing: a probe that loses its supply at each conversion
            // gives it every time.
            answer = again is { IsGood: true, Sixteenths: not Scratchpad.PowerOnSixteenths }
                ? again
                : answer with { Quality = ReadingQuality.PowerOnValue };
        }

        if (answer.IsGood)
        {
            _lastGood = answer.Sixteenths;
        }

        return answer;
    }

    private bool IsNearLast(int sixteenths) => _lastGood is { } last && Math.Abs(sixteenths - last) <= NearSixteenths;

    private ProbeAnswer Once()
    {
        try
        {
            return ProbeText.Read(readText(path));
        }
        catch (Exception)
        {
            // Gone from the bus, not allowed, or the kernel gave up on it: for the tick it is the same. Nothing may
            // pass, because the bus's thread would take the process with it.
            return ProbeAnswer.Failed(ReadingQuality.NoAnswer);
        }
    }
}
