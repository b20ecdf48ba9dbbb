using LiteDB;
using PileController.Control.Decisions;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>An entry as a LiteDB document: a head with its marks and the bytes, or, in all collections but the first, the bytes alone.</summary>
internal static class EntryDocument
{
    /// <summary>What to select for a head.</summary>
    public const string HeadFields = "{_id,n,f,t,k,m,c}";

    /// <summary>The document of the first collection.</summary>
    public static BsonDocument Of(FileEntry entry, byte[] bytes)
    {
        BsonDocument document = new()
        {
            ["_id"] = entry.Head.FirstSequence,
            ["n"] = entry.Head.Count,
            ["f"] = entry.Head.LeastUtc,
            ["t"] = entry.Head.MostUtc,
            ["k"] = (int)entry.Head.Kinds,
            ["p"] = bytes,
        };
        if (entry.Marks != LineMarks.Unknown)
        {
            document["m"] = entry.Marks.Modes;
            document["c"] = entry.Marks.Curbs;
        }

        return document;
    }

    /// <summary>The document of another collection.</summary>
    public static BsonDocument Of(long id, byte[] bytes) => new() { ["_id"] = id, ["p"] = bytes };

    /// <summary>The head in a document.</summary>
    public static BatchHead Head(BsonDocument document) => new(
        document["_id"].AsInt64, document["n"].AsInt32, document["f"].AsInt64, document["t"].AsInt64,
        (DecisionKinds)document["k"].AsInt32);

    /// <summary>The marks in a document; unknown in one of an earlier build.</summary>
    public static LineMarks Marks(BsonDocument document) =>
        document["m"].IsInt64 && document["c"].IsInt64 ? new LineMarks(document["m"].AsInt64, document["c"].AsInt64) : LineMarks.Unknown;
}
