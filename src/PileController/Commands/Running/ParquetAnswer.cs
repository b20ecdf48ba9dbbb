using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records.Checking;

namespace PileController.Commands.Running;

/// <summary>The form of an answer that is no text and therefore goes into a file.</summary>
internal static class ParquetAnswer
{
    /// <summary>The file.</summary>
    public static Option<string?> File() => new("--parquet") { Description = "Write the answer to this file, as Parquet." };

    /// <summary>Asks a record and writes the answer into a file, whole or not at all; says why when it cannot.</summary>
    public static int Write<T>(
        ParseResult parse, Option<string> data, string path, Func<RecordReader, Action<string>, IReadOnlyList<T>> ask,
        Func<Stream, IReadOnlyList<T>, Task> write)
    {
        bool isWritten = true;
        int code = RecordAsk.With(parse, data, ask, (rows, output) =>
        {
            if (Trouble(path, to => write(to, rows)) is { } trouble)
            {
                isWritten = false;
                parse.InvocationConfiguration.Error.WriteLine($"--parquet is \"{path}\": {trouble.TrimEnd('.')}; allowed: the path of a file that can be written");
            }
            else
            {
                output.WriteLine($"{rows.Count} rows are in {path}.");
            }
        });
        return isWritten ? code : ExitCodes.WrongUse;
    }

    private static string? Trouble(string path, Func<Stream, Task> write)
    {
        string making = path + ".making";
        try
        {
            using (FileStream to = new(making, FileMode.Create, FileAccess.ReadWrite))
            {
                write(to).GetAwaiter().GetResult();
            }

            System.IO.File.Move(making, path, overwrite: true);
            return null;
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or ArgumentException)
        {
            if (System.IO.File.Exists(making))
            {
                System.IO.File.Delete(making);
            }

            return failed.Message;
        }
    }
}
