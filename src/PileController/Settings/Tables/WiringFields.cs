using PileController.Rigs;
using PileController.Rigs.Hardware;
using PileController.Settings.Fields;
using PileController.Settings.Kinds;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>The keys of a probe that tell where it hangs on the real rig. Each is null where the probe's source does not use it.</summary>
internal static class WiringFields
{
    /// <summary>Adds them to a probe's keys.</summary>
    public static void AddTo(FieldTable<ProbeFit> table)
    {
        Add(table, "from", Word([.. Enum.GetValues<ProbeSource>().Select(s => (SourceTable.Word(s), (ProbeSource?)s))]), w => w.Source, (w, v) => w with { Source = v }, "How the real rig reads it; may be left out where there is an address.");
        Add(table, "bus", OptionalWhole(0, 255), w => w.Bus, (w, v) => w with { Bus = (int?)v }, "Number of the I2C bus.");
        Add(table, "device", Optional(BusAddress), w => w.Device, (w, v) => w with { Device = v }, "Address on the I2C bus.");
        Add(table, "input", OptionalWhole(0, 3), w => w.Input, (w, v) => w with { Input = (int?)v }, "Input of the converter, ads1115.");
        Add(table, "sensor", Word<ResistorKind?>(("pt1000", ResistorKind.Pt1000), ("ntc", ResistorKind.Ntc)), w => w.Sensor, (w, v) => w with { Sensor = v }, "What stands between that input and ground.");
        Add(table, "reference", Optional(Ohms(100, 1_000_000)), w => w.ReferenceOhms, (w, v) => w with { ReferenceOhms = v }, "Resistor between excitation and input.");
        Add(table, "excitation", Optional(Volts(1, 4)), w => w.ExcitationVolts, (w, v) => w with { ExcitationVolts = v }, "Voltage over the whole divider, where it is not measured; its error is the thermometer's.");
        Add(table, "excitationInput", OptionalWhole(0, 3), w => w.ExcitationInput, (w, v) => w with { ExcitationInput = (int?)v }, "Input of the same converter at which that voltage is measured.");
        Add(table, "resistanceAt25C", Optional(Ohms(100, 1_000_000)), w => w.OhmsAt25C, (w, v) => w with { OhmsAt25C = v }, "Resistance of an ntc at 25 °C.");
        Add(table, "beta", Optional(Kelvin(1000, 10_000)), w => w.BetaKelvin, (w, v) => w with { BetaKelvin = v }, "B value of an ntc.");
        Add(table, "shunt", Optional(Ohms(0.0001, 10)), w => w.ShuntOhms, (w, v) => w with { ShuntOhms = v }, "Shunt of the monitor, ina219; the battery's voltage needs none.");
        Add(table, "line", OptionalWhole(0, 127), w => w.Line, (w, v) => w with { Line = (int?)v }, "Line of the GPIO chip, for pulses and switch.");
        Add(table, "wellWhen", Word<LineLevel?>(("low", LineLevel.Low), ("high", LineLevel.High)), w => w.WellWhen, (w, v) => w with { WellWhen = v }, "The switch line's level while all is well, so wired that a broken wire gives the other.");
        Add(table, "mostPulses", Optional(PulsesPerSecond(1, 500)), w => w.MostPulsesPerSecond, (w, v) => w with { MostPulsesPerSecond = v }, "More pulses than this are bounce; 200 1/s where none is given.");
    }

    private static void Add<TValue>(
        FieldTable<ProbeFit> table, string key, ValueKind<TValue> kind, Func<ProbeWiring, TValue> get, Func<ProbeWiring, TValue, ProbeWiring> set, string doc) =>
        table.Add(key, kind, p => get(p.Wiring), (p, v) => p with { Wiring = set(p.Wiring, v) }, doc);
}
