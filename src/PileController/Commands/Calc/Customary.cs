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
    public const double Psi = (double)Factors.Psi;
}
