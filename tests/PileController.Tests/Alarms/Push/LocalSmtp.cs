using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PileController.Tests.Alarms.Push;

/// <summary>As much of a mail server (RFC 5321, plain login by RFC 4954) as a message needs, on a free port of the loopback.</summary>
internal sealed class LocalSmtp : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);

    public LocalSmtp()
    {
        _listener.Start();
        Served = ServeAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>What the client said, line by line, the message included.</summary>
    public List<string> Said { get; } = [];

    /// <summary>Ends with the first message that was served.</summary>
    public Task Served { get; }

    /// <summary>What is answered to a message.</summary>
    public string Verdict { get; init; } = "250 taken";

    public string Message => string.Join("\n", Said.SkipWhile(line => line != "DATA").Skip(1).TakeWhile(line => line != "."));

    public void Dispose() => _listener.Dispose();

    private async Task ServeAsync()
    {
        using TcpClient client = await _listener.AcceptTcpClientAsync();
        using StreamReader reader = new(client.GetStream(), Encoding.UTF8);
        await using StreamWriter writer = new(client.GetStream(), new UTF8Encoding(false)) { NewLine = "\r\n", AutoFlush = true };
        await writer.WriteLineAsync("220 here");
        bool inMessage = false;
        while (await reader.ReadLineAsync() is { } line)
        {
            Said.Add(line);
            if (inMessage)
            {
                if (line == ".")
                {
                    inMessage = false;
                    await writer.WriteLineAsync(Verdict);
                }

                continue;
            }

            string verb = line.Split(' ')[0].ToUpperInvariant();
            inMessage = verb == "DATA";
            await writer.WriteLineAsync(verb switch
            {
                "EHLO" => "250-here\r\n250 AUTH PLAIN",
                "AUTH" => "235 welcome",
                "DATA" => "354 go on",
                "QUIT" => "221 bye",
                _ => "250 ok",
            });
            if (verb == "QUIT")
            {
                return;
            }
        }
    }
}
