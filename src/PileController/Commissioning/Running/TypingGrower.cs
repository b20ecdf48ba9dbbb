using System.Collections.Concurrent;
using System.Globalization;

namespace PileController.Commissioning.Running;

/// <summary>A grower at a terminal. A line counts from the moment it was typed, not from the tick that takes it.</summary>
/// <threadsafety>Lines come from a thread of their own; all else is called by one.</threadsafety>
internal sealed class TypingGrower : IGrower
{
    private readonly TextWriter _output;
    private readonly ConcurrentQueue<(double Seconds, string? Line)> _lines = new();
    private Phase? _asked;

    /// <summary>Listens.</summary>
    /// <param name="input">What is typed.</param>
    /// <param name="output">Where questions go.</param>
    /// <param name="seconds">The clock of the looks, s.</param>
    public TypingGrower(TextReader input, TextWriter output, Func<double> seconds)
    {
        _output = output;
        _ = Task.Run(() =>
        {
            string? line;
            do
            {
                line = input.ReadLine();
                _lines.Enqueue((seconds(), line));
            }
            while (line is not null);
        });
    }

    /// <inheritdoc/>
    public void Hear(string line) => _output.WriteLine(line);

    /// <inheritdoc/>
    public Reply? Reply(Walk walk)
    {
        if (walk.AwaitsAnswer && !ReferenceEquals(_asked, walk.Phase))
        {
            _asked = walk.Phase;
            _output.WriteLine(_asked!.Question is { } asks ? $"     {asks.Text} ({asks.Allowed}; \"stop\" gives up)" : "     Press Enter to go on; \"stop\" gives up.");
        }

        while (_lines.TryDequeue(out (double Seconds, string? Line) typed))
        {
            if (typed.Line is null || typed.Line.Trim() is "stop")
            {
                return new Reply(typed.Seconds, null, null, GivesUp: true);
            }

            if (!walk.AwaitsAnswer)
            {
                continue;
            }

            if (Read(walk.Phase!.Question, typed.Line.Trim(), typed.Seconds) is { } reply)
            {
                return reply;
            }

            _output.WriteLine($"     \"{typed.Line.Trim()}\" is not allowed; allowed: {walk.Phase!.Question!.Allowed}");
        }

        return null;
    }

    private static Reply? Read(Question? question, string line, double seconds) => question?.Kind switch
    {
        null => new Reply(seconds, null, null),
        AnswerKind.Text => line.Length <= Question.LongestText && !line.Any(char.IsControl) ? new Reply(seconds, null, line) : null,
        AnswerKind.YesNo => line.ToLowerInvariant() switch
        {
            "y" or "yes" => new Reply(seconds, 1, null),
            "n" or "no" => new Reply(seconds, 0, null),
            _ => null,
        },
        _ => double.TryParse(line, NumberStyles.Float, CultureInfo.InvariantCulture, out double figure) && figure >= question.Least && figure <= question.Most
            ? new Reply(seconds, figure, null)
            : null,
    };
}
