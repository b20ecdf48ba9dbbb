using System.Buffers.Binary;
using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>What was found in a tail file.</summary>
/// <param name="Base">Its first frame, or null when that is missing.</param>
/// <param name="Packs">The batches of all whole frames, in order.</param>
/// <param name="SoundBytes">Length up to the end of the last whole frame.</param>
/// <param name="TornBytes">Bytes after that: a frame that was being written.</param>
/// <param name="DamagedPlaces">Places where sound frames follow something that is none, or stand twice: damage, not a tear.</param>
internal sealed record TailContents(
    TailBase? Base, IReadOnlyList<PackedTicks> Packs, int SoundBytes, int TornBytes, int DamagedPlaces)
{
    /// <summary>Ticks whose batch has lost a memory with a frame that is damaged.</summary>
    public int TicksWithoutMemory => Packs.Where(pack => pack.Batch.Text().IsAnyLost).Sum(pack => pack.Batch.Count);

    /// <summary>Reads a whole tail.</summary>
    public static TailContents Of(byte[] bytes)
    {
        TailBase? start = null;
        List<PackedTicks> packs = [];
        TailMemories known = TailMemories.None;
        int damaged = 0;
        int sound = 0;
        int at = 0;
        while (at < bytes.Length)
        {
            if (!TailFrame.TryRead(bytes, at, out byte kind, out byte[] body, out int next))
            {
                at = NextFrame(bytes, at + 1);
                damaged += at < bytes.Length ? 1 : 0;
                continue;
            }

            if (kind == TailFrame.BaseKind)
            {
                start = JsonSerializer.Deserialize<TailBase>(body, RecordJson.Options);
            }
            else
            {
                damaged += Take(kind, body, packs, ref known);
            }

            at = next;
            sound = next;
        }

        return new TailContents(start, packs, sound, bytes.Length - sound, damaged);
    }

    // A disk may give an old piece of a file in the place of a new one: ticks that are there already are not taken again.
    private static int Take(byte kind, byte[] body, List<PackedTicks> packs, ref TailMemories known)
    {
        long last = packs.Count == 0 ? 0 : packs[^1].Batch.Head.LastSequence;
        (IReadOnlyList<PackedTicks> found, TailMemories after) = TailFrame.Read(kind, body, known);
        PackedTicks[] fresh = [.. found.Where(pack => pack.Batch.FirstSequence > last)];
        packs.AddRange(fresh);
        if (found.Count != fresh.Length)
        {
            return 1;
        }

        known = after;
        return 0;
    }

    private static int NextFrame(byte[] bytes, int at)
    {
        Span<byte> mark = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32LittleEndian(mark, TailFrame.Mark);
        while (at < bytes.Length)
        {
            int found = bytes.AsSpan(at).IndexOf(mark);
            if (found < 0)
            {
                break;
            }

            at += found;
            if (TailFrame.TryRead(bytes, at, out _, out _, out _))
            {
                return at;
            }

            at++;
        }

        return bytes.Length;
    }
}
