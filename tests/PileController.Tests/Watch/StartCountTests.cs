using PileController.Watch;

namespace PileController.Tests.Watch;

public class StartCountTests
{
    private const long Minute = 60_000;

    [Fact]
    public void Started_AfterOrderlyEnds_CountsNothing()
    {
        StartCount count = StartCount.Empty;
        for (int i = 0; i < 10; i++)
        {
            count = count.Started("a", i * Minute).Ended([]);
        }

        Assert.Equal(0, count.Restarts);
    }

    [Fact]
    public void Started_WithoutAnEndBefore_CountsWithinTheHourOnly()
    {
        StartCount count = StartCount.Empty.Started("a", 0);
        Assert.Equal(0, count.Restarts);
        for (int i = 1; i <= 5; i++)
        {
            count = count.Started("a", i * Minute);
        }

        Assert.Equal(5, count.Restarts);
        Assert.Equal(1, count.Started("a", 66 * Minute).Restarts);
    }

    [Fact]
    public void Started_OnAnotherStartOfTheMachine_BeginsAnew()
    {
        StartCount count = StartCount.Empty.Started("a", 0).Started("a", 1).Started("a", 2);

        Assert.Equal(0, count.Started("b", 3).Restarts);
    }

    [Fact]
    public void LeftRunning_IsSoUntilAnOrderlyEndOrAnotherStartOfTheMachine()
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            Assert.False(Book(folder, 0).LeftRunning());
            StartBook book = Book(folder, 0);
            book.Started();
            Assert.True(Book(folder, Minute).LeftRunning());
            Assert.False(new StartBook(folder, () => "another", () => Minute).LeftRunning());
            book.Ended([]);
            Assert.False(Book(folder, 2 * Minute).LeftRunning());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Ended_WithSomethingOnStill_IsNoOrderlyEndAndIsToldUntilTheNextStart()
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            StartBook book = Book(folder, 0);
            book.Started();
            book.Ended(["The pump's line 17 cannot be switched off."]);

            StartBook next = Book(folder, Minute);
            Assert.True(next.LeftRunning());
            Assert.Equal(["The pump's line 17 cannot be switched off."], next.LeftOn());
            Assert.Equal(1, next.Started());
            Assert.Empty(Book(folder, 2 * Minute).LeftOn());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Book_OfABuildThatKnewOfNothingLeftOn_IsReadAsItWas()
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, StartBook.FileName), "{\"Boot\":\"boot\",\"StartsMs\":[1,2],\"Running\":true}");

            Assert.Equal(3, Book(folder, 3).Started());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Book_KeepsTheCountOverPrograms()
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            Assert.Equal(0, Book(folder, 0).Started());
            Assert.Equal(1, Book(folder, Minute).Started());
            StartBook third = Book(folder, 2 * Minute);
            Assert.Equal(2, third.Started());
            third.Ended([]);
            Assert.Equal(2, Book(folder, 3 * Minute).Started());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Book_OfAProgramThatNeverStarted_LeavesTheFileAsItIs()
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            Book(folder, 0).Started();
            string before = File.ReadAllText(Path.Combine(folder, StartBook.FileName));

            Book(folder, 1).Ended([]);

            Assert.Equal(before, File.ReadAllText(Path.Combine(folder, StartBook.FileName)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{ \"Boot\": \"boot\", \"StartsMs\": [], \"Running\": false, \"LeftOn\": null }")]
    public void Book_ThatCannotBeRead_CountsNothingAndGoesOn(string text)
    {
        string folder = Directory.CreateTempSubdirectory("pile-starts-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, StartBook.FileName), text);

            Assert.Equal(0, Book(folder, 0).Started());
            Assert.Equal(1, Book(folder, 1).Started());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static StartBook Book(string folder, long nowMs) => new(folder, () => "boot", () => nowMs);
}
