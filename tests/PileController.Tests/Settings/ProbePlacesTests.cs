using PileController.Control;
using PileController.Settings;

namespace PileController.Tests.Settings;

public class ProbePlacesTests
{
    [Fact]
    public void Places_OfAlderBank_AreThoseTheControllerHasByDefault() =>
        Assert.Equal(new ControlSettings().Places, ProbePlaces.Of(PileSettings.AlderBank));

    [Fact]
    public void Places_OfAFile_AreWhereItPutsProbesAndHeap()
    {
        HeapProbePlaces places = SettingsFile.Parse("""
            {
              "heap": { "radius": "2 m", "coil": { "radius": "1 m" } },
              "rig": { "probes": [ { "channel": "heapCore", "radius": "0.25 m", "height": "1 m" }, { "channel": "heapEdge", "radius": "1.75 m", "height": "1 m" } ] },
            }
            """).Settings.Control.Places;

        Assert.Equal(new HeapProbePlaces { CoreM = 0.25, MiddleM = 0.625, TurnsM = 1, EdgeM = 1.75, RadiusM = 2 }, places);
    }
}
