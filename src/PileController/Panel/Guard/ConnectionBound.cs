using System.Net;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using PileController.Access;

namespace PileController.Panel.Guard;

/// <summary>
/// Bounds connections. Whoever opens many and says nothing drives out their own: of those that have not made a
/// request yet the oldest goes when there are too many, so a person who comes in between is served.
/// </summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class ConnectionBound(AccessDesk desk)
{
    /// <summary>Most connections in all; a page holds two, one of them for as long as it is open.</summary>
    public const int Most = 600;

    /// <summary>Most connections of one source but this machine itself.</summary>
    public const int MostOfOneSource = 200;

    /// <summary>Most connections that have not made a request yet.</summary>
    public const int MostSilent = 128;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, int> _bySource = [];
    private readonly LinkedList<ConnectionContext> _silent = [];
    private readonly Dictionary<string, LinkedListNode<ConnectionContext>> _silentById = [];
    private int _all;

    /// <summary>Puts the bound in front of whatever listens.</summary>
    public void Apply(ListenOptions options) => options.Use(next => connection => RunAsync(connection, next));

    /// <summary>A connection has made a request.</summary>
    public void Spoke(string connectionId)
    {
        lock (_gate)
        {
            if (_silentById.Remove(connectionId, out LinkedListNode<ConnectionContext>? node))
            {
                _silent.Remove(node);
            }
        }
    }

    private async Task RunAsync(ConnectionContext connection, ConnectionDelegate next)
    {
        IPAddress? address = (connection.RemoteEndPoint as IPEndPoint)?.Address;
        string source = Sources.Of(address);
        bool local = address is not null && IPAddress.IsLoopback(Sources.Plain(address));
        ConnectionContext? driven = null;
        lock (_gate)
        {
            int ofSource = _bySource.GetValueOrDefault(source);
            if (_all >= Most || (!local && ofSource >= MostOfOneSource))
            {
                driven = connection;
            }
            else
            {
                _all++;
                _bySource[source] = ofSource + 1;
                _silentById[connection.ConnectionId] = _silent.AddLast(connection);
                driven = _silent.Count > MostSilent ? _silent.First!.Value : null;
            }
        }

        if (driven is not null)
        {
            Drive(driven);
            if (driven == connection)
            {
                return;
            }
        }

        try
        {
            await next(connection);
        }
        finally
        {
            Leave(connection, source);
        }
    }

    private void Drive(ConnectionContext connection)
    {
        Spoke(connection.ConnectionId);
        connection.Abort(new ConnectionAbortedException("Too many connections."));
        desk.Journal.Add(
            null, Sources.Shown((connection.RemoteEndPoint as IPEndPoint)?.Address), null, "a connection", false, 0, "Too many connections.");
    }

    private void Leave(ConnectionContext connection, string source)
    {
        Spoke(connection.ConnectionId);
        lock (_gate)
        {
            _all--;
            if (--_bySource[source] == 0)
            {
                _bySource.Remove(source);
            }
        }
    }
}
