using PileController.Records.Storage;

namespace PileController.Records.Backups;

/// <summary>Which files of a data folder are worth keeping.</summary>
internal static class RecordFiles
{
    private static readonly string[] OfTheMoment = [FolderDisk.LockName, FolderDisk.StillName, BackupManifest.Name];

    // A copy travels further than the board; and brought back it would open again what was closed since.
    private static readonly string[] OfAccess = ["access.json", "access-keys.json"];

    /// <summary>
    /// The paths, inside the folder and in order, of all files in it and in its folders; but not of locks, of what is
    /// being made, of a manifest, of what was set aside, and of who may come in.
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
        && !OfAccess.Contains(name)
        && !name.EndsWith(".new", StringComparison.Ordinal)
        && !FileKind.IsUnfinished(name)
        && !name.StartsWith(FolderDisk.QuarantineFolder + '/', StringComparison.Ordinal);
}
