using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>One thing that must hold between several settings.</summary>
/// <param name="Paths">The settings it looks at; it is left out when one of them is faulty already.</param>
/// <param name="Find">What is wrong, if anything.</param>
internal sealed record Check(IReadOnlyList<string> Paths, Func<PileSettings, FileReading, IEnumerable<Finding>> Find)
{
    /// <summary>A check of one finding at most.</summary>
    public static Check That(string path, IReadOnlyList<string> others, Func<PileSettings, string?> whatIsAllowed, Func<PileSettings, string> given) =>
        new([path, .. others], (s, _) => whatIsAllowed(s) is string allowed ? [new Finding(path, given(s), allowed)] : []);
}

/// <summary>What a check found.</summary>
/// <param name="Path">Where.</param>
/// <param name="Given">What is given, default or not.</param>
/// <param name="Allowed">What is allowed instead.</param>
internal sealed record Finding(string Path, string Given, string Allowed);
