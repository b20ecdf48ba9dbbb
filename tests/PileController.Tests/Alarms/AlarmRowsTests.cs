using PileController.Alarms;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Panel.Now;
using PileController.Settings;
using static PileController.Tests.Alarms.Bench;

namespace PileController.Tests.Alarms;

/// <summary>Every row of Alder Bank's table: rises at its delay and not before, ends after its clearing, in words that can be acted on.</summary>
public class AlarmRowsTests
{
    private static readonly AlarmTable Table = AlarmRun.TableOf(PileSettings.AlderBank, PileSettings.AlderBank.Control);

    /// <summary>What makes each alarm's sign hold.</summary>
    private static readonly Dictionary<string, Func<AlarmFacts, AlarmFacts>> Ill = new()
    {
        ["controlFails"] = f => f with { Tally = f.Tally with { StepFaults = f.Record.LastSequence + 1 } },
        ["rigSilent"] = f => f with { Tally = f.Tally with { RigFaults = f.Record.LastSequence + 1 } },
        ["recordStops"] = f => f with { Record = f.Record with { Accepting = false, Fault = "The disk is full." } },
        ["diskFull"] = f => f with { Record = f.Record with { FreeBytes = 20_000_000 } },
        ["recordGaps"] = f => f with { Tally = f.Tally with { Dropped = f.Record.LastSequence + 1 } },
        ["recordFault"] = f => f with { Record = f.Record with { Fault = "ticks-3 was set aside." } },
        ["ticksLate"] = f => Judged(f, "tickLate", Verdict.Acting),
        ["restarts"] = f => Judged(f, "restarts", Verdict.Latched),
        ["clockUnsteady"] = f => Judged(f, "clockJump", Verdict.Acting),
        ["pushFails"] = f => f with { PushTrouble = "The mail: no answer." },
        ["probeBus"] = f => ChannelTable.All.Where(row => row.Unit == "°C").Aggregate(f, (all, row) => all with { Raw = all.Raw.With(row.Channel, new Reading(0, ReadingQuality.Late, 30_000)) }),
        ["leak"] = f => Judged(f, "leak", Verdict.Pending),
        ["level"] = f => Judged(f, "level", Verdict.Pending),
        ["pumpSilent"] = f => Judged(f, "pumpSilent", Verdict.Pending),
        ["noFlow"] = f => Judged(f, "noFlow", Verdict.Pending),
        ["pumpRunsOff"] = f => With(f, Channel.PumpPower, 20),
        ["flowWhileOff"] = f => Judged(f, "flowWhileOff", Verdict.Acting),
        ["flowWeak"] = f => Running(With(f, Channel.Flow, 0.7), 1),
        ["scald"] = f => Judged(f, "supplyHot", Verdict.Acting),
        ["lineFreezes"] = f => With(f, Channel.Return, 0.25),
        ["heapFire"] = f => Judged(f, "heapFire", Verdict.Acting),
        ["heapBlind"] = f => Judged(f, "heapBlind", Verdict.Acting),
        ["heapCool"] = f => Believed(f, e => e with { ActiveZoneCelsius = 43.5 }),
        ["tonightPoor"] = f => Chance(f, 0.5),
        ["houseBlind"] = f => Judged(f, "houseBlind", Verdict.Pending),
        ["houseFrost"] = f => With(f, Channel.House, 0.5),
        ["houseCold"] = f => With(f, Channel.House, 4),
        ["houseHot"] = f => Judged(f, "houseHot", Verdict.Acting),
        ["carbonDioxide"] = f => Judged(f, "carbonDioxide", Verdict.Acting),
        ["batteryEmpty"] = f => Judged(f, "batteryEmpty", Verdict.Acting),
        ["batteryLow"] = f => Judged(f, "batteryLow", Verdict.Acting),
        ["blowerSilent"] = f => f with { Decision = f.Decision! with { Outputs = new Outputs(0, 0, 0.8, false) } },
        ["blowerRunsOff"] = f => With(f, Channel.BlowerPower, 15),
        ["estimateDoubt"] = f => Believed(f, e => e with { Trusted = false }),
        ["waterDoubt"] = f => Running(With(With(f, Channel.Flow, 2.5), Channel.Return, 25), 1),
    };

    public static TheoryData<string> Keys => new(Table.Rows.Select(row => row.Key));

