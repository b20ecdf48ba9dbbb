using PileController.Commands.Access;

namespace PileController.Tests.Commands.Access;

public class TypedSecretTests
{
    private const string Asked = "New passphrase: \nOnce more: \n";

    [Theory]
    [InlineData("warm chips in january\rwarm chips in january\r", true)]
    [InlineData("warm chips in janxy\b\buary\rwarm chips in january\r", true)]
    [InlineData("warm chips in january\rwarm chips in february\r", false)]
    public void TryRead_AtATerminal_AsksTwiceAndShowsNothingOfIt(string typed, bool taken)
    {
        Queue<char> keys = new(typed);
        using StringWriter asked = new() { NewLine = "\n" };

        bool read = TypedSecret.TryRead(() => Key(keys.Dequeue()), TextReader.Null, asked, out string passphrase, out string? fault);

        Assert.Equal(taken, read);
        Assert.Equal(taken ? null : "The two are not the same; nothing is changed.", fault);
        Assert.Equal(Asked, asked.ToString());
        Assert.Equal("warm chips in january", passphrase);
        Assert.Empty(keys);
    }

    [Theory]
    [InlineData("warm chips in january\nmore\n", true)]
    [InlineData("short\n", false)]
    [InlineData("", false)]
    public void TryRead_FromAPipe_TakesOneLineAndAsksNothing(string piped, bool taken)
    {
        using StringReader pipe = new(piped);
        using StringWriter asked = new();

        bool read = TypedSecret.TryRead(null, pipe, asked, out string passphrase, out string? fault);

        Assert.Equal(taken, read);
        Assert.Empty(asked.ToString());
        Assert.Equal(piped.Split('\n')[0], passphrase);
        Assert.True(taken || fault!.Contains("allowed: ", StringComparison.Ordinal));
    }

    private static ConsoleKeyInfo Key(char typed) => typed switch
    {
        '\r' => new ConsoleKeyInfo('\r', ConsoleKey.Enter, false, false, false),
        '\b' => new ConsoleKeyInfo('\b', ConsoleKey.Backspace, false, false, false),
        _ => new ConsoleKeyInfo(typed, default, false, false, false),
    };
}
