namespace PileController.Commands.Calc;

/// <summary>The line in which the flow meter sits.</summary>
internal enum MeterLine
{
    Return = 0,
    Supply,
}
