using CsCheck;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Settings;
using PileController.Units;

namespace PileController.Tests.Settings;

public class RoundTripTests
{
    [Fact]
    public void Settings_WrittenAndReadAgain_AreTheSameToTheBit() =>
        Gen.Select(Gen.Double[0.5, 0.99], Gen.Double[1e-11, 1e-6], Gen.Double[1e5, 1e9], Gen.Double[0.001, 1], Gen.Int[0, 86_399])
            .Sample((share, permeability, store, slew, clock) =>
            {
                PileSettings settings = PileSettings.AlderBank with
                {
                    Units = UnitSystem.Us,
                    Heap = PileSettings.AlderBank.Heap with
                    {
                        PermeabilityM2 = permeability,
                        Coil = PileSettings.AlderBank.Heap.Coil with { OuterDiameterM = 0.02 + (share / 100) },
                    },
                    Control = PileSettings.AlderBank.Control with
                    {
                        Confidence = share,
                        HeapHeatCapacityJPerK = store,
                        DutySlewPerSecond = slew,
                        BlowerFullFlowM3PerS = share,
                        NightBeginsHour = clock / 3600.0,
                    },
                };

                PileSettings again = SettingsFile.Parse(settings.CanonicalJson()).Settings;

                Assert.Equal(settings.Heap, again.Heap);
                Assert.Equal(settings.Control, again.Control);
                Assert.Equal(settings.Fingerprint(), again.Fingerprint());
            });

    [Fact]
    public void Settings_WithListsOfTheirOwn_ReadBackTheSame()
    {
        PileSettings settings = PileSettings.AlderBank with
        {
            Rig = new RigSettings
            {
                Probes = [new(Channel.HeapTurns, 0.9, 1.1, "28-0123456789ab", -0.25), new(Channel.House, Address: "28-ffffffffffff"), new(Channel.Flow)],
                Faults = [new(FaultKind.Drift, Channel.House, 0.5), new(FaultKind.BlockedLine, Size: 0.4), new(FaultKind.DeadPump)],
                Hardware = new()
                {
                    PumpPin = 17,
                    BlowerPin = 27,
                    ActiveLow = true,
                    PwmChip = "clock.pwm",
                    Pump = new() { Drive = LoadDrive.Pwm, Channel = 3, FrequencyHz = 2500, Least = 0.2, Inverted = true },
                    I2cPwm = new() { Bus = 3, Address = 0x5f, FrequencyHz = 200 },
                    Valve = new() { OpenLine = 5, ShutLine = 6, Safe = ValveSafe.Open, DeadTimeSeconds = 2 },
                },
            },
        };

        SettingsResult plain = SettingsFile.Parse(settings.CanonicalJson());
        SettingsResult explained = SettingsFile.Parse(SettingsFile.Explain(settings));

        Assert.All(explained.Faults.Where(f => f.Given == "missing"), f => Assert.Fail(f.Sentence));
        Assert.Equal(settings.Rig.Probes, plain.Settings.Rig.Probes);
        Assert.Equal(settings.Rig.Faults, plain.Settings.Rig.Faults);
        Assert.Equal(settings.Rig.Hardware, plain.Settings.Rig.Hardware);
        Assert.Equal(settings.CanonicalJson(), explained.Settings.CanonicalJson());
    }

    [Fact]
    public void Settings_GivenInUsUnits_AreReadInTheRecordsUnits()
    {
        SettingsResult result = SettingsFile.Parse("""
            {
              "units": "us",
              "heap": { "radius": "6 ft", "height": "80 in", "wetMass": "10 short ton", "buildTemperature": "50 °F", "drum": "55 gal" },
              "control": { "floor": "113 °F", "pump": { "mostFlow": "1 gal/min" } },
              "air": { "fullFlow": "40 cfm" }
            }
            """);

        Assert.Empty(result.Faults);
        Assert.Equal(1.8288, result.Settings.Heap.RadiusM);
        Assert.Equal(2.032, result.Settings.Heap.HeightM);
        Assert.Equal(9071.8474, result.Settings.Heap.WetMassKg);
        Assert.Equal(10, result.Settings.Heap.BuildTemperatureC);
        Assert.Equal(208.19764812, result.Settings.Heap.DrumLitres);
        Assert.Equal(45, result.Settings.Control.HeapFloorC);
        Assert.Equal(3.785411784, result.Settings.Control.MostFlowLitresPerMinute);
        Assert.Equal(40 * 0.028316846592 / 60, result.Settings.Heap.Duct.FullFlowM3PerS, 15);
    }
}
