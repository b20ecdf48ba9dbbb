using PileController.Control;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;
using PileController.Settings;

namespace PileController.Tests.Settings;

public class PumpDutyTests
{
    [Fact]
    public void Moving_OfAlderBank_IsWhatTheControllerHasByDefault() =>
        Assert.Equal(new ControlSettings().MovingDuty, PumpDuty.Moving(PileSettings.AlderBank));

    [Fact]
    public void LoopCurve_OfAlderBank_IsWhatTheControllerHasByDefault() =>
        Assert.Equal(new ControlSettings().Loop, LoopCurving.Of(PileSettings.AlderBank));

    [Theory]
    [InlineData("1.5 m")]
    [InlineData("3 m")]
    [InlineData("6 m")]
    public void Moving_OfALoopThatLiftsItsWater_IsWhereFlowIsNoLongerTakenForNone(string lift)
    {
        PileSettings settings = SettingsFile.Parse($$"""{ "loop": { "staticLift": "{{lift}}" } }""").Settings;
        double duty = settings.Control.MovingDuty;
        LoopHydraulics loop = new(LoopCircuit.Pump(settings.Loop), LoopCircuit.Runs(settings.Loop, settings.Heap.Coil));

        Assert.InRange(duty, ControlSettings.UsualLeastDuty, 1);
        Assert.Equal(1.5 * settings.Control.Limits.NoFlowLitresPerMinute, loop.FlowLitresPerMinute(duty, 5), 0.01);
    }

    [Fact]
    public void Moving_OfALiftBeyondThePump_IsFullDuty() =>
        Assert.Equal(1, SettingsFile.Parse("""{ "loop": { "staticLift": "7.9 m" } }""").Settings.Control.MovingDuty, 1e-6);
}
