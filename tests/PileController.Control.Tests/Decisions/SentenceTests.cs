using System.Text;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Decisions;

/// <summary>Every main case beside the sentence it gives, compared with the approved file.</summary>
public sealed class SentenceTests
{
    private static readonly Decision Drawing = new()
    {
        Sequence = 1,
        At = new Instant(0, 0, 0),
        Readings = Sound.Readings.With(Channel.House, 6.125),
        Estimate = new HeapEstimate(60, 54.3, 48, 0.6, 900, 1.5e8, -0.2, true, true),
        Mode = Mode.Drawing,
        ModeBefore = Mode.Drawing,
        ModeSinceMonotonicMilliseconds = 0,
        Kinds = DecisionKinds.Steady,
        WantWatts = 1900,
        MeansWatts = 1240,
        GrantWatts = 1240,
        WaterGrantWatts = 1240,
        AirGrantWatts = 0,
        Curb = Curb.Means,
        HeapFloorCelsius = 45,
        HouseSetPointCelsius = 10,
        Draw = new MeteredDraw(1238, 60, 0, 2.2, false),
        Totals = default,
        Verdicts = new Verdict[InterlockTable.All.Count],
        FirstActing = -1,
        Hands = [],
        Outputs = new Outputs(0.5, 1, 0, false),
        Note = null,
    };

    private static readonly Decision Standing = Drawing with
    {
        Mode = Mode.Standby,
        Outputs = Outputs.Safe,
        Draw = default,
        GrantWatts = 0,
        WaterGrantWatts = 0,
    };

    private static readonly HandHold AdasPump = new(Actuator.Pump, 0.6, 600_000, "Ada");

    private static readonly (string Name, Decision Decision)[] Cases =
    [
        ("drawing, means", Drawing),
        ("drawing, all it wants", Drawing with { Curb = Curb.None, WantWatts = 1240 }),
        ("drawing, saving", Drawing with { Curb = Curb.Saving, GrantWatts = 700 }),
        ("drawing, reach", Drawing with { Curb = Curb.Reach }),
        ("drawing, wants no more", Drawing with { Curb = Curb.NoWant, WantWatts = 0, GrantWatts = 0 }),
        ("drawing, least flow over the grant", Drawing with { Draw = Drawing.Draw with { WaterWatts = 3100 } }),
        ("drawing, dead time", Drawing with { Draw = Drawing.Draw with { WaterWatts = -40 } }),
        ("drawing, water and air", Drawing with { Outputs = new Outputs(0.5, 1, 0.4, false), Draw = Drawing.Draw with { AirWatts = 310 } }),
        ("drawing, air alone, battery spared", Drawing with
        {
            Outputs = new Outputs(0, 0, 0.4, false), Curb = Curb.Power, Draw = new MeteredDraw(0, 0, 310, 0, false),
        }),
        ("drawing, inferred", Drawing with
        {
            Draw = Drawing.Draw with { Inferred = true }, Readings = Drawing.Readings.Doubted(Channel.Supply, ReadingQuality.Stuck),
        }),
        ("drawing, probes", Drawing with { Curb = Curb.Probes, Estimate = Drawing.Estimate with { Trusted = false } }),
        ("drawing, least rest", Drawing with { Curb = Curb.Rest, Outputs = Outputs.Safe, Draw = default }),
        ("drawing, interlock", Acting(Drawing with { Curb = Curb.Interlock, Outputs = Outputs.Safe, Draw = default }, "supplyHot")),
        ("turns probe jumps", Drawing with { Readings = Drawing.Readings.Doubted(Channel.HeapTurns, ReadingQuality.TooFast) }),
        ("two heap probes gone", Drawing with
        {
            Readings = Drawing.Readings.Doubted(Channel.HeapTurns, ReadingQuality.TooFast)
                .Doubted(Channel.HeapCore, ReadingQuality.NoAnswer),
        }),
        ("no heap probe left", Drawing with
        {
            Readings = Drawing.Readings.Doubted(Channel.HeapCore, ReadingQuality.Shorted)
                .Doubted(Channel.HeapMiddle, ReadingQuality.Shorted).Doubted(Channel.HeapTurns, ReadingQuality.Shorted)
                .Doubted(Channel.HeapEdge, ReadingQuality.Shorted),
            Estimate = Drawing.Estimate with { Trusted = false },
        }),
        ("house probe gone", Acting(
            Drawing with { Readings = Drawing.Readings.Doubted(Channel.House, ReadingQuality.BadChecksum) }, "houseBlind")),
        ("priming", Drawing with { Mode = Mode.Priming, Curb = Curb.Priming, Draw = new MeteredDraw(0, 0, 0, 1.24, false) }),
        ("standby, no want", Standing with { Curb = Curb.NoWant, WantWatts = 0 }),
        ("standby, not lit", Standing with { Curb = Curb.NotLit, Estimate = Standing.Estimate with { Lit = false, ActiveZoneCelsius = 31.4 } }),
        ("standby, cut-out at the turns", Standing with { Curb = Curb.Floor }),
        ("standby, means", Standing with { Curb = Curb.Means, MeansWatts = 0 }),
        ("standby, saving", Standing with { Curb = Curb.Saving }),
        ("standby, reach", Standing with { Curb = Curb.Reach }),
        ("standby, gathering", Standing with { Curb = Curb.Means, GrantWatts = 340, MeansWatts = 340 }),
        ("standby, gathering while saving", Standing with { Curb = Curb.Saving, GrantWatts = 340 }),
        ("standby, resting", Standing with { Curb = Curb.Rest, GrantWatts = 1240 }),
        ("standby, probes", Standing with { Curb = Curb.Probes, Estimate = Standing.Estimate with { Trusted = false } }),
        ("standby, battery empty", Acting(Standing with { Curb = Curb.Power }, "batteryLow", "batteryEmpty")),
        ("standby, house too warm", Acting(Standing with { Curb = Curb.Interlock }, "houseHot")),
        ("recovering", Standing with { Mode = Mode.Recovering, Curb = Curb.Floor, MeansWatts = 0 }),
        ("recovering, cools by itself", Standing with
        {
            Mode = Mode.Recovering, Curb = Curb.Floor, MeansWatts = 0, Estimate = Standing.Estimate with { GenerationWatts = -720 },
        }),
        ("recovering, bears a little", Standing with { Mode = Mode.Recovering, Curb = Curb.Floor, MeansWatts = 60 }),
        ("recovering, backup heat", Standing with
        {
            Mode = Mode.Recovering, Curb = Curb.Floor, MeansWatts = 0, Outputs = new Outputs(0, 0, 0, true),
        }),
        ("frost guard", Acting(
            Drawing with
            {
                Mode = Mode.FrostGuard, Curb = Curb.Interlock, Outputs = new Outputs(0.4, 1, 0, false),
                Readings = Drawing.Readings.With(Channel.Return, 1.8125),
            }, "lineFrost")),
        ("by hand", Drawing with { Mode = Mode.ByHand, Curb = Curb.ByHand, Hands = [AdasPump], Outputs = new Outputs(0.6, 1, 0, false) }),
        ("by hand, water too hot", Acting(
            Drawing with { Mode = Mode.ByHand, Curb = Curb.ByHand, Hands = [AdasPump], Outputs = Outputs.Safe, Draw = default }, "supplyHot")),
        ("backup heat by hand", Drawing with
        {
            Hands = [new HandHold(Actuator.Backup, 1, 600_000, "")], Outputs = Drawing.Outputs with { BackupOn = true },
        }),
        ("servicing", Standing with { Mode = Mode.Servicing, Curb = Curb.ByHand }),
        ("tripped, leak", Tripped("leak")),
        ("tripped, no flow, pump asked for by hand", Tripped("noFlow") with { Hands = [AdasPump] }),
        ("tripped twice", Tripped("level", "pumpSilent")),
        ("fire watch", Acting(Drawing, "heapFire")),
        ("foul air", Acting(Drawing, "carbonDioxide")),
        ("warnings", Acting(Drawing, "storeFailing", "clockJump")),
        ("refused", Tripped("leak") with { Note = "Not cleared: The leak switch is wet. The cause still stands." }),
    ];

