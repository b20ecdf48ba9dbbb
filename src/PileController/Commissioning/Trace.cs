using PileController.Control.Readings;

namespace PileController.Commissioning;

/// <summary>What was seen in one step.</summary>
/// <param name="Phase">The step.</param>
/// <param name="Looks">Every look of it, in order; the first may be from before the actuators were told.</param>
/// <param name="BeganSeconds">When the actuators were told what it wants; null before.</param>
/// <param name="EndedSeconds">When it was over; null before.</param>
/// <param name="Figure">The number answered, or null.</param>
/// <param name="Text">The words answered, or null.</param>
internal sealed record PhaseTrace(
    Phase Phase, IReadOnlyList<Look> Looks, double? BeganSeconds = null, double? EndedSeconds = null, double? Figure = null, string? Text = null)
{
    /// <summary>The looks from when it began.</summary>
    public IReadOnlyList<Look> Since => BeganSeconds is { } began ? [.. Looks.Where(look => look.Seconds >= began)] : [];

    /// <summary>How long it lasted, s; 0 before its end.</summary>
    public double Seconds => EndedSeconds - BeganSeconds ?? 0;
}

/// <summary>What was seen in a test, step by step.</summary>
/// <param name="Phases">The steps in order; the last one may still run.</param>
internal sealed record Trace(IReadOnlyList<PhaseTrace> Phases)
{
    /// <summary>What was seen in a step.</summary>
    /// <exception cref="KeyNotFoundException">There is no such step.</exception>
    public PhaseTrace this[string id] =>
        Phases.FirstOrDefault(phase => phase.Phase.Id == id) ?? throw new KeyNotFoundException($"There is no step \"{id}\" in this test.");

    /// <summary>
    /// Water metered from the first look of one step to the last look of another, L. A reading is the mean flow since the
    /// look before it, so that no pulse between two looks is lost; null when a look gave none.
    /// </summary>
    public double? Litres(string from, string to)
    {
        double litres = 0;
        Look? before = null;
        bool within = false;
        foreach (PhaseTrace phase in Phases)
        {
            within |= phase.Phase.Id == from;
            foreach (Look look in phase.Looks)
            {
                if (within && before is not null)
                {
                    if (look.Of(Channel.Flow) is not { } flow)
                    {
                        return null;
                    }

                    litres += flow * (look.Seconds - before.Seconds) / 60;
                }

                before = look;
            }

            if (phase.Phase.Id == to)
            {
                break;
            }
        }

        return litres;
    }
}
