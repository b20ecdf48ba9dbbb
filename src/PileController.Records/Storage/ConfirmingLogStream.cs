namespace PileController.Records.Storage;

/// <summary>
/// The log of a LiteDB file made safe against a power cut. LiteDB 5.0.21 never syncs its log and its pages carry no
/// checksum, so a transaction counts as confirmed as soon as the page that says so can be read. Here that page is
/// written in two steps with a sync round each: first all that goes before it, then its tail, last its first sector,
/// which holds the confirming byte. A cut at any point leaves the transaction whole or absent.
/// </summary>
internal sealed class ConfirmingLogStream(Stream inner) : Stream
{
    private const int PageBytes = 8192;
    private const int SectorBytes = 512;

    // Offset of the confirming flag in a page's head (LiteDB 5.0.21, BasePage.P_IS_CONFIRMED).
    private const int ConfirmingByte = 18;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => true;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => inner.Length;

    /// <inheritdoc/>
    public override long Position
    {
        get => inner.Position;
        set => inner.Position = value;
    }

    /// <inheritdoc/>
    public override void Flush() => inner.Flush();

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    /// <inheritdoc/>
    public override void SetLength(long value)
    {
        inner.SetLength(value);
        inner.Flush();
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count)
    {
        bool confirms = count == PageBytes && buffer[offset + ConfirmingByte] != 0;
        if (!confirms)
        {
            inner.Write(buffer, offset, count);
            return;
        }

        long page = inner.Position;
        inner.Flush();
        inner.Position = page + SectorBytes;
        inner.Write(buffer, offset + SectorBytes, count - SectorBytes);
        inner.Flush();
        inner.Position = page;
        inner.Write(buffer, offset, SectorBytes);
        inner.Flush();
        inner.Position = page + PageBytes;
    }
}
