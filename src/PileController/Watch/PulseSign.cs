using PileController.Rigs;

namespace PileController.Watch;

/// <summary>Feeds the hardware timer in series with the loads: its line beats only while the service proves its health.</summary>
internal sealed class PulseSign(IHeldLine line) : ISignOfLife
{
    /// <inheritdoc/>
    public void Say(string? sickness) => line.Say(sickness is null);
}
