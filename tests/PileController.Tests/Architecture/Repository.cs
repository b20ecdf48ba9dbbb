namespace PileController.Tests.Architecture;

/// <summary>The project's own files, found from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PileController.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests do not run inside the project's folder.");
    }
}
