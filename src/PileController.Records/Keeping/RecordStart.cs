using System.Text.Json;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>Where a record goes on: what its tail and store are found to hold when it is opened to be written.</summary>
/// <param name="Store">The store.</param>
/// <param name="Tail">The tail, ready to be written.</param>
/// <param name="Pending">What is safe in it and not in the store.</param>
/// <param name="LastSequence">Last tick that was ever acknowledged, as far as can be told; 0 for none.</param>
/// <param name="Memory">What that tick handed on, or the newest before it that can be read; null when there is none.</param>
internal sealed record RecordStart(
    RecordStore Store, TailFile Tail, IReadOnlyList<PackedTicks> Pending, long LastSequence, JsonElement? Memory)
{
    /// <summary>Reads it, sets aside what is broken, and tells what is damaged.</summary>
    public static RecordStart Of(IRecordDisk disk, int fileTicks, Faults faults)
    {
        TailFile tail = Open(disk, faults);
        RecordStore? store = null;
        try
        {
            store = RecordStore.Open(disk, fileTicks, setAside: true, tail.Found.Base?.OpenFiles);
            IReadOnlyList<SetAsideFile> aside = disk.SetAside();
            faults.Aside(aside);
            Tell(tail.Found, store, isAnyAside: aside.Count > 0, faults);
            return Of(tail, store, faults);
        }
        catch
        {
            store?.Dispose();
            tail.Dispose();
            throw;
        }
    }

    private static RecordStart Of(TailFile tail, RecordStore store, Faults faults)
    {
        long stored = store.Ticks.LastSequence;
        TailBase? start = tail.Found.Base;
        PackedTicks[] pending = [.. tail.Found.Packs.Where(pack => pack.Batch.FirstSequence > stored)];
        long last = pending.Length > 0
            ? pending[^1].Batch.Head.LastSequence
            : Math.Max(Math.Max(stored, start?.LastSequence ?? 0), store.Lasting.LastSequence);
        JsonElement? memory = PackedTicks.NewestMemory(pending) ?? MemoryOf(start, store, faults) ?? LastSummedUp(store, faults);
        return new RecordStart(store, tail, pending, last, memory);
    }

    private static JsonElement? MemoryOf(TailBase? start, RecordStore store, Faults faults) =>
        start is null || store.Ticks.LastSequence > start.LastSequence
            ? LastStored(store, faults) ?? start?.Memory
            : start.Memory;

    private static TailFile Open(IRecordDisk disk, Faults faults)
    {
        try
        {
            return TailFile.Open(disk);
        }
        catch (Exception exception) when (exception is InvalidDataException or JsonException)
        {
            faults.Stand($"The tail could not be read and was set aside: {exception.Message}");
            disk.Quarantine(TailFile.Name);
            return TailFile.Open(disk);
        }
    }

    private static void Tell(TailContents tail, RecordStore store, bool isAnyAside, Faults faults)
    {
        foreach (BrokenFile broken in store.Broken)
        {
            string sentence = $"A file was broken or gone; what there is of it was set aside: {broken}.";
            if (broken.IsGone)
            {
                faults.Damaged(sentence);
            }
            else
            {
                faults.Stand(sentence);
            }
        }

        if (tail.DamagedPlaces > 0)
        {
            faults.Stand($"The tail was damaged in {tail.DamagedPlaces} places; a copy was set aside.");
        }

        if (tail.TicksWithoutMemory is > 0 and int ticks)
        {
            faults.Stand($"{ticks} ticks of the tail are told by what differs from a frame that is damaged: they are kept, and cannot be decided again.");
        }

        // Which of the two it is cannot be told from what is left.
        if (tail.TornBytes > 0)
        {
            faults.Stand($"The tail ended in {tail.TornBytes} bytes that make no whole frame: they were being written when the power went, or are damaged.");
        }

        if (tail.Base is { } start && start.LastSequence > store.Ticks.LastSequence)
        {
            // What was set aside explains it; otherwise this is all that tells of a loss.
            Action<string> tell = isAnyAside ? faults.Stand : faults.Damaged;
            tell($"The store ends at tick {store.Ticks.LastSequence}; it has held tick {start.LastSequence}.");
        }
    }

    private static JsonElement? LastStored(RecordStore store, Faults faults)
    {
        StoredBatch? last = new RecordContents(store, []).StoredAfter(store.Ticks.LastSequence - 1, faults.Damaged).LastOrDefault();
        try
        {
            return last?.Batch().Text().HandedOn;
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception))
        {
            faults.Damaged(last!.Damage(exception));
            return null;
        }
    }

    // The last resort when neither tail nor ticks can be read: what the last day that was summed up handed on.
    private static JsonElement? LastSummedUp(RecordStore store, Faults faults)
    {
        StoredDay? last = new RecordContents(store, []).Days(TimeRange.All, faults.Damaged).LastOrDefault();
        try
        {
            return last?.Text().Memory;
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
        {
            faults.Damaged(last!.Damage(exception));
            return null;
        }
    }
}
