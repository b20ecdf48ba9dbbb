namespace PileController.Rigs.Faults;

/// <summary>What makes no sense about a fault.</summary>
/// <param name="Field">The field: kind, channel or size.</param>
/// <param name="Given">What was given, or "missing".</param>
/// <param name="Allowed">What is allowed instead.</param>
public sealed record FaultComplaint(string Field, string Given, string Allowed)
{
    /// <summary>All of it in one sentence.</summary>
    public string Sentence => $"{Field} is {Given}; allowed: {Allowed}.";
}
