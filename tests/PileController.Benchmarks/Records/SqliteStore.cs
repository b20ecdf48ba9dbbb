using System.Text.Json;
using Microsoft.Data.Sqlite;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Records.Packing;

namespace PileController.Benchmarks.Records;

/// <summary>
/// The same ticks in SQLite: a row a tick, a row a decision, the newest memory, committed when the record syncs (a
/// decision, or six steady ticks), with a write-ahead log that is synced at each commit. All ticks stay, nothing is summed up.
/// </summary>
internal static class SqliteStore
{
    private const int SyncTicks = 6;
    private const int Page = 200;
    private const long DayMilliseconds = 86_400_000;
    private static readonly string[] Columns = [.. Enumerable.Range(0, TickRow.Width).Select(n => $"c{n}")];

    /// <summary>Writes some days.</summary>
    public static StoreFigures Write(TrialDisk trial, string name, int days, TextWriter progress)
    {
        SqliteConnection store = Open(trial.Folder(name));
        Run(store, $"create table ticks (n integer primary key, utc integer not null, {string.Join(", ", Columns.Select(c => c + " integer"))})");
        Run(store, "create index at on ticks (utc)");
        Run(store, "create table decisions (n integer primary key, utc integer not null, mode integer, curb integer, line text)");
        Run(store, "create table memory (id integer primary key, text text)");
        List<TickEntry> waiting = [];
        long commits = 0;
        return Tally.Of("SQLite, WAL, synchronous FULL; all ticks kept, no summaries", days, Keep, End, progress);

        void Keep(TickEntry tick)
        {
            waiting.Add(tick);
            if (waiting.Count >= SyncTicks || tick.Decision.Kinds != DecisionKinds.Steady)
            {
                Commit();
            }
        }

        (long Frames, long Commits, double Megabytes) End()
        {
            Commit();
            store.Dispose();
            SqliteConnection.ClearAllPools();
            return (commits, commits, trial.Megabytes(name));
        }

        void Commit()
        {
            using SqliteTransaction transaction = store.BeginTransaction();
            foreach (TickEntry tick in waiting)
            {
                Insert(store, transaction, tick);
            }

            if (waiting.Count > 0)
            {
                Run(store, "insert or replace into memory values (1, $text)", transaction, ("$text", RecordJson.Of(waiting[^1].MemoryAfter).GetRawText()));
            }

            transaction.Commit();
            waiting.Clear();
            commits++;
        }
    }

    /// <summary>Asks the same as <see cref="OwnStore.AskAsync"/>.</summary>
    public static async Task<IReadOnlyDictionary<string, QuestionTime>> AskAsync(string folder)
    {
        Dictionary<string, QuestionTime> times = [];
        string day = "where utc >= (select max(utc) from ticks) - 86400000 order by utc";
        long step = 365 * DayMilliseconds / 1500;
        await TimeAsync("rawDay24Channels", $"select utc, {string.Join(", ", Columns[..ChannelTable.Count])} from ticks {day}");
        await TimeAsync("rawDayAllSeries", $"select utc, {string.Join(", ", Columns)} from ticks {day}");
        await TimeAsync("yearOfOneSeriesTo1500Points", $"select utc / {step}, min(c0), avg(c0), max(c0), count(c0) from ticks group by 1 order by 1");
        await TimeAsync("newestDecisions", $"select line from decisions order by n desc limit {Page}");
        await TimeAsync("decisionsOfOneModeAndCurb", $"select line from decisions where mode = 4 and curb = {(int)Curb.Floor} order by n desc limit {Page}");
        await TimeAsync("decisionsWithAnAbsentText", $"select line from decisions where line like '%nowhere to be found%' order by n desc limit {Page}");
        return times;

        async Task TimeAsync(string what, string question)
        {
            using SqliteConnection store = Open(folder);
            times.Add(what, await QuestionClock.TimeAsync(() => Task.FromResult($"{Read(store, question)} rows")));
        }
    }

    private static long Read(SqliteConnection store, string question)
    {
        using SqliteCommand command = store.CreateCommand();
        command.CommandText = question;
        using SqliteDataReader reader = command.ExecuteReader();
        long rows = 0;
        object[] values = new object[reader.FieldCount];
        while (reader.Read())
        {
            reader.GetValues(values);
            rows++;
        }

        return rows;
    }

    private static void Insert(SqliteConnection store, SqliteTransaction transaction, TickEntry tick)
    {
        Decision decision = tick.Decision;
        (string, object?)[] cells = [.. TickRow.Of(tick).Select((cell, n) => ($"$c{n}", (object?)cell))];
        Run(
            store, $"insert into ticks values ($n, $utc, {string.Join(", ", Columns.Select(c => "$" + c))})", transaction,
            [("$n", decision.Sequence), ("$utc", decision.At.UtcMilliseconds), .. cells]);
        if (decision.Kinds != DecisionKinds.Steady)
        {
            Run(
                store, "insert into decisions values ($n, $utc, $mode, $curb, $line)", transaction, ("$n", decision.Sequence),
                ("$utc", decision.At.UtcMilliseconds), ("$mode", (int)decision.Mode), ("$curb", (int)decision.Curb),
                ("$line", JsonSerializer.Serialize(new { decision.WantWatts, decision.MeansWatts, decision.GrantWatts, decision.Why, decision.Note })));
        }
    }

    private static SqliteConnection Open(string folder)
    {
        SqliteConnection store = new($"Data Source={Path.Combine(folder, "ticks.db")}");
        store.Open();
        Run(store, "pragma journal_mode = wal");
        Run(store, "pragma synchronous = full");
        return store;
    }

    private static void Run(SqliteConnection store, string text, SqliteTransaction? transaction = null, params (string Name, object? Value)[] given)
    {
        using SqliteCommand command = store.CreateCommand();
        command.CommandText = text;
        command.Transaction = transaction;
        foreach ((string name, object? value) in given)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        command.ExecuteNonQuery();
    }
}
