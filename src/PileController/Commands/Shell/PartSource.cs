using System.CommandLine;
using PileController.Settings;
using PileController.Settings.Fields;

namespace PileController.Commands.Shell;

/// <summary>Reads the file of a part that a command was given.</summary>
internal static class PartSource
{
    /// <summary>
    /// The part in the file of an option; null when the file cannot be read or has faults, which are then said on the
    /// error stream, one sentence each.
    /// </summary>
    /// <param name="parse">The command line.</param>
    /// <param name="option">The option that holds the path.</param>
    /// <param name="table">The keys the file may have.</param>
    /// <param name="blank">What the part is before a key is read.</param>
    /// <param name="checks">Faults between values that are each sound by themselves; asked only when there are no others.</param>
    public static T? Sound<T>(
        ParseResult parse, Option<string> option, FieldTable<T> table, T blank, Func<T, IEnumerable<SettingsFault>> checks)
        where T : class =>
        Sound(parse.InvocationConfiguration.Error, option.Name, option.Name, parse.GetRequiredValue(option), table, blank, checks);

    /// <summary>The same for one of several files, which each fault then names.</summary>
    /// <param name="error">Where faults are said.</param>
    /// <param name="option">Name of the option that holds the path.</param>
    /// <param name="path">The path.</param>
    /// <param name="table">The keys the file may have.</param>
    /// <param name="blank">What the part is before a key is read.</param>
    /// <param name="checks">As above.</param>
    public static T? Sound<T>(
        TextWriter error, string option, string path, FieldTable<T> table, T blank, Func<T, IEnumerable<SettingsFault>> checks)
        where T : class =>
        Sound(error, option, $"{option} \"{path}\"", path, table, blank, checks);

    private static T? Sound<T>(
        TextWriter error, string option, string place, string path, FieldTable<T> table, T blank, Func<T, IEnumerable<SettingsFault>> checks)
        where T : class
    {
        string text;
        try
        {
            text = File.ReadAllText(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            error.WriteLine($"{option} is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a readable file");
            return null;
        }

        (T part, FileReading reading) = PartFile.Parse(text, table, blank);
        List<SettingsFault> faults = reading.Faults.Count > 0 ? reading.Faults : [.. checks(part)];
        foreach (SettingsFault fault in faults)
        {
            error.WriteLine($"{place}: {fault.Sentence}");
        }

        return faults.Count == 0 ? part : null;
    }
}
