using System.Globalization;
using System.Text.RegularExpressions;
using PileController.Alarms;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Settings;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Whatever the controller says in metric units, the page can say in the other ones.</summary>
public sealed partial class SentenceUnitsTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Retell =
        """
        async ({ units, heat, texts }) => {
          localStorage.setItem("units", units);
          const { inUnits } = await import(`/js/units.js?${units}`);
          return texts.map((text) => inUnits(text, heat));
        }
        """;

    private static readonly (string Metric, string American)[] Sentences =
    [
        .. Read().Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Select(one => one.Trim().Split('\n')).Where(lines => lines.Length == 3)
            .Select(lines => (lines[1], lines[2])),
    ];

    [Fact]
    public async Task Sentence_AnyOfTheController_SaysWhatItSaysInTheOtherUnits()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("more");

        string[] told = await bench.Page.EvaluateAsync<string[]>(Retell, new { units = "american", heat = true, texts = Sentences.Select(one => one.Metric) });

        Assert.InRange(Sentences.Length, 40, 1000);
        Assert.All(Sentences.Zip(told), pair => AssertSame(pair.First.American, pair.Second));
    }

    [Fact]
    public async Task Alarm_AnyOfThem_LeavesNoMetricTemperatureOrFlow()
    {
        AlarmPlace place = new(PileSettings.AlderBank.Control, InterlockTable.All, [.. Enum.GetValues<Channel>()]);
        string[] texts = [.. AlarmTable.Of(place).Rows.SelectMany(row => new[] { row.Action, row.Consequence, row.Cause })];
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("more");

        string[] told = await bench.Page.EvaluateAsync<string[]>(Retell, new { units = "american", heat = false, texts });

        Assert.Contains(texts, text => text.Contains("°C", StringComparison.Ordinal));
        Assert.All(told, text => Assert.DoesNotMatch("°C|L/min", text));
        Assert.All(texts.Zip(told), pair => Assert.Equal(Figure().Count(pair.First), Figure().Count(pair.Second)));
    }

    [Fact]
    public async Task Sentence_ForAReaderOfMetricUnits_StaysAsItIs()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("more");
        string[] texts = [.. Sentences.Select(one => one.Metric)];

        Assert.Equal(texts, await bench.Page.EvaluateAsync<string[]>(Retell, new { units = "metric", heat = true, texts }));
    }

    // The words are the same, and so is each figure, but for what the two ways round away.
    private static void AssertSame(string expected, string told)
    {
        Assert.Equal(Figure().Replace(expected, "#"), Figure().Replace(told, "#"));
        foreach ((Match one, Match other) in Figure().Matches(expected).Zip(Figure().Matches(told)))
        {
            Assert.Equal(one.Groups["unit"].Value, other.Groups["unit"].Value);

            // Tens of watts are 34 BTU/h, tenths of a kelvin 0.2 °F, tenths of a litre 0.03 gal/min.
            double grain = one.Groups["unit"].Value switch { "BTU/h" => 34.2, "°F" => 0.18, "gal/min" => 0.027, _ => 0 };
            double mine = Number(one);
            Assert.InRange(Number(other), mine - grain, mine + grain);
        }
    }

    private static double Number(Match figure) =>
        double.Parse(GroupSeparator().Replace(figure.Groups["number"].Value, "").Replace('−', '-'), CultureInfo.InvariantCulture);

    private static string Read()
    {
        using StreamReader reader = new(typeof(SentenceUnitsTests).Assembly.GetManifestResourceStream("Sentences.approved.txt")!);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    [GeneratedRegex(@"(?<number>[−-]?\d+(?:[ ,\u00a0\u202f]\d{3})*(?:\.\d+)?)[ \u00a0](?<unit>°[CF]|BTU/h|gal/min|L/min|W\b|K\b|%)")]
    private static partial Regex Figure();

    [GeneratedRegex(@"[ ,\u00a0\u202f]")]
    private static partial Regex GroupSeparator();
}
