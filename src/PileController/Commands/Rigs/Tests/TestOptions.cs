using System.CommandLine;
using PileController.Access;
using PileController.Commands.Shell;
using PileController.Commissioning;
using PileController.Control.Readings;
using PileController.Settings.Kinds;
using PileController.Units;

namespace PileController.Commands.Rigs.Tests;

/// <summary>The options of one test of the rig.</summary>
internal sealed class TestOptions
{
    private static readonly WordKind<Channel> Probe = new([.. ChannelTable.All.Where(row => row.Unit == "°C").Select(row => (row.Name, row.Channel))]);

    private readonly Option<Channel[]>? _probes;
    private readonly Option<double>? _bath;
    private readonly Option<int>? _runs;
    private readonly Option<double>? _fill;
    private readonly Option<double[]>? _duties;
    private readonly Option<double>? _stand;

    /// <summary>The options of a test.</summary>
    /// <param name="id">Its name.</param>
    public TestOptions(string id)
    {
        TestAsk usual = new();
        _probes = id switch
        {
            "find" => Ask.Several("--probe", "On the simulated rig: the probe in the simulated hand, supply when left out.", Probe),
            "ice" => Ask.Several("--probe", "A probe in the ice; supply and return when left out.", Probe),
            _ => null,
        };
        _bath = id == "ice" ? Ask.Quantity("--bath", "How far the ice may be from 0 °C.", "K", Dimension.TemperatureDifference, 0, 2).Unless(usual.BathKelvin) : null;
        _runs = id == "bucket" ? Ask.Whole("--runs", "How often the bucket is filled, 2 to 10; 3 when left out.", 2, 10).Unless(usual.Runs) : null;
        _fill = id == "bucket" ? Ask.Quantity("--fill", "How long the pump fills the bucket; 120 s when left out.", "s", Dimension.Time, 20, 1800).Unless(usual.FillSeconds) : null;
        _duties = id == "pump-curve" ? Ask.Several("--duty", "A duty of the pump to measure at.", PileController.Settings.Kinds.Kind.Share(0.1, 1)) : null;
        Out = id == "pump-curve" ? new Option<string?>("--out") { Description = "Where to write the pump's file, for calc pump." } : null;
        _stand = id == "leak" ? Ask.Quantity("--stand", "How long the loop stands; 30 min when left out.", "min", Dimension.Time, 5, 1440).Unless(usual.Minutes) : null;
    }

    /// <summary>The settings file.</summary>
    public Option<string?> Settings { get; } = new("--settings") { Description = "The settings file; the simulated demo rig when left out." };

    /// <summary>The folder of the record.</summary>
    public Option<string?> Data { get; } = new("--data") { Description = "Folder of the record: the result is kept on the sheet there. A real rig needs it; the service must not run meanwhile." };

    /// <summary>Who makes the test.</summary>
    public Option<string?> Who { get; } = Ask.Of<string?>("--who", "Who makes the test and signs for it, 1 to 40 characters; needed with --data.", ReadWho);

    /// <summary>Whether to go on without being asked.</summary>
    public Option<bool> Yes { get; } = new("--yes") { Description = "Do not ask before something moves; what moves is still said." };

    /// <summary>The answer for machines.</summary>
    public Option<bool> Json { get; } = Ask.Json();

    /// <summary>Where the pump's file goes; null for other tests.</summary>
    public Option<string?>? Out { get; }

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        foreach (Option? option in (Option?[])[_probes, _bath, _runs, _fill, _duties, Out, _stand, Settings, Data, Who, Yes, Json])
        {
            if (option is not null)
            {
                command.Options.Add(option);
            }
        }

        command.Validators.Add(result =>
        {
            if (result.GetResult(Data) is { Implicit: false } && result.GetResult(Who) is not { Implicit: false })
            {
                result.AddError($"{Who.Name} is missing; allowed: the name that signs on the sheet, 1 to 40 characters");
            }

            if (_duties is not null && result.GetResult(_duties) is { Implicit: false, Tokens.Count: < 2 })
            {
                result.AddError($"{_duties.Name} is given once; allowed: twice or more, a curve needs two points");
            }
        });
    }

    /// <summary>What the test is told.</summary>
    public TestAsk Told(ParseResult parse)
    {
        TestAsk usual = new();
        return new TestAsk
        {
            Channels = _probes is null ? [] : parse.GetValue(_probes)!,
            BathKelvin = _bath is null ? usual.BathKelvin : parse.GetValue(_bath),
            Runs = _runs is null ? usual.Runs : parse.GetValue(_runs),
            FillSeconds = _fill is null ? usual.FillSeconds : parse.GetValue(_fill),
            Duties = _duties is null ? [] : parse.GetValue(_duties)!,
            Minutes = _stand is null ? usual.Minutes : parse.GetValue(_stand),
        };
    }

    private static bool ReadWho(string text, out string? value, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out string? allowed)
    {
        value = text.Trim();
        allowed = TypedText.Allows(value, 40) ? null : "1 to 40 characters of text";
        return allowed is null;
    }
}
