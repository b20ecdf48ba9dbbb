using System.Device.I2c;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Inputs;

namespace PileController.Rigs.Hardware.I2c;

/// <summary>
/// One device of an I2C bus, opened when it is first asked. A transfer that fails is tried again at once, twice at most
/// and only where it failed soon: a bus that hangs costs one wait. Its failures are counted and told once until it answers.
/// </summary>
/// <param name="name">Name for messages: "the converter 0x48 on I2C bus 1".</param>
/// <param name="open">Opens the device, or throws.</param>
/// <param name="ask">Asks it; throws where it does not answer.</param>
/// <param name="glance">Looks at it between the ticks, or throws; null where that is not wanted.</param>
/// <param name="channels">How many answers it gives.</param>
/// <param name="time">Clock.</param>
/// <param name="report">Told in a sentence when it falls silent and when it answers again.</param>
internal sealed class I2cStation(
    string name, Func<I2cDevice> open, Func<I2cDevice, IReadOnlyList<Measured>> ask, Action<I2cDevice>? glance,
    int channels, TimeProvider time, Action<string> report) : IStation, IDisposable
{
    private const int Attempts = 3;

    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(500);

    private I2cDevice? _device;
    private long _failures;
    private bool _isSilent;

    /// <summary>Transfers that failed since the start.</summary>
    public long Failures => Interlocked.Read(ref _failures);

    /// <inheritdoc/>
    public bool WantsGlances => glance is not null;

    /// <inheritdoc/>
    public void Glance()
    {
        // A silent device is left to the sweep, which tells of it; a glance that fails is only one that is missing.
        if (_isSilent || _device is null)
        {
            return;
        }

        try
        {
            glance?.Invoke(_device);
        }
        catch (Exception)
        {
            Interlocked.Increment(ref _failures);
        }
    }

    /// <inheritdoc/>
    public IReadOnlyList<Measured> Ask()
    {
        long began = time.GetTimestamp();
        IReadOnlyList<Measured> answers = [];
        string why = "";
        for (int attempt = 0; attempt < Attempts && (attempt == 0 || time.GetElapsedTime(began) <= Soon); attempt++)
        {
            try
            {
                _device ??= open();
                answers = ask(_device);
                why = answers.Any(answer => answer.Quality == ReadingQuality.BadChecksum) ? "its checksum is wrong" : "";
            }
            catch (Exception error)
            {
                // Nothing may pass, because the bus's thread would take the process with it.
                why = error.Message;
                answers = [.. Enumerable.Repeat(Measured.Failed(ReadingQuality.NoAnswer), channels)];
            }

            if (why.Length == 0)
            {
                break;
            }

            Interlocked.Increment(ref _failures);
        }

        Tell(why);
        return answers;
    }

    /// <summary>Closes the device.</summary>
    public void Dispose() => _device?.Dispose();

    private void Tell(string why)
    {
        bool silent = why.Length > 0;
        if (silent != _isSilent)
        {
            report(silent
                ? $"{Capital(name)} does not answer: {why}"
                : $"{Capital(name)} answers again; {Failures} of its transfers have failed since the start.");
        }

        _isSilent = silent;
    }

    private static string Capital(string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
