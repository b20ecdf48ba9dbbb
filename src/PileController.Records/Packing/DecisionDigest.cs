using System.Buffers.Binary;
using System.IO.Hashing;
using System.Runtime.InteropServices;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Readings;

namespace PileController.Records.Packing;

/// <summary>
/// A 64-bit digest of a whole decision, bit for bit. Two decisions with the same digest are taken to be the same:
/// what the record keeps in full is rounded, and the exact figures come back by running the tick again.
/// </summary>
/// <threadsafety>One thread at a time: the buffer is reused.</threadsafety>
internal sealed class DecisionDigest
{
    private readonly ByteSink _sink = new();

    /// <summary>The digest of <paramref name="decision"/>. Its sentence counts only where the decision is worth a line.</summary>
    public ulong Of(Decision decision)
    {
        _sink.Clear();
        Numbers(decision);
        Numbers(decision.Estimate);
        Numbers(decision.Draw);
        Numbers(decision.Totals);
        Numbers(decision.Outputs);
        Readings(decision.Readings);
        Verdicts(decision.Verdicts);
        Hands(decision.Hands);
        Text(decision.Note);
        Numbers(decision.Tonight);
        if (decision.Kinds != DecisionKinds.Steady)
        {
            Text(decision.Why);
        }

        return XxHash64.HashToUInt64(_sink.Written);
    }

    private void Numbers(Decision decision)
    {
        Instant at = decision.At;
        Whole(decision.Sequence);
        Whole(at.UtcMilliseconds);
        Whole(at.MonotonicMilliseconds);
        Whole(at.OffsetMinutes);
        Whole((int)decision.Mode);
        Whole((int)decision.ModeBefore);
        Whole(decision.ModeSinceMonotonicMilliseconds);
        Whole((int)decision.Kinds);
        Bits(decision.WantWatts);
        Bits(decision.MeansWatts);
        Bits(decision.GrantWatts);
        Bits(decision.WaterGrantWatts);
        Bits(decision.AirGrantWatts);
        Whole((int)decision.Curb);
        Bits(decision.HeapFloorCelsius);
        Bits(decision.HouseSetPointCelsius);
        Whole(decision.FirstActing);
    }

    private void Numbers(Tonight? tonight)
    {
        if (tonight is null)
        {
            return;
        }

        Bits(tonight.MinimumP10C);
        Bits(tonight.MinimumP50C);
        Bits(tonight.MinimumP90C);
        Bits(tonight.ChanceOfHolding);
        Bits(tonight.BackupWatts ?? 0);
        Bits(tonight.ColderK);
        Bits(tonight.WarmerK);
        Bits(tonight.OutsideSigmaK);
        Whole(tonight.AtUtcMilliseconds);
        Whole(tonight.FromUtcMilliseconds ?? 0);
        Whole(tonight.UntilUtcMilliseconds);
        Whole(tonight.MadeUtcMilliseconds);
        Whole(tonight.UsesForecast ? 1 : 0);
    }

    private void Numbers(in HeapEstimate estimate)
    {
        Bits(estimate.CoreCelsius);
        Bits(estimate.ActiveZoneCelsius);
        Bits(estimate.TurnsCelsius);
        Bits(estimate.UncertaintyKelvin);
        Bits(estimate.GenerationWatts);
        Bits(estimate.ReserveJoules);
        Bits(estimate.TrendKelvinPerDay);
        Whole((estimate.Lit ? 1 : 0) + (estimate.Trusted ? 2 : 0));
    }

    private void Numbers(in MeteredDraw draw)
    {
        Bits(draw.WaterWatts);
        Bits(draw.WaterErrorWatts);
        Bits(draw.AirWatts);
        Bits(draw.FlowLitresPerMinute);
        Whole(draw.Inferred ? 1 : 0);
    }

    private void Numbers(in Totals totals)
    {
        Bits(totals.WaterJoules);
        Bits(totals.WaterErrorJoules);
        Bits(totals.AirJoules);
        Bits(totals.PumpJoules);
        Bits(totals.BlowerJoules);
        Bits(totals.Litres);
    }

    private void Numbers(in Outputs outputs)
    {
        Bits(outputs.PumpDuty);
        Bits(outputs.ValveOpening);
        Bits(outputs.BlowerDuty);
        Whole(outputs.BackupOn ? 1 : 0);
    }

    // Those of later rows count once they say anything, so that what was decided before there were any keeps its digest.
    private void Verdicts(ReadOnlySpan<Verdict> verdicts)
    {
        while (verdicts.Length > InterlockTable.FirstCount && verdicts[^1] == Verdict.Clear)
        {
            verdicts = verdicts[..^1];
        }

        Whole(verdicts.Length);
        _sink.Bytes(MemoryMarshal.AsBytes(verdicts));
    }

    private void Readings(RigReadings readings)
    {
        foreach (ref readonly Reading reading in readings.Told())
        {
            Whole(reading.Quanta);
            Whole(((long)reading.AgeMilliseconds << 8) | (byte)reading.Quality);
        }
    }

    private void Hands(HandHold[] hands)
    {
        Whole(hands.Length);
        foreach (HandHold hand in hands)
        {
            Whole((int)hand.Actuator);
            Bits(hand.Value);
            Whole(hand.UntilMonotonicMilliseconds);
            Text(hand.Who);
        }
    }

    private void Text(string? text)
    {
        Whole(text?.Length ?? -1);
        _sink.Bytes(MemoryMarshal.AsBytes(text.AsSpan()));
    }

    private void Bits(double value) => Whole(BitConverter.DoubleToInt64Bits(value));

    private void Whole(long value)
    {
        BinaryPrimitives.WriteInt64LittleEndian(_sink.Room(8), value);
        _sink.Advance(8);
    }
}
