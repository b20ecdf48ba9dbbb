namespace PileController.Records.Storage;

/// <summary>A stream whose writes never throw: what fails is noted.</summary>
internal sealed class NotingStream(Stream inner, WriteFailure failure) : Stream
{
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
    public override void Flush() => failure.Try(inner.Flush);

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, count);

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);

    /// <inheritdoc/>
    public override void SetLength(long value) => failure.Try(() => inner.SetLength(value));

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => failure.Try(() => inner.Write(buffer, offset, count));
}
