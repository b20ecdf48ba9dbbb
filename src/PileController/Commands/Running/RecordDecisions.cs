using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records;
using PileController.Records.Export;

namespace PileController.Commands.Running;

/// <summary>record decisions: what was decided and why, newest last.</summary>
internal static class RecordDecisions
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<long> From = RecordAsk.Moment("--from", "First moment; UTC unless it says otherwise; the beginning when left out.", 0);
    private static readonly Option<long> To = RecordAsk.Moment("--to", "First moment after; UTC unless it says otherwise; the end when left out.", long.MaxValue);
    private static readonly Option<bool> Json = Ask.Json();
    private static readonly Option<bool> Csv = RecordAsk.Csv();

    public static Command Create()
    {
        PileCommand command = new("decisions", "What was decided and why, oldest first.", "PileController record decisions --data DIR --from 2026-01-30")
        {
            Data, From, To, Json, Csv,
        };
        RecordAsk.CheckSpanAndForm(command, From, To, Json, Csv);
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse) => RecordAsk.With(
        parse, Data, (record, tellDamage) => record.Decisions(parse.GetValue(From), parse.GetValue(To), tellDamage).Reverse(), (lines, output) =>
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
        });
}
