using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

/// <summary>Actuators moved at random every few hours, pump and blower standing for about half of the time.</summary>
internal sealed class RandomHands(int seed)
{
    private readonly Random _random = new(seed);
    private PlantInputs _now;
    private int _minutesLeft;

    /// <summary>What the actuators do in the next minute.</summary>
    public PlantInputs Minute()
    {
        if (_minutesLeft-- <= 0)
        {
            _minutesLeft = _random.Next(20, 360);
            _now = new PlantInputs(
                Sometimes(0.5), _random.Next(3) == 0 ? _random.NextDouble() : 1, Sometimes(0.5), _random.Next(4) == 0, Sometimes(0.2));
        }

        return _now;
    }

    private double Sometimes(double share) => _random.NextDouble() < share ? _random.NextDouble() : 0;
}
