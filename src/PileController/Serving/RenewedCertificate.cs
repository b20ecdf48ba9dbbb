using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography.X509Certificates;
using PileController.Settings;

namespace PileController.Serving;

/// <summary>
/// The owner's certificate for https, read anew once its files are others: a renewal needs no restart. Files that cannot
/// be used leave the one before in its place, and it is said once.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed partial class RenewedCertificate
{
    private readonly PanelSettings _panel;
    private readonly Lock _lock = new();
    private X509Certificate2 _certificate;
    private (FileStamp Certificate, FileStamp Key) _stamp;

    private RenewedCertificate(PanelSettings panel, X509Certificate2 certificate, (FileStamp Certificate, FileStamp Key) stamp) =>
        (_panel, _certificate, _stamp) = (panel, certificate, stamp);

    /// <summary>Loads it; null where none is set.</summary>
    /// <returns>False when it cannot be loaded; <paramref name="fault"/> then says why.</returns>
    public static bool TryLoad(PanelSettings panel, out RenewedCertificate? certificate, [NotNullWhen(false)] out string? fault)
    {
        // Before it is read: what is written meanwhile is seen the next time.
        (FileStamp Certificate, FileStamp Key) stamp = Stamp(panel);
        bool fits = PageCertificate.TryLoad(panel, out X509Certificate2? loaded, out fault);
        certificate = loaded is null ? null : new RenewedCertificate(panel, loaded, stamp);
        return fits;
    }

    /// <summary>The one that counts for the next connection.</summary>
    /// <param name="logger">Told when new files cannot be used.</param>
    public X509Certificate2 Current(ILogger logger)
    {
        lock (_lock)
        {
            (FileStamp Certificate, FileStamp Key) stamp = Stamp(_panel);
            if (stamp != _stamp)
            {
                // A certificate may be written before its key: the pair fits once the second has come.
                _stamp = stamp;
                if (PageCertificate.TryLoad(_panel, out X509Certificate2? loaded, out string? fault))
                {
                    // The one before may be in use by a handshake, so it is not disposed of here.
                    _certificate = loaded!;
                    LogRenewed(logger, _certificate.NotAfter);
                }
                else
                {
                    LogUnfit(logger, fault);
                }
            }

            return _certificate;
        }
    }

    private static (FileStamp Certificate, FileStamp Key) Stamp(PanelSettings panel) =>
        (FileStamp.Of(panel.Certificate), FileStamp.Of(panel.CertificateKey));

    [LoggerMessage(Level = LogLevel.Warning, Message = "The page's certificate was renewed; it is good until {Until:u}.")]
    private static partial void LogRenewed(ILogger logger, DateTime until);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The page's certificate has changed and cannot be used; the one before goes on. {Fault}")]
    private static partial void LogUnfit(ILogger logger, string fault);

    /// <summary>By this a file is known to be another. Of a link it is that of the file it leads to.</summary>
    private readonly record struct FileStamp(string? Path, DateTime WrittenUtc, long Bytes)
    {
        public static FileStamp Of(string path)
        {
            try
            {
                FileInfo file = new(path);
                file = file.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? file;
                return file.Exists ? new FileStamp(file.FullName, file.LastWriteTimeUtc, file.Length) : default;
            }
            catch (Exception unseen) when (unseen is IOException or UnauthorizedAccessException or ArgumentException)
            {
                return default;
            }
        }
    }
}
