using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Rigs.Hardware.Lines;

namespace PileController.Tests.Service;

/// <summary>From the last pulse of a meter to a stopped pump: gates, ticks that come late, interlock, all with the times by default.</summary>
public class FlowStopTests
{
    private const double PulsesPerLitre = 450;
    private const double PromisedSeconds = 30;
    private const double RunSeconds = 200;

    // A tick that comes so late is not told as late yet.
    private const double LatestSeconds = 0.5;

    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData(1)]
    [InlineData(2.5)]
    [InlineData(4)]
    public void Flow_ThatStopsAtAnyMomentOfARun_FindsThePumpOffWithinHalfAMinute(double litresPerMinute)
    {
        Random late = new(7);
        for (double phase = 0; phase < 20; phase += 0.25)
        {
            double? off = Live(litresPerMinute, RunSeconds + phase, double.PositiveInfinity, late);

            Assert.InRange(off ?? double.NaN, 10, PromisedSeconds);
        }
    }

    [Theory]
    [InlineData(1, 11)]
    [InlineData(4, 17)]
    public void Flow_ThatABubbleInterrupts_StopsNothing(double litresPerMinute, double bubbleSeconds)
    {
        Random late = new(7);
        for (double phase = 0; phase < 20; phase += 0.25)
        {
            Assert.Null(Live(litresPerMinute, RunSeconds + phase, RunSeconds + phase + bubbleSeconds, late));
        }
    }

    // How long after the stop the pump was told to stand, s; null when it runs on.
    private static double? Live(double litresPerMinute, double stops, double goesOn, Random late)
    {
        FakeTimeProvider time = new();
        DateTimeOffset began = time.GetUtcNow();
        PulseGates gates = new(time, 200);
        Memory memory = Memory.Fresh;
        double gate = 0.7;
        for (double tick = 10; tick < RunSeconds + 120; tick += 10)
        {
            double now = tick + (LatestSeconds * late.NextDouble());
            for (; gate <= now; gate += 1)
            {
                time.SetUtcNow(began.AddSeconds(gate));
                gates.Close(Count(gate));
            }

            time.SetUtcNow(began.AddSeconds(now));
            RigReadings readings = RigReadings.None.With(Channel.Outside, Reading.FromValue(Channel.Outside, 10))
                .With(Channel.Flow, Reading.FromValue(Channel.Flow, gates.Look(Count(now))!.PerSecond * 60 / PulsesPerLitre));
            Command[] commands = tick == 10 ? [new TakeByHand(Actuator.Pump, 1, 3_600_000, "Robin")] : [];
            (Decision decision, memory) = Controller.Step(
                Settings, memory, readings, commands, new Instant((long)(now * 1000), (long)(now * 1000), 0));
            if (decision.Mode == Mode.Tripped)
            {
                return now - stops;
            }
        }

        return null;

        long Count(double at) => (long)(PulsesPerLitre / 60 * litresPerMinute * (Math.Min(at, stops) + Math.Max(0, at - goesOn)));
    }
}
