namespace PileController.Records.Tests;

/// <summary>A folder of a test's own that is gone afterwards.</summary>
public sealed class TrialFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("pile-record-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
