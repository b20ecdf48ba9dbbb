using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Running;

/// <summary>record: reads, checks, replays and keeps the record.</summary>
internal static class RecordCommand
{
    public static Command Create() =>
        new PileCommand("record", "Reads, checks and replays the record, backs it up and brings it back.", "PileController record decisions --data DIR")
        {
            RecordDecisions.Create(), RecordSamples.Create(), RecordVerify.Create(), RecordReplay.Create(), RecordBackup.Create(), RecordRestore.Create(),
        };
}
