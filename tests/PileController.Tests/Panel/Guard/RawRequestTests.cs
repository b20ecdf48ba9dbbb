using System.Net;
using System.Net.Sockets;
using System.Text;
using PileController.Control.Decisions;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Guard;

/// <summary>Requests that no browser writes so: heads given twice, hosts of odd shape, one request hidden in another.</summary>
public class RawRequestTests
{
    private const string Passphrase = "warm chips in january";
    private const string Hidden = "POST /api/servicing HTTP/1.1\r\nHost: localhost\r\nContent-Length: 0\r\n\r\n";

    [Theory]
    [InlineData("localhost.")]
    [InlineData("localhost.example.org")]
    [InlineData("localhost@pile.example.org")]
    [InlineData("pile.example.org:127.0.0.1")]
    [InlineData("127.0.0.1.")]
    [InlineData("[::ffff:192.168.1.4]")]
    [InlineData("localhost, pile.example.org")]
    [InlineData("localhost/pile.example.org")]
    [InlineData("")]
    public async Task Host_OfOddShape_IsRefused(string name)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        Assert.Matches("^HTTP/1.1 (400|403) ", await AnswerAsync(host, $"GET /api/now HTTP/1.1\r\nHost: {name}\r\nConnection: close\r\n\r\n"));
    }

    [Theory]
    [InlineData("LOCALHOST")]
    [InlineData("LocalHost:65535")]
    [InlineData("[::1]:8080")]
    public async Task Host_OfThisMachineHoweverWritten_ComesIn(string name)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        Assert.StartsWith("HTTP/1.1 200 ", await AnswerAsync(host, $"GET /api/now HTTP/1.1\r\nHost: {name}\r\nConnection: close\r\n\r\n"));
    }

    [Fact]
    public async Task Target_OfAnotherHostThanTheHead_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        Assert.Matches("^HTTP/1.1 (400|403) ", await AnswerAsync(host, "GET http://pile.example.org/api/now HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"));
    }

    [Theory]
    [InlineData("Transfer-Encoding: xchunked")]
    [InlineData("Transfer-Encoding: chunked, identity")]
    [InlineData("Transfer-Encoding : chunked")]
    [InlineData("Transfer-Encoding:\r\n chunked")]
    [InlineData("Content-Length: 5, 5")]
    [InlineData("Content-Length: 0x5")]
    [InlineData("Content-Length: -1")]
    public async Task Length_ThatTwoReadersMightReadDifferently_IsRefusedAndWhatFollowsIsNotRead(string head)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        string answer = await AnswerAsync(host, $"POST /api/hand HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n{head}\r\n\r\n0\r\n\r\n{Hidden}");
        await host.NextTickAsync();

        Assert.Matches("^HTTP/1.1 (400|411|501) ", answer);
        Assert.Single(answer.Split("HTTP/1.1 ", StringSplitOptions.RemoveEmptyEntries));
        Assert.DoesNotContain(host.Control.Seen.SelectMany(commands => commands), command => command is not ReportTick);
    }

    [Theory]
    [InlineData("Origin: http://localhost\r\nX-Pile-Token: {token}\r\nX-Pile-Token: another")]
    [InlineData("X-Pile-Token: {token}\r\nOrigin: http://localhost\r\nOrigin: http://pile.example.org")]
    [InlineData("X-Pile-Token: {token}\r\nSec-Fetch-Site: same-origin\r\nSec-Fetch-Site: cross-site")]
    [InlineData("Origin: http://localhost\r\nX-Pile-Token: {token}\r\nAuthorization: Bearer one\r\nAuthorization: Bearer two")]
    [InlineData("Origin: http://localhost\r\nX-Pile-Token: \r\nX-HTTP-Method-Override: GET")]
    public async Task Head_GivenTwiceOrForged_OpensNothing(string heads)
    {
        await using PanelHost host = await PanelHost.StartAsync(passphrase: Passphrase);
        (string cookie, string token) = await SessionApiTests.SignInAsync(host);

        string answer = await AnswerAsync(
            host, $"POST /api/servicing HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: 0\r\nCookie: {cookie}\r\n{heads.Replace("{token}", token, StringComparison.Ordinal)}\r\n\r\n");

        Assert.Matches("^HTTP/1.1 (400|401|403) ", answer);
    }

    [Fact]
    public async Task Path_ThatTurnsALineRound_IsToldInTheJournalWithoutThat()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.GetAsync("/api/%E2%80%AEnibor%0d%0aline");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(host.Access.Journal.Newest(10), line => line.Why == "/api/niborline");
    }

    private static async Task<string> AnswerAsync(PanelHost host, string request)
    {
        using TcpClient client = new();
        await client.ConnectAsync(host.Client.BaseAddress!.Host, host.Client.BaseAddress.Port);
        await client.GetStream().WriteAsync(Encoding.Latin1.GetBytes(request));
        using StreamReader reader = new(client.GetStream(), Encoding.Latin1);
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(30));
        return await reader.ReadToEndAsync(patience.Token);
    }
}
