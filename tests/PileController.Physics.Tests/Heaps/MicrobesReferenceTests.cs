using System.Globalization;
using System.Text.RegularExpressions;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

public partial class MicrobesReferenceTests
{
    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("microbes");

    private static readonly Dictionary<string, Func<double, double>> Factors = new()
    {
        ["Haug temperature factor"] = Microbes.HaugTemperature,
        ["Haug moisture factor"] = percent => Microbes.Moisture(percent / 100),
        ["Haug free-air-space factor"] = percent => Microbes.FreeAirSpace(percent / 100),
        ["Haug oxygen factor"] = Microbes.Oxygen,
        ["Rosso temperature factor"] = Microbes.Thermophilic.At,
        ["Haug factor peak temperature"] = _ => Peak(),
        ["Haug factor zero crossing"] = _ => ZeroCrossing(),
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Microbes_AtPublishedConditions_AgreeWithTheReference(string id)
    {
        string[] parts = Rows[id].Conditions.Split(": ");
        double at = double.Parse(Number().Match(parts[1]).Value is { Length: > 0 } digits ? digits : "0", CultureInfo.InvariantCulture);
        Rows[id].Check(Factors[parts[0]](at));
    }

    [GeneratedRegex(@"\d+(?=%| °C)")]
    private static partial Regex Number();

    // Thirds of a bracket round the one peak.
    private static double Peak()
    {
        double low = 60;
        double high = 80;
        while (high - low > 1e-6)
        {
            double third = (high - low) / 3;
            if (Microbes.HaugTemperature(low + third) < Microbes.HaugTemperature(high - third))
            {
                low += third;
            }
            else
            {
                high -= third;
            }
        }

        return 0.5 * (low + high);
    }

    private static double ZeroCrossing()
    {
        double alive = 72;
        double dead = 90;
        while (dead - alive > 1e-9)
        {
            double middle = 0.5 * (alive + dead);
            if (Microbes.HaugTemperature(middle) > 0)
            {
                alive = middle;
            }
            else
            {
                dead = middle;
            }
        }

        return 0.5 * (alive + dead);
    }
}
