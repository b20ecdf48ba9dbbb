using System.Text.Json;
using PileController.Records;
using PileController.Records.Storage;
using PileController.Settings;
using PileController.Settings.Changes;
using PileController.Simulation;

namespace PileController.Serving;

/// <summary>
/// What lies beside the record: the settings each block was made with, by their fingerprint, so that a replay finds
/// them; and the simulated holding, so that the demo can be stopped and taken up.
/// </summary>
internal sealed class DataFolder(string path)
{
    /// <summary>Where the data of an installed service lies.</summary>
    public const string Usual = "/var/lib/pile-controller";

    private const string SettingsFolder = "settings";
    private const string LastFile = "last";
    private const string HoldingFile = "holding.json";

    /// <summary>The folder.</summary>
    public string Path => path;

    /// <summary>Keeps a settings text under its fingerprint, and that it is the one a service ran with last.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void KeepSettings(string fingerprint, string text)
    {
        string folder = System.IO.Path.Combine(path, SettingsFolder);
        Directory.CreateDirectory(folder);
        string file = System.IO.Path.Combine(folder, fingerprint + ".json");
        if (!File.Exists(file))
        {
            Replace(file, text);
        }

        // By name and not by the files' times: a board without a clock of its own may start in the past.
        string last = System.IO.Path.Combine(folder, LastFile);
        if (!File.Exists(last) || File.ReadAllText(last) != fingerprint)
        {
            Replace(last, fingerprint);
        }
    }

    /// <summary>The settings a service ran with last; null when there are none, they cannot be read, or no longer mean the same.</summary>
    public PileSettings? FindLastSettings()
    {
        try
        {
            return FindSettings(File.ReadAllText(System.IO.Path.Combine(path, SettingsFolder, LastFile)));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Whether a file says, to the letter, what a service ran with last; false where that cannot be told.</summary>
    public bool LastIs(string file)
    {
        try
        {
            string folder = System.IO.Path.Combine(path, SettingsFolder);
            string last = System.IO.Path.Combine(folder, File.ReadAllText(System.IO.Path.Combine(folder, LastFile)) + ".json");
            return File.ReadAllText(last) == File.ReadAllText(file);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return false;
        }
    }

    /// <summary>The settings kept under a fingerprint; null when there are none, or they no longer mean the same.</summary>
    public PileSettings? FindSettings(string fingerprint)
    {
        string file = System.IO.Path.Combine(path, SettingsFolder, fingerprint + ".json");
        if (fingerprint.Any(c => !char.IsAsciiHexDigit(c)) || !File.Exists(file))
        {
            return null;
        }

        SettingsResult result = SettingsFile.Load(file);
        return result.Faults.Count == 0 && result.Settings.Fingerprint() == fingerprint ? result.Settings : null;
    }

    /// <summary>Opens the settings of a service: the file's text and what was changed on the page.</summary>
    /// <exception cref="IOException">The changes are there and cannot be read.</exception>
    public SettingsDesk OpenDesk(string fileText)
    {
        string file = System.IO.Path.Combine(path, SettingsDesk.FileName);
        return new SettingsDesk(fileText, File.Exists(file) ? File.ReadAllText(file) : null, (name, text) => Replace(System.IO.Path.Combine(path, name), text));
    }

    /// <summary>Keeps the simulated holding.</summary>
    public void KeepHolding(WarmStart holding) => Replace(System.IO.Path.Combine(path, HoldingFile), holding.ToJson());

    /// <summary>The simulated holding as it was kept last, or null.</summary>
    public WarmStart? FindHolding()
    {
        string file = System.IO.Path.Combine(path, HoldingFile);
        try
        {
            return File.Exists(file) ? WarmStart.FromJson(File.ReadAllText(file)) : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Who makes ticks with these settings, for the record.</summary>
    public static RecordOrigin Origin(PileSettings settings)
    {
        System.Reflection.Assembly assembly = typeof(DataFolder).Assembly;
        string version = assembly.GetName().Version?.ToString(3) ?? "0";
        return new RecordOrigin(
            settings.Fingerprint(), $"{version} {assembly.ManifestModule.ModuleVersionId:N}",
            $"{System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription} {System.Runtime.InteropServices.RuntimeInformation.ProcessArchitecture}");
    }

    /// <summary>Writes a file anew: a cut leaves the old text or the new, never half of one.</summary>
    /// <exception cref="IOException">It cannot be written; the old one is as it was.</exception>
    public static void Replace(string file, string text)
    {
        string fresh = file + ".new";
        using (FileStream stream = new(fresh, FileMode.Create, FileAccess.Write))
        {
            stream.Write(System.Text.Encoding.UTF8.GetBytes(text));
            stream.Flush(flushToDisk: true);
        }

        File.Move(fresh, file, overwrite: true);
        try
        {
            FolderSync.Sync(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(file))!);
        }
        catch (IOException)
        {
            // The new text stands under its name already; only a cut within the next seconds could bring the old one back.
        }
    }
}
