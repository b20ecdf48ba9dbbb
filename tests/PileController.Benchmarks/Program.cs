using BenchmarkDotNet.Running;
using PileController.Benchmarks;
using PileController.Benchmarks.Bounds;
using PileController.Benchmarks.Pages;
using PileController.Benchmarks.Published;
using PileController.Benchmarks.Records;
using PileController.Benchmarks.Scores;

return args switch
{
    [not "bound" and not "steps", ..] when args.Contains("--help") => Usage(),
    ["scoreboard", .. string[] rest] => Scoreboard.Run(rest, Console.Out),
    ["winters", ..] => await Winters.RunAsync(Console.Out),
    ["tune-cutout", ..] => await CutoutTuning.RunAsync(Console.Out),
    ["published-heaps"] => PublishedTable.Print(Console.Out),
    ["bound", ..] => await BoundCommand.RunAsync(args, Console.Out, Console.Error),
    ["steps", .. string[] rest] => Steps(rest),
    ["record-year", .. string[] rest] => await RecordYear.RunAsync(rest, Console.Out, Console.Error),
    ["record-device", .. string[] rest] => await RecordDevice.RunAsync(rest, Console.Out, Console.Error),
    ["record-replay", .. string[] rest] => await RecordReplaySpeed.RunAsync(rest, Console.Out, Console.Error),
    ["serve-again", .. string[] rest] => await ServeAgain.RunAsync(rest, Console.Out),
    ["page", .. string[] rest] => await PageCommand.RunAsync(rest, Console.Out, Console.Error),
    _ => Usage(),
};

static int Steps(string[] rest)
{
    BenchmarkRunner.Run<StepBenchmarks>(args: rest);
    BenchmarkRunner.Run<HorizonBenchmarks>(args: rest);
    return 0;
}

static int Usage()
{
    Console.Error.WriteLine(
        """
        dotnet run -c Release --project tests/PileController.Benchmarks -- winters      all draw rules on all winters, one table
        dotnet run -c Release --project tests/PileController.Benchmarks -- scoreboard   all draw rules on all winters and rigs [--cells quick] [--weather FILE …] [--policy RULE …] [--bound] [--cache DIR] [--json FILE]
        dotnet run -c Release --project tests/PileController.Benchmarks -- tune-cutout  the cut-out's two numbers, on the training winters
        dotnet run -c Release --project tests/PileController.Benchmarks -- bound        the best any planner could do; --help tells more
        dotnet run -c Release --project tests/PileController.Benchmarks -- steps        time and memory of one tick, and of one look of the horizon
        dotnet run -c Release --project tests/PileController.Benchmarks -- record-year   a year of the demo's ticks in the record, its size and the time of questions, beside SQLite and a document a sample [DIR] [--days N] [--alone] [--json FILE]
        dotnet run -c Release --project tests/PileController.Benchmarks -- record-device what days of it write to the block device under DIR, the file system's journal included: DIR [--days N] [--json FILE]
        dotnet run -c Release --project tests/PileController.Benchmarks -- record-replay 30 days of the demo's ticks decided again, and how fast [DIR] [--days N] [--json FILE]
        dotnet run -c Release --project tests/PileController.Benchmarks -- serve-again   how long after a kill the page answers again [--kills N]
        dotnet run -c Release --project tests/PileController.Benchmarks -- page          the page over most of a year of record in Chromium: first content, six channels, frames while dragging; then many watchers [DIR] [--days N] [--viewers N] [--minutes N] [--at URL of a page that is served already] [--json FILE]
        dotnet run -c Release --project tests/PileController.Benchmarks -- published-heaps  published woodchip heaps beside the heap model
        """);
    return 2;
}
