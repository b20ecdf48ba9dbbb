using System.Text.Json;
using PileController.Control.Decisions;

namespace PileController.Control.Tests.Support;

/// <summary>
/// All of a decision and a memory as text in which every double comes back to its last bit. A NaN or an infinity cannot
/// be written and throws.
/// </summary>
internal static class Bits
{
    public static string Of(Decision decision) => JsonSerializer.Serialize(
        new
        {
            decision.Sequence,
            decision.At,
            Readings = decision.Readings.AsSpan().ToArray(),
            decision.Estimate,
            decision.Mode,
            decision.ModeBefore,
            decision.ModeSinceMonotonicMilliseconds,
            decision.Kinds,
            decision.WantWatts,
            decision.MeansWatts,
            decision.GrantWatts,
            decision.WaterGrantWatts,
            decision.AirGrantWatts,
            decision.Curb,
            decision.HeapFloorCelsius,
            decision.HouseSetPointCelsius,
            decision.Draw,
            decision.Totals,
            decision.Verdicts,
            decision.FirstActing,
            decision.Hands,
            decision.Outputs,
            decision.Note,
            decision.Why,
        });

    public static string Of(Memory memory) => JsonSerializer.Serialize(memory);
}
