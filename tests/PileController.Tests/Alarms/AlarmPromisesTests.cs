using CsCheck;
using PileController.Alarms;
using static PileController.Tests.Alarms.Bench;

namespace PileController.Tests.Alarms;

/// <summary>Promises held against random courses of three signs, one of which follows from another, and random deeds.</summary>
public class AlarmPromisesTests
{
    private const int Ticks = 120;

    private static readonly AlarmRow[] Rows =
    [
        Row("cause", f => Bit(f, 1)) with { DelaySeconds = 30, BridgeSeconds = 20, ClearSeconds = 40 },
        Row("effect", f => Bit(f, 2)) with { DelaySeconds = 30, ClearSeconds = 20, FollowsFrom = ["cause"] },
        Row("people", f => Bit(f, 4)) with { DelaySeconds = 10, ProtectsPeople = true, RemindSeconds = 200 },
    ];

    // Signs ride on a figure of the facts: bits for what holds, and for what cannot be told.
    private static bool? Bit(AlarmFacts facts, int bit)
    {
        long signs = facts.Tally.Missed % 100;
        return (signs & (bit * 8)) != 0 ? null : (signs & bit) != 0;
    }

    private static readonly Gen<(int Signs, int Deed, int Row)[]> Courses =
        Gen.Select(Gen.Int[0, 63], Gen.Int[0, 12], Gen.Int[0, 2]).SelectMany(one => Gen.Int[1, 12].Select(length => (one, length)))
            .Array[Ticks / 6].Select(runs => runs.SelectMany(run => Enumerable.Repeat(run.one, run.length)).Take(Ticks).ToArray());

    [Fact]
    public void Board_OverAnyCourse_KeepsItsPromises() => Courses.Sample(
        course =>
        {
            Bench bench = new(Rows);
            double[] lastTrue = [double.NegativeInfinity, double.NegativeInfinity, double.NegativeInfinity];
            for (int i = 0; i < course.Length; i++)
            {
                (int signs, int deed, int row) = course[i];
                AlarmState before = bench.State;
                bench.Step(Sound(i) with { Tally = new(signs, 0, 0, 0) });
                Promise(bench, before, signs, lastTrue);
                Do(bench, deed, row);
            }

            // Whatever stands or is shelved at the end: it all ends by itself.
            for (int i = 0; i < (24 * 360) + 10; i++)
            {
                bench.Step(Sound(course.Length + i) with { Tally = new(0, 0, 0, 0) });
            }

            Assert.All(bench.State.Rows, memory => Assert.False(memory.Shelved));
            Assert.All(bench.State.Rows, memory => Assert.Equal(AlarmPhase.Off, memory.Phase));
        },
        iter: 400);

    private static void Promise(Bench bench, AlarmState before, int signs, double[] lastTrue)
    {
        for (int r = 0; r < Rows.Length; r++)
        {
            AlarmMemory memory = bench.State.Rows[r];
            bool? sign = Bit(Sound() with { Tally = new(signs, 0, 0, 0) }, 1 << r);
            lastTrue[r] = sign != false ? bench.State.Seconds : lastTrue[r];
            if (memory.Phase == AlarmPhase.Standing)
            {
                Assert.True(bench.State.Seconds - lastTrue[r] <= Math.Max(Rows[r].ClearSeconds, Rows[r].BridgeSeconds), $"{Rows[r].Key} stands without its cause");
            }

            bool rose = memory.Phase == AlarmPhase.Standing && before.Rows[r].Phase != AlarmPhase.Standing;
            if (rose)
            {
                Assert.True(memory.Unseen);
                Assert.True(bench.State.Seconds - memory.BeganSeconds >= Rows[r].DelaySeconds, "rose before its delay");
                Assert.False(r == 1 && before.Rows[0].Phase == AlarmPhase.Standing && bench.State.Rows[0].Phase == AlarmPhase.Standing, "rose though its cause stands");
            }

            Assert.True(memory.ShelvedUntilSeconds - bench.State.Seconds <= Rows[r].MostShelvedSeconds);
        }

        Assert.True(bench.State.Rows.Count(one => one.Phase == AlarmPhase.Standing && one.FirstUp) <= 1, "two are marked as the first");
    }

    private static void Do(Bench bench, int deed, int row)
    {
        (AlarmState State, IReadOnlyList<AlarmEvent>)? done = deed switch
        {
            1 => AlarmHands.See(bench.Table, bench.State, row, "Robin", 0),
            2 => AlarmHands.Shelve(bench.Table, bench.State, row, Rows[row].MostShelvedSeconds, "Robin", 0),
            3 => AlarmHands.Shelve(bench.Table, bench.State, row, 60, "Robin", 0),
            4 => AlarmHands.Unshelve(bench.Table, bench.State, row, "Robin", 0),
            _ => null,
        };
        bench.State = done?.State ?? bench.State;
    }
}
