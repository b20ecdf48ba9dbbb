using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>
/// Runs a stretch of a record twice, with the settings it was made with and with others, on the readings and commands
/// of the record. The rig did what is recorded: modes, outputs, regulators and interlocks of both go on from there at
/// each tick, or a pump told to run would seem to run dry. What the other settings lead to believe of heap, house and
/// weather, and to plan, goes on by itself. What heap and house would have answered is in neither, so a long stretch
/// tells less than a short one.
/// </summary>
public static class CourseComparer
{
    /// <summary>Compares the two.</summary>
    /// <param name="dataDirectory">Folder of the record; a service may write in it.</param>
    /// <param name="fromUtcMilliseconds">First moment, inclusive; null for the evening before the last night.</param>
    /// <param name="toUtcMilliseconds">Last moment, exclusive; null for the morning after it.</param>
    /// <param name="made">Control with the settings a block was made with.</param>
    /// <param name="other">Control with the other settings.</param>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    /// <exception cref="InvalidDataException">The end of the record is damaged and the last night cannot be told.</exception>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    public static CourseComparison Run(
        string dataDirectory, long? fromUtcMilliseconds, long? toUtcMilliseconds, ReplaySteps made, ReplayStep other)
    {
        using RecordReader reader = RecordReader.Open(dataDirectory);
        TimeRange night = reader.Batches.Count == 0 ? default : LastNight.Before(reader.Batches[^1].Batch().Instants()[^1]);
        TimeRange range = new(fromUtcMilliseconds ?? night.From, toUtcMilliseconds ?? night.To);
        TwoCourses courses = new(range, made, other);
        List<string> problems = [.. reader.Problems];
        foreach (var stored in reader.Batches.Where(batch => range.Touches(batch.Head)))
        {
            try
            {
                courses.Run(ReplayTape.Of(stored.Batch()));
            }
            catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
            {
                problems.Add($"Tick {stored.Head.FirstSequence} to {stored.Head.LastSequence}: {exception.Message}");
            }
        }

        return courses.Report([.. problems, .. courses.Problems]);
    }

    private sealed class TwoCourses(TimeRange range, ReplaySteps made, ReplayStep other)
    {
        private readonly CourseTally _then = new();
        private readonly CourseTally _now = new();
        private readonly DecisionDigest _digest = new();
        private long _ticks;
        private long _asRecorded;
        private long _differing;
        private ReplayDifference? _first;

        // What the other course believes goes on as long as the record does.
        private Memory? _otherMemory;
        private string _handedOn = "";

        public List<string> Problems { get; } = [];

        public CourseComparison Report(IReadOnlyList<string> problems) =>
            new(range.From, range.To, _ticks, _asRecorded, _differing, _first, _then.Sum(), _now.Sum(), problems);

        public void Run(ReplayTape tape)
        {
            if (made(tape.Origin) is not { } step)
            {
                Problems.Add(
                    $"Tick {tape.Batch.FirstSequence} to {tape.Batch.Head.LastSequence}: the settings they were made with ({tape.Origin.SettingsHash}) are not kept.");
                return;
            }

            Memory memory = tape.MemoryBefore;
            if (RecordJson.Of(memory).GetRawText() != _handedOn)
            {
                _otherMemory = null;
            }

            for (int row = 0; row < tape.Count; row++)
            {
                Instant at = tape.Instants[row];
                IReadOnlyList<Command> commands = tape.CommandsAt(row);
                Memory before = memory;
                (Decision then, memory) = step(before, tape.Readings[row], commands, at);
                if (!range.Holds(at.UtcMilliseconds))
                {
                    continue;
                }

                Memory otherBefore = _otherMemory is null ? before : OnTheRigOf(before, _otherMemory);
                (Decision now, _otherMemory) = other(otherBefore, tape.Readings[row], commands, at);
                _ticks++;
                _asRecorded += unchecked((long)_digest.Of(then)) == tape.Digests[row] ? 1 : 0;
                _then.Add(before, then);
                _now.Add(otherBefore, now);
                if (DecisionDifference.Of(then, now) is { } what)
                {
                    _differing++;
                    _first ??= new ReplayDifference(tape.Batch.FirstSequence + row, at.UtcMilliseconds, what);
                }
            }

            _handedOn = tape.MemoryAfter;
        }

        private static Memory OnTheRigOf(Memory recorded, Memory own) => recorded with
        {
            Totals = own.Totals,
            Estimator = own.Estimator,
            House = own.House,
            Weather = own.Weather,
            Forecast = own.Forecast,
            Course = own.Course,
            LookedAtMonotonicMilliseconds = own.LookedAtMonotonicMilliseconds,
            Guard = own.Guard,
            Tonight = own.Tonight,
        };
    }
}
