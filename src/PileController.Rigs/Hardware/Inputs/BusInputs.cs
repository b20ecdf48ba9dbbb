using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.Inputs;

/// <summary>Where one probe's answer comes from.</summary>
/// <param name="Fit">The probe.</param>
/// <param name="Bus">Its bus.</param>
/// <param name="Station">Its device's place on the bus.</param>
/// <param name="Answer">Its place among the device's answers.</param>
internal sealed record BusPlace(ProbeFit Fit, ProbeBus Bus, int Station, int Answer);

/// <summary>Buses of probes, each swept by its own thread at every tick; what is late is shown with its age.</summary>
/// <param name="buses">The buses; disposed with this.</param>
/// <param name="places">Which answer is which channel's.</param>
/// <param name="time">Clock.</param>
/// <param name="limits">How long to wait and how old an answer may be.</param>
internal sealed class BusInputs(
    IReadOnlyList<ProbeBus> buses, IReadOnlyList<BusPlace> places, TimeProvider time, BusLimits limits) : IInputGroup
{
    /// <inheritdoc/>
    public async Task ReadAsync(Reading[] readings, CancellationToken cancellation)
    {
        long askedAt = time.GetTimestamp();
        try
        {
            await Task.WhenAll(buses.Select(bus => bus.Sweep()))
                .WaitAsync(limits.Deadline, time, cancellation).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            // Too slow for this tick: what is there is shown with its age, and the sweep goes on behind.
        }

        long now = time.GetTimestamp();
        foreach (BusPlace place in places)
        {
            readings[(int)place.Fit.Channel] = Shown(place, askedAt, now);
        }
    }

    /// <summary>Ends the buses' threads.</summary>
    public void Dispose()
    {
        foreach (ProbeBus bus in buses)
        {
            bus.Dispose();
        }
    }

    private Reading Shown(BusPlace place, long askedAt, long now)
    {
        if (place.Bus.Last(place.Station) is not { } sample)
        {
            return new Reading(0, ReadingQuality.NoAnswer, 0);
        }

        TimeSpan age = sample.AskedAt >= askedAt ? TimeSpan.Zero : time.GetElapsedTime(sample.AskedAt, now);
        int milliseconds = (int)Math.Min(age.TotalMilliseconds, int.MaxValue);
        Measured answer = sample.Answers[place.Answer];
        if (age > limits.Dead || !answer.HasValue)
        {
            return new Reading(0, age > limits.Dead ? ReadingQuality.NoAnswer : answer.Quality, milliseconds);
        }

        ReadingQuality quality = answer.Quality == ReadingQuality.Good && age > limits.Fresh ? ReadingQuality.Late : answer.Quality;
        return Reading.FromValue(place.Fit.Channel, answer.Value + place.Fit.OffsetKelvin, quality, milliseconds);
    }
}
