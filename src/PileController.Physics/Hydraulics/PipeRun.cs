using PileController.Physics.Fluids;

namespace PileController.Physics.Hydraulics;

/// <summary>A run of pipe of one bore with its fittings.</summary>
/// <param name="LengthM">Length, m, 0 or more.</param>
/// <param name="InnerDiameterM">Bore, m, above 0.</param>
/// <param name="FittingK">Sum of the loss coefficients of its fittings (a bend about 0.9, a pipe's entrance 0.5, its exit 1).</param>
/// <param name="StaticLiftM">Rise from its start to its end that nothing gives back, m: 0 in a closed, full loop.</param>
/// <param name="RoughnessM">Roughness of the wall, m; the default is drawn plastic or copper.</param>
public sealed record PipeRun(double LengthM, double InnerDiameterM, double FittingK = 0, double StaticLiftM = 0, double RoughnessM = PipeRun.SmoothM)
{
    /// <summary>Roughness of drawn plastic and copper pipe, 1.5 µm (from memory).</summary>
    public const double SmoothM = 1.5e-6;

    /// <summary>Diameter of the turns it is wound in, m; 0 for a straight run. Wound pipe costs more than straight.</summary>
    public double TurnDiameterM { get; init; }

    /// <summary>Reynolds number of a flow.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public double Reynolds(double flowLitresPerMinute, double waterC) =>
        4 * Water.MassFlowKgPerS(Math.Abs(flowLitresPerMinute), waterC) / (Math.PI * InnerDiameterM * Water.ViscosityPaS(waterC));

    /// <summary>Darcy friction factor at a flow.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min, not 0.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public double FrictionFactor(double flowLitresPerMinute, double waterC) =>
        FrictionAt(Reynolds(flowLitresPerMinute, waterC));

    /// <summary>Darcy friction factor at a Reynolds number.</summary>
    /// <param name="reynolds">Reynolds number, above 0.</param>
    public double FrictionAt(double reynolds) => TurnDiameterM > 0
        ? WoundFriction.Factor(reynolds, RoughnessM / InnerDiameterM, InnerDiameterM / TurnDiameterM)
        : Friction.Churchill(reynolds, RoughnessM / InnerDiameterM);

    /// <summary>Pressure lost to friction and fittings by Darcy and Weisbach, Pa; static lift not counted. Negative for flow backwards.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public double LossPa(double flowLitresPerMinute, double waterC)
    {
        if (flowLitresPerMinute == 0)
        {
            return 0;
        }

        double friction = FrictionFactor(flowLitresPerMinute, waterC);
        double velocity = Flow.VelocityMPerS(flowLitresPerMinute, InnerDiameterM);
        return ((friction * LengthM / InnerDiameterM) + FittingK) * Water.DensityKgPerM3(waterC) / 2 * velocity * Math.Abs(velocity);
    }

    /// <summary>Head a pump must give to drive a flow: losses and static lift, m of the same water.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min, 0 or more.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public double HeadM(double flowLitresPerMinute, double waterC) =>
        StaticLiftM + Flow.HeadM(LossPa(flowLitresPerMinute, waterC), Water.DensityKgPerM3(waterC));

    /// <summary>Water it holds, L.</summary>
    public double Litres => Math.PI / 4 * InnerDiameterM * InnerDiameterM * LengthM * 1000;

    /// <summary>Time water takes to run through, s; infinity when nothing flows.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min, 0 or more.</param>
    public double TransitSeconds(double flowLitresPerMinute)
    {
        Require.NotNegative(flowLitresPerMinute, "L/min");
        return flowLitresPerMinute > 0 ? 60 * Litres / flowLitresPerMinute : double.PositiveInfinity;
    }
}
