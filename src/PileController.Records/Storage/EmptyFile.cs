using LiteDB;

namespace PileController.Records.Storage;

/// <summary>Makes a file of the store with nothing in it.</summary>
internal static class EmptyFile
{
    /// <summary>Makes one with all collections of its kind. It gets its name only when it is whole.</summary>
    /// <param name="disk">Where.</param>
    /// <param name="kind">Of which kind.</param>
    /// <param name="name">Its plain name.</param>
    public static void Make(IRecordDisk disk, FileKind kind, string name)
    {
        string making = FileKind.WhileMaking(name);
        disk.Delete(making);
        disk.Delete(StoreEngine.LogNameOf(making));
        using (StoreEngine engine = new(disk, making))
        {
            BsonDocument seed = new() { ["_id"] = 0L };
            engine.Database.BeginTrans();
            foreach (string collection in kind.Collections)
            {
                engine.Database.GetCollection(collection).Insert(seed);
                engine.Database.GetCollection(collection).Delete(0L);
            }

            engine.Database.Commit();
            engine.Checkpoint(force: true);
        }

        disk.Delete(StoreEngine.LogNameOf(making));
        disk.Rename(making, name);
    }
}
