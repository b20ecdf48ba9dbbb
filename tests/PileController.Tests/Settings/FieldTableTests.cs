using System.Reflection;
using PileController.Control;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Plans.Ahead;
using PileController.Plans.Money;
using PileController.Rigs;
using PileController.Settings;
using PileController.Settings.Fields;
using PileController.Settings.Tables;

namespace PileController.Tests.Settings;

public class FieldTableTests
{
    /// <summary>Every property of every settings record, with how to set it in the whole.</summary>
    public static TheoryData<string> Properties =>
        new(Owners.SelectMany(o => o.Key.GetProperties().Where(IsSingleValue).Select(p => $"{o.Key.Name}.{p.Name}")));

    private static readonly Dictionary<Type, Func<PileSettings, Func<object, object>, PileSettings>> Owners = new()
    {
        [typeof(Site)] = (s, f) => s with { Site = (Site)f(s.Site) },
        [typeof(HeapBuild)] = (s, f) => s with { Heap = (HeapBuild)f(s.Heap) },
        [typeof(CoilBuild)] = (s, f) => s with { Heap = s.Heap with { Coil = (CoilBuild)f(s.Heap.Coil) } },
        [typeof(DuctBuild)] = (s, f) => s with { Heap = s.Heap with { Duct = (DuctBuild)f(s.Heap.Duct) } },
        [typeof(HouseBuild)] = (s, f) => s with { House = (HouseBuild)f(s.House) },
        [typeof(LoopBuild)] = (s, f) => s with { Loop = (LoopBuild)f(s.Loop) },
        [typeof(PowerBuild)] = (s, f) => s with { Power = (PowerBuild)f(s.Power) },
        [typeof(ControlSettings)] = (s, f) => s with { Control = (ControlSettings)f(s.Control) },
        [typeof(InterlockLimits)] = (s, f) => s with { Control = s.Control with { Limits = (InterlockLimits)f(s.Control.Limits) } },
        [typeof(RigSettings)] = (s, f) => s with { Rig = (RigSettings)f(s.Rig) },
        [typeof(HardwareSettings)] = (s, f) => s with { Rig = s.Rig with { Hardware = (HardwareSettings)f(s.Rig.Hardware) } },
        [typeof(LoadSettings)] = (s, f) => s with { Rig = s.Rig with { Hardware = s.Rig.Hardware with { Pump = (LoadSettings)f(s.Rig.Hardware.Pump) } } },
        [typeof(ValveSettings)] = (s, f) => s with { Rig = s.Rig with { Hardware = s.Rig.Hardware with { Valve = (ValveSettings)f(s.Rig.Hardware.Valve) } } },
        [typeof(I2cPwmSettings)] = (s, f) => s with { Rig = s.Rig with { Hardware = s.Rig.Hardware with { I2cPwm = (I2cPwmSettings)f(s.Rig.Hardware.I2cPwm) } } },
        [typeof(RecordSettings)] = (s, f) => s with { Record = (RecordSettings)f(s.Record) },
        [typeof(Spreads)] = (s, f) => s with { Plan = s.Plan with { Spreads = (Spreads)f(s.Plan.Spreads) } },
        [typeof(Prices)] = (s, f) => s with { Plan = s.Plan with { Prices = (Prices)f(s.Plan.Prices) } },
        [typeof(PlanWish)] = (s, f) => s with { Plan = s.Plan with { Wish = (PlanWish)f(s.Plan.Wish) } },
        [typeof(ForecastSettings)] = (s, f) => s with { Forecast = (ForecastSettings)f(s.Forecast) },
        [typeof(AlarmsSettings)] = (s, f) => s with { Alarms = (AlarmsSettings)f(s.Alarms) },
        [typeof(HeartbeatSettings)] = (s, f) => s with { Alarms = s.Alarms with { Heartbeat = (HeartbeatSettings)f(s.Alarms.Heartbeat) } },
        [typeof(MailSettings)] = (s, f) => s with { Alarms = s.Alarms with { Mail = (MailSettings)f(s.Alarms.Mail) } },
        [typeof(PanelSettings)] = (s, f) => s with { Panel = (PanelSettings)f(s.Panel) },
    };

    [Theory]
    [MemberData(nameof(Properties))]
    public void Table_AnyPropertyOfAnyRecord_IsAField(string name)
    {
        (Type type, var put) = Owners.Single(o => o.Key.Name == name.Split('.')[0]);
        PropertyInfo property = type.GetProperty(name.Split('.')[1])!;

        PileSettings changed = put(PileSettings.AlderBank, owner =>
        {
            object copy = type.GetMethod("<Clone>$")!.Invoke(owner, null)!;
            property.SetValue(copy, Other(property.GetValue(owner), property.PropertyType));
            return copy;
        });

        Assert.NotEqual(PileSettings.AlderBank.CanonicalJson(), changed.CanonicalJson());
        Assert.NotEqual(PileSettings.AlderBank.Fingerprint(), changed.Fingerprint());
    }

    [Fact]
    public void Table_EveryRow_HasItsOwnPathAndASentence()
    {
        FieldRow[] rows = [.. PileFields.Table.Rows("")];
        Assert.Equal(rows.Length, rows.Select(r => r.Path).Distinct().Count());
        Assert.All(rows, r => Assert.EndsWith(".", r.Doc, StringComparison.Ordinal));
        Assert.All(rows, r => Assert.NotEqual("", r.Allowed));
    }

    // What follows from how heap and loop are built; nobody sets it by itself.
    private static readonly string[] Reckoned =
    [
        nameof(ControlSettings.LatitudeDegrees), nameof(ControlSettings.MovingDuty), nameof(ControlSettings.HeapHeightM), nameof(ControlSettings.DrumLitres),
        nameof(ControlSettings.CoilRadiusM), nameof(ControlSettings.DuctRadiusM), nameof(ControlSettings.DuctWPerK),
    ];

    private static bool IsSingleValue(PropertyInfo property) =>
        property.CanWrite && !Reckoned.Contains(property.Name) && (property.PropertyType.IsValueType || property.PropertyType == typeof(string));

    private static object Other(object? value, Type type) => value switch
    {
        double number => number + 0.5,
        long number => number + 1,
        int number => number + 1,
        bool flag => !flag,
        string text => $"{text}a",
        Enum word => Enum.ToObject(type, Convert.ToInt32(word) == 1 ? 0 : 1),
        null when type == typeof(int?) => 5,
        null when type == typeof(string) => "a",
        _ => throw new NotSupportedException($"Say how to change a {type}."),
    };
}
