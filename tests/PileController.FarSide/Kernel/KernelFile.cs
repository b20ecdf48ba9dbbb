using System.Text;
using Microsoft.Win32.SafeHandles;

namespace PileController.FarSide.Kernel;

/// <summary>A file of the kernel's that is read or written over and over: it is kept open while it is there.</summary>
/// <param name="path">Where it is now.</param>
/// <param name="access">Whether it is read or written.</param>
internal sealed class KernelFile(Func<string?> path, FileAccess access)
{
    // The kernel hands out a page at most.
    private const int Page = 4096;

    private readonly byte[] _bytes = new byte[Page];
    private SafeFileHandle? _handle;

    /// <summary>What it says; null while it is not there.</summary>
    public string? Read() => Try(handle => Encoding.ASCII.GetString(_bytes, 0, RandomAccess.Read(handle, _bytes, 0)));

    /// <summary>Writes a text; nothing while the file is not there.</summary>
    public void Write(string text) => Try(handle =>
    {
        RandomAccess.Write(handle, Encoding.ASCII.GetBytes(text), 0);
        return text;
    });

    private string? Try(Func<SafeFileHandle, string> act)
    {
        try
        {
            // Without any sharing asked for, no lock is taken on it.
            _handle ??= path() is { } now ? File.OpenHandle(now, FileMode.Open, access, FileShare.ReadWrite | FileShare.Delete) : null;
            return _handle is null ? null : act(_handle);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // A chip that was taken away; it may come back under another name.
            Close();
            return null;
        }
    }

    private void Close()
    {
        _handle?.Dispose();
        _handle = null;
    }
}
