using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Extensions.Logging;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Tests.Serving;

public sealed class RenewedCertificateTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-certificate-").FullName;
    private readonly KeptLog _logger = new();
    private readonly PanelSettings _panel;
    private int _written;

    public RenewedCertificateTests() =>
        _panel = new PanelSettings { Certificate = Path.Combine(_folder, "page.pem"), CertificateKey = Path.Combine(_folder, "page.key") };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Current_FilesAsTheyWere_IsTheSameAndNotReadAgain()
    {
        Write(Make("first"));
        RenewedCertificate certificate = Load();

        Assert.Same(certificate.Current(_logger), certificate.Current(_logger));
        Assert.Equal("CN=first", certificate.Current(_logger).Subject);
        Assert.Empty(_logger.Lines);
    }

    [Fact]
    public void Current_FilesRenewed_IsTheNewOneOnceBothHaveCome()
    {
        Write(Make("first"));
        RenewedCertificate certificate = Load();
        (string pem, string key) = Make("second");

        Put(_panel.Certificate, pem);
        Assert.Equal("CN=first", certificate.Current(_logger).Subject);
        Put(_panel.CertificateKey, key);

        Assert.Equal("CN=second", certificate.Current(_logger).Subject);
        Assert.True(certificate.Current(_logger).HasPrivateKey);
    }

    [Theory]
    [InlineData("")]
    [InlineData("-----BEGIN CERTIFICATE-----")]
    [InlineData(null)]
    public void Current_NewFileThatCannotBeUsed_LeavesTheOneBeforeAndSaysSoOnce(string? text)
    {
        Write(Make("first"));
        RenewedCertificate certificate = Load();
        if (text is null)
        {
            File.Delete(_panel.Certificate);
        }
        else
        {
            Put(_panel.Certificate, text);
        }

        Assert.Equal("CN=first", certificate.Current(_logger).Subject);
        Assert.Equal("CN=first", certificate.Current(_logger).Subject);

        string said = Assert.Single(_logger.Lines);
        Assert.Contains("the one before goes on", said, StringComparison.Ordinal);
        Assert.Contains(_panel.Certificate, said, StringComparison.Ordinal);
        Write(Make("third"));
        Assert.Equal("CN=third", certificate.Current(_logger).Subject);
    }

    [Fact]
    public void Current_LinkThatLeadsToAnotherFile_IsThatOne()
    {
        (string pem, string key) = Make("first");
        (string nextPem, string nextKey) = Make("second");
        foreach ((string name, string content) in (ReadOnlySpan<(string, string)>)[("1.pem", pem), ("1.key", key), ("2.pem", nextPem), ("2.key", nextKey)])
        {
            Put(Path.Combine(_folder, name), content);
        }

        Link("1");
        RenewedCertificate certificate = Load();
        Link("2");

        Assert.Equal("CN=second", certificate.Current(_logger).Subject);
    }

    [Fact]
    public void Load_NoneSet_IsNone()
    {
        Assert.True(RenewedCertificate.TryLoad(new PanelSettings(), out RenewedCertificate? none, out _));
        Assert.Null(none);
    }

    private static (string Pem, string Key) Make(string name)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        using X509Certificate2 made = request.CreateSelfSigned(DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch.AddYears(200));
        return (made.ExportCertificatePem(), key.ExportPkcs8PrivateKeyPem());
    }

    private RenewedCertificate Load()
    {
        Assert.True(RenewedCertificate.TryLoad(_panel, out RenewedCertificate? certificate, out string? fault), fault);
        return certificate!;
    }

    private void Write((string Pem, string Key) pair)
    {
        Put(_panel.Certificate, pair.Pem);
        Put(_panel.CertificateKey, pair.Key);
    }

    // Files that are written within one tick of the disk's clock would carry one stamp.
    private void Put(string path, string text)
    {
        File.WriteAllText(path, text);
        File.SetLastWriteTimeUtc(path, DateTime.UnixEpoch.AddMinutes(++_written));
    }

    private void Link(string number)
    {
        File.Delete(_panel.Certificate);
        File.Delete(_panel.CertificateKey);
        File.CreateSymbolicLink(_panel.Certificate, Path.Combine(_folder, $"{number}.pem"));
        File.CreateSymbolicLink(_panel.CertificateKey, Path.Combine(_folder, $"{number}.key"));
    }

    private sealed class KeptLog : ILogger
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            Lines.Add(formatter(state, exception));
    }
}
