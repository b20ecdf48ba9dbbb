using PileController.Commissioning;
using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Tests.Commissioning;

/// <summary>Leads a test through on made-up readings, a tick of ten seconds at a time.</summary>
internal sealed class Bench(Procedure procedure)
{
    private readonly Dictionary<Channel, Func<double, double?>> _says = [];

    /// <summary>The test as it stands.</summary>
    public Walk Walk { get; private set; } = Walk.Begin(procedure);

    /// <summary>Time, s.</summary>
    public double Seconds { get; private set; } = 1000;

    /// <summary>What the actuators are told; what the test wants unless set.</summary>
    public Func<Outputs, Outputs> Tells { get; set; } = outputs => outputs;

    /// <summary>Outputs of the tick before, which is what the readings show.</summary>
    public Outputs Before { get; private set; } = Outputs.Safe;

    /// <summary>When the step that runs began, s.</summary>
    public double StepBegan => Walk.Traces[^1].BeganSeconds ?? Seconds;

    /// <summary>Lets a probe say something, by time in seconds; null for no answer.</summary>
    public Bench Says(Channel channel, Func<double, double?> value)
    {
        _says[channel] = value;
        return this;
    }

    /// <summary>One tick.</summary>
    public Bench Tick(string? stop = null)
    {
        Seconds += 10;
        Reading[] readings = new Reading[ChannelTable.Count];
        foreach ((Channel channel, Func<double, double?> says) in _says)
        {
            readings[(int)channel] = says(Seconds) is { } value ? Reading.FromValue(channel, value) : new Reading(0, ReadingQuality.NoAnswer, 0);
        }

        Outputs told = Tells(Walk.Wanted.Aggregate(Outputs.Safe, With));
        Walk = Walk.Take(new Look(Seconds, new RigReadings(readings), told, stop));
        Before = told;
        return this;
    }

    /// <summary>Ticks until an answer is waited for or all is over.</summary>
    public Bench UntilAsked()
    {
        do
        {
            Tick();
        }
        while (!Walk.Ended && !Walk.AwaitsAnswer);

        return this;
    }

    /// <summary>Answers.</summary>
    public Bench Answer(double? figure = null, string? text = null, double later = 0)
    {
        Walk = Walk.Answer(Seconds + later, figure, text);
        return this;
    }

    /// <summary>To the end, with the same answer to every question.</summary>
    public IReadOnlyList<Outcome> Through(Func<string, double?>? figure = null)
    {
        while (!Walk.Ended)
        {
            UntilAsked();
            if (!Walk.Ended)
            {
                Answer(Walk.Phase!.Question is null ? null : figure?.Invoke(Walk.Phase.Id));
            }
        }

        return Walk.Found();
    }

    private static Outputs With(Outputs outputs, Move move) => move.Actuator switch
    {
        Actuator.Pump => outputs with { PumpDuty = move.Value },
        Actuator.Valve => outputs with { ValveOpening = move.Value },
        Actuator.Blower => outputs with { BlowerDuty = move.Value },
        _ => outputs with { BackupOn = move.Value > 0.5 },
    };
}
