using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>Customary units that only calc shows, in SI; products of the defining constants.</summary>
internal static class Customary
{
    public const double PoundPerCubicFoot = (double)(Factors.Pound / Factors.CubicFoot);
    public const double CubicFootPerPound = (double)(Factors.CubicFoot / Factors.Pound);
    public const double BtuPerPound = (double)(Factors.Btu / Factors.Pound);
    public const double BtuPerPoundF = (double)(Factors.Btu / Factors.Pound / Factors.KelvinPerRankine);
    public const double BtuPerHourFootF = (double)(Factors.Btu / Factors.Hour / Factors.Foot / Factors.KelvinPerRankine);
    public const double PoundPerCubicYard = (double)(Factors.Pound / (27 * Factors.CubicFoot));
    public const double CubicYard = (double)(27 * Factors.CubicFoot);
    public const double BtuPerHour = (double)(Factors.Btu / Factors.Hour);
    public const double BtuPerHourF = (double)(Factors.Btu / Factors.Hour / Factors.KelvinPerRankine);
    public const double FootPerMinute = (double)(Factors.Foot / Factors.Minute);
    public const double MilePerHour = (double)(5280 * Factors.Foot / Factors.Hour);
    public const double InchOfWater = (double)Factors.InchOfWater;
    public const double Psi = (double)Factors.Psi;
}
