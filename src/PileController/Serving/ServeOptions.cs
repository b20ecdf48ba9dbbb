using PileController.Rigs.Hardware;
using PileController.Settings;

namespace PileController.Serving;

/// <summary>What serve was asked for.</summary>
/// <param name="Settings">The settings.</param>
/// <param name="SettingsText">The text they were read from, kept beside the record for replays.</param>
/// <param name="DataDirectory">Folder of the record; null for a folder that is gone when the program ends.</param>
/// <param name="Urls">Addresses of the page.</param>
/// <param name="Speed">How many times faster than life a simulated rig runs.</param>
/// <param name="Certificate">Certificate with key for https, or null.</param>
internal sealed record ServeOptions(
    PileSettings Settings, string SettingsText, string? DataDirectory, string Urls, double Speed, RenewedCertificate? Certificate)
{
    /// <summary>Opens a real rig, outputs off: by its settings, and told what to report to.</summary>
    public Func<PileSettings, Action<string>, GpioRig> OpenHardware { get; init; } = ServeHost.OpenHardware;
}