    [Theory]
    [MemberData(nameof(Keys))]
    public void Row_WhoseSignHolds_RisesAtItsDelayAndNotBefore(string key)
    {
        Bench bench = new(Table);
        AlarmRow row = Table.Rows[Table.IndexOf(key)];
        int delay = (int)Math.Ceiling(row.DelaySeconds / TickSeconds);
        bench.Live(3, SoundOf(key));
        bench.Live(delay, IllOf(key));
        Assert.DoesNotContain(bench.Events, one => one.Key == key);
        bench.Live(1, IllOf(key));
        Assert.Equal(AlarmEventKind.Raised, Assert.Single(bench.Events, one => one.Key == key).Kind);
        Assert.True(bench[key].FirstUp);
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void Row_WhoseSignIsGone_EndsAfterItsClearingAndNotBefore(string key)
    {
        Bench bench = new(Table);
        AlarmRow row = Table.Rows[Table.IndexOf(key)];
        bench.Live((int)Math.Ceiling(row.DelaySeconds / TickSeconds) + 2, IllOf(key));
        int clear = (int)Math.Ceiling(row.ClearSeconds / TickSeconds);
        Func<AlarmFacts, AlarmFacts> sound = SoundOf(key);
        bench.Live(Math.Max(0, clear - 1), sound);
        Assert.Equal(clear > 0 ? AlarmPhase.Standing : bench[key].Phase, bench[key].Phase);
        bench.Live(2, sound);
        Assert.Equal(AlarmPhase.Off, bench[key].Phase);
    }

    public static TheoryData<string> Trips => new(InterlockTable.All.Where(row => row.Action == InterlockAction.Trip).Select(row => row.Id));

    [Theory]
    [MemberData(nameof(Trips))]
    public void Row_OfATrip_IsUpAtTheTickOfTheTripAndFirst(string key)
    {
        Bench bench = new(Table);
        bench.Live(3);
        bench.Live(1, f => Judged(f, key, Verdict.Pending));
        bench.Live(1, f => Judged(f, key, Verdict.Latched));

        Assert.Equal(key, Assert.Single(bench.Events).Key);
        Assert.True(bench[key].FirstUp);
    }

    [Fact]
    public void Row_OfATripThatFollowsFromAnother_IsHeldBackByIt()
    {
        Bench bench = new(Table);
        bench.Live(2, f => Judged(Judged(f, "noFlow", Verdict.Latched), "pumpSilent", Verdict.Latched));

        Assert.Equal("pumpSilent", Assert.Single(bench.Events).Key);
        Assert.Equal("pumpSilent", bench["noFlow"].HeldBackBy);
    }

    [Fact]
    public void Table_EverySignOfTheLegend_IsOfARow() =>
        Assert.Empty(Ill.Keys.Except(Table.Rows.Select(row => row.Key)));

    [Fact]
    public void Table_SoundTicks_RaiseNothing()
    {
        Bench bench = new(Table);
        bench.Live(3 * 8640);
        Assert.Empty(bench.Events);
    }

    [Theory]
    [InlineData("houseCold", Channel.House, 4.25, 5.75, 6.25)]
    [InlineData("houseFrost", Channel.House, 0.75, 2.75, 3.25)]
    [InlineData("lineFreezes", Channel.Supply, 0.25, 1.25, 1.75)]
    public void Row_OfAMeasure_EndsOnlyPastItsDeadBand(string key, Channel channel, double ill, double within, double past)
    {
        Bench bench = new(Table);
        AlarmRow row = Table.Rows[Table.IndexOf(key)];
        bench.Live((int)(row.DelaySeconds / 10) + 2, f => With(f, channel, ill));
        Assert.Equal(AlarmPhase.Standing, bench[key].Phase);
        bench.Live((int)(row.ClearSeconds / 10) + 100, f => With(f, channel, within));
        Assert.Equal(AlarmPhase.Standing, bench[key].Phase);
        bench.Live((int)(row.ClearSeconds / 10) + 2, f => With(f, channel, past));
        Assert.Equal(AlarmPhase.Off, bench[key].Phase);
    }

    [Theory]
    [InlineData(63_000_000L, 127_000_000L, 129_000_000L)]
    [InlineData(0L, 65_000_000L, 8_000_000_000L)]
    public void DiskFull_EndsOnceThereIsRoomForLong(long ill, long within, long past)
    {
        Bench bench = new(Table);
        bench.Live(10, f => Free(f, ill));
        Assert.Equal(AlarmPhase.Standing, bench["diskFull"].Phase);
        bench.Live(100, f => Free(f, within));
        Assert.Equal(AlarmPhase.Standing, bench["diskFull"].Phase);
        bench.Live(40, f => Free(f, past));
        Assert.Equal(AlarmPhase.Off, bench["diskFull"].Phase);
    }

    [Fact]
    public void DiskFull_WhatIsFreeIsNotKnown_NeitherRisesNorEnds()
    {
        Bench bench = new(Table);
        bench.Live(1000, f => Free(f, null));
        Assert.Equal(AlarmPhase.Off, bench["diskFull"].Phase);
        bench.Live(10, f => Free(f, 0));
        bench.Live(1000, f => Free(f, null));
        Assert.Equal(AlarmPhase.Standing, bench["diskFull"].Phase);
    }

    private static AlarmFacts Free(AlarmFacts facts, long? bytes) => facts with { Record = facts.Record with { FreeBytes = bytes } };

    [Fact]
    public void Table_EveryRow_SaysWhatAndWhyAndWhatToDo() => Assert.All(Table.Rows, row =>
    {
        Assert.All((string[])[row.Cause, row.Consequence, row.Action], text => Assert.EndsWith(".", text, StringComparison.Ordinal));
        Assert.False(row.Name.EndsWith('.'));
        Assert.Equal(row.DeadBand > 0, row.Unit.Length > 0);
        Assert.True(row.ClearSeconds >= row.BridgeSeconds, $"{row.Key} would end between two signs");
        Assert.True(row.BridgeSeconds == 0 || row.BridgeSeconds < row.DelaySeconds, $"{row.Key}: a single sign would raise it");
        Assert.InRange(row.Key.Length, 1, 60);
    });

    [Fact]
    public void Table_EveryRowThatFollowsFromAnother_StandsBehindItAndRisesNoSooner() => Assert.All(Table.Rows, row =>
        Assert.All(row.FollowsFrom.Select(Table.IndexOf).Where(cause => cause >= 0), cause =>
        {
            Assert.True(cause < Table.IndexOf(row.Key), $"{row.Key} stands before {Table.Rows[cause].Key}");
            Assert.True(
                Table.Rows[cause].DelaySeconds <= row.DelaySeconds || SlowerCauses.Contains((Table.Rows[cause].Key, row.Key)),
                $"{row.Key} rises sooner than {Table.Rows[cause].Key}");
        }));

    // A queue drops ticks long after the store stopped; a floor that lies far from a house's air is held back where that is told.
    private static readonly (string Cause, string Effect)[] SlowerCauses = [("recordStops", "recordGaps"), ("houseHot", "probe.floor")];

    [Fact]
    public void Table_SpareThermometers_AreCalledWhatTheGrowerCallsThem()
    {
        AlarmTable named = AlarmTable.Of(new AlarmPlace(PileSettings.AlderBank.Control, InterlockTable.All, [Channel.SpareOne, Channel.SpareTwo])
        {
            NameOf = channel => channel == Channel.SpareOne ? "Mushroom cellar" : ProbeWords.Label(channel),
        });

        Assert.StartsWith("Mushroom cellar: ", named.Rows[named.IndexOf("probe.spareOne")].Name, StringComparison.Ordinal);
        Assert.StartsWith("Spare thermometer 2: ", named.Rows[named.IndexOf("probe.spareTwo")].Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Table_TheInterlocks_EachHaveAnAlarmOrAReasonForNone()
    {
        // The frost guard acts by itself and asks nothing of anybody: what is told is a line it cannot keep from freezing.
        // A store that fails, a clock, a late tick are told by rows of other names.
        string[] named = ["lineFrost", "storeFailing", "clockJump", "tickLate", "supplyHot"];
        Assert.All(
            InterlockTable.All,
            interlock => Assert.True(Table.IndexOf(interlock.Id) >= 0 || named.Contains(interlock.Id), interlock.Id));
    }

    [Fact]
    public void ProtectsPeople_LeakScaldFireAndFoulAir_AreTheOnesShelvedForShort() =>
        Assert.Equal(["leak", "scald", "heapFire", "carbonDioxide"], Table.Rows.Where(row => row.ProtectsPeople).Select(row => row.Key));

    [Theory]
    [InlineData(10, false)]
    [InlineData(11.9, false)]
    [InlineData(12.1, true)]
    [InlineData(16, true)]
    [InlineData(3, true)]
    public void TonightPoor_ByTheHour_SpeaksOfANightThatIsNear(double hour, bool raised)
    {
        Bench bench = new(Table) { WallOffsetMilliseconds = (long)((hour - 12) * 3_600_000) };
        bench.Live(2, f => Chance(f, 0.5, inHours: 2));
        Assert.Equal(raised, bench.Events.Count > 0);
    }

    [Fact]
    public void TonightPoor_AtNightWithNoTimeLeftToHeat_WakesNobody()
    {
        Bench bench = new(Table) { WallOffsetMilliseconds = (long)((3 - 12) * 3_600_000) };
        bench.Live(2, f => Chance(f, 0.5, inHours: 0));
        Assert.Empty(bench.Events);
    }

    [Fact]
    public void TonightPoor_AfterFourGoodDaysInASpell_StandsStillAndIsGoneAfterFive()
    {
        Bench bench = new(Table);
        bench.Live(2, f => Chance(f, 0.5));
        bench.Live(4 * 24 * 360, f => Chance(f, 0.95));
        Assert.Equal(AlarmPhase.Standing, bench["tonightPoor"].Phase);

        bench.Live(25 * 360, f => Chance(f, 0.95));
        Assert.Equal(AlarmPhase.Off, bench["tonightPoor"].Phase);
    }

    [Theory]
    [InlineData(20, false)]
    [InlineData(30, true)]
    public void HouseCold_InASpellThatWasTold_IsHeldBackForADayOnly(int hoursLater, bool raised)
    {
        Bench bench = new(Table);
        bench.Live(2, f => Chance(f, 0.5));
        bench.Live((hoursLater * 360) - 2, f => Chance(f, 0.95));
        bench.Live(360, f => With(Chance(f, 0.95), Channel.House, 4));

        Assert.Equal(AlarmPhase.Standing, bench["tonightPoor"].Phase);
        Assert.Equal(raised, bench["houseCold"].Phase == AlarmPhase.Standing);
    }

    [Fact]
    public void TonightPoor_SeenAndStillPoorTheNextEvening_AsksAgainAtFour()
    {
        Bench bench = new(Table);
        bench.Live(1, f => Chance(f, 0.5));
        bench.State = AlarmHands.See(Table, bench.State, Table.IndexOf("tonightPoor"), "Robin", 0).State;
        bench.Live((27 * 360) + 350, f => Chance(f, 0.5));
        Assert.Single(bench.Events);
        bench.Live(20, f => Chance(f, 0.5));
        Assert.Equal([AlarmEventKind.Raised, AlarmEventKind.Reminded], bench.Events.Select(one => one.Kind));
        Assert.True(bench["tonightPoor"].Unseen);
    }

    private static Func<AlarmFacts, AlarmFacts> IllOf(string key)
    {
        if (Ill.TryGetValue(key, out Func<AlarmFacts, AlarmFacts>? ill))
        {
            return ill;
        }

        Assert.StartsWith("probe.", key, StringComparison.Ordinal);
        Assert.True(ChannelTable.TryFind(key["probe.".Length..], out ChannelInfo info));
        return f => With(f, info.Channel, new Reading(0, ReadingQuality.NoAnswer, 0));
    }

    // Some are judged only while pump or blower runs, and ran before the reading.
    private static Func<AlarmFacts, AlarmFacts> SoundOf(string key) => key switch
    {
        "flowWeak" or "waterDoubt" => f => Running(With(f, Channel.Flow, 2.8), 1),
        "blowerSilent" => f => With(f with { Decision = f.Decision! with { Outputs = new Outputs(0, 0, 0.8, false) } }, Channel.BlowerPower, 10),
        "tonightPoor" => f => Chance(f, 0.95),
        "controlFails" or "rigSilent" or "recordGaps" => f => f with { Tally = new(0, 0, 0, 0) },
        _ => f => f,
    };

    private static AlarmFacts Running(AlarmFacts f, double duty) => f with { Decision = f.Decision! with { Outputs = new Outputs(duty, 1, 0, false) } };

    private static AlarmFacts Believed(AlarmFacts f, Func<HeapEstimate, HeapEstimate> change) =>
        f with { Decision = f.Decision! with { Estimate = change(f.Decision.Estimate) } };

    private static AlarmFacts Chance(AlarmFacts f, double chance, double inHours = 2) => f with
    {
        Decision = f.Decision! with
        {
            Tonight = new Tonight(1, 3, 5, 0, chance, 500, f.At.UtcMilliseconds + (long)(inHours * 3_600_000), 0, 0, 1, 1, 1, false),
        },
    };
}
