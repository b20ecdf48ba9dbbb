namespace PileController.Records.Tests.Storage;

/// <summary>An open simulated file.</summary>
internal sealed class SimulatedStream(SimulatedDisk disk, SimulatedFile file) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => file.Length;

    public override long Position { get; set; }

    public override void Flush()
    {
        disk.Step();
        file.Flush();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        int read = file.Read(Position, buffer.AsSpan(offset, count));
        Position += read;
        return read;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => Length + offset,
    };

    public override void SetLength(long value)
    {
        disk.Step();
        file.SetLength((int)value);
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        disk.Step();
        file.Write(Position, buffer.AsSpan(offset, count));
        Position += count;
    }
}
