namespace PileController.Commands.Calc;

/// <summary>How the night curtain hangs. Not a flag: the command line takes "true" and "false" only after one.</summary>
internal enum NightCurtain
{
    Open = 0,
    Drawn,
}
