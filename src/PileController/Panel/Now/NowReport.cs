using PileController.Alarms;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Physics.Heaps;
using PileController.Records;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Service;

namespace PileController.Panel.Now;

/// <summary>Puts a tick into the form in which it goes over the wire.</summary>
internal sealed class NowReport(PanelSetup setup, PanelFeed feed, TickCounts counts, AlarmDesk alarms)
{
    private const double JoulesPerKWh = 3.6e6;

    private static readonly string[][] FaultKinds =
        [.. ChannelTable.All.Select(row => FaultRules.KindsOf(row.Channel).Select(WireNames.Of).ToArray())];

    private readonly HeapShape _shape = new(setup.Control);

    /// <summary>True seconds since a tick was told; 0 where it is not kept.</summary>
    public double AgeSeconds(TickNews news) => feed.AgeOf(news)?.TotalSeconds ?? 0;

    /// <summary>The newest tick, or null before the first.</summary>
    public NowBody? Latest() => feed.Latest is { } news ? Of(news) : null;

    /// <summary>One tick.</summary>
    public NowBody Of(TickNews news)
    {
        Decision decision = news.Decision;
        string[] trips = [.. Latched(setup.Interlocks, decision)];
        return new NowBody
        {
            Holding = setup.Holding,
            Demo = setup.Demo,
            Speed = setup.Speed,
            Units = WireNames.Of(setup.Units),
            NewsAgeSeconds = Math.Round(AgeSeconds(news), 2),
            UtcMs = decision.At.UtcMilliseconds,
            LocalTime = LocalTimes.Text(decision.At.UtcMilliseconds, decision.At.OffsetMinutes),
            OffsetMinutes = decision.At.OffsetMinutes,
            Zone = setup.Zone,
            TickSeconds = setup.Control.TickSeconds,
            Sequence = decision.Sequence,
            Mode = WireNames.Of(decision.Mode),
            ModeSinceUtcMs = ToUtc(decision.At, decision.ModeSinceMonotonicMilliseconds),
            Why = decision.Why,
            WhyAmerican = Sentence.Of(decision, american: true),
            Note = decision.Note,
            Curb = WireNames.Of(decision.Curb),
            WantWatts = Finite(decision.WantWatts),
            MeansWatts = Finite(decision.MeansWatts),
            GrantWatts = Finite(decision.GrantWatts),
            WaterDrawWatts = Finite(decision.Draw.WaterWatts),
            WaterDrawErrorWatts = Finite(decision.Draw.WaterErrorWatts),
            AirDrawWatts = Finite(decision.Draw.AirWatts),
            DrawInferred = decision.Draw.Inferred,
            FlowLitresPerMinute = Finite(decision.Draw.FlowLitresPerMinute),
            HouseSetPointC = Finite(decision.HouseSetPointCelsius),
            HouseMinimumC = setup.Control.HouseMinimumC,
            HeapFloorC = setup.Control.HeapFloorC,
            HeapFireC = setup.Control.Limits.HeapFireC,
            Judged = JudgedOf(decision),
            Estimate = EstimateOf(decision.Estimate),
            Outputs = new(decision.Outputs.PumpDuty, decision.Outputs.ValveOpening, decision.Outputs.BlowerDuty, decision.Outputs.BackupOn),
            Fitted = new(true, true, setup.Control.BlowerFitted, setup.Control.BackupFitted),
            Readings = [.. setup.Rig.Probes.Select(probe => ReadingOf(probe, decision.Readings[probe.Channel]))],
            Interlocks = [.. setup.Interlocks.Zip(decision.Verdicts, InterlockOf)],
            Restraints = [.. RestraintsOf(setup.Interlocks, decision)],
            Trips = trips,
            Alarms = AlarmsOf(alarms.Count),
            Hands = [.. decision.Hands.Select(hand => HandOf(hand, decision.At))],
            Totals = TotalsOf(decision.Totals),
            Record = RecordOf(news.Record),
            Service = new(counts.Missed, counts.StepFaults, counts.RigFaults, counts.LastFault),
            Heap = HeapOf(setup.Heap),
            HeapField = decision.Estimate.Trusted && HeapProfile.Of(_shape, news.After) is { } profile ? FieldOf(profile) : null,
            Faults = setup.Faults is { } faults
                ? [.. faults.Active.Select(fault => new FaultBody(WireNames.Of(fault.Kind), fault.Channel is { } channel ? ChannelTable.Of(channel).Name : null, fault.Size))]
                : null,
        };
    }

