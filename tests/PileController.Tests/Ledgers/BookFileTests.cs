using System.Text;
using PileController.Ledgers;

namespace PileController.Tests.Ledgers;

public sealed class BookFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-book-").FullName;

    private string Kept => Path.Combine(_folder, BookFile.Name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Book_WrittenAndRead_IsTheSameToTheLastBit()
    {
        Book book = SampleBook.Two();
        BookFile file = new(_folder);
        file.Write(book);

        string once = File.ReadAllText(Kept);
        Book read = file.Read();
        file.Write(read);

        Assert.Equal(book.Days, read.Days);
        Assert.Equal(book.CountedTo, read.CountedTo);
        Assert.Equal(book.Seasons[1].Closed, read.Seasons[1].Closed);
        Assert.Equal(once, File.ReadAllText(Kept));
        Assert.Contains("\"schema\": 1", once, StringComparison.Ordinal);
    }

    [Fact]
    public void Book_WithoutAFile_IsEmpty() => Assert.Same(Book.Empty, new BookFile(Path.Combine(_folder, "none")).Read());

    [Fact]
    public void Kill_AtAnyByteOfAWrite_LeavesTheOldBook()
    {
        BookFile file = new(_folder);
        file.Write(Book.Empty);
        file.Write(SampleBook.Two(closed: false));
        byte[] fresh = File.ReadAllBytes(Kept);
        file.Write(Book.Empty);

        // What a kill leaves is the text aside, cut anywhere, and never a change of the book itself.
        for (int length = 0; length < fresh.Length; length += 997)
        {
            File.WriteAllBytes(Kept + ".new", fresh[..length]);
            Assert.Empty(file.Read().Days);
        }

        file.Write(SampleBook.Two());
        Assert.Equal(300, file.Read().Days.Count);
        Assert.Equal([BookFile.Name], Directory.EnumerateFiles(_folder).Select(f => Path.GetFileName(f)));
    }

    [Fact]
    public void Write_ThatFails_LeavesTheOldBookAndSaysWhich()
    {
        BookFile file = new(_folder);
        file.Write(SampleBook.Two());
        Directory.CreateDirectory(Kept + ".new");

        BookFileException failed = Assert.Throws<BookFileException>(() => file.Write(Book.Empty));

        Assert.Contains(Kept, failed.Message, StringComparison.Ordinal);
        Assert.Equal(300, file.Read().Days.Count);
    }

    [Theory]
    [InlineData("", "line 1")]
    [InlineData("{", "line 1")]
    [InlineData("null", "holds nothing")]
    [InlineData("[]", "$")]
    [InlineData("""{ "schema": 2, "pages": [] }""", "schema is 2; allowed: 1")]
    [InlineData("""{ "schema": 1, "days": [] }""", "missing")]
    [InlineData("{ \"schema\": 1, \"countedTo\": null, \"days\": [], \"seasons\": [],\n \"colour\": \"red\" }", "line 2 at $.colour")]
    [InlineData("""{ "schema": 1, "countedTo": null, "days": null, "seasons": [] }""", "$.days")]
    [InlineData("""{ "schema": 1, "countedTo": null, "days": [null], "seasons": [] }""", "null")]
    [InlineData("""{ "schema": 1, "schema": 1, "countedTo": null, "days": [], "seasons": [] }""", "field")]
    public void File_ThatIsNoBook_IsRefusedInASentenceAndLeftAsItIs(string text, string says)
    {
        File.WriteAllText(Kept, text);

        BookFileException refused = Assert.Throws<BookFileException>(() => new BookFile(_folder).Read());

        Assert.Contains(Kept, refused.Message, StringComparison.Ordinal);
        Assert.Contains(says, refused.Message, StringComparison.Ordinal);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("PileController.Ledgers", refused.Message, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Kept));
    }

    [Theory]
    [InlineData("\"propane\"", "\"peat\"", "seasons[0].fuel.name is \"peat\"; allowed: propane")]
    [InlineData("\"heapBuiltOn\": \"2025-11-01\"", "\"heapBuiltOn\": \"2025-04-12\"", "seasons[1].heapBuiltOn is 2025-04-12")]
    [InlineData("\"kilograms\": 9000", "\"kilograms\": -9", "seasons[0].masses")]
    [InlineData("\"on\": \"2025-04-12\"", "\"on\": \"2024-04-12\"", "seasons[0].closed.on is 2024-04-12")]
    [InlineData("\"count\": 2", "\"count\": 0", "seasons[0].parts")]
    [InlineData("\"lastSequence\": 8640,", "\"lastSequence\": 0,", "days[0].lastSequence is 0; allowed: 1 or more")]
    [InlineData("\"way\": \"in\"", "\"way\": 0", "$.seasons[0].masses[0].way")]
    public void File_WithAValueThatCannotBe_IsRefusedByItsName(string sound, string wrong, string says)
    {
        BookFile file = new(_folder);
        file.Write(SampleBook.Two());
        string text = File.ReadAllText(Kept);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        StringBuilder changed = new(text);
        changed.Replace(sound, wrong);
        File.WriteAllText(Kept, changed.ToString());

        Assert.Contains(says, Assert.Throws<BookFileException>(file.Read).Message, StringComparison.Ordinal);
    }
}
