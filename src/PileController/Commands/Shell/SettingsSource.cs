using System.Diagnostics.CodeAnalysis;
using PileController.Settings;

namespace PileController.Commands.Shell;

/// <summary>Reads the settings file a command was given.</summary>
internal static class SettingsSource
{
    /// <summary>Reads a file with all its faults.</summary>
    /// <param name="path">The path given.</param>
    /// <param name="result">What came of it, when it could be read at all.</param>
    /// <param name="problem">Why it could not be read, and what is allowed.</param>
    public static bool TryLoad(string path, out SettingsResult result, [NotNullWhen(false)] out string? problem)
    {
        result = new SettingsResult(PileSettings.AlderBank, []);
        try
        {
            result = SettingsFile.Load(path);
            problem = null;
            return true;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            problem = "there is no such file; allowed: the path of a settings file";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            problem = $"it cannot be read ({e.Message.TrimEnd('.')}); allowed: the path of a readable settings file";
        }

        return false;
    }
}
