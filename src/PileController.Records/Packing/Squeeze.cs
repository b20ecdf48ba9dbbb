using System.IO.Compression;

namespace PileController.Records.Packing;

/// <summary>General compression of one section, used only where it pays.</summary>
internal static class Squeeze
{
    // Below this a section's own packing beats the compressor's framing.
    private const int LeastBytes = 96;
    private const int Quality = 2;
    private const int WindowBits = 16;

    /// <summary>Compresses <paramref name="plain"/> into <paramref name="to"/>. False when it would not be smaller.</summary>
    public static bool TryPack(ReadOnlySpan<byte> plain, Span<byte> to, out int written)
    {
        written = 0;
        return plain.Length >= LeastBytes
            && BrotliEncoder.TryCompress(plain, to[..Math.Min(to.Length, plain.Length - 1)], out written, Quality, WindowBits);
    }

    /// <summary>Undoes <see cref="TryPack"/>; <paramref name="plain"/> has exactly the length of the plain section.</summary>
    /// <exception cref="InvalidDataException">The section is damaged.</exception>
    public static void Unpack(ReadOnlySpan<byte> packed, Span<byte> plain)
    {
        if (!BrotliDecoder.TryDecompress(packed, plain, out int written) || written != plain.Length)
        {
            throw new InvalidDataException("A compressed section cannot be expanded.");
        }
    }
}
