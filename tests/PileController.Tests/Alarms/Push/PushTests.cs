using System.Text.Json;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using PileController.Alarms;
using PileController.Alarms.Push;
using PileController.Settings;
using PileController.Tests.Service;

namespace PileController.Tests.Alarms.Push;

public sealed class PushTests : IDisposable
{
    private static readonly PushItem Item = new(
        "raised", "noFlow", "The pump runs and no water moves", "high", true, DateTimeOffset.UnixEpoch, "since 05:10", "Ice.", "No heat.", "Purge it.");

    private readonly string _folder = Directory.CreateTempSubdirectory("pile-push-").FullName;
    private readonly FakeTimeProvider _time = new(DateTimeOffset.UnixEpoch.AddYears(56));
    private readonly CancellationTokenSource _stop = new();
    private readonly List<string?> _troubles = [];

    public void Dispose()
    {
        _stop.Cancel();
        _stop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Webhook_AMessage_ArrivesAsJson()
    {
        await using LocalHttp server = await LocalHttp.StartAsync();
        using WebhookSink sink = new(server.Address);
        await sink.SendAsync(new PushMessage("Alder Bank", [Item], 3), CancellationToken.None);

        JsonElement body = Assert.Single(server.Bodies);
        Assert.Equal("Alder Bank", body.GetProperty("holding").GetString());
        Assert.Equal(3, body.GetProperty("more").GetInt32());
        JsonElement one = body.GetProperty("alarms")[0];
        Assert.Equal(
            ["raised", "noFlow", "high", "Purge it."],
            ((string[])["event", "key", "priority", "action"]).Select(name => one.GetProperty(name).GetString()));
        Assert.True(one.GetProperty("firstUp").GetBoolean());
    }

    [Theory]
    [InlineData(500)]
    [InlineData(404)]
    [InlineData(302)]
    public async Task Webhook_AnAnswerThatIsNoYes_Fails(int status)
    {
        await using LocalHttp server = await LocalHttp.StartAsync();
        server.Answers = status;
        using WebhookSink sink = new(server.Address);
        HttpRequestException fault = await Assert.ThrowsAsync<HttpRequestException>(() => sink.SendAsync(new PushMessage("x", [Item], 0), CancellationToken.None));
        Assert.Contains($"{status}", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mail_AMessage_ArrivesWithSenderNameAndWords()
    {
        using LocalSmtp server = new();
        string password = Path.Combine(_folder, "password");
        await File.WriteAllTextAsync(password, "open sesame\nnot this");
        MailSettings settings = new()
        {
            Host = "127.0.0.1",
            Port = server.Port,
            Tls = MailTls.None,
            From = "heap@example.org",
            To = "one@example.org, two@example.org",
            User = "heap",
            PasswordFile = password,
        };
        await new MailSink(settings, _time).SendAsync(new PushMessage("Alder Bank", [Item], 0), CancellationToken.None);
        await server.Served;

        Assert.Contains("RCPT TO:<one@example.org>", server.Said);
        Assert.Contains("RCPT TO:<two@example.org>", server.Said);
        string token = Convert.ToBase64String("\0heap\0open sesame"u8);
        Assert.Contains(server.Said, line => line.Contains(token, StringComparison.Ordinal));
        Assert.Contains("Subject: Alder Bank: HIGH: The pump runs and no water moves", server.Message, StringComparison.Ordinal);
        Assert.Contains("What to do: Purge it.", server.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mail_AServerThatRefuses_FailsWithoutTellingThePassword()
    {
        using LocalSmtp server = new() { Verdict = "554 no" };
        MailSettings settings = new() { Host = "127.0.0.1", Port = server.Port, Tls = MailTls.None, From = "heap@example.org", To = "one@example.org" };
        await Assert.ThrowsAnyAsync<Exception>(() => new MailSink(settings, _time).SendAsync(new PushMessage("x", [Item], 0), CancellationToken.None));
    }

    [Fact]
    public async Task Mail_StartTlsThatIsNotOffered_IsNotSentInPlainWords()
    {
        using LocalSmtp server = new();
        MailSettings settings = new() { Host = "127.0.0.1", Port = server.Port, Tls = MailTls.StartTls, From = "heap@example.org", To = "one@example.org" };
        await Assert.ThrowsAnyAsync<Exception>(() => new MailSink(settings, _time).SendAsync(new PushMessage("x", [Item], 0), CancellationToken.None));
        Assert.DoesNotContain("DATA", server.Said);
    }

    [Fact]
    public async Task Line_AStorm_IsOneMessageWithTheRestCounted()
    {
        FakeSink sink = new();
        PushLine line = Run(sink);
        for (int i = 0; i < 50; i++)
        {
            line.Post([Item with { Key = $"k{i}" }]);
        }

        await AdvanceUntilAsync(() => sink.Sent.Count == 1);
        Assert.Equal(PushLine.MostTold, sink.Sent[0].Alarms.Count);
        Assert.Equal(30, sink.Sent[0].More);
        Assert.Equal("k49", sink.Sent[0].Alarms[^1].Key);
    }

    // The clock of a long trial goes on in these steps, s; what is measured with it is as coarse.
    private const double Step = 20;

    [Fact]
    public async Task Line_ASinkThatFails_IsTriedAgainEverMoreSlowlyAndToldAfterAnHour()
    {
        FakeSink sink = new() { Fails = true };
        PushLine line = Run(sink);
        line.Post([Item]);
        await AdvanceUntilAsync(() => sink.Tries.Count >= 9, Step);
        double[] waits = [.. sink.Tries.Zip(sink.Tries.Skip(1), (one, next) => (next - one).TotalSeconds)];
        Assert.All(waits.Zip(waits.Skip(1)), pair => Assert.True(pair.Second >= pair.First - Step, string.Join(", ", waits)));
        Assert.True(waits[^1] <= PushLine.LongestWait.TotalSeconds + Step);
        Assert.True(sink.Tries.Count <= 12, "no more than a dozen tries an hour and a half");
        await AdvanceUntilAsync(() => _troubles.Count > 0, Step);
        Assert.StartsWith("Fake: down", _troubles[0], StringComparison.Ordinal);
        Assert.True(_time.GetUtcNow() - sink.Tries[0] >= PushLine.Patience);

        sink.Fails = false;
        line.Post([Item with { Key = "later" }]);
        await AdvanceUntilAsync(() => sink.Sent.Count == 1, Step);
        Assert.Equal(["noFlow", "later"], sink.Sent[0].Alarms.Select(one => one.Key));
        await AdvanceUntilAsync(() => _troubles[^1] is null);
    }

    [Fact]
    public async Task Line_MoreThanItHolds_KeepsTheNewestAndCountsTheRest()
    {
        FakeSink sink = new() { Fails = true };
        PushLine line = Run(sink);
        line.Post(Enumerable.Range(0, 1000).Select(i => Item with { Key = $"k{i}" }));
        await AdvanceUntilAsync(() => sink.Tries.Count >= 1);
        sink.Fails = false;
        await AdvanceUntilAsync(() => sink.Sent.Count == 1);
        Assert.Equal(1000, sink.Sent[0].Alarms.Count + sink.Sent[0].More);
        line.Post([Item with { Key = "next" }]);
        await AdvanceUntilAsync(() => sink.Sent.Count == 2);
        Assert.Equal((1, 0), (sink.Sent[1].Alarms.Count, sink.Sent[1].More));
    }

    [Theory]
    [InlineData(AlarmEventKind.Raised, false, AlarmPriority.Medium, true)]
    [InlineData(AlarmEventKind.Raised, true, AlarmPriority.Medium, false)]
    [InlineData(AlarmEventKind.Raised, false, AlarmPriority.High, false)]
    [InlineData(AlarmEventKind.Returned, false, AlarmPriority.Low, true)]
    [InlineData(AlarmEventKind.Seen, false, AlarmPriority.Low, false)]
    public void Item_AnEvent_IsToldByKindShelfAndPriority(AlarmEventKind kind, bool quiet, AlarmPriority least, bool told)
    {
        AlarmTable table = new([Bench.Row("a", _ => true, AlarmPriority.Medium)]);
        Assert.Equal(told, PushItem.Of(table, new AlarmEvent(1, kind, "a", 0, Quiet: quiet), least) is not null);
    }

    [Fact]
    public async Task Push_AnAlarmThatRises_GoesOutAndTheTickDoesNotWait()
    {
        FakeSink sink = new();
        AlarmTable table = new([Bench.Row("a", _ => true, AlarmPriority.High)]);
        AlarmDesk desk = new(table, AlarmState.Fresh(table));
        using AlarmPush push = new(desk, new AlarmsSettings(), "Alder Bank", [sink], _time, new PushTroubles(desk), NullLogger<AlarmPush>.Instance);
        await push.StartAsync(CancellationToken.None);
        AlarmFacts tick = Bench.Sound();
        desk.Follow(new(tick.At, tick.Decision, tick.Raw, tick.Record, tick.Tally));
        await AdvanceUntilAsync(() => sink.Sent.Count == 1);
        Assert.Equal("a", Assert.Single(sink.Sent[0].Alarms).Key);
        await push.StopAsync(CancellationToken.None);
    }

    private PushLine Run(FakeSink sink)
    {
        sink.Time = _time;
        PushLine line = new(sink, "Alder Bank", _time, (_, why) => _troubles.Add(why));
        _ = line.RunAsync(_stop.Token);
        return line;
    }

    // The line waits on the clock between steps of its own: the clock goes on until what is awaited has come.
    private Task AdvanceUntilAsync(Func<bool> holds, double stepSeconds = 1) => LoopBench.UntilAsync(() =>
    {
        if (!holds())
        {
            _time.Advance(TimeSpan.FromSeconds(stepSeconds));
        }

        return holds();
    });

    private sealed class FakeSink : IPushSink
    {
        public FakeTimeProvider? Time { get; set; }

        public bool Fails { get; set; }

        public List<PushMessage> Sent { get; } = [];

        public List<DateTimeOffset> Tries { get; } = [];

        public string Name => "Fake";

        public Task SendAsync(PushMessage message, CancellationToken cancellation)
        {
            Tries.Add(Time?.GetUtcNow() ?? default);
            if (Fails)
            {
                throw new InvalidOperationException("down");
            }

            Sent.Add(message);
            return Task.CompletedTask;
        }
    }
}
