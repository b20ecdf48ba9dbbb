using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Text.RegularExpressions;

namespace PileController.Commands.Shell;

/// <summary>The usual help, then the command's example.</summary>
internal sealed partial class HelpWithExample(HelpAction usual) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        TextWriter output = parseResult.InvocationConfiguration.Output;
        output.Write(BareDefault().Replace(Usual(parseResult), ""));
        string example = parseResult.CommandResult.Command is PileCommand command
            ? command.Example
            : "PileController serve";
        output.WriteLine($"Example:\n  {example}");
        return ExitCodes.Done;
    }

    // Descriptions tell defaults in words and units; the bare values behind them (-1 for "none given") say nothing.
    [GeneratedRegex(@"\s*\[default:[^\]]*\]")]
    private static partial Regex BareDefault();

    private string Usual(ParseResult parseResult)
    {
        InvocationConfiguration where = parseResult.InvocationConfiguration;
        TextWriter output = where.Output;
        using StringWriter text = new();
        where.Output = text;
        try
        {
            usual.Invoke(parseResult);
        }
        finally
        {
            where.Output = output;
        }

        return text.ToString();
    }
}
