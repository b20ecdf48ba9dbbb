using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "panel".</summary>
internal static class PanelFields
{
    public static readonly FieldTable<PanelSettings> Table = new()
    {
        { "address", Text("http on this machine's own loopback, \"http://127.0.0.1:8080\", until the page has a lock", PanelSettings.IsLoopback), p => p.Address, (p, v) => p with { Address = v! }, "Address the page is served at." },
        { "demoSpeed", Number(1, 3600, "times life"), p => p.DemoSpeed, (p, v) => p with { DemoSpeed = v }, "How fast the simulated rig runs when served." },
    };
}
