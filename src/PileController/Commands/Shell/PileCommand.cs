using System.CommandLine;

namespace PileController.Commands.Shell;

/// <summary>A command that shows an example of its use in its help.</summary>
/// <param name="name">The word that calls it.</param>
/// <param name="description">What it does, in a sentence.</param>
/// <param name="example">A command line that works as it stands.</param>
internal sealed class PileCommand(string name, string description, string example) : Command(name, description)
{
    /// <summary>A command line that works as it stands.</summary>
    public string Example => example;
}
