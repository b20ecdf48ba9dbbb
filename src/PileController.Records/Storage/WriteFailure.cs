using System.Runtime.ExceptionServices;

namespace PileController.Records.Storage;

/// <summary>
/// The first write to a LiteDB file or its log that failed. LiteDB 5.0.21 must not see it: a transaction whose pages
/// are half written cannot be discarded any more, its finalizer throws, and that ends the whole process. So the write
/// seems to work, whatever would be written after it is dropped, as if the power had gone, and who asked for the
/// write looks here when LiteDB is done.
/// </summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class WriteFailure
{
    private ExceptionDispatchInfo? _first;

    /// <summary>Writes, unless something failed before.</summary>
    public void Try(Action write)
    {
        if (_first is not null)
        {
            return;
        }

        try
        {
            write();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            _first = ExceptionDispatchInfo.Capture(exception);
        }
    }

    /// <summary>Throws what failed.</summary>
    /// <exception cref="IOException">A write failed; nothing was written since.</exception>
    public void Throw() => _first?.Throw();
}
