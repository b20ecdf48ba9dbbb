using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Panel;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Records.Export;

namespace PileController.Commands.Running;

/// <summary>record decisions: what was decided and why, newest last.</summary>
internal static class RecordDecisions
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<long> From = RecordAsk.Moment("--from", "First moment; UTC unless it says otherwise; the beginning when left out.", 0);
    private static readonly Option<long> To = RecordAsk.Moment("--to", "First moment after; UTC unless it says otherwise; the end when left out.", long.MaxValue);
    private static readonly Option<Mode?> InMode = OneOf<Mode>("--mode", "Only those in this mode.");
    private static readonly Option<Curb?> WithCurb = OneOf<Curb>("--curb", "Only those with this curb.");
    private static readonly Option<string> Text = new("--text") { Description = "Only those whose sentence or note contains this, whatever its case." };
    private static readonly Option<bool> Json = Ask.Json();
    private static readonly Option<bool> Csv = RecordAsk.Csv();
    private static readonly Option<string?> Parquet = ParquetAnswer.File();

    public static System.CommandLine.Command Create()
    {
        PileCommand command = new("decisions", "What was decided and why, oldest first.", "PileController record decisions --data DIR --from 2026-01-30")
        {
            Data, From, To, InMode, WithCurb, Text, Json, Csv, Parquet,
        };
        RecordAsk.CheckSpanAndForm(command, From, To, Json, Csv, Parquet);
        command.SetAction(Run);
        return command;
    }

    private static Option<T?> OneOf<T>(string name, string description)
        where T : struct, Enum =>
        Ask.Word<T?>(name, description, [.. Enum.GetValues<T>().Select(value => (WireNames.Of(value), (T?)value))]);

    private static DecisionAsk Asked(ParseResult parse) => new(parse.GetValue(From), parse.GetValue(To))
    {
        Mode = parse.GetValue(InMode),
        Curb = parse.GetValue(WithCurb),
        Text = parse.GetValue(Text),
    };

    private static int Run(ParseResult parse)
    {
        return parse.GetValue(Parquet) is { } path
            ? ParquetAnswer.Write(parse, Data, path, Lines, (to, lines) => ParquetExport.DecisionsAsync(to, lines, CancellationToken.None))
            : RecordAsk.With(parse, Data, Lines, (lines, output) => Tell(parse, output, lines));

        IReadOnlyList<DecisionLine> Lines(RecordReader record, Action<string> tellDamage) => [.. record.Decisions(Asked(parse), tellDamage).Reverse()];
    }

    private static void Tell(ParseResult parse, TextWriter output, IReadOnlyList<DecisionLine> lines)
    {
        if (parse.GetValue(Json))
        {
            RecordAsk.WriteArray(output, to => JsonLinesExport.Decisions(to, lines));
        }
        else if (parse.GetValue(Csv))
        {
            CsvExport.Decisions(output, lines);
        }
        else
        {
            foreach (DecisionLine line in lines)
            {
                output.WriteLine($"{DateTimeOffset.FromUnixTimeMilliseconds(line.UtcMilliseconds):yyyy-MM-dd HH:mm:ss}Z  {line.Mode,-10}  {line.Why}");
            }
        }
    }
}
