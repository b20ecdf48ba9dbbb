using PileController.Panel.Guard;

namespace PileController.Tests.Panel.Guard;

public class PanelAddressTests
{
    [Theory]
    [InlineData("http://127.0.0.1:8080")]
    [InlineData("http://localhost:0")]
    [InlineData("http://[::1]:8080")]
    [InlineData("http://127.0.0.1:8080;http://[::1]:8080")]
    public void Check_Loopback_IsAllowed(string urls) => Assert.Null(PanelAddress.Check(urls));

    [Theory]
    [InlineData("http://0.0.0.0:8080")]
    [InlineData("http://[::]:8080")]
    [InlineData("http://*:8080")]
    [InlineData("http://+:80")]
    [InlineData("http://192.168.1.4:8080")]
    [InlineData("http://localhost.example.org:8080")]
    [InlineData("http://127.0.0.1:8080;http://10.0.0.1:8080")]
    [InlineData("https://127.0.0.1:8443")]
    [InlineData("127.0.0.1:8080")]
    [InlineData("")]
    public void Check_AnythingElse_IsRefusedWithGivenAndAllowed(string urls)
    {
        string? refusal = PanelAddress.Check(urls);

        Assert.NotNull(refusal);
        Assert.Contains("--urls", refusal);
        Assert.Contains("Allowed:", refusal);
    }
}
