namespace PileController.Commands.Shell;

/// <summary>What a command tells the program that called it.</summary>
internal static class ExitCodes
{
    public const int Done = 0;

    /// <summary>The answer is no: a fault was found, a check failed.</summary>
    public const int No = 1;

    /// <summary>The command was used wrongly: an unknown option, a bad argument, a file that is not there.</summary>
    public const int WrongUse = 2;
}