    [Fact]
    public void Of_MainCases_AreTheApprovedSentences()
    {
        StringBuilder all = new();
        foreach ((string name, Decision decision) in Cases)
        {
            all.Append("# ").Append(name).Append('\n').Append(Sentence.Of(decision)).Append('\n');
            all.Append(Sentence.Of(decision, american: true)).Append("\n\n");
        }

        string approved = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Decisions", "Sentences.approved.txt"));
        Assert.Equal(approved.ReplaceLineEndings("\n").TrimEnd(), all.ToString().TrimEnd());
    }

    [Fact]
    public void Of_AnyModeAndCurb_IsASentenceOfItsOwn()
    {
        foreach (Mode mode in Enum.GetValues<Mode>())
        {
            foreach (Curb curb in Enum.GetValues<Curb>())
            {
                string text = Sentence.Of(Standing with { Mode = mode, Curb = curb });
                Assert.EndsWith(".", text, StringComparison.Ordinal);
                Assert.DoesNotContain("  ", text, StringComparison.Ordinal);
                Assert.True(char.IsUpper(text[0]), text);
            }
        }
    }

    [Fact]
    public void Of_EveryDoubtfulQuality_HasItsOwnWords()
    {
        ReadingQuality[] doubts = [.. Enum.GetValues<ReadingQuality>().Except(
            [ReadingQuality.Good, ReadingQuality.NotFitted, ReadingQuality.Late])];
        string[] said = [.. doubts.Select(q => Sentence.Of(Drawing with { Readings = Drawing.Readings.Doubted(Channel.HeapCore, q) }))];

        Assert.Equal(doubts.Length, said.Distinct().Count());
        Assert.All(said, text => Assert.Contains("The core probe ", text, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_MoreVerdictsThanRows_SaysWhatItKnows() =>
        Assert.Equal(Sentence.Of(Drawing), Sentence.Of(Drawing with { Verdicts = [.. Drawing.Verdicts, Verdict.Acting], FirstActing = 99 }));

    private static Decision Tripped(params string[] ids) =>
        With(Standing with { Mode = Mode.Tripped, Curb = Curb.Interlock }, Verdict.Latched, ids);

    private static Decision Acting(Decision decision, params string[] ids) => With(decision, Verdict.Acting, ids);

    private static Decision With(Decision decision, Verdict verdict, string[] ids)
    {
        Verdict[] verdicts = [.. decision.Verdicts];
        foreach (string id in ids)
        {
            verdicts[InterlockTable.IndexOf(id)] = verdict;
        }

        return decision with { Verdicts = verdicts, FirstActing = InterlockTable.IndexOf(ids[0]) };
    }
}
