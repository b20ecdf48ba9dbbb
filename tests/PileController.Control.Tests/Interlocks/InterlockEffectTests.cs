using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Interlocks;

/// <summary>What each row keeps from running once it acts, told here a second time: a row that only warned would harm.</summary>
public sealed class InterlockEffectTests
{
    private const string Trips = "trips";
    private const string Water = "water";
    private const string Air = "air";
    private const string WaterAndAir = "water air";
    private const string Everything = "water air backup";
    private const string Guards = "guard";
    private const string Warns = "";

    private static readonly ControlSettings Settings = new();

    public static TheoryData<string, double, string> Rows => new()
    {
        { "leak", 1, Trips }, { "level", 1, Trips }, { "noFlow", 1, Trips }, { "pumpSilent", 1, Trips },
        { "heapFire", 80.1, Air }, { "lineFrost", 2.4, Guards }, { "supplyHot", 75.1, Water }, { "houseHot", 32.1, Everything },
        { "batteryLow", 11.59, Air }, { "batteryEmpty", 11.19, WaterAndAir }, { "heapBlind", 1, WaterAndAir },
        { "houseBlind", 1, Warns }, { "flowWhileOff", 1, Warns }, { "storeFailing", 1, Warns }, { "clockJump", 5.1, Warns },
        { "tickLate", 10.1, Warns }, { "restarts", 5, Trips }, { "carbonDioxide", 5001, Air },
    };

    [Fact]
    public void Table_EveryRow_IsToldHere() =>
        Assert.Equal(InterlockTable.All.Select(row => row.Id), Rows.Select(row => row[0]));

    [Theory]
    [MemberData(nameof(Rows))]
    public void Judge_RowActs_HoldsWhatIsToldHere(string id, double wrong, string holds)
    {
        RowRun run = new(Settings, id);
        run.Say(wrong, 0);
        run.Say(wrong, 3_600_000);

        Assert.Equal(holds, Held(run.Effect));
    }

    private static string Held(in InterlockRule.Effect effect)
    {
        (bool Is, string Name)[] all =
        [
            (effect.Tripped, Trips), (effect.HoldWater, Water), (effect.HoldAir, Air), (effect.HoldBackup, "backup"),
            (effect.GuardFrost, Guards),
        ];
        return string.Join(' ', all.Where(one => one.Is).Select(one => one.Name));
    }
}
