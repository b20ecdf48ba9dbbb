using System.Text.Json;
using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class SimulatedRigStateTests
{
    private static readonly Gen<Outputs> AnyOutputs = Gen.Select(
        Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Bool, (p, v, b, on) => new Outputs(p, v, b, on));

    private static readonly Gen<(Outputs Told, double House, double Seconds)[]> AnyHistory =
        Gen.Select(AnyOutputs, Gen.Double[-20, 40], Gen.Double[0.5, 60]).Array[1, 40];

    [Fact]
    public void Restore_AnywhereInAnyHistory_GoesOnWithTheSameBits() =>
        Gen.Select(AnyHistory, AnyHistory, Gen.Long).Sample((before, after, seed) =>
        {
            RigSettings settings = new() { Seed = seed };
            FakePlant plant = new() { PumpMakesFlow = true };
            SimulatedRig first = new(plant, settings, 30);
            Run(first, plant, before);

            string json = JsonSerializer.Serialize(first.Export());

            // The plant keeps its own state, so the second rig gets the same one; its probes start elsewhere.
            FakePlant copy = new() { PumpMakesFlow = true };
            SimulatedRig second = new(copy, settings, 30);
            CopyTruths(plant, copy);
            second.Restore(JsonSerializer.Deserialize<SimulatedRigState>(json)!);

            Assert.Equal(json, JsonSerializer.Serialize(second.Export()));
            Assert.Equal(Run(first, plant, after), Run(second, copy, after));
            Assert.Equal(JsonSerializer.Serialize(first.Export()), JsonSerializer.Serialize(second.Export()));
        });

    [Fact]
    public void Restore_ValveBeyondItsStops_IsRefused()
    {
        SimulatedRig rig = new(new FakePlant(), new RigSettings(), 30);

        Assert.Throws<ArgumentException>(() => rig.Restore(rig.Export() with { ValvePosition = 1.5 }));
    }

    private static void CopyTruths(FakePlant from, FakePlant to)
    {
        foreach (ChannelInfo info in ChannelTable.All)
        {
            to[info.Channel] = from[info.Channel];
        }
    }

    private static List<Reading> Run(
        SimulatedRig rig, FakePlant plant, (Outputs Told, double House, double Seconds)[] history)
    {
        List<Reading> said = [];
        foreach ((Outputs told, double house, double seconds) in history)
        {
            said.AddRange(rig.Read(Ticks.At(0)).AsSpan().ToArray());
            rig.Apply(told);
            plant[Channel.House] = house;
            rig.Advance(seconds);
        }

        return said;
    }
}
