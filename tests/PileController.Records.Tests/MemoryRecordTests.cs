namespace PileController.Records.Tests;

public sealed class MemoryRecordTests : PileRecordContract
{
    protected override IPileRecord Make() => new MemoryRecord();
}
