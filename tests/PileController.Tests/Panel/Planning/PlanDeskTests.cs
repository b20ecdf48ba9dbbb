using System.Net;
using PileController.Panel.Planning;
using PileController.Plans.Sketch;
using PileController.Settings;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Planning;

public class PlanDeskTests
{
    [Fact]
    public async Task Storm_OfFiftyFromOnePage_RunsOneAtATimeAndAnswersTheFirstAndTheNewest()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Gate.Reset();
        Task<HttpResponseMessage> first = host.Client.GetAsync("/api/plan?page=a&turns=1");
        await host.Sketch.Begun.WaitAsync();

        // The next is sent once one of the two before has lost its place, so that the last is surely the newest.
        Task<HttpResponseMessage> waits = host.Client.GetAsync("/api/plan?page=a&turns=2");
        for (int turns = 3; turns <= 40; turns++)
        {
            waits = await OneOfAsync(waits, host.Client.GetAsync($"/api/plan?page=a&turns={turns}"));
        }

        for (int cover = 1; cover <= 10; cover++)
        {
            waits = await OneOfAsync(waits, host.Client.GetAsync($"/api/plan?page=a&coverM=0.{cover:00}"));
        }

        await host.NextTickAsync();
        host.Sketch.Gate.Set();

        Assert.Equal(HttpStatusCode.OK, (await first).StatusCode);
        Assert.Contains("\"tried\":0.1}", await (await waits).Content.ReadAsStringAsync());
        Assert.Equal((2, 1), (host.Sketch.Made, host.Sketch.MostRunning));
    }

    // The one that still waits once the other has been displaced.
    private static async Task<Task<HttpResponseMessage>> OneOfAsync(Task<HttpResponseMessage> older, Task<HttpResponseMessage> newer)
    {
        Task<HttpResponseMessage> displaced = await Task.WhenAny(older, newer);
        Assert.Equal(HttpStatusCode.Conflict, (await displaced).StatusCode);
        return displaced == older ? newer : older;
    }

    [Fact]
    public async Task Page_AskingOften_DoesNotKeepAnotherFromItsAnswer()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Gate.Reset();
        Task<HttpResponseMessage> first = host.Client.GetAsync("/api/plan?page=busy&turns=1");
        await host.Sketch.Begun.WaitAsync();
        Task<HttpResponseMessage> waits = host.Client.GetAsync("/api/plan?page=busy&turns=2");
        Task<HttpResponseMessage> other = host.Client.GetAsync("/api/plan?page=other&turns=3");
        Task<HttpResponseMessage> newest = host.Client.GetAsync("/api/plan?page=busy&turns=4");
        await Task.WhenAny(waits, newest);

        host.Sketch.Gate.Set();

        Assert.Equal(HttpStatusCode.OK, (await first).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await other).StatusCode);
        Assert.Equal(1, new[] { await waits, await newest }.Count(one => one.StatusCode == HttpStatusCode.OK));
        Assert.Equal((3, 1), (host.Sketch.Made, host.Sketch.MostRunning));
    }

    [Fact]
    public async Task Pages_MoreThanMayWait_AreToldToComeAgain()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Gate.Reset();
        List<Task<HttpResponseMessage>> asked = [host.Client.GetAsync("/api/plan?page=runs")];
        await host.Sketch.Begun.WaitAsync();

        for (int page = 0; page <= PlanDesk.MostPages; page++)
        {
            asked.Add(host.Client.GetAsync($"/api/plan?page=p{page}&turns={page}"));
        }

        using HttpResponseMessage refused = await await Task.WhenAny(asked);
        host.Sketch.Gate.Set();

        Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
        Assert.Equal(PlanDesk.MostPages + 1, (await Task.WhenAll(asked)).Count(one => one.StatusCode == HttpStatusCode.OK));
    }

    [Fact]
    public async Task Question_AskedAgain_IsAnsweredFromWhatIsKept()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        string first = await host.Client.GetStringAsync("/api/plan?turns=20&radiusM=0.9");
        string second = await host.Client.GetStringAsync("/api/plan?radiusM=0.9&turns=20");

        Assert.Equal(first, second);
        Assert.Equal(1, host.Sketch.Made);
    }

    [Fact]
    public async Task Question_TakenBack_IsNotReckoned()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Gate.Reset();
        PileSettings built = PileSettings.AlderBank;
        Task<PlanSketch?> runs = host.Desk.Ask("a", "1", built, CancellationToken.None)!;
        await host.Sketch.Begun.WaitAsync();
        using CancellationTokenSource gone = new();
        Task<PlanSketch?> takenBack = host.Desk.Ask("b", "2", built, gone.Token)!;
        await gone.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => takenBack);
        Task<PlanSketch?> after = host.Desk.Ask("c", "3", built, CancellationToken.None)!;
        host.Sketch.Gate.Set();

        Assert.NotNull(await runs);
        Assert.NotNull(await after);
        Assert.Equal(2, host.Sketch.Made);
    }

    [Fact]
    public async Task Sum_ThatFails_IsToldAndTheNextIsAnswered()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Throws = new InvalidOperationException("no such heap");
        using HttpResponseMessage failed = await host.Client.GetAsync("/api/plan");
        host.Sketch.Throws = null;

        using HttpResponseMessage next = await host.Client.GetAsync("/api/plan");

        Assert.Equal((HttpStatusCode.InternalServerError, HttpStatusCode.OK), (failed.StatusCode, next.StatusCode));
    }

    [Fact]
    public async Task Sum_Runs_OnAThreadOfItsOwnWhileTicksGoOn()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Sketch.Gate.Reset();
        Task<HttpResponseMessage> asked = host.Client.GetAsync("/api/plan");
        await host.Sketch.Begun.WaitAsync();

        await host.NextTickAsync();
        await host.NextTickAsync();
        host.Sketch.Gate.Set();

        Assert.Equal(HttpStatusCode.OK, (await asked).StatusCode);
        Assert.Equal(false, host.Sketch.RanOnPool);
    }
}
