using System.CommandLine;
using PileController.Access;
using PileController.Commands.Shell;
using PileController.Serving;

namespace PileController.Commands.Access;

/// <summary>passphrase: sets the passphrase of the page, makes a code for the browser, or takes the passphrase away.</summary>
internal static class PassphraseCommand
{
    private static readonly TimeSpan CodeStands = TimeSpan.FromMinutes(15);

    private static readonly Option<string> Data = new Option<string>("--data") { Description = $"Folder of the data; {DataFolder.Usual} when left out." }.Unless(DataFolder.Usual);
    private static readonly Option<bool> Code = new("--code") { Description = "Make a code with which the browser may set a new passphrase, once and within 15 minutes." };
    private static readonly Option<bool> Clear = new("--clear") { Description = "Take the passphrase away: the page then lets in this machine only." };

    public static Command Create()
    {
        PileCommand command = new(
            "passphrase", "Sets the passphrase of the page, asked for twice, or read as one line from a pipe. A running serve notices it and signs everybody out.",
            "PileController passphrase --data /var/lib/pile-controller")
        {
            Data, Code, Clear,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(Code) && result.GetValue(Clear))
            {
                result.AddError($"{Code.Name} and {Clear.Name} are two things; allowed: one of them");
            }
        });
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        TextWriter output = parse.InvocationConfiguration.Output;
        TextWriter error = parse.InvocationConfiguration.Error;
        string folder = parse.GetValue(Data)!;
        if (!Directory.Exists(folder))
        {
            error.WriteLine($"--data is \"{folder}\": there is no such folder; allowed: the folder that serve is given with --data");
            return ExitCodes.WrongUse;
        }

        AccessFile file = new(folder);
        try
        {
            AccessState state = file.Read();
            if (parse.GetValue(Clear))
            {
                file.Write(AccessState.Empty);
                output.WriteLine("The passphrase is taken away. The page lets in this machine only.");
                return ExitCodes.Done;
            }

            return parse.GetValue(Code) ? MakeCode(file, state, output) : Set(file, output, error);
        }
        catch (AccessFileException e)
        {
            error.WriteLine(e.Message);
            return ExitCodes.No;
        }
    }

    private static int MakeCode(AccessFile file, AccessState state, TextWriter output)
    {
        string code = PassphraseWords.Code();
        DateTimeOffset until = TimeProvider.System.GetUtcNow() + CodeStands;
        file.Write(state with { Code = new OneTimeCode(SecretHash.Of(code), until.ToUnixTimeMilliseconds()) });
        output.WriteLine($"Code for the browser: {code}");
        output.WriteLine($"It works once, until {until.ToLocalTime():HH:mm}: open the page, \"Sign in\", \"Set a passphrase with a code\".");
        return ExitCodes.Done;
    }

    private static int Set(AccessFile file, TextWriter output, TextWriter error)
    {
        if (!TypedSecret.TryRead(out string passphrase, out string? fault))
        {
            error.WriteLine(fault);
            return ExitCodes.WrongUse;
        }

        file.Write(new AccessState(AccessState.CurrentSchema, SecretHash.Of(passphrase), null));
        output.WriteLine("The passphrase is set. Whoever was signed in is signed out; keys of scripts stand until they are taken back.");
        return ExitCodes.Done;
    }
}
