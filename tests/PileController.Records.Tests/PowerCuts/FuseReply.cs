using System.Buffers.Binary;

namespace PileController.Records.Tests.PowerCuts;

/// <summary>Answers of a FUSE file system, in the layout of linux/fuse.h, protocol 7.31.</summary>
internal static class FuseReply
{
    public const int MostWriteBytes = 131_072;
    private const int HeadBytes = 16;
    private const uint BigWrites = 1 << 5;
    private const uint DirectIo = 1;
    private const uint FolderMode = 0x41ED;
    private const uint FileMode = 0x8180;

    /// <summary>An answer with a body; <paramref name="error"/> is 0 or a negative error number.</summary>
    public static byte[] Of(ulong unique, int error, ReadOnlySpan<byte> body)
    {
        byte[] reply = new byte[HeadBytes + body.Length];
        BinaryPrimitives.WriteInt32LittleEndian(reply, reply.Length);
        BinaryPrimitives.WriteInt32LittleEndian(reply.AsSpan(4), error);
        BinaryPrimitives.WriteUInt64LittleEndian(reply.AsSpan(8), unique);
        body.CopyTo(reply.AsSpan(HeadBytes));
        return reply;
    }

    /// <summary>What this file system speaks and wants.</summary>
    public static byte[] Init()
    {
        byte[] body = new byte[64];
        BinaryPrimitives.WriteUInt32LittleEndian(body, 7);
        BinaryPrimitives.WriteUInt32LittleEndian(body.AsSpan(4), 31);
        BinaryPrimitives.WriteUInt32LittleEndian(body.AsSpan(12), BigWrites);
        BinaryPrimitives.WriteUInt16LittleEndian(body.AsSpan(16), 16);
        BinaryPrimitives.WriteUInt16LittleEndian(body.AsSpan(18), 12);
        BinaryPrimitives.WriteUInt32LittleEndian(body.AsSpan(20), MostWriteBytes);
        BinaryPrimitives.WriteUInt32LittleEndian(body.AsSpan(24), 1);
        return body;
    }

    /// <summary>An entry found by name.</summary>
    public static byte[] Entry(ulong node, long bytes)
    {
        byte[] body = new byte[128];
        BinaryPrimitives.WriteUInt64LittleEndian(body, node);
        Attributes(body.AsSpan(40), node, bytes);
        return body;
    }

    /// <summary>Attributes alone.</summary>
    public static byte[] Attributes(ulong node, long bytes)
    {
        byte[] body = new byte[104];
        Attributes(body.AsSpan(16), node, bytes);
        return body;
    }

    /// <summary>An opened file, past any cache.</summary>
    public static byte[] Opened()
    {
        byte[] body = new byte[16];
        BinaryPrimitives.WriteUInt32LittleEndian(body.AsSpan(8), DirectIo);
        return body;
    }

    /// <summary>So many bytes were written.</summary>
    public static byte[] Written(int bytes)
    {
        byte[] body = new byte[8];
        BinaryPrimitives.WriteInt32LittleEndian(body, bytes);
        return body;
    }

    private static void Attributes(Span<byte> to, ulong node, long bytes)
    {
        BinaryPrimitives.WriteUInt64LittleEndian(to, node);
        BinaryPrimitives.WriteInt64LittleEndian(to[8..], bytes);
        BinaryPrimitives.WriteInt64LittleEndian(to[16..], bytes / 512);
        BinaryPrimitives.WriteUInt32LittleEndian(to[60..], node == LoggedDrive.Root ? FolderMode : FileMode);
        BinaryPrimitives.WriteUInt32LittleEndian(to[64..], 1);
        BinaryPrimitives.WriteUInt32LittleEndian(to[80..], 4096);
    }
}
