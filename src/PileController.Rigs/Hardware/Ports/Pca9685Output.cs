namespace PileController.Rigs.Hardware.Ports;

/// <summary>One channel of a <see cref="Pca9685"/>.</summary>
internal sealed class Pca9685Output : IOutput
{
    private readonly Pca9685 _chip;
    private readonly int _channel;

    /// <summary>Takes the channel, off.</summary>
    /// <exception cref="RigFaultException">There is no such channel, or it cannot be put off.</exception>
    public Pca9685Output(Pca9685 chip, int channel)
    {
        _chip = chip;
        _channel = channel;
        if (channel is < 0 or >= Pca9685.Channels)
        {
            throw new RigFaultException($"The {chip.Place} has no channel {channel}; it has 0 to {Pca9685.Channels - 1}.");
        }

        try
        {
            MakeSafe();
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The {Place} cannot be put off: {error.Message}", error);
        }
    }

    /// <inheritdoc/>
    public string Place => $"channel {_channel} of the {_chip.Place}";

    /// <inheritdoc/>
    public void Write(double share) => _chip.Write(_channel, share);

    /// <inheritdoc/>
    public double Read() => _chip.Read(_channel);

    /// <inheritdoc/>
    public void MakeSafe() => _chip.Write(_channel, 0);

    /// <summary>Puts the channel off; the chip is another's.</summary>
    public void Dispose() => MakeSafe();
}
