using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Readings;

/// <summary>Feeds one channel through validation, the others sound, tick after tick.</summary>
internal sealed class ProbeRun(Channel channel)
{
    private ProbeMemories _memory = ProbeMemories.Fresh;
    private long _now = 1_000_000;

    public ReadingQuality Last { get; private set; }

    public ReadingQuality Say(double value, ReadingQuality quality = ReadingQuality.Good, int age = 0, int tickMilliseconds = 10_000) =>
        Say(Sound.Readings, Reading.FromValue(channel, value, quality, age), tickMilliseconds);

    public ReadingQuality Say(RigReadings others, Reading reading, int tickMilliseconds = 10_000)
    {
        _now += tickMilliseconds;
        (RigReadings judged, _memory) = Validation.Check(others.With(channel, reading), _memory, _now);
        Last = judged[channel].Quality;
        return Last;
    }
}
