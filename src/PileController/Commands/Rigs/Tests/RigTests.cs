using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Rigs.Tests;

/// <summary>The commands that commission a rig, one for each test.</summary>
internal static class RigTests
{
    private static readonly (string Id, string Says, string Example)[] Rows =
    [
        ("find", "Finds out which probe is the one in your hand: it warms, the others do not.", "PileController rig find --yes"),
        ("ice", "Calibrates probes in melting ice; gives the offset to write into the settings.", "PileController rig ice --probe supply --probe return"),
        ("pair", "Makes supply and return agree, in one bucket; gives the offset of return.", "PileController rig pair"),
        ("leak", "Lets the full loop stand and sees that it loses nothing.", "PileController rig leak --stand \"30 min\" --yes"),
        ("purge", "Drives the air out and tells when flow and supply have steadied.", "PileController rig purge --yes"),
        ("bucket", "Holds the flow meter against a bucket over several runs; gives its pulses a litre.", "PileController rig bucket --runs 3 --yes"),
        ("pump-curve", "Measures the pump at several duties; writes a file that calc pump reads.", "PileController rig pump-curve --duty \"100 %\" --duty \"80 %\" --duty \"60 %\" --yes"),
        ("travel", "Times the motor valve both ways.", "PileController rig travel --yes"),
        ("exercise", "Runs each actuator and asks for the proof that it does what it is told.", "PileController rig exercise --yes"),
        ("wind-down", "Leads through the end of the season; weight and notes go into the ledger.", "PileController rig wind-down"),
    ];

    /// <summary>One command a test.</summary>
    public static IEnumerable<Command> Create() => Rows.Select(row =>
    {
        TestOptions options = new(row.Id);
        PileCommand command = new(row.Id, row.Says, row.Example);
        options.AddTo(command);
        command.SetAction((parse, cancellation) => RigTestRun.RunAsync(parse, row.Id, options, cancellation));
        return command;
    });
}
