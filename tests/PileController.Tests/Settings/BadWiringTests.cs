using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Tests.Settings;

/// <summary>What check says of probes that cannot be wired as they are told.</summary>
public class BadWiringTests
{
    private const string Pt = """ "from": "ads1115", "bus": 1, "device": "0x48", "sensor": "pt1000", "reference": "2.2 kohm" """;
    private const string Power = """ "from": "ina219", "bus": 1, "device": "0x40", "shunt": "0.1 ohm" """;

    /// <summary>Probes, where their one fault is, how it was given, and words of what is allowed.</summary>
    public static TheoryData<string, string, string, string> Faults => new()
    {
        // By themselves.
        { """{ "channel": "house", "from": "i2c" }""", "rig.probes[0].from", "\"i2c\"", "one of \"oneWire\", \"ads1115\", \"sht4x\", \"scd4x\", \"ina219\", \"pulses\", \"switch\"" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x78" }""", "rig.probes[0].device", "\"0x78\"", "\"0x08\" to \"0x77\"" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": 68 }""", "rig.probes[0].device", "68", "in hexadecimal and in quotes" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "44" }""", "rig.probes[0].device", "\"44\"", "in hexadecimal and in quotes" },
        { """{ "channel": "house", "from": "sht4x", "bus": 256, "device": "0x44" }""", "rig.probes[0].bus", "256", "a whole number, 0 to 255" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 4, "excitation": "3.3 V" }""", "rig.probes[0].input", "4", "a whole number, 0 to 3" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 0, "excitation": "5 V" }""", "rig.probes[0].excitation", "\"5 V\"", "1 V to 4 V" },
        { """{ "channel": "supply", "from": "ads1115", "bus": 1, "device": "0x48", "sensor": "pt1000", "reference": "2.2", "input": 0, "excitation": "3.3 V" }""", "rig.probes[0].reference", "\"2.2\"", "needs its unit" },
        { """{ "channel": "pumpPower", "from": "ina219", "bus": 1, "device": "0x40", "shunt": "100 ohm" }""", "rig.probes[0].shunt", "\"100 ohm\"", "0.0001 ohm to 10 ohm" },
        { """{ "channel": "flow", "from": "pulses", "line": 128 }""", "rig.probes[0].line", "128", "a whole number, 0 to 127" },
        { """{ "channel": "flow", "from": "pulses", "line": 5, "mostPulses": "2000 1/s" }""", "rig.probes[0].mostPulses", "\"2000 1/s\"", "1 1/s to 500 1/s" },
        { """{ "channel": "leak", "from": "switch", "line": 5, "wellWhen": "closed" }""", "rig.probes[0].wellWhen", "\"closed\"", "\"low\", \"high\"" },

        // The source and the channel.
        { """{ "channel": "house", "from": "pulses", "line": 5 }""", "rig.probes[0].from", "\"pulses\"", "\"oneWire\" or \"ads1115\" or \"sht4x\" for house" },
        { """{ "channel": "supply", "from": "sht4x", "bus": 1, "device": "0x44" }""", "rig.probes[0].from", "\"sht4x\"", "\"oneWire\" or \"ads1115\" for supply" },
        { $$"""{ "channel": "flow", {{Power}} }""", "rig.probes[0].from", "\"ina219\"", "\"pulses\" for flow" },
        { """{ "channel": "flow", "address": "28-000000000001" }""", "rig.probes[0].address", "\"28-000000000001\"", "\"pulses\" for flow" },
        { """{ "channel": "sun", "from": "ads1115" }""", "rig.probes[0].from", "\"ads1115\"", "no adapter reads this channel" },

        // What is missing, and what is there for nothing.
        { """{ "channel": "house", "from": "oneWire" }""", "rig.probes[0].address", "none", "1-Wire address" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1 }""", "rig.probes[0].device", "none", "\"0x08\" to \"0x77\"" },
        { """{ "channel": "house", "from": "sht4x", "device": "0x44" }""", "rig.probes[0].bus", "none", "the number of the I2C bus" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x40" }""", "rig.probes[0].device", "\"0x40\"", "\"0x44\" to \"0x46\"" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 0 }""", "rig.probes[0].excitation", "none", "or excitationInput" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 0, "excitation": "3.3 V", "excitationInput": 3 }""", "rig.probes[0].excitation", "3.3 V", "not both" },
        { $$"""{ "channel": "supply", {{Pt}}, "excitation": "3.3 V" }""", "rig.probes[0].input", "none", "0 to 3" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 0, "excitation": "3.3 V", "beta": "3950 K" }""", "rig.probes[0].beta", "3950 K", "does not use it" },
        { """{ "channel": "supply", "from": "ads1115", "bus": 1, "device": "0x48", "sensor": "ntc", "reference": "10 kohm", "resistanceAt25C": "10 kohm", "input": 0, "excitation": "3.3 V" }""", "rig.probes[0].beta", "none", "the thermistor's B value" },
        { """{ "channel": "blowerPower", "from": "ina219", "bus": 1, "device": "0x40" }""", "rig.probes[0].shunt", "none", "the monitor's shunt" },
        { """{ "channel": "flow", "from": "pulses" }""", "rig.probes[0].line", "none", "the line of the GPIO chip" },
        { """{ "channel": "level", "from": "switch", "line": 5 }""", "rig.probes[0].wellWhen", "none", "the line's level while all is well" },
        { """{ "channel": "flow", "from": "pulses", "line": 5, "wellWhen": "low" }""", "rig.probes[0].wellWhen", "\"low\"", "does not use it" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x44", "address": "28-000000000001" }""", "rig.probes[0].address", "\"28-000000000001\"", "1-Wire probes only" },
        { """{ "channel": "house", "line": 5 }""", "rig.probes[0].line", "5", "\"from\" beside it" },

        // Twice the same.
        { """{ "channel": "flow", "from": "pulses", "line": 5 }, { "channel": "leak", "from": "switch", "line": 5, "wellWhen": "low" }""", "rig.probes[1].line", "5", "a line of its own; rig.probes[0] (flow) has it already" },
        { """{ "channel": "flow", "from": "pulses", "line": 17 }""", "rig.probes[0].line", "17", "another line than rig.hardware.pumpPin, which has it already" },
        { """{ "channel": "leak", "from": "switch", "line": 22, "wellWhen": "low" }""", "rig.probes[0].line", "22", "another line than rig.hardware.lampLine" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 1, "excitation": "3.3 V" }, { "channel": "return", {{Pt}}, "input": 1, "excitation": "3.3 V" }""", "rig.probes[1].input", "1", "an input of its own; rig.probes[0] (supply)" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 3, "excitation": "3.3 V" }, { "channel": "return", {{Pt}}, "input": 1, "excitationInput": 3 }""", "rig.probes[0].input", "3", "rig.probes[1] measures its excitation" },
        { $$"""{ "channel": "supply", {{Pt}}, "input": 3, "excitationInput": 3 }""", "rig.probes[0].input", "3", "rig.probes[0] measures its excitation" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "outside", "from": "sht4x", "bus": 1, "device": "0x44" }""", "rig.probes[1].device", "\"0x44\"", "a device of its own" },
        { """{ "channel": "outside", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "humidity", "from": "sht4x", "bus": 1, "device": "0x44" }""", "rig.probes[1].device", "\"0x44\"", "humidity is that of the house" },
        { """{ "channel": "carbonDioxide", "from": "scd4x", "bus": 1, "device": "0x61" }""", "rig.probes[0].device", "\"0x61\"", "\"0x62\", the one address scd4x has" },
        { """{ "channel": "carbonDioxide", "from": "scd4x", "device": "0x62" }""", "rig.probes[0].bus", "none", "the number of the I2C bus" },
        { """{ "channel": "carbonDioxide", "from": "sht4x", "bus": 1, "device": "0x44" }""", "rig.probes[0].from", "\"sht4x\"", "\"scd4x\" for carbonDioxide" },
        { """{ "channel": "humidity", "from": "scd4x", "bus": 1, "device": "0x62" }""", "rig.probes[0].from", "\"scd4x\"", "\"sht4x\" for humidity" },
        { """{ "channel": "humidity", "from": "sht4x", "bus": 1, "device": "0x44", "offset": "1 K" }""", "rig.probes[0].offset", "1 K", "thermometers only" },
        { $$"""{ "channel": "pumpPower", {{Power}} }, { "channel": "blowerPower", {{Power}} }""", "rig.probes[1].device", "\"0x40\"", "one shunt measures one load" },
        { """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "battery", "from": "ina219", "bus": 1, "device": "0x44" }""", "rig.probes[1].device", "\"0x44\"", "an address of its own on bus 1" },
    };

    /// <summary>What is sound though it looks near to a fault.</summary>
    public static TheoryData<string> Sound => new()
    {
        $$"""{ "channel": "pumpPower", {{Power}} }, { "channel": "battery", "from": "ina219", "bus": 1, "device": "0x40" }""",
        """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "outside", "from": "sht4x", "bus": 3, "device": "0x44" }""",
        $$"""{ "channel": "supply", {{Pt}}, "input": 0, "excitationInput": 3 }, { "channel": "return", {{Pt}}, "input": 1, "excitationInput": 3 }""",
        """{ "channel": "house", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "humidity", "from": "sht4x", "bus": 1, "device": "0x44" }, { "channel": "carbonDioxide", "from": "scd4x", "bus": 1, "device": "0x62" }""",
        """{ "channel": "spareTwo", "address": "28-000000000002", "label": "Cold frame 2 (north)" }, { "channel": "spareOne", "from": "ads1115", "bus": 1, "device": "0x4B", "sensor": "ntc", "reference": "10 kohm", "resistanceAt25C": "10 kohm", "beta": "3950 K", "input": 0, "excitation": "3300 mV" }""",
        """{ "channel": "house", "from": "oneWire", "address": "28-000000000001" }""",
        """{ "channel": "flow", "from": "pulses", "line": 5, "mostPulses": "30 1/s" }, { "channel": "leak", "from": "switch", "line": 6, "wellWhen": "high" }""",
        """{ "channel": "tank", "from": "ads1115", "bus": 1, "device": "0x4B", "sensor": "ntc", "reference": "10 kohm", "resistanceAt25C": "10 kohm", "beta": "3950 K", "input": 0, "excitation": "3300 mV" }""",
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Probes_WiredWrongly_NamePathValueAndWhatIsAllowed(string probes, string path, string given, string allowed)
    {
        SettingsFault fault = Assert.Single(Parse(probes).Faults);

        Assert.Equal((path, given), (fault.Path, fault.Given));
        Assert.Contains(allowed, fault.Allowed, StringComparison.Ordinal);
        Assert.Equal(1, fault.Line);
    }

    [Theory]
    [MemberData(nameof(Sound))]
    public void Probes_WiredSoundly_HaveNoFaultAndComeBackAsTheyWere(string probes)
    {
        SettingsResult read = Parse(probes);

        Assert.Empty(read.Faults);
        Assert.Equal(read.Settings.Rig.Probes, SettingsFile.Parse(read.Settings.CanonicalJson()).Settings.Rig.Probes);
    }

    [Theory]
    [InlineData("flow", "rig.probes[0].from", "\"pulses\", by which the flow probe is read")]
    [InlineData("battery", "rig.probes[0].from", "\"ina219\", by which the battery probe is read")]
    [InlineData("level", "rig.probes[0].from", "\"switch\", by which the level probe is read")]
    [InlineData("supply", "rig.probes[0].address", "or \"from\" with \"ads1115\"")]
    [InlineData("sun", "rig.probes[0].channel", "no adapter reads this one yet")]
    public void Probes_WiredToNothing_AreToldOnAHardwareRigOnly(string channel, string path, string allowed)
    {
        string probe = $"{{ \"channel\": \"{channel}\" }}";
        Assert.Empty(Parse(probe).Faults);
        IReadOnlyList<SettingsFault> faults = SettingsFile.Parse($$"""{ "rig": { "kind": "hardware", "probes": [ {{probe}} ] } }""").Faults;

        Assert.Contains(allowed, Assert.Single(faults, fault => fault.Path == path).Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Probe_WithEveryKeyOfItsWiring_IsReadIntoItsUnits()
    {
        ProbeFit probe = Parse("""
            { "channel": "floor", "from": "ads1115", "bus": 1, "device": "0x49", "input": 2, "sensor": "ntc", "reference": "10 kohm",
              "resistanceAt25C": "10 kohm", "beta": "3950 K", "excitation": "3300 mV" }
            """).Settings.Rig.Probes[0];

        Assert.Equal(
            new ProbeWiring
            {
                Source = ProbeSource.Ads1115,
                Bus = 1,
                Device = 0x49,
                Input = 2,
                Sensor = ResistorKind.Ntc,
                ReferenceOhms = 10_000,
                OhmsAt25C = 10_000,
                BetaKelvin = 3950,
                ExcitationVolts = 3.3,
            },
            probe.Wiring);
        Assert.Equal(Channel.Floor, probe.Channel);
    }

    private static SettingsResult Parse(string probes) => SettingsFile.Parse(
        $$"""{ "rig": { "probes": [ {{probes.ReplaceLineEndings(" ")}} ], "hardware": { "pumpPin": 17, "lampLine": 22 } } }""");
}
