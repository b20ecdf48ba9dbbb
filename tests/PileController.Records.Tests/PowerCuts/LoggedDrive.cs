using System.Buffers.Binary;
using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace PileController.Records.Tests.PowerCuts;

/// <summary>
/// A drive in memory that the system sees as the file <c>drive</c> of a FUSE file system, and so can hold a real file
/// system by a loop device. Every write and flush the system sends it is logged in order, and so is what goes to the
/// file <c>told</c>: what a flush has not followed may be lost.
/// </summary>
internal sealed class LoggedDrive : IDisposable
{
    public const ulong Root = 1;
    private const ulong DriveNode = 2;
    private const ulong ToldNode = 3;
    private const int HeadBytes = 40;
    private const int WriteHeadBytes = 40;
    private const int NotFound = -2;
    private const int NotSupported = -95;
    private const int NotThere = -38;
    private const int Detach = 2;

    private readonly string _folder;
    private readonly byte[] _bytes;
    private readonly SafeFileHandle _device;
    private readonly Thread _server;

    private LoggedDrive(string folder, byte[] bytes, SafeFileHandle device)
    {
        _folder = folder;
        _bytes = bytes;
        _device = device;
        _server = new Thread(Serve) { IsBackground = true, Name = "drive" };
        _server.Start();
    }

    /// <summary>All that came.</summary>
    public DriveLog Log { get; } = new();

    /// <summary>The file that is the drive.</summary>
    public string DrivePath => Path.Combine(_folder, "drive");

    /// <summary>The file to which a writer tells what it has done.</summary>
    public string ToldPath => Path.Combine(_folder, "told");

    /// <summary>Shows a drive in an empty folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="bytes">What is on it; written to.</param>
    /// <exception cref="Win32Exception">The system refuses.</exception>
    public static LoggedDrive Show(string folder, byte[] bytes)
    {
        SafeFileHandle device = File.OpenHandle("/dev/fuse", FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        string options = $"fd={device.DangerousGetHandle()},rootmode=40000,user_id=0,group_id=0";
        if (Mount("drive", folder, "fuse", 0, options) != 0)
        {
            int error = Marshal.GetLastPInvokeError();
            device.Dispose();
            throw new Win32Exception(error, $"A FUSE file system cannot be mounted (error {error}).");
        }

        return new LoggedDrive(folder, bytes, device);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // The loop device lets go of the drive a moment after its file system is unmounted; the server sees the end then.
        _ = Unmount(_folder, Detach);
        _server.Join();
        _device.Dispose();
    }

    private void Serve()
    {
        byte[] request = new byte[FuseReply.MostWriteBytes + 8192];
        while (true)
        {
            nint got = ReadDevice(_device.DangerousGetHandle(), request, request.Length);
            if (got < HeadBytes)
            {
                // The file system is gone.
                return;
            }

            if (Answer(request.AsSpan(0, (int)got)) is { } reply)
            {
                _ = WriteDevice(_device.DangerousGetHandle(), reply, reply.Length);
            }
        }
    }

    private byte[]? Answer(ReadOnlySpan<byte> request)
    {
        uint operation = BinaryPrimitives.ReadUInt32LittleEndian(request[4..]);
        ulong unique = BinaryPrimitives.ReadUInt64LittleEndian(request[8..]);
        ulong node = BinaryPrimitives.ReadUInt64LittleEndian(request[16..]);
        ReadOnlySpan<byte> body = request[HeadBytes..];
        switch (operation)
        {
            case 26:
                return FuseReply.Of(unique, 0, FuseReply.Init());
            case 1:
                return Lookup(unique, Encoding.UTF8.GetString(body.TrimEnd((byte)0)));
            case 3 or 4:
                return FuseReply.Of(unique, 0, FuseReply.Attributes(node, LengthOf(node)));
            case 14 or 27:
                return FuseReply.Of(unique, 0, FuseReply.Opened());
            case 15:
                return Read(unique, body);
            case 16:
                return Write(unique, node, body);
            case 17:
                return FuseReply.Of(unique, 0, new byte[80]);
            case 20:
                Log.Flushed();
                return FuseReply.Of(unique, 0, []);
            case 18 or 25 or 29 or 38:
                return FuseReply.Of(unique, 0, []);
            case 2 or 36 or 42:
                return null;
            case 43:
                return FuseReply.Of(unique, NotSupported, []);
            default:
                return FuseReply.Of(unique, NotThere, []);
        }
    }

    private long LengthOf(ulong node) => node == DriveNode ? _bytes.Length : 0;

    private byte[] Lookup(ulong unique, string name) => name switch
    {
        "drive" => FuseReply.Of(unique, 0, FuseReply.Entry(DriveNode, LengthOf(DriveNode))),
        "told" => FuseReply.Of(unique, 0, FuseReply.Entry(ToldNode, 0)),
        _ => FuseReply.Of(unique, NotFound, []),
    };

    private byte[] Read(ulong unique, ReadOnlySpan<byte> body)
    {
        long at = BinaryPrimitives.ReadInt64LittleEndian(body[8..]);
        int length = (int)Math.Clamp(_bytes.Length - at, 0, BinaryPrimitives.ReadUInt32LittleEndian(body[16..]));
        return FuseReply.Of(unique, 0, _bytes.AsSpan((int)Math.Min(at, _bytes.Length), length));
    }

    private byte[] Write(ulong unique, ulong node, ReadOnlySpan<byte> body)
    {
        long at = BinaryPrimitives.ReadInt64LittleEndian(body[8..]);
        ReadOnlySpan<byte> bytes = body.Slice(WriteHeadBytes, BinaryPrimitives.ReadInt32LittleEndian(body[16..]));
        if (node == DriveNode)
        {
            bytes.CopyTo(_bytes.AsSpan((int)at));
            Log.Wrote(at, bytes);
        }
        else
        {
            Log.Said(bytes);
        }

        return FuseReply.Of(unique, 0, FuseReply.Written(bytes.Length));
    }

    [DllImport("libc", EntryPoint = "mount", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Mount(
        [MarshalAs(UnmanagedType.LPUTF8Str)] string source, [MarshalAs(UnmanagedType.LPUTF8Str)] string target,
        [MarshalAs(UnmanagedType.LPUTF8Str)] string kind, nuint flags, [MarshalAs(UnmanagedType.LPUTF8Str)] string data);

    [DllImport("libc", EntryPoint = "umount2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Unmount([MarshalAs(UnmanagedType.LPUTF8Str)] string target, int flags);

    [DllImport("libc", EntryPoint = "read", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint ReadDevice(nint handle, byte[] to, nint bytes);

    [DllImport("libc", EntryPoint = "write", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint WriteDevice(nint handle, byte[] from, nint bytes);
}
