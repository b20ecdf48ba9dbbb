using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace PileController.Commands.Shell;

/// <summary>The usual help, then the command's example.</summary>
internal sealed class HelpWithExample(HelpAction usual) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        usual.Invoke(parseResult);
        string example = parseResult.CommandResult.Command is PileCommand command
            ? command.Example
            : "PileController serve";
        parseResult.InvocationConfiguration.Output.WriteLine($"Example:\n  {example}");
        return ExitCodes.Done;
    }
}
