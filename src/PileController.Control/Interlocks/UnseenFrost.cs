namespace PileController.Control.Interlocks;

/// <summary>
/// Frost in lines of which no probe, not even the one in the air outside, can be believed. It counts as frost, but nobody has
/// seen it, and nobody would see it end: a guard that ran on would empty battery and heap in the mildest weather. So water
/// is moved for a share of the time, and only as long as the heap can be seen to bear it. No rig is let run whose lines do
/// not bear standing still at a fault; that is what is left.
/// </summary>
internal static class UnseenFrost
{
    // At −15 °C water of 30 °C that stands in a half-inch tube comes to freezing after an hour behind 13 mm of foam, after
    // 25 minutes in a bare one, and has then to freeze first (calc line). Twice as often as the first needs it.
    private const long RunMilliseconds = 10 * 60_000;
    private const long CycleMilliseconds = 40 * 60_000;

    /// <summary>Whether water may be moved now.</summary>
    /// <param name="settings">The heap's floor.</param>
    /// <param name="zoneC">The heap's active zone, °C.</param>
    /// <param name="isWithheld">Whether an interlock holds the water: no heap to be seen, an empty battery, a hot house.</param>
    /// <param name="runMilliseconds">How long the lines have counted as frosty.</param>
    public static bool MayMove(ControlSettings settings, double zoneC, bool isWithheld, long runMilliseconds) =>
        !isWithheld && zoneC >= settings.HeapFloorC && runMilliseconds % CycleMilliseconds < RunMilliseconds;

    /// <summary>Whether a row that holds the water has been acting.</summary>
    public static bool IsWithheld(InterlockMemory[] memory)
    {
        IReadOnlyList<Interlock> table = InterlockTable.All;
        for (int i = 0; i < table.Count; i++)
        {
            if (table[i].Action is InterlockAction.HoldWater or InterlockAction.HoldAll && InterlockMemory.Of(memory, i).Acting)
            {
                return true;
            }
        }

        return false;
    }
}
