using PileController.Control.Readings;

namespace PileController.Alarms.Rows;

/// <summary>
/// What a reading cannot be whatever the weather does, though it is within its probe's range and does not jump. It goes
/// beyond what control acts on, and control does not know of it.
/// </summary>
internal static class Plausibility
{
    // Nothing fed by the heap is warmer than the heap but by the two probes' errors and a heap's unevenness
    // (common practice, no source).
    private const double AboveHeapK = 8;

    // A closed house is not colder than the air outside but by what a clear sky and stored cold take (common practice, no source).
    private const double BelowOutsideK = 12;

    // A floor lags behind the air by a sunny day (common practice, no source).
    private const double FloorApartK = 25;

    // Of what the part takes or moves at its most (common practice, no source).
    private const double OverFull = 1.6;
    private const double SlackWatts = 8;
    private const double FlowOverFull = 2;

    // No battery of this voltage stands so much above its low limit, charging included (common practice, no source).
    private const double BatteryOverLow = 1.5;

    /// <summary>Whether a believed reading cannot be true; false where nothing speaks against it.</summary>
    public static bool CannotBe(AlarmPlace place, Channel channel, AlarmFacts facts)
    {
        double value = facts.Value(channel) ?? double.NaN;
        return channel switch
        {
            Channel.Supply or Channel.Return or Channel.Tank or Channel.DuctAir => value > HottestAround(channel, facts) + AboveHeapK,
            Channel.Outside => value > facts.Value(Channel.House) + BelowOutsideK,
            Channel.Floor => Math.Abs(value - (facts.Value(Channel.House) ?? value)) > FloorApartK,
            Channel.Flow => value > FlowOverFull * Math.Max(place.Control.MostFlowLitresPerMinute, place.Control.Loop.FullFlowLitresPerMinute),
            Channel.PumpPower => value > (OverFull * place.Control.PumpWatts) + SlackWatts,
            Channel.BlowerPower => value > (OverFull * place.Control.BlowerWatts) + SlackWatts,
            Channel.Battery => value > BatteryOverLow * place.Control.Limits.BatteryLowV,
            _ => false,
        };
    }

    // Sun on a tank or a pipe in the house can make it as warm as the house's own air.
    private static double HottestAround(Channel channel, AlarmFacts facts)
    {
        double house = facts.Value(Channel.House) ?? double.PositiveInfinity;
        double heap = facts.HottestHeapC ?? double.PositiveInfinity;
        return channel == Channel.Supply ? heap : Math.Max(house, heap);
    }
}
