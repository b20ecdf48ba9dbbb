using System.Globalization;

namespace PileController.Rigs.Hardware.Ports;

/// <summary>
/// One channel of a hardware PWM chip, through the kernel's files. Every sequence is such that the channel never shows a
/// duty nobody asked for: it is at 0 before its period changes, and its duty stands before it is enabled.
/// </summary>
internal sealed class PwmOutput : IOutput
{
    // The user's right to the files comes some moments after they appear.
    private const int Patience = 60;

    private readonly PwmFiles _files;
    private readonly PwmChip _chip;
    private readonly int _channel;
    private readonly long _periodNanoseconds;

    /// <summary>Takes the channel, whoever left it in whatever state, and puts it at 0, disabled.</summary>
    /// <param name="chip">Its chip.</param>
    /// <param name="channel">Its number on the chip, from 0.</param>
    /// <param name="hertz">Frequency, Hz (above 0).</param>
    /// <param name="files">The kernel's files.</param>
    /// <exception cref="RigFaultException">There is no such channel, or it cannot be taken.</exception>
    public PwmOutput(PwmChip chip, int channel, double hertz, PwmFiles files)
    {
        _files = files;
        _chip = chip;
        _channel = channel;
        _periodNanoseconds = (long)Math.Round(1e9 / hertz);
        chip.Require(channel);
        try
        {
            Take();
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {Place} cannot be taken: {error.Message}", error);
        }
    }

    /// <inheritdoc/>
    public string Place => $"channel {_channel} of PWM chip \"{_chip.Device}\"";

    /// <inheritdoc/>
    public void Write(double share)
    {
        if (share <= 0)
        {
            MakeSafe();
            return;
        }

        long duty = (long)Math.Round(Math.Min(1, share) * _periodNanoseconds);
        Put("duty_cycle", duty);
        Put("enable", 1);
        Prove("duty_cycle", duty);
        Prove("enable", 1);
    }

    /// <inheritdoc/>
    public double Read() => Get("enable") == 0 ? 0 : (double)Get("duty_cycle") / _periodNanoseconds;

    /// <inheritdoc/>
    public void MakeSafe()
    {
        Put("duty_cycle", 0);
        Put("enable", 0);
        Prove("duty_cycle", 0);
        Prove("enable", 0);
    }

    /// <summary>
    /// Leaves the channel at 0, disabled. It stays exported: the rights to its files outlive the program that way, and
    /// whoever comes after can take it at once.
    /// </summary>
    public void Dispose() => MakeSafe();

    private void Take()
    {
        if (!Directory.Exists(_chip[$"pwm{_channel}"]))
        {
            _files.Write(_chip["export"], Text(_channel));
        }

        Patiently(SetUp);
    }

    private void SetUp()
    {
        // The first that is written is what stops a channel somebody left running. One without a period has no duty.
        if (Get("period") > 0)
        {
            Put("duty_cycle", 0);
        }

        Put("enable", 0);

        // The kernel takes a polarity only of a channel that has a period and is disabled.
        Put("period", _periodNanoseconds);
        if (_files.Read(PathOf("polarity")).Trim() != "normal")
        {
            _files.Write(PathOf("polarity"), "normal");
        }

        Prove("period", _periodNanoseconds);
        MakeSafe();
    }

    private void Patiently(Action deed)
    {
        for (int tries = 0; ; tries++)
        {
            try
            {
                deed();
                return;
            }
            catch (Exception error) when (tries < Patience && error is UnauthorizedAccessException or FileNotFoundException or DirectoryNotFoundException)
            {
                _files.Pause();
            }
        }
    }

    private void Prove(string file, long wanted)
    {
        long read = Get(file);
        if (read != wanted)
        {
            throw new InvalidOperationException($"{file} reads {read} after {wanted} was written.");
        }
    }

    private long Get(string file) => long.Parse(_files.Read(PathOf(file)), CultureInfo.InvariantCulture);

    private void Put(string file, long value) => _files.Write(PathOf(file), Text(value));

    private string PathOf(string file) => _chip[$"pwm{_channel}/{file}"];

    private static string Text(long value) => value.ToString(CultureInfo.InvariantCulture);
}
