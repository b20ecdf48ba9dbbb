namespace PileController.Records.Storage;

/// <summary>
/// The folder a record lives in, seen by plain names. What <see cref="Stream.Flush()"/> of an opened stream has
/// returned from is safe against a power cut; what was written since may be lost in any part and any order.
/// </summary>
/// <threadsafety>Called by one thread at a time.</threadsafety>
internal interface IRecordDisk
{
    /// <summary>Keeps every other process out until disposed.</summary>
    /// <exception cref="RecordInUseException">Another process is in.</exception>
    IDisposable Lock();

    /// <summary>
    /// Keeps readers of other processes out while the store is changed; null while one of them reads. To be held for
    /// whatever changes the store's files or replaces the tail.
    /// </summary>
    IDisposable? TryClaim();

    /// <summary>Keeps the store as it is until disposed; any number of readers may at once. Ticks go on being made safe in the tail.</summary>
    /// <exception cref="RecordInUseException">The store is being changed and goes on being changed.</exception>
    IDisposable KeepStill();

    /// <summary>Opens a file for reading only.</summary>
    /// <exception cref="FileNotFoundException">There is none.</exception>
    Stream OpenToRead(string name);

    /// <summary>Opens a file for reading and writing, making it when it is missing.</summary>
    Stream Open(string name);

    /// <summary>
    /// Opens a file as <see cref="Open(string)"/> does, and sets room aside for one that is made: as long as it does not outgrow
    /// that, the file system has little of its own to write with each sync. Only a favour: a disk may do without.
    /// </summary>
    /// <param name="name">Its plain name.</param>
    /// <param name="roomBytes">What it is expected to come to, bytes. Its length stays 0.</param>
    Stream Open(string name, long roomBytes) => Open(name);

    /// <summary>The plain names of all files.</summary>
    IReadOnlyList<string> Names();

    /// <summary>Renames a file, replacing one of the new name. Safe against a power cut when it returns.</summary>
    void Rename(string from, string to);

    /// <summary>Deletes a file; nothing happens when there is none.</summary>
    void Delete(string name);

    /// <summary>Moves a file into the quarantine folder under a name not used there yet.</summary>
    void Quarantine(string name);

    /// <summary>What lies in the quarantine folder.</summary>
    IReadOnlyList<SetAsideFile> SetAside();

    /// <summary>What is free for an ordinary user, bytes, quotas not counted; null where that cannot be told.</summary>
    long? FreeBytes();
}
