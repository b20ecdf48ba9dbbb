namespace PileController.Control.Foresight;

/// <summary>What one hour brought the house so far.</summary>
public readonly record struct HouseTally
{
    private static readonly Kept<HourBegun> None = new(new HourBegun(-1, default, false, false));
    private readonly Kept<HourBegun>? _begun;

    /// <summary>Which hour, since 1970-01-01T00:00Z; -1 before the first.</summary>
    public long Hour { get => Now.Hour; init => Begun = Begun with { Hour = value }; }

    /// <summary>The house at its begin.</summary>
    public HouseState Start { get => Now.Start; init => Begun = Begun with { Start = value }; }

    /// <summary>Whether its air was read then.</summary>
    public bool StartSeen { get => Now.StartSeen; init => Begun = Begun with { StartSeen = value }; }

    /// <summary>Time counted, s.</summary>
    public double Seconds { get; init; }

    /// <summary>Air outside times time, °C·s.</summary>
    public double OutsideKelvinSeconds { get; init; }

    /// <summary>Heat by water, J.</summary>
    public double WaterJ { get; init; }

    /// <summary>Heat by air, J.</summary>
    public double AirJ { get; init; }

    /// <summary>Sunshine, J/m².</summary>
    public double SunJPerM2 { get; init; }

    /// <summary>Time in which it was read, s.</summary>
    public double SunSeconds { get; init; }

    /// <summary>Whether backup heat ran, whose power nobody tells.</summary>
    public bool Heated { get => Now.Heated; init => Begun = Begun with { Heated = value }; }

    /// <summary>Time in which the air outside was not read or the draw not metered, s.</summary>
    public double UnseenSeconds { get; init; }

    /// <summary>What stands for all of the hour, as one.</summary>
    internal HourBegun Begun { get => Now; init => _begun = (_begun ?? None).As(value); }

    /// <summary>Nothing counted yet.</summary>
    public static HouseTally Fresh => default;

    private ref readonly HourBegun Now => ref (_begun ?? None).Value;
}
