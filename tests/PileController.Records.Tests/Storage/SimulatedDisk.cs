using PileController.Records.Storage;

namespace PileController.Records.Tests.Storage;

/// <summary>
/// A folder in memory that can lose its power: every sector written since a file's last flush survives or not by
/// chance. It can also be full, or refuse at the n-th write or flush.
/// </summary>
internal sealed class SimulatedDisk : IRecordDisk
{
    private readonly Dictionary<string, SimulatedFile> _files = [];
    private bool _locked;
    private int _readers;
    private bool _claimed;

    /// <summary>Writes and flushes so far: the points at which the power can be cut.</summary>
    public int Steps { get; private set; }

    /// <summary>The step at which the power goes; nothing works afterwards.</summary>
    public int CutAt { get; set; } = int.MaxValue;

    /// <summary>Steps from this one on fail for want of room until it is set back.</summary>
    public int FullFrom { get; set; } = int.MaxValue;

    /// <summary>The one step that fails for want of room.</summary>
    public int FullAt { get; set; }

    public List<string> Quarantined { get; } = [];

    public IDisposable Lock()
    {
        if (_locked)
        {
            throw new RecordInUseException("simulated");
        }

        _locked = true;
        return new Release(() => _locked = false);
    }

    public IDisposable? TryClaim()
    {
        if (_readers > 0)
        {
            return null;
        }

        Assert.False(_claimed);
        _claimed = true;
        return new Release(() => _claimed = false);
    }

    public IDisposable KeepStill()
    {
        Assert.False(_claimed);
        _readers++;
        return new Release(() => _readers--);
    }

    public Stream OpenToRead(string name) => new MemoryStream(_files[name].Now, writable: false);

    public Stream Open(string name)
    {
        if (!_files.TryGetValue(name, out SimulatedFile? file))
        {
            file = new SimulatedFile();
            _files.Add(name, file);
        }

        return new SimulatedStream(this, file);
    }

    public IReadOnlyList<string> Names() => [.. _files.Keys.Order(StringComparer.Ordinal)];

    public void Rename(string from, string to)
    {
        Step();
        _files[to] = _files[from];
        _files.Remove(from);
    }

    public void Delete(string name) => _files.Remove(name);

    public void Quarantine(string name)
    {
        Quarantined.Add(name);
        _files.Remove(name);
    }

    public IReadOnlyList<SetAsideFile> SetAside() => [.. Quarantined.Select(name => new SetAsideFile(name, 0))];

    public long? FreeBytes() => Steps >= FullFrom ? 0 : null;

    /// <summary>What is on the disk when the power is back.</summary>
    public SimulatedDisk AfterCut(Random random)
    {
        SimulatedDisk after = new();
        foreach ((string name, SimulatedFile file) in _files)
        {
            after._files.Add(name, file.AfterCut(random));
        }

        return after;
    }

    /// <summary>What the next process finds when this one was killed: everything written, synced or not.</summary>
    public SimulatedDisk AfterKill()
    {
        SimulatedDisk after = new();
        foreach ((string name, SimulatedFile file) in _files)
        {
            after._files.Add(name, file);
        }

        return after;
    }

    /// <summary>The bytes of a file, to be looked at or damaged.</summary>
    public byte[] BytesOf(string name) => _files[name].Now;

    /// <summary>How many bytes were read of a file.</summary>
    public long ReadBytesOf(string name) => _files[name].ReadBytes;

    /// <summary>Replaces the bytes of a file.</summary>
    public void Replace(string name, byte[] bytes) => _files[name] = SimulatedFile.Of(bytes);

    /// <summary>One more thing done to the disk.</summary>
    public void Step()
    {
        Steps++;
        if (Steps >= CutAt)
        {
            throw new PowerCutException();
        }

        if (Steps >= FullFrom || Steps == FullAt)
        {
            throw new IOException("No space left on device.");
        }
    }

    private sealed class Release(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}

/// <summary>The power went.</summary>
internal sealed class PowerCutException : IOException;
