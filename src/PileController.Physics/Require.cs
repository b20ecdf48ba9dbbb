using System.Runtime.CompilerServices;

namespace PileController.Physics;

/// <summary>Range checks at the borders of the physics; the error names the argument, what was given and what is allowed.</summary>
internal static class Require
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Within(double value, double lowest, double highest, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        // Written so that NaN fails too.
        if (!(value >= lowest && value <= highest))
        {
            Refuse(name, value, $"must lie from {lowest} to {highest} {unit}");
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value > 0 && value <= double.MaxValue))
        {
            Refuse(name, value, $"must be above 0 {unit} and finite");
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void NotNegative(double value, string unit, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= 0))
        {
            Refuse(name, value, $"must be 0 {unit} or more");
        }
    }

    private static void Refuse(string name, double value, string rule) =>
        throw new ArgumentOutOfRangeException(name, value, $"{name} {rule}; given {value}.");
}
