using PileController.Records.Storage;

namespace PileController.Records.Backups;

/// <summary>Which files of a data folder are worth keeping.</summary>
internal static class RecordFiles
{
    private static readonly string[] OfTheMoment = [FolderDisk.LockName, FolderDisk.StillName, BackupManifest.Name];

    /// <summary>
    /// The paths, inside the folder and in order, of all files in it and in its folders; but not of locks, of what is
    /// being made, of a manifest, and of what was set aside.
    /// </summary>
    public static IReadOnlyList<string> In(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/'))
            .Where(IsKept)
            .Order(StringComparer.Ordinal),
    ];

    private static bool IsKept(string name) =>
        !OfTheMoment.Contains(name)
        && !name.EndsWith(".new", StringComparison.Ordinal)
        && !FileKind.IsUnfinished(name)
        && !name.StartsWith(FolderDisk.QuarantineFolder + '/', StringComparison.Ordinal);
}
