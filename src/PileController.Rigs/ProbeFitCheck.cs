using PileController.Control.Readings;

namespace PileController.Rigs;

/// <summary>Refuses a list of fitted probes that no rig can be built from.</summary>
internal static class ProbeFitCheck
{
    /// <summary>Throws when a channel is fitted twice or a calibration is given where none applies.</summary>
    /// <exception cref="ArgumentException">Names the probe, what was given and what is allowed.</exception>
    public static void Require(IReadOnlyList<ProbeFit> probes)
    {
        HashSet<Channel> seen = [];
        foreach (ProbeFit probe in probes)
        {
            if (!Enum.IsDefined(probe.Channel))
            {
                throw new ArgumentException($"Probes: {(int)probe.Channel} is no channel.", nameof(probes));
            }

            string name = ChannelTable.Of(probe.Channel).Name;
            if (!seen.Add(probe.Channel))
            {
                throw new ArgumentException($"Probes: {name} is fitted twice; a channel has at most one probe.", nameof(probes));
            }

            if (!double.IsFinite(probe.OffsetKelvin)
                || (probe.OffsetKelvin != 0 && !ChannelKinds.IsThermometer(probe.Channel)))
            {
                throw new ArgumentException(
                    $"Probes: {name} has a calibration of {probe.OffsetKelvin} K; allowed is a finite number, and only for a temperature.",
                    nameof(probes));
            }
        }
    }
}
