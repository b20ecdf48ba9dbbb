namespace PileController.Records.Storage;

/// <summary>
/// A file that may be written to and does not change: from the first write on it is a copy in memory. LiteDB marks a
/// file in which it meets damage, and a look must leave no mark.
/// </summary>
internal sealed class ForgettingStream(Stream file) : Stream
{
    private Stream _now = file;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => true;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => _now.Length;

    /// <inheritdoc/>
    public override long Position
    {
        get => _now.Position;
        set => _now.Position = value;
    }

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => _now.Read(buffer, offset, count);

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => _now.Seek(offset, origin);

    /// <inheritdoc/>
    public override void SetLength(long value) => Copy().SetLength(value);

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Copy().Write(buffer, offset, count);

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _now.Dispose();
        }

        base.Dispose(disposing);
    }

    private Stream Copy()
    {
        if (_now is not MemoryStream)
        {
            long position = _now.Position;
            MemoryStream copy = new();
            _now.Position = 0;
            _now.CopyTo(copy);
            _now.Dispose();
            copy.Position = position;
            _now = copy;
        }

        return _now;
    }
}
