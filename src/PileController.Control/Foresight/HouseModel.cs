using PileController.Control.Metering;

namespace PileController.Control.Foresight;

/// <summary>
/// The controller's own model of the house: air, floor and the water in the tank, from the figures told and what was
/// learned of them since. Steps are backward, so that an hour at once is stable.
/// </summary>
public readonly record struct HouseModel
{
    /// <summary>Sun below which the night curtain is taken to be drawn, W/m².</summary>
    public const double CurtainWPerM2 = 5;

    // Share of what warms the house from the sun that goes to air and plants at once; the rest is taken up by the floor
    // (common practice, no source).
    private const double GainToAir = 0.4;

    // Vents open in proportion to the excess, W/K per K (common practice, no source).
    private const double VentWPerKPerK = 400;

    // Water that comes from the heap is about this much warmer than what went there, K: a draw is a flow. Between the 7 K at
    // 4 L/min and the 16 K at 1 L/min that a coil of 80 W/K gives with the bed 30 K above the tank.
    private const double WaterRiseK = 12;
    private const double WaterWPerKPerLitreMinute = Carriers.WaterJPerLK / 60;

    /// <summary>Heat capacity of air, plants and benches, J/K.</summary>
    public double AirJPerK { get; init; }

    /// <summary>Heat capacity of the floor, J/K.</summary>
    public double FloorJPerK { get; init; }

    /// <summary>Coupling of air and floor, W/K.</summary>
    public double FloorWPerK { get; init; }

    /// <summary>Coupling of floor and deep ground, W/K.</summary>
    public double GroundWPerK { get; init; }

    /// <summary>Deep ground, °C.</summary>
    public double GroundC { get; init; }

    /// <summary>Loss to the air outside without the curtain, W/K.</summary>
    public double LossWPerK { get; init; }

    /// <summary>What the curtain saves of it, W/K.</summary>
    public double CurtainWPerK { get; init; }

    /// <summary>Gain below which the curtain is taken to be drawn, W.</summary>
    public double CurtainBelowW { get; init; }

    /// <summary>Air above which the vents open, °C.</summary>
    public double VentAboveC { get; init; }

    /// <summary>Conductance along the whole pipe in the house, W/K.</summary>
    public double PipeWPerK { get; init; }

    /// <summary>Loss of the tank to the air, W/K.</summary>
    public double TankWPerK { get; init; }

    /// <summary>Heat capacity of the tank, J/K.</summary>
    public double TankJPerK { get; init; }

    /// <summary>Heat carried by the least flow, W/K.</summary>
    public double LeastFlowWPerK { get; init; }

    /// <summary>Heat carried by the most flow, W/K.</summary>
    public double MostFlowWPerK { get; init; }

    /// <summary>The model of a house.</summary>
    /// <param name="settings">What was told of it.</param>
    /// <param name="memory">What was learned of it.</param>
    public static HouseModel Of(ControlSettings settings, in HouseMemory memory)
    {
        HouseTold told = settings.House;
        double loss = memory.LossFactor * settings.HouseLossWPerK;
        return new HouseModel
        {
            AirJPerK = told.AirJPerK,
            FloorJPerK = told.FloorJPerK,
            FloorWPerK = told.FloorWPerK,
            GroundWPerK = told.GroundWPerK,
            GroundC = told.GroundC,
            LossWPerK = loss,
            CurtainWPerK = Math.Min(memory.LossFactor * told.CurtainWPerK, 0.9 * loss),
            CurtainBelowW = CurtainWPerM2 * told.SunM2,
            VentAboveC = told.VentAboveC,
            PipeWPerK = told.PipeWPerK,
            TankWPerK = told.TankWPerK,
            TankJPerK = told.TankJPerK,
            LeastFlowWPerK = settings.LeastFlowLitresPerMinute * WaterWPerKPerLitreMinute,
            MostFlowWPerK = settings.MostFlowLitresPerMinute * WaterWPerKPerLitreMinute,
        };
    }

    /// <summary>The house a while later, all that acts on it held.</summary>
    /// <param name="s">The house now.</param>
    /// <param name="seconds">How long, s; up to an hour at once.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="gainW">Sun and all else that is not drawn, W.</param>
    /// <param name="waterWatts">Heat the water brings, W, 0 or more.</param>
    /// <param name="airWatts">Heat the ducts or a heater bring to the air, W.</param>
    public HouseState Step(in HouseState s, double seconds, double outsideC, double gainW, double waterWatts, double airWatts)
    {
        double loss = LossWPerK - (gainW < CurtainBelowW ? CurtainWPerK : 0);
        (double toAirW, double tankWPerK) = Pipe(waterWatts);
        tankWPerK += TankWPerK;

        // Floor and tank at the end of the step are straight functions of the air then; what is left is one line in it.
        double airJ = AirJPerK / seconds;
        double floorJ = FloorJPerK / seconds;
        double tankJ = TankJPerK / seconds;
        double floorSum = floorJ + FloorWPerK + GroundWPerK;
        double floorRest = ((floorJ * s.FloorC) + ((1 - GainToAir) * gainW) + (GroundWPerK * GroundC)) / floorSum;
        double floorPerK = FloorWPerK / floorSum;
        double tankSum = tankJ + tankWPerK;
        double tankRest = ((tankJ * s.TankC) + waterWatts - toAirW) / tankSum;
        double tankPerK = tankWPerK / tankSum;
        double perK = airJ + loss + (FloorWPerK * (1 - floorPerK)) + (tankWPerK * (1 - tankPerK));
        double sum = (airJ * s.AirC) + (loss * outsideC) + (GainToAir * gainW) + airWatts + toAirW
            + (FloorWPerK * floorRest) + (tankWPerK * tankRest);
        double air = sum / perK;
        if (air > VentAboveC)
        {
            air = Vented(perK, sum, outsideC);
        }

        return new HouseState(air, floorRest + (floorPerK * air), tankRest + (tankPerK * air));
    }

    /// <summary>Heat that would bring the air to a wish within a step, W: it answers as its own store, its floor and its losses together let it.</summary>
    /// <param name="wishC">The wish, °C.</param>
    /// <param name="idleC">Where the air comes to without it, °C.</param>
    /// <param name="seconds">How long, s.</param>
    internal double Wanted(double wishC, double idleC, double seconds) =>
        Math.Max(0, wishC - idleC) * ((AirJPerK / seconds) + LossWPerK + FloorWPerK);

    // What the pipe gives of the water's heat at once, and what it takes from the tank a kelvin because that water runs
    // too: with supply = tank + rise, it gives ε·(ṁc·(tank − air) + heat), and the tank keeps the rest.
    private (double ToAirW, double TankWPerK) Pipe(double waterWatts)
    {
        if (waterWatts <= 0 || PipeWPerK <= 0 || MostFlowWPerK <= 0)
        {
            return (0, 0);
        }

        double carried = Math.Min(waterWatts / WaterRiseK, MostFlowWPerK);
        double running = Math.Max(carried, LeastFlowWPerK);
        double effect = -Physics.Portable.ExpMinusOne(-PipeWPerK / running);
        return (effect * waterWatts, effect * carried);
    }

    // perK·T + v·(T − vent)·(T − outside) = sum, for the T above the vents' own.
    private double Vented(double perK, double sum, double outsideC)
    {
        double b = perK + (VentWPerKPerK * (VentAboveC - outsideC));
        double c = (perK * VentAboveC) - sum;
        return VentAboveC + ((Math.Sqrt((b * b) - (4 * VentWPerKPerK * c)) - b) / (2 * VentWPerKPerK));
    }
}
