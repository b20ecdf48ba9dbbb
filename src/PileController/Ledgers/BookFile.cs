using System.Text.Json;
using PileController.Serving;

namespace PileController.Ledgers;

/// <summary>The book's file. One that cannot be read is never written over.</summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class BookFile(string folder)
{
    /// <summary>Plain name of the file.</summary>
    public const string Name = "ledger.json";

    /// <summary>The path.</summary>
    public string FullPath { get; } = Path.Combine(folder, Name);

    /// <summary>The book; an empty one when there is no file.</summary>
    /// <exception cref="BookFileException">There is one that cannot be read; the message says where and why.</exception>
    public Book Read()
    {
        string text;
        try
        {
            text = File.ReadAllText(FullPath);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return Book.Empty;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unreadable(e.Message.TrimEnd('.'));
        }

        try
        {
            CheckSchema(text);
            Book book = JsonSerializer.Deserialize<Book>(text, BookJson.Options) ?? throw Unreadable("it holds nothing");
            return BookChecks.Fault(book) is { } fault ? throw Unreadable(fault) : book;
        }
        catch (JsonException e)
        {
            throw Unreadable($"{Place(e)}there is a field this program does not know, one is missing, or a value is of the wrong kind");
        }
    }

    /// <summary>Writes the book: aside, synced, then renamed.</summary>
    /// <exception cref="BookFileException">It cannot be written; the old one is as it was.</exception>
    public void Write(Book book)
    {
        try
        {
            Directory.CreateDirectory(folder);
            DataFolder.Replace(FullPath, JsonSerializer.Serialize(book, BookJson.Options) + "\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BookFileException($"The book {FullPath} cannot be written: {e.Message.TrimEnd('.')}.");
        }
    }

    // A newer form may hold fields that are unknown here: that it is newer is the better answer.
    private void CheckSchema(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        if (document.RootElement.ValueKind == JsonValueKind.Object
            && document.RootElement.TryGetProperty("schema", out JsonElement schema)
            && schema.ValueKind == JsonValueKind.Number && !(schema.TryGetInt32(out int given) && given == Book.CurrentSchema))
        {
            throw Unreadable($"schema is {schema.GetRawText()}; allowed: {Book.CurrentSchema}");
        }
    }

    private static string Place(JsonException e)
    {
        string line = e.LineNumber is { } number ? $"in line {number + 1} " : "";
        return e.Path is { Length: > 0 } path ? $"{line}at {path} " : line;
    }

    private BookFileException Unreadable(string why) => new($"The book {FullPath} cannot be read and is left as it is: {why}.");
}

/// <summary>The book's file cannot be read or written. The message is a sentence for people.</summary>
internal sealed class BookFileException(string message) : IOException(message);
