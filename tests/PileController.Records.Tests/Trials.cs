using System.Globalization;

namespace PileController.Records.Tests;

/// <summary>How often a trial is made: seldom in the suite, often where a variable of the environment asks for it.</summary>
internal static class Trials
{
    public static int Of(string variable, int otherwise) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } given
            ? int.Parse(given, CultureInfo.InvariantCulture)
            : otherwise;
}
