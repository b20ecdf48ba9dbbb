using System.Text.Json;
using PileController.Control;
using PileController.Records.Packing;

namespace PileController.Records.Tests;

/// <summary>Compares memories by all they hold: a record that holds arrays is equal only to itself.</summary>
internal static class SameMemory
{
    public static void Assert(Memory? expected, Memory? actual) => Xunit.Assert.Equal(
        JsonSerializer.Serialize(expected, RecordJson.Options), JsonSerializer.Serialize(actual, RecordJson.Options));
}
