namespace PileController.Control.Foresight;

/// <summary>What of a <see cref="HouseTally"/> stands for all of its hour; told there.</summary>
internal readonly record struct HourBegun(long Hour, HouseState Start, bool StartSeen, bool Heated);
