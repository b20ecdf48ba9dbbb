using PileController.Commands;

namespace PileController.Tests.Commands;

/// <summary>Runs a command line in this process and keeps what it says.</summary>
internal sealed record CommandLine(int ExitCode, string Output, string Error)
{
    public static async Task<CommandLine> RunAsync(params IReadOnlyList<string> args)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        int code = await CommandTree.RunAsync(args, output, error);
        return new CommandLine(code, output.ToString(), error.ToString());
    }

    /// <summary>A command line with the value of one option changed, or the option added where it has none.</summary>
    public static string[] With(string[] plain, string option, string given)
    {
        int at = Array.IndexOf(plain, option);
        return at < 0 ? [.. plain, option, given] : [.. plain[..(at + 1)], given, .. plain[(at + 2)..]];
    }
}
