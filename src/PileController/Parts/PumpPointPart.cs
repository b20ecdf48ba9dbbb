using PileController.Physics.Hydraulics;

namespace PileController.Parts;

/// <summary>One measurement of a pump: by meters, or with a bucket, a watch and a multimeter.</summary>
internal sealed record PumpPointPart
{
    public double? FlowLitresPerMinute { get; init; }

    public double? BucketLitres { get; init; }

    public double? Seconds { get; init; }

    public double HeadM { get; init; }

    public double? Watts { get; init; }

    public double? Volts { get; init; }

    public double? Amperes { get; init; }

    public double? Duty { get; init; }

    /// <summary>The flow, however it was measured; null when it was not.</summary>
    public double? Flow => FlowLitresPerMinute ?? (60 * BucketLitres / Seconds);

    /// <summary>The electric power, however it was measured; null when it was not.</summary>
    public double? Power => Watts ?? (Volts * Amperes);

    /// <summary>The duty it was measured at: as given, by its share of the rated voltage, or full.</summary>
    public double DutyAt(double? ratedVolts) => Duty ?? (Volts / ratedVolts) ?? 1;

    /// <summary>The point for the curve, once checked.</summary>
    public PumpPoint Measured(double? ratedVolts) => new(Flow!.Value, HeadM, Power!.Value, DutyAt(ratedVolts));
}
