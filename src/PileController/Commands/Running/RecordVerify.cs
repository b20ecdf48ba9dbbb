using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records.Checking;

namespace PileController.Commands.Running;

/// <summary>record verify: every checksum, every number.</summary>
internal static class RecordVerify
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("verify", "Checks every checksum and every number of the record, or of a backup.", "PileController record verify --data DIR")
        {
            Data, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string folder = parse.GetValue(Data)!;
        VerifyReport report;
        try
        {
            report = RecordVerifier.Check(folder);
        }
        catch (IOException e)
        {
            return RecordAsk.Refuse(parse, folder, e.Message);
        }

        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, report);
        }
        else
        {
            foreach (string problem in report.Problems)
            {
                parse.InvocationConfiguration.Output.WriteLine(problem);
            }

            parse.InvocationConfiguration.Output.WriteLine(RecordAsk.Sum(report));
        }

        return report.IsClean ? ExitCodes.Done : ExitCodes.No;
    }
}
