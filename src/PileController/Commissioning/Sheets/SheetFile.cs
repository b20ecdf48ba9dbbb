using System.Text.Json;
using PileController.Serving;

namespace PileController.Commissioning.Sheets;

/// <summary>The sheet's file beside the record. One that cannot be read is never written over.</summary>
/// <threadsafety>Safe from any thread; one process at a time.</threadsafety>
internal sealed class SheetFile(string folder)
{
    /// <summary>Plain name of the file.</summary>
    public const string Name = "commissioning.json";

    private readonly Lock _gate = new();

    /// <summary>The path.</summary>
    public string FullPath { get; } = Path.Combine(folder, Name);

    /// <summary>The sheet; an empty one when there is no file.</summary>
    /// <exception cref="SheetFileException">There is one that cannot be read; the message says why.</exception>
    public Sheet Read()
    {
        try
        {
            Sheet sheet = JsonSerializer.Deserialize<Sheet>(File.ReadAllText(FullPath), BookJson.Options) ?? throw Unreadable("it holds nothing");
            return sheet.Schema != Sheet.CurrentSchema ? throw Unreadable($"schema is {sheet.Schema}; allowed: {Sheet.CurrentSchema}")
                : sheet.Entries.Any(entry => entry is null || entry.Outcomes.Any(one => one is null)) ? throw Unreadable("an entry is null; allowed: whole entries")
                : sheet;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Sheet.Empty;
        }
        catch (JsonException e)
        {
            string line = e.LineNumber is { } number ? $"in line {number + 1} " : "";
            throw Unreadable($"{line}there is a field this program does not know, one is missing, or a value is of the wrong kind");
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException and not SheetFileException)
        {
            throw Unreadable(e.Message.TrimEnd('.'));
        }
    }

    /// <summary>Puts one more test on it: written aside, synced, then renamed.</summary>
    /// <exception cref="SheetFileException">It cannot be read or written; it is as it was.</exception>
    public Sheet Add(SheetEntry entry)
    {
        lock (_gate)
        {
            Sheet sheet = Read().With(entry);
            try
            {
                Directory.CreateDirectory(folder);
                DataFolder.Replace(FullPath, JsonSerializer.Serialize(sheet, BookJson.Options) + "\n");
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                throw new SheetFileException($"The sheet {FullPath} cannot be written: {e.Message.TrimEnd('.')}.");
            }

            return sheet;
        }
    }

    private SheetFileException Unreadable(string why) => new($"The sheet {FullPath} cannot be read and is left as it is: {why}.");
}

/// <summary>The sheet's file cannot be read or written. The message is a sentence for people.</summary>
internal sealed class SheetFileException(string message) : IOException(message);
