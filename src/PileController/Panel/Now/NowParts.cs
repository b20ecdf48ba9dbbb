using PileController.Control.Interlocks;
using PileController.Records;

namespace PileController.Panel.Now;

/// <summary>What is believed of the heap.</summary>
internal sealed record EstimateBody(
    double? CoreC, double? ActiveZoneC, double? TurnsC, double? UncertaintyK, double? GenerationWatts,
    double? ReserveMJ, double? TrendKPerDay, bool Lit, bool Trusted);

/// <summary>How house and heap are, and how good or bad that and what is done is: the names of <see cref="HouseState"/>, <see cref="HeapState"/>, <see cref="Tone"/>.</summary>
internal sealed record JudgedBody(string House, string HouseTone, string Heap, string HeapTone, string WorkTone);

/// <summary>What the actuators are told.</summary>
internal sealed record OutputsBody(double PumpDuty, double ValveOpening, double BlowerDuty, bool BackupOn);

/// <summary>Which actuators there are.</summary>
internal sealed record FittedBody(bool Pump, bool Valve, bool Blower, bool Backup);

/// <summary>One probe's answer; the value is null unless it may be believed. The kinds of fault are those it can have.</summary>
internal sealed record ReadingBody(
    string Channel, string Name, string Unit, double? Value, string Quality, string QualityText, double AgeSeconds,
    double RadiusM, double HeightM, IReadOnlyList<string> FaultKinds);

/// <summary>One interlock and what it says.</summary>
internal sealed record InterlockBody(string Id, string Verdict, string Action, string Sentence, string Remedy);

/// <summary>What an interlock that acts does with one actuator, whatever is asked of it: the names of <see cref="InterlockGrip"/>.</summary>
internal sealed record RestraintBody(string Actuator, string Does, string Interlock);

/// <summary>One actuator held by hand.</summary>
internal sealed record HandBody(string Actuator, double Value, long EndsUtcMs, string Who);

/// <summary>Alarms that stand, those nobody has seen, and the worst of those listed: low, medium, high, or null.</summary>
internal sealed record AlarmsNowBody(int Standing, int Unseen, string? Worst);

/// <summary>Running totals.</summary>
internal sealed record TotalsBody(
    double? WaterKWh, double? WaterErrorKWh, double? AirKWh, double? PumpKWh, double? BlowerKWh, double? Litres);

/// <summary>How the record is.</summary>
internal sealed record RecordBody(
    bool Accepting, long LastSequence, long QueuedTicks, long DroppedTicks, string? Fault, DamageBody? Damage);

/// <summary>What of the record is damaged.</summary>
internal sealed record DamageBody(int FilesSetAside, int DamagedParts, string Newest, long NewestUtcMs, long SinceUtcMs)
{
    /// <summary>The body of what a record tells; null for null.</summary>
    public static DamageBody? Of(RecordDamage? damage) => damage is null
        ? null
        : new(damage.FilesSetAside, damage.DamagedParts, damage.Newest, damage.NewestUtcMilliseconds, damage.SinceUtcMilliseconds);
}

/// <summary>How the loop is.</summary>
internal sealed record ServiceBody(long MissedTicks, long StepFaults, long RigFaults, string? LastFault);

/// <summary>The heap as built, for its drawing.</summary>
internal sealed record HeapBody(
    double RadiusM, double HeightM, double CoverM, double CoilRadiusM, double CoilLengthM, double DuctRadiusM, double DuctLengthM,
    double DuctDiameterM, bool ThroughHeap, double DrumLitres);

/// <summary>One fault in the demo's rig.</summary>
internal sealed record FaultBody(string Kind, string? Channel, double Size);
