using PileController.Panel.Guard;
using PileController.Settings;

namespace PileController.Tests.Panel.Guard;

public class PanelAddressTests
{
    private static readonly PanelSettings Usual = new();
    private static readonly PanelSettings Lan = new() { Lan = true };
    private static readonly PanelSettings Tls = new() { Certificate = "c.pem", CertificateKey = "k.pem" };

    [Theory]
    [InlineData("http://127.0.0.1:8080")]
    [InlineData("http://localhost:0")]
    [InlineData("http://[::1]:8080")]
    [InlineData("http://127.0.0.1:8080;http://[::1]:8080")]
    public void Check_Loopback_IsAllowed(string urls) => Assert.Null(PanelAddress.Check(urls, Usual, passphraseSet: false));

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
        string? refusal = PanelAddress.Check(urls, Usual, passphraseSet: true);

        Assert.NotNull(refusal);
        Assert.Contains("--urls", refusal);
        Assert.Contains("Allowed:", refusal);
    }

    [Theory]
    [InlineData("http://0.0.0.0:8080")]
    [InlineData("http://192.168.1.4:8080")]
    [InlineData("http://[::]:8080")]
    public void Check_BeyondLoopback_NeedsTheSettingAndAPassphrase(string urls)
    {
        Assert.Null(PanelAddress.Check(urls, Lan, passphraseSet: true));
        Assert.Contains("no passphrase is set", PanelAddress.Check(urls, Lan, passphraseSet: false));
        Assert.Contains("panel.lan is false", PanelAddress.Check(urls, Usual, passphraseSet: true));
    }

    // The server takes a name it cannot listen at for "every address of this machine".
    [Theory]
    [InlineData("http://*:8080")]
    [InlineData("http://+:80")]
    [InlineData("http://pile.example.org:8080")]
    [InlineData("http://192.168.1.4:8080/api")]
    public void Check_WhatIsNoAddressInNumbers_IsRefusedEvenOnTheLan(string urls) =>
        Assert.Contains("it is no address of a page", PanelAddress.Check(urls, Lan, passphraseSet: true));

    [Fact]
    public void Check_Https_NeedsACertificate()
    {
        Assert.Contains("no certificate is set", PanelAddress.Check("https://127.0.0.1:8443", Usual, passphraseSet: true));
        Assert.Null(PanelAddress.Check("https://127.0.0.1:8443", Tls, passphraseSet: true));
    }
}
