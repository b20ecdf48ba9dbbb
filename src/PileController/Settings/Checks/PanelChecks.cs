namespace PileController.Settings.Checks;

/// <summary>Where the page is served.</summary>
internal static class PanelChecks
{
    public static readonly Check[] All =
    [
        Check.That(
            "panel.address", ["panel.lan"],
            s => s.Panel.Lan || new Uri(s.Panel.Address).IsLoopback ? null : "this machine's own loopback, \"http://127.0.0.1:8080\", or panel.lan true",
            s => $"\"{s.Panel.Address}\""),
        Check.That(
            "panel.address", ["panel.certificate"],
            s => s.Panel.Certificate.Length == 0 && new Uri(s.Panel.Address).Scheme == Uri.UriSchemeHttps ? "http, or https with panel.certificate" : null,
            s => $"\"{s.Panel.Address}\""),
        Check.That(
            "panel.certificateKey", ["panel.certificate"],
            s => s.Panel.Certificate.Length == 0 == (s.Panel.CertificateKey.Length == 0) ? null : "given together with panel.certificate, or neither",
            s => s.Panel.CertificateKey.Length == 0 ? "none" : $"\"{s.Panel.CertificateKey}\""),
    ];
}
