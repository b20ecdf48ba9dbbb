using PileController.Control.Decisions;

namespace PileController.Rigs;

/// <summary>Refuses outputs no actuator can follow.</summary>
internal static class OutputsCheck
{
    /// <summary>Throws when a value is not a number from 0 to 1.</summary>
    /// <exception cref="ArgumentException">Names the field, what was given and what is allowed.</exception>
    public static void Require(in Outputs outputs)
    {
        Require(outputs.PumpDuty, nameof(Outputs.PumpDuty));
        Require(outputs.ValveOpening, nameof(Outputs.ValveOpening));
        Require(outputs.BlowerDuty, nameof(Outputs.BlowerDuty));
    }

    private static void Require(double value, string field)
    {
        // Written so that NaN fails too.
        if (!(value >= 0 && value <= 1))
        {
            throw new ArgumentException($"Outputs.{field} is {value}; allowed is 0 to 1.", field);
        }
    }
}
