using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using System.Text.Json;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>Passphrase, code, restart and https on the program itself.</summary>
public sealed class AccessTests : IDisposable
{
    private const string Passphrase = "warm chips in january";
    private readonly string _data = Directory.CreateTempSubdirectory("pile-access-").FullName;
    private readonly string _beside = Directory.CreateTempSubdirectory("pile-beside-").FullName;

    public void Dispose()
    {
        Directory.Delete(_data, recursive: true);
        Directory.Delete(_beside, recursive: true);
    }

    [Fact]
    public async Task Demo_WithoutSigningIn_CanBeLookedAtAndNotSteered()
    {
        await using DemoProcess demo = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0");

        using HttpResponseMessage looked = await demo.Client.GetAsync("/api/now");
        using HttpResponseMessage steered = await demo.PostAsync("/api/servicing", new { });
        using HttpResponseMessage signed = await demo.SignInAsync(demo.Passphrase!);
        using HttpResponseMessage again = await demo.PostAsync("/api/servicing", new { });

        Assert.Equal(HttpStatusCode.OK, looked.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, steered.StatusCode);
        Assert.Equal(HttpStatusCode.OK, signed.StatusCode);
        Assert.Equal(HttpStatusCode.Accepted, again.StatusCode);
    }

    [Fact]
    public async Task Passphrase_SetByTheCommand_StandsOverARestartAndSignsNobodyOut()
    {
        (int shortOne, string refused) = await DemoProcess.RunWithInputAsync("too short\n", "passphrase", "--data", _data);
        (int set, string told) = await DemoProcess.RunWithInputAsync($"{Passphrase}\n", "passphrase", "--data", _data);
        string cookie;
        string token;
        await using (DemoProcess demo = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0"))
        {
            Assert.Null(demo.Passphrase);
            using HttpResponseMessage signed = await demo.SignInAsync(Passphrase);
            cookie = signed.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
            token = demo.Client.DefaultRequestHeaders.GetValues("X-Pile-Token").Single();
            await demo.StopAsync();
        }

        await using DemoProcess later = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0");
        using HttpResponseMessage steered = await SteerAsync(later, cookie, token);
        (int replaced, _) = await DemoProcess.RunWithInputAsync("another passphrase\n", "passphrase", "--data", _data);
        using HttpResponseMessage after = await SteerAsync(later, cookie, token);

        Assert.Equal(2, shortOne);
        Assert.Contains("allowed: 10 to 200 characters", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("too short", refused, StringComparison.Ordinal);
        Assert.True(set == 0, told);
        Assert.Equal(HttpStatusCode.Accepted, steered.StatusCode);
        Assert.Equal(0, replaced);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
        string journal = await File.ReadAllTextAsync(Path.Combine(_data, "access.jsonl"));
        Assert.Contains("\"who\":\"Robin\"", journal, StringComparison.Ordinal);
        Assert.DoesNotContain(Passphrase, journal, StringComparison.Ordinal);
        Assert.DoesNotContain(token, journal, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Code_MadeByTheCommand_SetsThePassphraseInTheBrowserOnce()
    {
        await using DemoProcess demo = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0");
        (int made, string told) = await DemoProcess.RunAsync("passphrase", "--code", "--data", _data);
        string code = told.Split('\n')[0].Split(": ")[1].Trim();

        using HttpResponseMessage set = await demo.PostAsync("/api/session/passphrase", new { code, passphrase = Passphrase });
        using HttpResponseMessage again = await demo.PostAsync("/api/session/passphrase", new { code, passphrase = "another passphrase" });

        Assert.Equal(0, made);
        Assert.Equal(HttpStatusCode.OK, set.StatusCode);
        Assert.True(again.StatusCode is HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized, $"{again.StatusCode}");
    }

    [Fact]
    public async Task Passphrase_OfAFolderThatIsNotThere_IsRefusedWithWhatIsAllowed()
    {
        (int exit, string told) = await DemoProcess.RunWithInputAsync($"{Passphrase}\n", "passphrase", "--data", Path.Combine(_data, "none"));

        Assert.Equal(2, exit);
        Assert.Contains("there is no such folder; allowed: the folder that serve is given", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Serve_WithASpoiltAccessFile_SaysSoAndDoesNotStart()
    {
        await File.WriteAllTextAsync(Path.Combine(_data, "access.json"), "{");

        (int exit, string told) = await DemoProcess.RunAsync("serve", "--data", _data, "--urls", "http://127.0.0.1:0");

        Assert.Equal(2, exit);
        Assert.Contains("access.json cannot be read and is left as it is", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Serve_OverHttps_GivesACookieForHttpsAlone()
    {
        string settings = Path.Combine(_beside, "pile.json");
        (string certificate, string key) = MakeCertificate();
        await File.WriteAllTextAsync(settings, JsonSerializer.Serialize(new { panel = new { certificate, certificateKey = key } }));
        await using DemoProcess demo = await DemoProcess.OpenAsync("--settings", settings, "--data", _data, "--urls", "https://127.0.0.1:0");

        using HttpResponseMessage signed = await demo.SignInAsync(demo.Passphrase!);
        using HttpResponseMessage steered = await demo.PostAsync("/api/servicing", new { });

        string cookie = signed.Headers.GetValues("Set-Cookie").Single();
        Assert.StartsWith("https://", demo.Client.BaseAddress!.ToString());
        Assert.StartsWith("__Host-pile-session=", cookie);
        Assert.Contains("secure", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.Accepted, steered.StatusCode);
    }

    [Fact]
    public async Task Serve_CertificateRenewedWhileItRuns_ShowsItAtTheNextHandshake()
    {
        string settings = Path.Combine(_beside, "pile.json");
        (string certificate, string key) = MakeCertificate("first");
        await File.WriteAllTextAsync(settings, JsonSerializer.Serialize(new { panel = new { certificate, certificateKey = key } }));
        await using DemoProcess demo = await DemoProcess.OpenAsync("--settings", settings, "--data", _data, "--urls", "https://127.0.0.1:0");
        string before = await ShownAsync(demo.Client.BaseAddress!);

        MakeCertificate("second");
        string renewed = await ShownAsync(demo.Client.BaseAddress!);
        await File.WriteAllTextAsync(certificate, "-----BEGIN CERTIFICATE-----\nno more\n");
        string broken = await ShownAsync(demo.Client.BaseAddress!);
        File.Delete(key);
        string gone = await ShownAsync(demo.Client.BaseAddress!);
        MakeCertificate("the third");
        string mended = await ShownAsync(demo.Client.BaseAddress!);

        Assert.Equal(["CN=first", "CN=second", "CN=second", "CN=second", "CN=the third"], [before, renewed, broken, gone, mended]);
    }

    [Fact]
    public async Task Serve_WithACertificateThatIsNotThere_IsRefusedWithTheReason()
    {
        string settings = Path.Combine(_beside, "pile.json");
        await File.WriteAllTextAsync(settings, JsonSerializer.Serialize(new { panel = new { certificate = "none.pem", certificateKey = "none.key" } }));

        (int exit, string told) = await DemoProcess.RunAsync("serve", "--settings", settings, "--data", _data, "--urls", "https://127.0.0.1:0");

        Assert.Equal(2, exit);
        Assert.StartsWith("panel.certificate is \"none.pem\"", told);
    }

    // Whose certificate a new connection is shown. One that goes on from an earlier handshake would be shown none.
    private static async Task<string> ShownAsync(Uri page)
    {
        using TcpClient client = new();
        await client.ConnectAsync(page.Host, page.Port);
        await using SslStream secure = new(client.GetStream());
        await secure.AuthenticateAsClientAsync(new SslClientAuthenticationOptions
        {
            TargetHost = page.Host,
            AllowTlsResume = false,
            RemoteCertificateValidationCallback = (_, shown, _, _) => shown is not null,
        });
        return secure.RemoteCertificate!.Subject;
    }

    // Names of several lengths: files that follow one another within one tick of the disk's clock differ by that.
    private (string Certificate, string Key) MakeCertificate(string name = "pile")
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        using X509Certificate2 made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        string certificate = Path.Combine(_beside, "page.pem");
        string keyFile = Path.Combine(_beside, "page.key");
        File.WriteAllText(certificate, made.ExportCertificatePem());
        File.WriteAllText(keyFile, key.ExportPkcs8PrivateKeyPem());
        return (certificate, keyFile);
    }

    private static async Task<HttpResponseMessage> SteerAsync(DemoProcess demo, string cookie, string token)
    {
        using HttpClient client = new(new HttpClientHandler { UseCookies = false }) { BaseAddress = demo.Client.BaseAddress };
        client.DefaultRequestHeaders.Add("Cookie", cookie);
        client.DefaultRequestHeaders.Add("X-Pile-Token", token);
        client.DefaultRequestHeaders.Add("Origin", demo.Client.BaseAddress!.GetLeftPart(UriPartial.Authority));
        return await client.PostAsync("/api/servicing", null);
    }
}
