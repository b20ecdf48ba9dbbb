using System.Device.Gpio;
using System.Device.Gpio.Drivers;
using System.Runtime.InteropServices;

namespace PileController.Rigs.Hardware;

/// <summary>One way to the kernel's GPIO chips.</summary>
/// <param name="Name">Name for messages.</param>
/// <param name="IsInstalled">Whether its library can be loaded here.</param>
/// <param name="Chips">The chips it sees.</param>
/// <param name="Driver">Makes the driver of one of them.</param>
internal sealed record GpioLibrary(
    string Name, Func<bool> IsInstalled, Func<IReadOnlyList<GpioChipInfo>> Chips, Func<GpioChipInfo, GpioDriver> Driver)
{
    /// <summary>
    /// The two generations of libgpiod, the newer first: newer kernels may be built without the interface the older
    /// one needs, so where both are installed the older is the worse choice.
    /// </summary>
    public static IReadOnlyList<GpioLibrary> All { get; } =
    [
        new("libgpiod 2", () => CanLoad("libgpiod.so.3"), () => [.. LibGpiodV2Driver.GetAvailableChips()], chip => new LibGpiodV2Driver(chip)),
        new("libgpiod 1", () => CanLoad("libgpiod.so.2") || CanLoad("libgpiod.so.1"), () => [.. LibGpiodDriver.GetAvailableChips()], chip => new LibGpiodDriver(chip)),
    ];

    private static bool CanLoad(string file)
    {
        if (!NativeLibrary.TryLoad(file, out nint handle))
        {
            return false;
        }

        NativeLibrary.Free(handle);
        return true;
    }
}
