using PileController.Physics.Hydraulics;

namespace PileController.Parts;

/// <summary>Some fittings of one name.</summary>
/// <param name="Fitting">The fitting.</param>
/// <param name="Count">How many, 1 or more.</param>
internal readonly record struct FittingCount(Fitting Fitting, int Count)
{
    /// <summary>Loss coefficient of all of them in a bore, m.</summary>
    public double LossK(double innerDiameterM) => Count * Fitting.LossK(innerDiameterM);
}
