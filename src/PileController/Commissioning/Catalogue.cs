using PileController.Commissioning.Procedures;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Settings;

namespace PileController.Commissioning;

/// <summary>What a test is told besides the settings. What is left out is as usual.</summary>
internal sealed record TestAsk
{
    /// <summary>The probes in the ice; empty for supply and return.</summary>
    public IReadOnlyList<Channel> Channels { get; init; } = [];

    /// <summary>The ice lies within ± so much of 0 °C, K.</summary>
    public double BathKelvin { get; init; } = IcePoint.UsualBathKelvin;

    /// <summary>Runs of the bucket test.</summary>
    public int Runs { get; init; } = 3;

    /// <summary>How long a bucket is filled, s.</summary>
    public double FillSeconds { get; init; } = 120;

    /// <summary>Duties of the pump test; empty for the usual ones.</summary>
    public IReadOnlyList<double> Duties { get; init; } = [];

    /// <summary>How long the loop stands for leak-down, min.</summary>
    public double Minutes { get; init; } = LeakDown.UsualMinutes;
}

/// <summary>All tests by name, in the order in which a rig is commissioned.</summary>
internal static class Catalogue
{
    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Ids { get; } = ["find", "ice", "pair", "leak", "purge", "bucket", "pump-curve", "travel", "exercise", "wind-down"];

    /// <summary>A test for a rig.</summary>
    /// <param name="id">Its name, one of <see cref="Ids"/>.</param>
    /// <param name="settings">The holding.</param>
    /// <param name="ask">What it is told besides.</param>
    /// <exception cref="ArgumentException">There is none of that name.</exception>
    public static Procedure Of(string id, PileSettings settings, TestAsk ask) => id switch
    {
        "find" => FindProbe.Of(settings),
        "ice" => IcePoint.Of(settings, ask.Channels.Count > 0 ? ask.Channels : [.. new[] { Channel.Supply, Channel.Return }.Where(c => Fitted.Has(settings, c))], ask.BathKelvin),
        "pair" => ProbePair.Of(settings),
        "leak" => LeakDown.Of(settings, ask.Minutes),
        "purge" => AirPurge.Of(settings),
        "bucket" => BucketMeter.Of(settings, ask.Runs, ask.FillSeconds),
        "pump-curve" => BucketPump.Of(settings, ask.Duties.Count > 0 ? ask.Duties : BucketPump.UsualDuties(settings)),
        "travel" => ValveTravel.Of(settings),
        "exercise" => Exercise.Of(settings),
        "wind-down" => WindDown.Of(settings),
        _ => throw new ArgumentException($"There is no test \"{id}\"; allowed: {string.Join(", ", Ids)}.", nameof(id)),
    };

    /// <summary>Why a test cannot be made on a rig, a sentence; null when it can.</summary>
    public static string? WhyNot(string id, PileSettings settings, TestAsk ask) => id switch
    {
        "find" when Fitted.Thermometers(settings).Count == 0 => "No temperature probe is fitted (rig.probes).",
        "ice" when ask.Channels.Count == 0 && !Fitted.Has(settings, Channel.Supply) && !Fitted.Has(settings, Channel.Return) =>
            "Neither supply nor return has a probe: name the probes in the ice.",
        "ice" when ask.Channels.FirstOrDefault(c => !Fitted.Thermometers(settings).Contains(c), (Channel)(-1)) is var other && (int)other >= 0 =>
            $"{ChannelTable.Of(other).Name} has no temperature probe here; allowed: {string.Join(", ", Fitted.Thermometers(settings).Select(c => ChannelTable.Of(c).Name))}.",
        "pair" when !Fitted.Has(settings, Channel.Supply) || !Fitted.Has(settings, Channel.Return) => "Supply and return must both have a probe (rig.probes).",
        "bucket" or "purge" when !Fitted.Has(settings, Channel.Flow) => "No flow meter is fitted (rig.probes, channel flow).",
        "pump-curve" when settings.Control.Drive == PumpDrive.OnOff && ask.Duties.Any(duty => duty < 1) =>
            "The pump is on a relay, which knows the full duty only: measure at 100 % twice or more, the hose at another height each time.",
        "travel" when !Moves.HasValve(settings) => "No motor valve is fitted (loop.valveTravel is 0 s).",
        _ => null,
    };
}
