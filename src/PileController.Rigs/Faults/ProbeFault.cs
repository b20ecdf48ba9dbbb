using PileController.Control;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Faults;

/// <summary>One fault of one probe, with what it must remember while it lasts.</summary>
/// <param name="fault">The fault; it has a channel.</param>
/// <param name="since">When it began.</param>
/// <param name="last">What the probe said before that; not fitted when it had not spoken yet.</param>
internal sealed class ProbeFault(Fault fault, Instant since, Reading last)
{
    private const double MillisecondsPerHour = 3_600_000;

    // A thermometer cannot say more than its word holds: -55 to 125 °C (SEN-010, SEN-001).
    private readonly ProbePart _part = ProbePart.Of(fault.Channel!.Value);
    private Reading _frozen = last;

    /// <summary>The fault.</summary>
    public Fault Fault => fault;

    /// <summary>The probe it is in.</summary>
    public Channel Channel => fault.Channel!.Value;

    /// <summary>What the probe shows in the place of a reading.</summary>
    public Reading Distort(Reading reading, Instant at)
    {
        if (reading.Quality == ReadingQuality.NotFitted)
        {
            return reading;
        }

        return fault.Kind switch
        {
            FaultKind.Open => new Reading(0, ReadingQuality.NoAnswer, 0),
            FaultKind.Short => new Reading(0, ReadingQuality.Shorted, 0),
            FaultKind.Stuck => Frozen(reading),
            FaultKind.Drift => Moved(
                reading, fault.Size * (at.MonotonicMilliseconds - since.MonotonicMilliseconds) / MillisecondsPerHour),
            FaultKind.Spike => IsWild(at) ? Moved(reading, fault.Size) : reading,
            _ => reading,
        };
    }

    private Reading Frozen(Reading reading)
    {
        // Without a good answer before, the first one after is what it keeps giving.
        if (!_frozen.IsGood)
        {
            _frozen = reading;
        }

        return _frozen;
    }

    private Reading Moved(Reading reading, double by)
    {
        if (!reading.IsGood)
        {
            return reading;
        }

        double value = Math.Clamp(reading.ValueOf(Channel) + by, _part.Least, _part.Most);
        return Reading.FromValue(Channel, value, ReadingQuality.Good, reading.AgeMilliseconds);
    }

    // One tick in six on average, drawn from the moment itself so that a run repeats.
    private bool IsWild(Instant at) =>
        SplitMix64.At((ulong)Channel, unchecked((ulong)at.MonotonicMilliseconds)) % 6 == 0;
}
