using PileController.Physics.Heaps;
using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

/// <summary>Energy and mass add up over a winter, and the sums would show it if one flux were forgotten.</summary>
public class ClosureTests
{
    private const double Closed = 1e-9;
    private const double Open = 1e-6;

    public static TheoryData<string> Variants => PlantVariant.All;

    public static TheoryData<string, string> HeapFluxes
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach (string flux in new[] { "GeneratedJ", "AirInJ", "AirOutJ", "SideJ", "TopJ", "GroundJ", "CoilJ", "DrumJ", "DuctJ" })
            {
                rows.Add(PlantVariant.Shipped, flux);
            }

            rows.Add(PlantVariant.ThroughHeap, "ThroughAirJ");
            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void HeapEnergy_OverASeasonOfRandomHands_Closes(string variant)
    {
        Season season = Season.Of(variant);
        Assert.InRange(Balance.Heap(season.HeapBeforeJ, season.Plant.Heap).Gap(), 0, Closed);
    }

    [Theory]
    [MemberData(nameof(HeapFluxes))]
    public void HeapEnergy_WithOneFluxLeftOut_DoesNotClose(string variant, string flux)
    {
        Season season = Season.Of(variant);
        Balance balance = Balance.Heap(season.HeapBeforeJ, season.Plant.Heap);
        Assert.Contains(flux, balance.Fluxes.Keys);
        Assert.InRange(balance.Gap(without: flux), Open, double.MaxValue);
    }

    [Fact]
    public void HeapFluxes_AllOfThem_AreLeftOutOnce()
    {
        Season season = Season.Of(PlantVariant.Shipped);
        Assert.Equal(
            Balance.Heap(season.HeapBeforeJ, season.Plant.Heap).Fluxes.Keys.Order(),
            HeapFluxes.Select(row => (string)row[1]).Order());
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void LoopEnergy_OverASeasonOfRandomHands_Closes(string variant)
    {
        Season season = Season.Of(variant);
        Assert.InRange(Balance.Loop(season.LoopBeforeJ, season.Plant).Gap(), 0, Closed);
    }

    [Theory]
    [InlineData("CoilJ")]
    [InlineData("DrumJ")]
    [InlineData("PipeJ")]
    [InlineData("TankJ")]
    [InlineData("LineJ")]
    public void LoopEnergy_WithOneFluxLeftOut_DoesNotClose(string flux)
    {
        Season season = Season.Of(PlantVariant.Shipped);
        Balance balance = Balance.Loop(season.LoopBeforeJ, season.Plant);
        Assert.Contains(flux, balance.Fluxes.Keys);
        Assert.InRange(balance.Gap(without: flux), Open, double.MaxValue);
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void HouseEnergy_OverASeasonOfRandomHands_Closes(string variant)
    {
        Season season = Season.Of(variant);
        Assert.InRange(Balance.House(season.HouseBeforeJ, season.Plant).Gap(), 0, Closed);
    }

    [Theory]
    [InlineData("SunJ")]
    [InlineData("HeatJ")]
    [InlineData("LossJ")]
    [InlineData("VentJ")]
    [InlineData("GroundJ")]
    public void HouseEnergy_WithOneFluxLeftOut_DoesNotClose(string flux)
    {
        Season season = Season.Of(PlantVariant.Shipped);
        Balance balance = Balance.House(season.HouseBeforeJ, season.Plant);
        Assert.Contains(flux, balance.Fluxes.Keys);
        Assert.InRange(balance.Gap(without: flux), Open, double.MaxValue);
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void HeatTakenFromTheHeap_OverASeason_IsHeatTheLoopReceived(string variant)
    {
        Plant plant = Season.Of(variant).Plant;
        Assert.Equal(plant.Heap.Ledger.CoilJ, plant.LoopLedger.CoilJ, 1e-9 * Math.Abs(plant.LoopLedger.CoilJ));
        Assert.Equal(plant.Heap.Ledger.DrumJ, plant.LoopLedger.DrumJ, 1e-9 * Math.Abs(plant.LoopLedger.DrumJ));
    }

    [Theory]
    [MemberData(nameof(Variants))]
    public void HeapMass_OverASeason_ClosesForWaterSolidsAndGas(string variant)
    {
        Season season = Season.Of(variant);
        Heap heap = season.Plant.Heap;
        HeapLedger sums = heap.Ledger;
        Assert.InRange(Balance.Water(season.WaterBeforeKg, heap).Gap(), 0, Closed);
        Assert.Equal(season.DryBeforeKg - heap.DryKg, sums.BurntKg, Closed * season.DryBeforeKg);

        // Solids and water lose what the gas gains: C6H10O5 + 6 O2 -> 6 CO2 + 5 H2O by whole molar masses 162, 32, 44, 18.
        double carbonDioxideKg = sums.BurntKg * (6 * 44.0) / 162;
        double gasGainedKg = carbonDioxideKg - sums.OxygenTakenKg + sums.VapourOutKg - sums.VapourInKg;
        double heapLostKg = season.DryBeforeKg + season.WaterBeforeKg - heap.DryKg - heap.WaterKg;
        Assert.Equal(heapLostKg, gasGainedKg, Closed * (season.DryBeforeKg + season.WaterBeforeKg));
    }

    [Theory]
    [InlineData("WaterMadeKg")]
    [InlineData("VapourInKg")]
    [InlineData("VapourOutKg")]
    public void HeapWater_WithOneFluxLeftOut_DoesNotClose(string flux)
    {
        Season season = Season.Of(PlantVariant.Shipped);
        Balance balance = Balance.Water(season.WaterBeforeKg, season.Plant.Heap);
        Assert.Contains(flux, balance.Fluxes.Keys);
        Assert.InRange(balance.Gap(without: flux), Open, double.MaxValue);
    }
}
