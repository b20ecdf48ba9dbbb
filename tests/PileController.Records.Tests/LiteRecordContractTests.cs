namespace PileController.Records.Tests;

/// <summary>The contract on disk, with blocks small enough that ticks lie in the store, the tail and memory at once.</summary>
public sealed class LiteRecordContractTests : PileRecordContract, IDisposable
{
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    protected override IPileRecord Make() =>
        LiteRecord.Open(new RecordOptions { DataDirectory = _folder.Path, BlockTicks = 64, FileTicks = 360 });
}
