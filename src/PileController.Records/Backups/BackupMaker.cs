using PileController.Records.Checking;

namespace PileController.Records.Backups;

/// <summary>
/// Copies a record, with what lies beside it, while a service writes in it or not. The store is kept as it is while it
/// is copied and the tail only grows, so all of the copy ends at one tick.
/// </summary>
public static class BackupMaker
{
    /// <summary>Makes a backup. It is there whole, every file read again, or not at all.</summary>
    /// <param name="dataDirectory">Folder of the record.</param>
    /// <param name="backupDirectory">Folder to be made; it may be there when it is empty.</param>
    /// <param name="at">Now.</param>
    /// <exception cref="DirectoryNotFoundException">There is no record.</exception>
    /// <exception cref="RecordInUseException">The record is being changed without a pause.</exception>
    /// <exception cref="IOException">It cannot be made; the message says why.</exception>
    public static CopyReport Make(string dataDirectory, string backupDirectory, DateTimeOffset at)
    {
        string data = Path.TrimEndingDirectorySeparator(Path.GetFullPath(dataDirectory));
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(backupDirectory));
        if (target == data || target.StartsWith(data + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new IOException("it lies in the folder of the record; allowed: a folder elsewhere");
        }

        if (File.Exists(target) || !FreshFolder.IsFree(target))
        {
            throw new IOException("it is not empty; allowed: a folder that is empty or not there yet");
        }

        using FreshFolder fresh = new(target, ".making");
        List<BackupFile> files = [];
        using (RecordReader.Open(data))
        {
            files.AddRange(RecordFiles.In(data).Select(name => FileCopy.Copy(data, fresh.Path, name)));
        }

        VerifyReport report = RecordVerifier.Check(fresh.Path);
        BackupManifest manifest = new(at, report.Ticks, report.LastSequence, files, "");
        manifest.Write(fresh.Path);
        if (BackupManifest.Read(fresh.Path).Problems(fresh.Path).FirstOrDefault() is { } problem)
        {
            throw new IOException($"what was written does not read the same again: {problem}");
        }

        fresh.Finish();
        return new CopyReport(target, files.Count, files.Sum(file => file.Bytes), null, report);
    }
}
