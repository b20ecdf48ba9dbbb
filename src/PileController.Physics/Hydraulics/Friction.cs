namespace PileController.Physics.Hydraulics;

/// <summary>Darcy friction factor of round pipes.</summary>
public static class Friction
{
    /// <summary>Laminar flow: 64/Re.</summary>
    /// <param name="reynolds">Reynolds number, above 0.</param>
    public static double Laminar(double reynolds)
    {
        Require.Positive(reynolds, "(Reynolds)");
        return 64 / reynolds;
    }

    /// <summary>Churchill's formula (1977): laminar, transition and turbulent flow in one, so no jump upsets a root search.</summary>
    /// <param name="reynolds">Reynolds number, above 0.</param>
    /// <param name="relativeRoughness">Roughness over bore, 0 to 0.1.</param>
    public static double Churchill(double reynolds, double relativeRoughness)
    {
        Require.Positive(reynolds, "(Reynolds)");
        Require.Within(relativeRoughness, 0, 0.1, "(ratio)");
        double laminar = Twelfth(8 / reynolds);
        double a = Sixteenth(-2.457 * Portable.Log(Portable.Pow(7 / reynolds, 0.9) + (0.27 * relativeRoughness)));
        double b = Sixteenth(37530 / reynolds);
        double sum = a + b;
        return 8 * Portable.Pow(laminar + (1 / (sum * Math.Sqrt(sum))), 1.0 / 12);
    }

    private static double Twelfth(double x)
    {
        double cube = x * x * x;
        double sixth = cube * cube;
        return sixth * sixth;
    }

    private static double Sixteenth(double x)
    {
        double square = x * x;
        double fourth = square * square;
        double eighth = fourth * fourth;
        return eighth * eighth;
    }
}