    /// <summary>A heap, for its drawing.</summary>
    public static HeapBody HeapOf(HeapBuild heap) => new(
        heap.RadiusM, heap.HeightM, heap.CoverThicknessM, heap.Coil.RadiusM, heap.Coil.LengthM, heap.Duct.RadiusM, heap.Duct.LengthM,
        heap.Duct.DiameterM, heap.Duct.ThroughHeap, heap.DrumLitres);

    private static double[][] FieldOf(HeapProfile profile) =>
        [.. profile.RadiusM.Zip(profile.Celsius, (radius, celsius) => new[] { Math.Round(radius, 3), Math.Round(celsius, 1) })];

    /// <summary>Ids of the interlocks that have latched.</summary>
    public static IEnumerable<string> Latched(IReadOnlyList<Interlock> table, Decision decision) =>
        table.Zip(decision.Verdicts).Where(row => row.Second == Verdict.Latched).Select(row => row.First.Id);

    private static IEnumerable<RestraintBody> RestraintsOf(IReadOnlyList<Interlock> table, Decision decision) =>
        from row in table.Zip(decision.Verdicts)
        where row.Second is Verdict.Acting or Verdict.Latched
        from actuator in Enum.GetValues<Actuator>()
        let grip = InterlockReach.Of(row.First, actuator)
        where grip != InterlockGrip.None
        select new RestraintBody(WireNames.Of(actuator), WireNames.Of(grip), row.First.Id);

    private static AlarmsNowBody AlarmsOf(AlarmCount count) =>
        new(count.Standing, count.Unseen, count.Worst is { } worst ? WireNames.Of(worst) : null);

    // JSON has no word for a number that is none; the page shows a dash for null.
    private static double? Finite(double value) => double.IsFinite(value) ? value : null;

    private static long ToUtc(Instant at, long monotonicMilliseconds) =>
        at.UtcMilliseconds + (monotonicMilliseconds - at.MonotonicMilliseconds);

    private JudgedBody JudgedOf(Decision decision)
    {
        HouseState house = Judging.House(decision, setup.Interlocks, setup.Control);
        HeapState heap = Judging.Heap(decision, setup.Control);
        return new(
            WireNames.Of(house), WireNames.Of(Judging.ToneOf(house)), WireNames.Of(heap), WireNames.Of(Judging.ToneOf(heap)),
            WireNames.Of(Judging.Work(decision, setup.Interlocks)));
    }

    private static EstimateBody EstimateOf(HeapEstimate estimate) => new(
        Finite(estimate.CoreCelsius), Finite(estimate.ActiveZoneCelsius), Finite(estimate.TurnsCelsius),
        Finite(estimate.UncertaintyKelvin), Finite(estimate.GenerationWatts), Finite(estimate.ReserveJoules / 1e6),
        Finite(estimate.TrendKelvinPerDay), estimate.Lit, estimate.Trusted);

    private static ReadingBody ReadingOf(ProbeFit probe, Reading reading)
    {
        ChannelInfo info = ChannelTable.Of(probe.Channel);
        return new(
            info.Name, probe.Label ?? ProbeWords.Label(probe.Channel), info.Unit, reading.IsGood ? reading.ValueOf(probe.Channel) : null,
            WireNames.Of(reading.Quality), ProbeWords.Quality(reading.Quality), reading.AgeMilliseconds / 1000.0,
            probe.RadiusM, probe.HeightM, FaultKinds[(int)probe.Channel]);
    }

    private static InterlockBody InterlockOf(Interlock row, Verdict verdict) =>
        new(row.Id, WireNames.Of(verdict), WireNames.Of(row.Action), row.Sentence, row.Remedy);

    private static HandBody HandOf(HandHold hand, Instant at) =>
        new(WireNames.Of(hand.Actuator), hand.Value, ToUtc(at, hand.UntilMonotonicMilliseconds), hand.Who);

    private static RecordBody RecordOf(RecordHealth record) => new(
        record.Accepting, record.LastSequence, record.QueuedTicks, record.DroppedTicks, record.Fault, DamageBody.Of(record.Damage));

    private static TotalsBody TotalsOf(Totals totals) => new(
        Finite(totals.WaterJoules / JoulesPerKWh), Finite(totals.WaterErrorJoules / JoulesPerKWh), Finite(totals.AirJoules / JoulesPerKWh),
        Finite(totals.PumpJoules / JoulesPerKWh), Finite(totals.BlowerJoules / JoulesPerKWh), Finite(totals.Litres));
}
