using PileController.Access;

namespace PileController.Tests.Access;

public class TypedTextTests
{
    [Theory]
    [InlineData("Robin")]
    [InlineData("<b>Robin</b> & \"Kim\"")]
    [InlineData("Zoë Müller")]
    [InlineData("روبن")]
    [InlineData("می\u200cخواهم")]
    [InlineData("👩\u200d🌾")]
    public void Text_AllOfWhichIsSeen_IsAllowed(string text) => Assert.True(TypedText.Allows(text, 40));

    [Theory]
    [InlineData("")]
    [InlineData("Robin\n")]
    [InlineData("Ro\u0000bin")]
    [InlineData("\u202enibor")]
    [InlineData("\u2066Robin\u2069")]
    [InlineData("Robin\u2028done")]
    [InlineData("Robin\u200b")]
    [InlineData("Robin\ufeff")]
    [InlineData("Robin\U000e0041")]
    [InlineData("A name of forty-one characters, one too ma")]
    public void Text_WithWhatIsNotSeen_IsRefused(string text) => Assert.False(TypedText.Allows(text, 40));
}
