using PileController.Control.Means;

namespace PileController.Control.Foresight;

/// <summary>
/// What the heap is taken to give through a night: against frost what is wanted, within the means
/// as they stand and as they are spent; for comfort no more than is granted now.
/// </summary>
/// <param name="GrantW">Granted now on a course that gives for comfort, W; 0 on another.</param>
/// <param name="MeansW">Means against frost now, W; 0 where the heap gives nothing.</param>
/// <param name="NetW">Heat the heap makes less what it loses by itself, W.</param>
/// <param name="WaterReachW">What the water can carry, W.</param>
/// <param name="AirReachW">What the air can carry, W.</param>
/// <param name="CloserKelvin">How much deeper than usual the house may swing, since it is held closer to its minimum, K.</param>
public readonly record struct NightDraw(
    double GrantW, double MeansW, double NetW, double WaterReachW, double AirReachW, double CloserKelvin = 0)
{
    /// <summary>Time in which the means are spent when all of them are drawn, s.</summary>
    internal static double SpendingSeconds => MeansRule.FrostHours * 3600;

    /// <summary>What is drawn at some moment, by water and by air, W.</summary>
    /// <param name="settings">What is known of the house.</param>
    /// <param name="meansW">Means left then, W.</param>
    /// <param name="frostW">What holds the house a little above its minimum, W.</param>
    /// <param name="houseC">House air then, °C.</param>
    /// <param name="outsideC">Air outside then, °C.</param>
    /// <param name="localHour">Local time of day then, h.</param>
    internal (double WaterW, double AirW) At(
        ControlSettings settings, double meansW, double frostW, double houseC, double outsideC, double localHour)
    {
        double comfortW = WantRule.Of(settings, houseC, outsideC, localHour).ComfortW;
        double drawn = Math.Max(Math.Min(frostW, meansW), Math.Min(comfortW, Math.Min(GrantW, meansW)));
        double water = Math.Min(drawn, WaterReachW);
        return (water, Math.Min(drawn - water, AirReachW));
    }
}
