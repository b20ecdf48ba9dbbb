using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records;
using PileController.Records.Backups;

namespace PileController.Commands.Running;

/// <summary>record backup: copies the record, while a service writes in it or not.</summary>
internal static class RecordBackup
{
    private static readonly Argument<string> To = RecordCopying.Backup("Folder to be made; refused when it is not empty.");
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "backup", "Copies the record and what lies beside it, also while serve writes in it; checks every copied file.",
            "PileController record backup /media/stick/pile-2026-01-30 --data DIR")
        {
            To, Data, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string to = parse.GetValue(To)!;
        string data = parse.GetValue(Data)!;
        return RecordCopying.Run(
            parse, parse.GetValue(Json), "Backed up", () => BackupMaker.Make(data, to, TimeProvider.System.GetUtcNow()),
            error => error is DirectoryNotFoundException or RecordInUseException ? $"--data is \"{data}\"" : $"DIR is \"{to}\"");
    }
}
