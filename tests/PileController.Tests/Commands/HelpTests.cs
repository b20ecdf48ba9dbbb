using System.CommandLine;
using System.CommandLine.Parsing;
using PileController.Commands;
using PileController.Tests.Architecture;

namespace PileController.Tests.Commands;

public class HelpTests
{
    public static TheoryData<string> Commands => new(Paths(CommandTree.Create(), ""));

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Help_OfEveryCommand_ShowsAnExampleOfThatCommand(string path)
    {
        CommandLine run = await CommandLine.RunAsync([.. path.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);

        Assert.Equal(0, run.ExitCode);
        Assert.Equal("", run.Error);
        Assert.Contains($"Example:\n  PileController {path}".TrimEnd(), run.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Help_ExampleOfEveryCommand_Works(string path)
    {
        CommandLine help = await CommandLine.RunAsync([.. path.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);
        string example = help.Output[help.Output.IndexOf("Example:", StringComparison.Ordinal)..].Split('\n')[1].Trim();
        string[] args = [.. CommandLineParser.SplitCommandLine(example).Skip(1).Select(FromTheRoot)];

        if (args is ["calc", ..])
        {
            Assert.Equal(0, (await CommandLine.RunAsync(args)).ExitCode);
        }
        else
        {
            // Other commands run long or need files: their example must at least be read without a complaint.
            Assert.Empty(CommandTree.Create().Parse(args).Errors);
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public async Task Help_OfEveryCommand_ShowsNoBareDefaultAndNoPowerOfTen(string path)
    {
        CommandLine run = await CommandLine.RunAsync([.. path.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);

        Assert.DoesNotContain("[default", run.Output, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\dE[+-]\d", run.Output);
    }

    // Example files are named as seen from the project's folder.
    private static string FromTheRoot(string word) =>
        word.StartsWith("hardware/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, word) : word;

    private static IEnumerable<string> Paths(Command command, string path) =>
        command.Subcommands.SelectMany(c => Paths(c, $"{path} {c.Name}".Trim())).Prepend(path);
}
