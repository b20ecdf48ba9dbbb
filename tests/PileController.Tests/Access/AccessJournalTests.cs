using Microsoft.Extensions.Time.Testing;
using PileController.Access;

namespace PileController.Tests.Access;

public sealed class AccessJournalTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-journal-").FullName;
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 1, 20, 6, 0, 0, TimeSpan.Zero));

    private string FilePath => Path.Combine(_folder, AccessJournal.Name);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Add_DoneThings_AreEachWrittenAndShownAgainAfterARestart()
    {
        using (AccessJournal journal = new(_folder, _clock))
        {
            journal.Add("Robin", "192.168.1.7", "session", "POST /api/hand", true, 202, null);
            journal.Add("Robin", "192.168.1.7", "session", "POST /api/hand", true, 202, null);
            journal.Write();
        }

        using AccessJournal again = new(_folder, _clock);
        again.Load();

        Assert.Equal(2, File.ReadAllLines(FilePath).Length);
        Assert.Equal(["Robin", "Robin"], again.Newest(10).Select(e => e.Who));
    }

    [Fact]
    public void Add_AStormFromOneAddress_IsTwoLinesAMinute()
    {
        using AccessJournal journal = new(_folder, _clock);
        for (int i = 0; i < 5000; i++)
        {
            journal.Add(null, "10.0.0.9", null, "POST /api/session", false, 401, "The passphrase is not right.");
            journal.Write();
        }

        _clock.Advance(TimeSpan.FromMinutes(1));
        journal.Write();

        Assert.Equal(2, File.ReadAllLines(FilePath).Length);
        Assert.Equal(5000, Assert.Single(journal.Newest(10)).Times);
    }

    [Fact]
    public void Add_AStormFromManyAddresses_IsBoundedAndHidesNothingDone()
    {
        using AccessJournal journal = new(_folder, _clock);
        journal.Add("Robin", "192.168.1.7", "session", "POST /api/hand", true, 202, null);
        for (int i = 0; i < 5000; i++)
        {
            journal.Add(null, $"10.0.{i / 250}.{i % 250}", null, "POST /api/session", false, 401, "no");
        }

        journal.Write();

        Assert.InRange(File.ReadAllLines(FilePath).Length, 2, 40);
        Assert.Contains(journal.Newest(400), e => e.Who == "Robin");
        Assert.Equal(5000, journal.Newest(400).Where(e => !e.Done).Sum(e => e.Times));
    }

    [Fact]
    public void Write_ForYears_KeepsTwoFilesOfBoundedLength()
    {
        using AccessJournal journal = new(_folder, _clock);
        for (int i = 0; i < 8000; i++)
        {
            journal.Add("weather station", "192.168.1.7", "token", "POST /api/forecast", true, 202, null);
            if (i % 100 == 99)
            {
                journal.Write();
            }
        }

        long[] lengths = [.. Directory.GetFiles(_folder).Select(f => new FileInfo(f).Length)];
        Assert.Equal(2, lengths.Length);
        Assert.All(lengths, length => Assert.InRange(length, 1, 300 * 1024));
    }

    [Fact]
    public void Add_ControlCharactersAndALongText_BecomeOneBoundedLine()
    {
        using AccessJournal journal = new(_folder, _clock);
        journal.Add("a\nb\u001b[2J", "here", null, "POST /api/hand", false, 400, new string('x', 5000));
        journal.Write();

        string line = Assert.Single(File.ReadAllLines(FilePath));
        Assert.Equal("ab[2J", Assert.Single(journal.Newest(1)).Who);
        Assert.InRange(line.Length, 1, 500);
    }

    [Fact]
    public void Load_ACutOffLine_IsPassedOver()
    {
        File.WriteAllText(FilePath, "{\"atUtcMilliseconds\":1,\"who\":\"Robin\",\"from\":\"here\",\"by\":null,\"what\":\"x\",\"done\":true,\"status\":202,\"why\":null,\"times\":1}\n{\"atUtc");
        using AccessJournal journal = new(_folder, _clock);

        journal.Load();

        Assert.Single(journal.Newest(10));
    }
}
