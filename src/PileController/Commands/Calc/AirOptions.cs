using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>Options that both air circuits have. Each command needs options of its own, hence methods.</summary>
internal static class AirOptions
{
    /// <summary>Air moved, m³/h.</summary>
    public static Option<double> Flow() =>
        Ask.Quantity("--flow", "Air moved, as it comes in.", "m3/h", Dimension.Flow, 0.1, 7200).Needed();

    /// <summary>Air before the heap, °C.</summary>
    public static Option<double> Inlet() =>
        Ask.Quantity("--inlet", "Air before the heap.", "°C", Dimension.Temperature, -40, 60).Needed();

    /// <summary>The heap, °C.</summary>
    public static Option<double> Heap() =>
        Ask.Quantity("--heap", "Heap where the air leaves it.", "°C", Dimension.Temperature, 0, 90).Needed();
}
