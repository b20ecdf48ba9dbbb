using System.Security.Cryptography;
using System.Text;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Tests.Settings;

/// <summary>Settings that an earlier build kept are found under the mark it gave them.</summary>
public class FingerprintTests
{
    private static readonly PileSettings Earlier = PileSettings.AlderBank with
    {
        Rig = PileSettings.AlderBank.Rig with
        {
            Probes = [.. ProbeFit.AlderBank.Where(probe => (int)probe.Channel < ChannelTable.FirstCount)],
        },
    };

    // The line as it was before there were these two keys.
    [Fact]
    public void Fingerprint_OfWhatAnEarlierBuildKnew_IsTheOneItGave()
    {
        string line = Earlier.CanonicalJson();
        string before = line.Replace(",\"label\":null", "", StringComparison.Ordinal)
            .Replace(",\"carbonDioxide\":\"5000 ppm\"", "", StringComparison.Ordinal);

        Assert.DoesNotContain("label", before, StringComparison.Ordinal);
        Assert.DoesNotContain("carbonDioxide", before, StringComparison.Ordinal);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(before))), Earlier.Fingerprint());
    }

    [Fact]
    public void Fingerprint_OfALaterKeyThatIsTold_IsAnother()
    {
        PileSettings tighter = Earlier with { Control = Earlier.Control with { Limits = Earlier.Control.Limits with { CarbonDioxidePpm = 4000 } } };
        PileSettings spare = Earlier with { Rig = Earlier.Rig with { Probes = [.. Earlier.Rig.Probes, new ProbeFit(Channel.SpareOne)] } };
        PileSettings named = Earlier with { Rig = Earlier.Rig with { Probes = [.. Earlier.Rig.Probes, new ProbeFit(Channel.SpareOne) { Label = "Bed" }] } };

        Assert.Equal(4, new[] { Earlier, tighter, spare, named }.Select(settings => settings.Fingerprint()).Distinct().Count());
    }
}
