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
}
