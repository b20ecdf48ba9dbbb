using System.Globalization;
using PileController.Records.Checking;
using PileController.Records.Storage;

namespace PileController.Records.Backups;

/// <summary>Brings a backup back.</summary>
public static class BackupRestorer
{
    /// <summary>
    /// Copies a backup to where a service will look for its record. Every file is held against the backup's manifest
    /// before and after; the folder is there whole or not at all, and nothing is overwritten.
    /// </summary>
    /// <param name="backupDirectory">The backup.</param>
    /// <param name="dataDirectory">Folder of the record; missing or empty, unless what is in it may be set aside.</param>
    /// <param name="setAside">Whether a folder that is not empty may be renamed out of the way.</param>
    /// <param name="at">Now; stands in the new name of what is set aside.</param>
    /// <exception cref="DirectoryNotFoundException">There is no backup.</exception>
    /// <exception cref="InvalidDataException">The backup is not what it was when it was made.</exception>
    /// <exception cref="RecordInUseException">A process has the record open.</exception>
    /// <exception cref="IOException">It cannot be done; the message says why.</exception>
    public static CopyReport Restore(string backupDirectory, string dataDirectory, bool setAside, DateTimeOffset at)
    {
        BackupManifest manifest = Sound(backupDirectory);
        string target = Target(dataDirectory);
        bool free = FreshFolder.IsFree(target);
        if (File.Exists(target) || (!free && !setAside))
        {
            throw new IOException("it is not empty; allowed: a folder that is empty or not there yet, or --set-aside to keep what is in it under another name");
        }

        CheckNotInUse(target);
        using FreshFolder fresh = new(target, ".restoring");
        foreach (BackupFile file in manifest.Files)
        {
            if (FileCopy.Copy(backupDirectory, fresh.Path, file.Name) != file)
            {
                throw new IOException($"'{file.Name}' changed while it was copied");
            }
        }

        string[] wrong = [.. manifest.Problems(fresh.Path)];
        if (wrong.Length > 0)
        {
            throw new IOException($"what was written does not read the same again: {wrong[0]}");
        }

        VerifyReport report = RecordVerifier.Check(fresh.Path);
        string? aside = null;
        if (!free)
        {
            CheckNotInUse(target);
            aside = $"{target}.before-{at.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture)}";
            Directory.Move(target, aside);
        }

        try
        {
            fresh.Finish();
        }
        catch when (aside is not null && !Directory.Exists(target))
        {
            Directory.Move(aside, target);
            throw;
        }

        return new CopyReport(target, manifest.Files.Count, manifest.Files.Sum(file => file.Bytes), aside, report);
    }

    private static BackupManifest Sound(string backupDirectory)
    {
        if (!BackupManifest.IsIn(backupDirectory))
        {
            throw new DirectoryNotFoundException(Directory.Exists(backupDirectory)
                ? $"it has no '{BackupManifest.Name}'; allowed: a folder made by a backup"
                : "there is no such folder; allowed: a folder made by a backup");
        }

        BackupManifest manifest = BackupManifest.Read(backupDirectory);
        string[] problems = [.. manifest.Problems(backupDirectory)];
        return problems.Length == 0
            ? manifest
            : throw new InvalidDataException($"it is not what it was when it was made: {string.Join(" ", problems)}");
    }

    // A folder of a service may be a link: what it points to is replaced, and the link stays.
    private static string Target(string dataDirectory)
    {
        string path = Path.TrimEndingDirectorySeparator(Path.GetFullPath(dataDirectory));
        return Directory.Exists(path) ? new DirectoryInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path : path;
    }

    private static void CheckNotInUse(string target)
    {
        if (File.Exists(Path.Combine(target, FolderDisk.LockName)))
        {
            new FolderDisk(target).Lock().Dispose();
        }
    }
}
