using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Tests.Hardware.Loads;

/// <summary>An output that writes down what is done to it, and fails when told to.</summary>
internal sealed class FakeOutput(string place, List<string> deeds) : IOutput
{
    public string Place => place;

    public double Share { get; private set; }

    public bool Fails { get; set; }

    public void Write(double share) => Do(share, $"{place} {share:G3}");

    public double Read() => Share;

    public void MakeSafe() => Do(0, $"{place} safe");

    public void Dispose() => MakeSafe();

    private void Do(double share, string deed)
    {
        if (Fails)
        {
            throw new IOException("it is broken");
        }

        deeds.Add(deed);
        Share = share;
    }
}
