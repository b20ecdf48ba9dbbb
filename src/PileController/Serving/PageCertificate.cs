using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using PileController.Settings;

namespace PileController.Serving;

/// <summary>The owner's certificate for https.</summary>
internal static class PageCertificate
{
    /// <summary>Loads it; null where none is set.</summary>
    /// <returns>False when it cannot be loaded; <paramref name="fault"/> then says why.</returns>
    public static bool TryLoad(PanelSettings panel, out X509Certificate2? certificate, [NotNullWhen(false)] out string? fault)
    {
        certificate = null;
        fault = null;
        string path = panel.Certificate;
        if (path.Length == 0)
        {
            return true;
        }

        try
        {
            certificate = X509Certificate2.CreateFromPemFile(path, panel.CertificateKey);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            fault = $"panel.certificate is \"{path}\", panel.certificateKey is \"{panel.CertificateKey}\": {e.Message.TrimEnd('.')}; allowed: readable PEM files of a certificate and its key.";
            return false;
        }
    }
}
