using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Ports;

/// <summary>What every output owes its caller, whatever is behind it. One derived class a kind.</summary>
public abstract class OutputContract
{
    /// <summary>Opens the output.</summary>
    private protected abstract IOutput Make();

    /// <summary>Leaves the device on, as a program that died may have.</summary>
    protected abstract void LeaveOn();

    /// <summary>Makes the device take what is written and go on as it was.</summary>
    protected abstract void Disobey();

    /// <summary>What the device puts out now, 0 to 1.</summary>
    protected abstract double Seen { get; }

    /// <summary>All the device has put out since <see cref="Make"/>, in order, without repeats.</summary>
    protected abstract IReadOnlyList<double> SeenSince { get; }

    /// <summary>Shares the output can give.</summary>
    protected virtual IReadOnlyList<double> Shares => [0.25, 1, 0.5];

    [Fact]
    public void Ctor_FreshDevice_PutsOutNothing()
    {
        using IOutput output = Make();

        Assert.Equal((0, 0), (Seen, output.Read()));
        Assert.All(SeenSince, share => Assert.Equal(0, share));
    }

    [Fact]
    public void Ctor_DeviceLeftOn_GoesOffAndStaysOff()
    {
        LeaveOn();
        Assert.NotEqual(0, Seen);
        using IOutput output = Make();

        Assert.Equal((0, 0), (Seen, output.Read()));
        Assert.Equal(0, SeenSince[^1]);
        Assert.InRange(SeenSince.Count, 1, 2);
    }

    [Fact]
    public void Write_AnyShare_IsPutOutReadBackAndNothingElseSeenBetween()
    {
        using IOutput output = Make();
        foreach (double share in Shares)
        {
            output.Write(share);
            Assert.Equal(share, Seen, 3);
            Assert.Equal(share, output.Read(), 3);
        }

        output.Write(0);
        Assert.Equal(0, Seen);
        Assert.Equal([0, .. Shares, 0], SeenSince.Select(share => Math.Round(share, 3)));
    }

    [Fact]
    public void Write_TheSameTwice_ChangesNothing()
    {
        using IOutput output = Make();
        output.Write(1);
        int seen = SeenSince.Count;
        output.Write(1);

        Assert.Equal(seen, SeenSince.Count);
        Assert.Equal(1, Seen);
    }

    [Fact]
    public void MakeSafe_Twice_IsOff()
    {
        using IOutput output = Make();
        output.Write(1);
        output.MakeSafe();
        output.MakeSafe();

        Assert.Equal((0, 0), (Seen, output.Read()));
    }

    [Fact]
    public void Dispose_WhileOn_IsOff()
    {
        using (IOutput output = Make())
        {
            output.Write(1);
        }

        Assert.Equal(0, Seen);
    }

    [Fact]
    public void Write_DeviceThatDoesNotObey_IsFoundOut()
    {
        IOutput output = Make();
        Disobey();

        Assert.ThrowsAny<Exception>(() => output.Write(1));
    }

    [Fact]
    public void MakeSafe_DeviceThatDoesNotObey_IsFoundOut()
    {
        IOutput output = Make();
        output.Write(1);
        Disobey();

        Assert.ThrowsAny<Exception>(output.MakeSafe);
    }
}
