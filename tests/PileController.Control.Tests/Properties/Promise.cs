namespace PileController.Control.Tests.Properties;

/// <summary>Something the controller promises whatever the rig says, people ask and the clocks do.</summary>
/// <param name="Name">The promise in words.</param>
/// <param name="Begin">Begins to look at one scenario: what it returns is told of every tick and throws where the promise is broken.</param>
internal sealed record Promise(string Name, Func<Action<Tick>> Begin)
{
    public static IReadOnlyList<Promise> All { get; } =
    [
        .. LinePromises.All, .. DrawPromises.All, .. OutputPromises.All, .. HandPromises.All, .. TripPromises.All, .. BitPromises.All,
    ];

    /// <summary>A promise that needs to remember nothing from tick to tick.</summary>
    public static Promise OfEach(string name, Action<Tick> check) => new(name, () => check);

    private static readonly Promise NeverThrows = OfEach("a step throws nothing", _ => { });

    /// <summary>Runs a scenario once and holds promises against it; what was broken first, and when, or null.</summary>
    public static BrokenPromise? Hold(IReadOnlyList<Promise> promises, Scenario scenario, Func<Tick, Tick>? spoilt = null)
    {
        Action<Tick>[] looks = [.. promises.Select(p => p.Begin())];
        BrokenPromise? broken = null;
        try
        {
            scenario.Run(tick =>
            {
                Tick told = spoilt is null ? tick : spoilt(tick);
                for (int i = 0; i < looks.Length && broken is null; i++)
                {
                    broken = Look(promises[i], looks[i], told);
                }

                return broken is null;
            });
        }
        catch (Exception thrown)
        {
            broken = new BrokenPromise(NeverThrows, -1, thrown.ToString());
        }

        return broken;
    }

    private static BrokenPromise? Look(Promise promise, Action<Tick> look, Tick tick)
    {
        try
        {
            look(tick);
            return null;
        }
        catch (Exception said)
        {
            return new BrokenPromise(promise, tick.Index, said.Message);
        }
    }
}

/// <summary>A promise that was broken.</summary>
/// <param name="Promise">Which.</param>
/// <param name="Index">At which tick, from 0; -1 when the step itself threw.</param>
/// <param name="Said">What was seen.</param>
internal sealed record BrokenPromise(Promise Promise, int Index, string Said)
{
    /// <summary>As little of a scenario as is found to break the same promise: stretches of it are left out as long as it does.</summary>
    public (Scenario Scenario, BrokenPromise Broken) Shrunk(Scenario scenario)
    {
        BrokenPromise broken = this;
        for (int length = scenario.Moves.Length / 2; length > 0; length /= 2)
        {
            for (int from = 0; from + length <= scenario.Moves.Length && length < scenario.Moves.Length;)
            {
                Scenario less = scenario with { Moves = [.. scenario.Moves[..from], .. scenario.Moves[(from + length)..]] };
                if (Promise.Hold([Promise], less) is { } still)
                {
                    (scenario, broken) = (less, still);
                }
                else
                {
                    from += length;
                }
            }
        }

        return (scenario, broken);
    }
}
