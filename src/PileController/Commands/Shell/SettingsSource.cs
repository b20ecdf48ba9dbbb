using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using PileController.Settings;

namespace PileController.Commands.Shell;

/// <summary>Reads the settings file a command was given.</summary>
internal static class SettingsSource
{
    /// <summary>
    /// The settings of an option: Alder Bank's when it was not given, null when the file cannot be read or has
    /// faults; what is wrong is then said on the error stream.
    /// </summary>
    public static PileSettings? Sound(ParseResult parse, Option<string?> option)
    {
        if (parse.GetValue(option) is not { } path)
        {
            return PileSettings.AlderBank;
        }

        TextWriter error = parse.InvocationConfiguration.Error;
        if (!TryLoad(path, out SettingsResult result, out string? problem))
        {
            error.WriteLine($"{option.Name} is \"{path}\": {problem}");
            return null;
        }

        foreach (SettingsFault fault in result.Faults)
        {
            error.WriteLine(fault.Sentence);
        }

        return result.Faults.Count == 0 ? result.Settings : null;
    }

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
