using System.Text.Json;
using PileController.Settings.Changes;

namespace PileController.Panel.Editing;

/// <summary>One value that would be another.</summary>
internal sealed record DifferenceBody(string Path, JsonElement Was, JsonElement Is);

/// <summary>One thing wrong with an edit.</summary>
internal sealed record EditFaultBody(string Path, string Given, string Allowed, string Sentence);

/// <summary>What an edit would come to, or came to.</summary>
/// <param name="Fingerprint">Of the settings it makes.</param>
/// <param name="Faults">What is wrong; nothing is changed while there is anything.</param>
/// <param name="Differences">What would be another.</param>
internal sealed record EditBody(string Fingerprint, IReadOnlyList<EditFaultBody> Faults, IReadOnlyList<DifferenceBody> Differences)
{
    /// <summary>As told.</summary>
    public static EditBody Of(EditOutcome outcome) => new(
        outcome.Settings.Fingerprint(),
        [.. outcome.Faults.Select(fault => new EditFaultBody(fault.Path, fault.Given, fault.Allowed, fault.Sentence))],
        [.. outcome.Differences.Select(one => new DifferenceBody(
            one.Path, JsonSerializer.Deserialize<JsonElement>(one.Was), JsonSerializer.Deserialize<JsonElement>(one.Is)))]);
}
