using PileController.Panel.Sight;

namespace PileController.Tests.Panel.Sight;

public class PageWordsTests
{
    private const string Script =
        """
        /** A comment with `export const no = "no";` in it. */
        export const plain = "It is \"warm\"\u00a0here";
        export const one = (figure) => `About ${figure}, no more`;
        export const several = ({ day, time }) =>
          `${time} on ${day}`;
        export const WORDS = {
          // A comment.
          first: "First, and long",
          last: "Last",
        };
        export const LIST = ["Sun", "Mon"];
        export const NESTED = { draw: { name: "Draw" } };
        """;

    private static readonly PageWords Words = new(path => path == "/js/words/file.js" ? Script : throw new KeyNotFoundException(path));

    [Theory]
    [InlineData("plain", "It is \"warm\"\u00a0here")]
    [InlineData("WORDS.first", "First, and long")]
    [InlineData("WORDS.last", "Last")]
    [InlineData("LIST.1", "Mon")]
    public void Text_OfAnyForm_IsRead(string name, string text) => Assert.Equal(text, Words.Say("file", name));

    [Fact]
    public void Text_WithFigures_TakesThemInTheirOrder()
    {
        Assert.Equal("About 3 W, no more", Words.Say("file", "one", "3 W"));
        Assert.Equal("05:10 on Mon", Words.Say("file", "several", "Mon", "05:10"));
    }

    [Theory]
    [InlineData("missing")]
    [InlineData("one")]
    [InlineData("no")]
    public void Text_ThatIsNotThereOrWantsFigures_IsRefused(string name) =>
        Assert.Contains($"'{name}'", Assert.Throws<InvalidOperationException>(() => Words.Say("file", name)).Message, StringComparison.Ordinal);
}
