using System.Reflection;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Readings;
using PileController.Records.Crash;
using PileController.Records.Packing;

namespace PileController.Records.Tests.Packing;

public sealed class DecisionDigestTests
{
    // One that is worth a line, has verdicts, a hold, a note and a night ahead.
    private static readonly Decision Whole = TrialTicks.First(2000).Select(t => t.Decision).First(d => d.Hands.Length > 0) with
    {
        Tonight = new Tonight(2, 4, 6, 7_000, 0.6, 900, 8_000, 9_000, 6_000, 1.5, 1.2, 2, false),
    };

    public static TheoryData<string> Leaves => [.. LeavesOf(typeof(Decision), "").Where(leaf => leaf != nameof(Decision.Why))];

    [Fact]
    public void Digest_SameDecisionTwice_IsTheSame() =>
        Assert.Equal(new DecisionDigest().Of(Whole), new DecisionDigest().Of(Whole with { Verdicts = [.. Whole.Verdicts] }));

    /// <summary>Fails for a field that is new in a decision and not in the digest yet.</summary>
    [Theory]
    [MemberData(nameof(Leaves))]
    public void Digest_AnyFieldChanged_Differs(string leaf)
    {
        Decision other = (Decision)Changed(Whole, leaf.Split('.'));

        Assert.NotEqual(new DecisionDigest().Of(Whole), new DecisionDigest().Of(other));
    }

    [Fact]
    public void Digest_LastBitOfANumberChanged_Differs() => Assert.NotEqual(
        new DecisionDigest().Of(Whole), new DecisionDigest().Of(Whole with { WantWatts = Math.BitIncrement(Whole.WantWatts) }));

    // What was decided before there were later channels and rows keeps its digest.
    [Fact]
    public void Digest_LaterRowsThatSayNothing_DoNotCount()
    {
        Verdict[] first = [.. Enumerable.Repeat(Verdict.Blind, InterlockTable.FirstCount)];
        ulong before = new DecisionDigest().Of(Whole with { Verdicts = first });

        Assert.Equal(before, new DecisionDigest().Of(Whole with { Verdicts = [.. first, Verdict.Clear] }));
        Assert.NotEqual(before, new DecisionDigest().Of(Whole with { Verdicts = [.. first, Verdict.Pending] }));
    }

    [Fact]
    public void Digest_AnyReadingChanged_Differs()
    {
        foreach (ChannelInfo channel in ChannelTable.All)
        {
            Reading was = Whole.Readings[channel.Channel];
            foreach (Reading now in new[]
            {
                was with { Quanta = was.Quanta + 1 }, was with { AgeMilliseconds = was.AgeMilliseconds + 1 },
                was with { Quality = was.Quality + 1 },
            })
            {
                Decision other = Whole with { Readings = Whole.Readings.With(channel.Channel, now) };
                Assert.NotEqual(new DecisionDigest().Of(Whole), new DecisionDigest().Of(other));
            }
        }
    }

    private static IEnumerable<string> LeavesOf(Type type, string path)
    {
        foreach (PropertyInfo property in type.GetProperties(BindingFlags.Instance | BindingFlags.Public))
        {
            // What is computed from the others has no setter.
            if (property.GetSetMethod() is null)
            {
                continue;
            }

            bool nested = property.PropertyType.Namespace!.StartsWith("PileController", StringComparison.Ordinal)
                && property.PropertyType is { IsEnum: false, IsArray: false } && property.PropertyType != typeof(RigReadings);
            foreach (string leaf in nested ? LeavesOf(property.PropertyType, property.Name + ".") : [property.Name])
            {
                yield return path + leaf;
            }
        }
    }

    private static object Changed(object value, ReadOnlySpan<string> path)
    {
        PropertyInfo property = value.GetType().GetProperty(path[0])!;
        object copy = typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(value, null)!;
        object? old = property.GetValue(value);
        property.SetValue(copy, path.Length > 1 ? Changed(old!, path[1..]) : Another(old, property.PropertyType));
        return copy;
    }

    private static object Another(object? old, Type type) => old switch
    {
        double number => number + 1,
        long number => number + 1,
        int number => number + 1,
        bool flag => !flag,
        string text => text + "!",
        null => "something",
        Verdict[] verdicts => verdicts.Append(Verdict.Acting).ToArray(),
        HandHold[] hands => new[] { hands[0] with { Who = "another" } },
        RigReadings => RigReadings.None,
        Enum value => Enum.ToObject(type, Convert.ToInt32(value) ^ 1),
        _ => throw new NotSupportedException($"This test does not know how to change a {type.Name}."),
    };
}
