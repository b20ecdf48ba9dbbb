using PileController.Physics.Exchangers;

namespace PileController.Physics.Tests.Exchangers;

public class InsulatedLineTests
{
    private static readonly InsulatedLine Line = new(0.012065, 0.015875, 0.41, 0.02, 0.035, 20);

    [Fact]
    public void TimeToFreezing_InHardFrost_IsCapacityTimesResistanceTimesTheLogarithm()
    {
        // By hand: bore 1.1433e-4 m² × 999.7 kg/m³ × 4202 J/(kg·K) + wall 8.361e-5 m² × 2.16e6 J/(m³·K) = 660.8 J/(m·K);
        // layers 0.1065 + 5.718 + film 0.2848 = 6.110 m·K/W; ln(20/10) = 0.6931.
        Assert.Equal(660.8 * 6.110 * 0.69315, Line.SecondsToFreezing(10, -10), 10.0);
    }

    [Fact]
    public void TimeToFreezing_WithoutFrost_IsForever() => Assert.Equal(double.PositiveInfinity, Line.SecondsToFreezing(10, 0));

    [Fact]
    public void TimeToFreezing_OfWaterAtFreezing_IsNone() => Assert.Equal(0, Line.SecondsToFreezing(0, -5));

    [Fact]
    public void TimeToFreezing_WithMoreInsulation_IsLonger() =>
        Assert.True((Line with { InsulationM = 0.03 }).SecondsToFreezing(10, -10) > Line.SecondsToFreezing(10, -10));

    [Fact]
    public void Loss_ThroughAllLayers_LeavesBySurfaceFilm()
    {
        double surfaceC = Line.SurfaceC(50, -5);
        Assert.Equal(Line.LossWPerM(50, -5), (surfaceC + 5) * 20 * Math.PI * (0.015875 + 0.04), 1e-9);
    }

    [Fact]
    public void Resistance_OfABuriedLine_HasTheGroundInPlaceOfTheFilm()
    {
        // Half a metre deep in damp soil: arcosh(2 · 0.5 / 0.055875) / (2π · 1.5) = 3.576/9.425 = 0.3794 m·K/W for a film of 0.2848.
        InsulatedLine buried = Line with { Buried = new Ground(0.5, 1.5) };
        double film = 1 / (20 * Math.PI * 0.055875);
        Assert.Equal(0.3794, buried.ResistanceMKPerW - (Line.ResistanceMKPerW - film), 2e-4);
        Assert.Equal(buried.LossWPerM(50, -5) * 0.3794, buried.SurfaceC(50, -5) + 5, 0.02);
    }

    [Fact]
    public void Ground_ShallowerThanTheLineItself_IsRefusedByName() => Assert.Equal(
        "depthM", Assert.Throws<ArgumentOutOfRangeException>(() => (Line with { Buried = new Ground(0.02, 1.5) }).ResistanceMKPerW).ParamName);
}
