namespace PileController.Ledgers;

/// <summary>One heap, from the day it was built to the day its season was closed.</summary>
/// <param name="Name">What the grower calls it.</param>
/// <param name="HeapBuiltOn">First date that belongs to it.</param>
/// <param name="Opened">Who opened it.</param>
/// <param name="Fuel">What heat would have cost otherwise.</param>
/// <param name="Masses">What was weighed or guessed, oldest first; of each way the last one counts.</param>
/// <param name="Parts">Parts bought and reused, one a name.</param>
/// <param name="Notes">What the grower wrote, oldest first.</param>
/// <param name="Closed">Its end; null while it is open.</param>
internal sealed record SeasonEntry(
    string Name, DateOnly HeapBuiltOn, Hand Opened, FuelEntry Fuel, IReadOnlyList<MassEntry> Masses, IReadOnlyList<PartEntry> Parts,
    IReadOnlyList<NoteEntry> Notes, Closing? Closed)
{
    /// <summary>Whether a date belongs to it.</summary>
    public bool Holds(DateOnly date) => date >= HeapBuiltOn && (Closed is null || date <= Closed.On);

    /// <summary>The mass that counts of one way; null when none was entered.</summary>
    public MassEntry? Mass(MassWay way) => Masses.LastOrDefault(m => m.Way == way);
}

/// <summary>Whose hand wrote something into the book.</summary>
/// <param name="Who">The name the person gave.</param>
/// <param name="From">Where it came from: the address of a call, or the command line.</param>
/// <param name="AtUtcMilliseconds">When.</param>
internal sealed record Hand(string Who, string From, long AtUtcMilliseconds);

/// <summary>What heat would have cost otherwise, and electricity.</summary>
/// <param name="Name">The fuel, one of <see cref="Plans.Money.Fuels"/>.</param>
/// <param name="PricePerUnit">Price of the unit it is sold by.</param>
/// <param name="ElectricityPerKWh">What a kWh for pump and blower costs; 0 where the sun gives it.</param>
/// <param name="Money">Name or sign of the money.</param>
/// <param name="By">Who said so.</param>
internal sealed record FuelEntry(string Name, double PricePerUnit, double ElectricityPerKWh, string Money, Hand By);

/// <summary>Which way stuff went.</summary>
internal enum MassWay
{
    /// <summary>Wet, into the heap.</summary>
    In = 0,

    /// <summary>Out of the heap when it was taken down.</summary>
    Out,
}

/// <summary>How a figure is known.</summary>
internal enum Known
{
    /// <summary>Measured.</summary>
    Measured = 0,

    /// <summary>Guessed.</summary>
    Guessed,
}

/// <summary>A mass.</summary>
/// <param name="Way">Which way.</param>
/// <param name="Kilograms">How much, kg.</param>
/// <param name="Known">How it is known.</param>
/// <param name="How">What was measured or guessed, in the grower's words; null when not said.</param>
/// <param name="By">Who entered it.</param>
internal sealed record MassEntry(MassWay Way, double Kilograms, Known Known, string? How, Hand By);

/// <summary>A part.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Count">How many.</param>
/// <param name="PriceEach">What one cost; of a reused one what a new one would have cost.</param>
/// <param name="Reused">It was at hand already and nothing was paid.</param>
/// <param name="By">Who entered it.</param>
internal sealed record PartEntry(string Name, double Count, double PriceEach, bool Reused, Hand By)
{
    /// <summary>What all of them cost.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Price => Count * PriceEach;
}

/// <summary>A note.</summary>
/// <param name="Text">What was written.</param>
/// <param name="By">Who wrote it, and when.</param>
internal sealed record NoteEntry(string Text, Hand By);

/// <summary>The end of a season.</summary>
/// <param name="On">Last date that belongs to it.</param>
/// <param name="By">Who closed it.</param>
/// <param name="Lessons">What was learned; null when the controller had seen nothing yet.</param>
internal sealed record Closing(DateOnly On, Hand By, Lessons? Lessons);
