using LiteDB;
using LiteDB.Engine;

namespace PileController.Records.Storage;

/// <summary>An open LiteDB file on streams of our own.</summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class StoreEngine : IDisposable
{
    /// <summary>Log length at which it is worked into the data file, bytes.</summary>
    private const long LogBytesToCheckpoint = 2 * 1024 * 1024;

    private const string LogEnding = ".log";
    private readonly Stream _data;
    private readonly Stream _log;
    private readonly LiteEngine _engine;
    private readonly LeftTransactions? _left;

    /// <summary>Opens or makes the file.</summary>
    /// <param name="disk">Where.</param>
    /// <param name="name">Its plain name.</param>
    /// <param name="closed">True for a file that will not be written again: its log is known to be empty.</param>
    /// <param name="afterError">True when a write to it failed before: what can be read of its log need not be safe.</param>
    public StoreEngine(IRecordDisk disk, string name, bool closed = false, bool afterError = false)
    {
        _data = disk.Open(name);
        _log = closed ? new MemoryStream() : disk.Open(LogNameOf(name));
        try
        {
            if (afterError)
            {
                WriteAgain(_log);
            }

            // A process that was killed may have left its last write unsynced; from here on it counts.
            _log.Flush();

            _engine = new LiteEngine(new EngineSettings
            {
                DataStream = _data,
                LogStream = new ConfirmingLogStream(_log),
                TempStream = new MemoryStream(),
                Collation = Collation.Binary,
            });
            _left = new LeftTransactions(_engine);
            Database = new LiteDatabase(_engine) { CheckpointSize = 0 };
        }
        catch
        {
            Close();
            throw;
        }
    }

    /// <summary>The database.</summary>
    public LiteDatabase Database { get; }

    /// <summary>Name of the log beside a data file.</summary>
    public static string LogNameOf(string name) => name + LogEnding;

    /// <summary>Whether a name is one of a log; copies in quarantine may have a number behind it.</summary>
    public static bool IsLog(string name) => name.Contains(LogEnding, StringComparison.Ordinal);

    /// <summary>Works the log into the data file when it has grown long, or when <paramref name="force"/> asks for it.</summary>
    public void Checkpoint(bool force)
    {
        if (_log.Length >= LogBytesToCheckpoint || (force && _log.Length > 0))
        {
            Database.Checkpoint();
            _data.Flush();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Close();

    // A sync that failed may leave bytes that can be read and are not on the disk, and a second sync need not write
    // them (Linux marks the pages clean). Only the last sector can be in doubt, so the order does not matter.
    private static void WriteAgain(Stream log)
    {
        byte[] bytes = new byte[log.Length];
        log.Position = 0;
        log.ReadExactly(bytes);
        log.Position = 0;
        log.Write(bytes);
    }

    private void Close()
    {
        try
        {
            _engine?.Dispose();
        }
        finally
        {
            _left?.Forget();
            _data.Dispose();
            _log.Dispose();
        }
    }
}
