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
              "heap": { "radius": "2.1 m", "coil": { "radius": "1.1 m" } },
              "rig": { "probes": [ { "channel": "heapCore", "radius": "0.3 m", "height": "1 m" }, { "channel": "heapEdge", "radius": "1.7 m", "height": "1 m" } ] },
            }
            """).Settings.Control.Places;

        Assert.Equal(new HeapProbePlaces { CoreM = 0.3, MiddleM = 0.7, TurnsM = 1.1, EdgeM = 1.7, RadiusM = 2.1 }, places);
    }
}
