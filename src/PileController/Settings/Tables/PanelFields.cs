using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "panel".</summary>
internal static class PanelFields
{
    public static readonly FieldTable<PanelSettings> Table = new()
    {
        { "address", Text("http or https on localhost or an address in numbers, without a path, \"http://127.0.0.1:8080\"", PanelSettings.IsAddress), p => p.Address, (p, v) => p with { Address = v! }, "Address the page is served at." },
        { "demoSpeed", Number(1, 3600, "times life"), p => p.DemoSpeed, (p, v) => p with { DemoSpeed = v }, "How fast the simulated rig runs when served." },
        { "lan", Flag, p => p.Lan, (p, v) => p with { Lan = v }, "Whether other machines may reach the page; a passphrase must be set first (PileController passphrase)." },
        { "names", Text("names of this machine with commas between, \"pile.home.arpa, pile\", or \"\" for none", PanelSettings.AreNames), p => p.Names, (p, v) => p with { Names = v! }, "Names the page answers to besides localhost and this machine's addresses." },
        { "certificate", Text("a path, or \"\" for none", _ => true), p => p.Certificate, (p, v) => p with { Certificate = v! }, "Certificate for https, PEM." },
        { "certificateKey", Text("a path, or \"\" for none", _ => true), p => p.CertificateKey, (p, v) => p with { CertificateKey = v! }, "Key of the certificate, PEM." },
        { "allowPlainSteering", Flag, p => p.AllowPlainSteering, (p, v) => p with { AllowPlainSteering = v }, "Whether other machines may steer over plain http; anyone on the way can read the passphrase and steer too." },
        { "lookOnLan", Flag, p => p.LookOnLan, (p, v) => p with { LookOnLan = v }, "Whether other machines may look without signing in." },
    };
}
