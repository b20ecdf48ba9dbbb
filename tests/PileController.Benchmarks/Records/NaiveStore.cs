using LiteDB;
using PileController.Control.Decisions;
using PileController.Records;

namespace PileController.Benchmarks.Records;

/// <summary>One LiteDB document a sample, as a first attempt would write it: committed every tick, by LiteDB's own file handling.</summary>
internal static class NaiveStore
{
    /// <summary>Writes some days.</summary>
    public static StoreFigures Write(TrialDisk trial, string name, int days, TextWriter progress)
    {
        LiteDatabase store = new(Path.Combine(trial.Folder(name), "samples.db"));
        ILiteCollection<BsonDocument> samples = store.GetCollection("samples");
        samples.EnsureIndex("utc");
        ILiteCollection<BsonDocument> decisions = store.GetCollection("decisions");
        long commits = 0;
        return Tally.Of("LiteDB, a document a sample; not synced", days, Keep, End, progress);

        void Keep(TickEntry tick)
        {
            store.BeginTrans();
            samples.Insert(TickRow.Of(tick).Select((cell, n) => new BsonDocument
            {
                ["utc"] = tick.Decision.At.UtcMilliseconds,
                ["series"] = RecordSeries.All[n].Name,
                ["value"] = cell is { } value ? value : BsonValue.Null,
            }));
            if (tick.Decision.Kinds != DecisionKinds.Steady)
            {
                decisions.Insert(new BsonDocument { ["utc"] = tick.Decision.At.UtcMilliseconds, ["why"] = tick.Decision.Why });
            }

            store.Commit();
            commits++;
        }

        (long Frames, long Commits, double Megabytes) End()
        {
            store.Dispose();
            return (0, commits, trial.Megabytes(name));
        }
    }
}
