namespace PileController.Units;

/// <summary>
/// One unit of one dimension: base value = (number + <paramref name="Shift"/>) × <paramref name="Scale"/>, where the
/// base is the coherent SI unit (kelvin for temperatures). Decimals keep conversions free of binary rounding, so that
/// what a person writes arrives as the nearest double.
/// </summary>
/// <param name="Symbol">How it is written to people: "L/min".</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Scale">Base units in one of it.</param>
/// <param name="Shift">Added before scaling; 0 for all but temperatures.</param>
/// <param name="OtherSpellings">Other ways people write it.</param>
public sealed record Unit(
    string Symbol, Dimension Dimension, decimal Scale, decimal Shift, IReadOnlyList<string> OtherSpellings);
