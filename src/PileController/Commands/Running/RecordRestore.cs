using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records.Backups;

namespace PileController.Commands.Running;

/// <summary>record restore: brings a backup back.</summary>
internal static class RecordRestore
{
    private static readonly Argument<string> From = RecordCopying.Backup("A folder made by record backup.");
    private static readonly Option<string> Data = new("--data") { Description = "Folder the record is to be in; refused when it is not empty.", Required = true };
    private static readonly Option<bool> SetAside = new("--set-aside") { Description = "Rename a folder that is not empty, and keep it." };
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "restore", "Brings a backup back where serve will find it; checks it before and after and overwrites nothing.",
            "PileController record restore /media/stick/pile-2026-01-30 --data DIR --set-aside")
        {
            From, Data, SetAside, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string from = parse.GetValue(From)!;
        string data = parse.GetValue(Data)!;
        return RecordCopying.Run(
            parse, parse.GetValue(Json), "Restored",
            () => BackupRestorer.Restore(from, data, parse.GetValue(SetAside), TimeProvider.System.GetUtcNow()),
            error => error is DirectoryNotFoundException or InvalidDataException ? $"DIR is \"{from}\"" : $"--data is \"{data}\"");
    }
}
