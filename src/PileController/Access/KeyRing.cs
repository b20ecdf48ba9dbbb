using System.Text.Json;
using System.Text.Json.Serialization;

namespace PileController.Access;

/// <summary>Sessions and the keys of scripts: in memory, and as marks in a file, so that a restart signs nobody out.</summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class KeyRing
{
    /// <summary>Plain name of the file.</summary>
    public const string Name = "access-keys.json";

    /// <summary>Most keys of scripts.</summary>
    public const int MostTokens = 32;

    // A household has a few browsers; the one not used for longest makes room.
    private const int MostSessions = 64;
    private const string Prefix = "pile_";

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    private readonly Lock _gate = new();
    private readonly string _path;
    private readonly TimeProvider _clock;
    private readonly Dictionary<string, Session> _sessions;
    private readonly Dictionary<string, ScriptToken> _tokens;
    private bool _unsaved;

    /// <summary>Takes up what was kept. A file that cannot be read opens nothing.</summary>
    public KeyRing(string folder, TimeProvider clock)
    {
        _path = Path.Combine(folder, Name);
        _clock = clock;
        Keys kept = Read(_path);
        _sessions = kept.Sessions.DistinctBy(s => s.Mark).ToDictionary(s => s.Mark);
        _tokens = kept.Tokens.DistinctBy(t => t.Mark).ToDictionary(t => t.Mark);
    }

    private long Now => _clock.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>Opens a session and gives the secret for its cookie.</summary>
    /// <exception cref="AccessFileException">It cannot be kept.</exception>
    public (string Secret, Session Session) Open(string name, string from, string with)
    {
        string secret = SecretText.Make();
        Session session = new(SecretText.Mark(secret), name, from, Now, Now, with);
        lock (_gate)
        {
            foreach (Session old in _sessions.Values.Where(s => !s.Stands(Now, with)).ToArray())
            {
                _sessions.Remove(old.Mark);
            }

            if (_sessions.Count >= MostSessions)
            {
                _sessions.Remove(_sessions.Values.MinBy(s => s.SeenUtcMilliseconds)!.Mark);
            }

            _sessions[session.Mark] = session;
            Save();
        }

        return (secret, session);
    }

    /// <summary>The session of a cookie, or null.</summary>
    /// <param name="secret">What the cookie holds.</param>
    /// <param name="with">Salt of the passphrase that stands.</param>
    public Session? Find(string secret, string with)
    {
        string mark = SecretText.Mark(secret);
        lock (_gate)
        {
            if (!_sessions.TryGetValue(mark, out Session? session) || !session.Stands(Now, with))
            {
                return null;
            }

            _unsaved = true;
            return _sessions[mark] = session with { SeenUtcMilliseconds = Now };
        }
    }

    /// <summary>Whether a session or key still stands. To ask is no use of it, so it may end meanwhile.</summary>
    /// <param name="mark">Its mark.</param>
    /// <param name="with">Salt of the passphrase that stands.</param>
    public bool Stands(string mark, string with)
    {
        lock (_gate)
        {
            return _tokens.ContainsKey(mark) || (_sessions.TryGetValue(mark, out Session? session) && session.Stands(Now, with));
        }
    }

    /// <summary>Ends one session.</summary>
    /// <exception cref="AccessFileException">It cannot be kept; the session has ended all the same.</exception>
    public void Close(Session session) => Change(() => _sessions.Remove(session.Mark));

    /// <summary>Ends all sessions.</summary>
    /// <exception cref="AccessFileException">It cannot be kept; the sessions have ended all the same.</exception>
    public void CloseAll() => Change(_sessions.Clear);

    /// <summary>The keys of scripts.</summary>
    public IReadOnlyList<ScriptToken> Tokens()
    {
        lock (_gate)
        {
            return [.. _tokens.Values.OrderBy(t => t.MadeUtcMilliseconds)];
        }
    }

    /// <summary>Makes a key for a script; null when there are too many, or one of that name.</summary>
    /// <exception cref="AccessFileException">It cannot be kept.</exception>
    public (string Secret, ScriptToken Token)? Make(string name, Scope scopes, string by)
    {
        string secret = Prefix + SecretText.Make();
        ScriptToken token = new(SecretText.Mark(secret), name, scopes, Now, null, by);
        lock (_gate)
        {
            if (_tokens.Count >= MostTokens || _tokens.Values.Any(t => t.Name == name))
            {
                return null;
            }

            _tokens[token.Mark] = token;
            Save();
        }

        return (secret, token);
    }

    /// <summary>The key a script shows, or null.</summary>
    public ScriptToken? FindToken(string secret)
    {
        string mark = SecretText.Mark(secret);
        lock (_gate)
        {
            if (!_tokens.TryGetValue(mark, out ScriptToken? token))
            {
                return null;
            }

            _unsaved = true;
            return _tokens[mark] = token with { UsedUtcMilliseconds = Now };
        }
    }

    /// <summary>Takes a key back; false when there is none of that name.</summary>
    /// <exception cref="AccessFileException">It cannot be kept; the key is taken back all the same.</exception>
    public bool Revoke(string name)
    {
        bool found = false;
        Change(() => found = _tokens.Values.FirstOrDefault(t => t.Name == name) is { } token && _tokens.Remove(token.Mark));
        return found;
    }

    /// <summary>Keeps when keys were used last, if that has changed.</summary>
    /// <exception cref="AccessFileException">It cannot be kept.</exception>
    public void Keep()
    {
        lock (_gate)
        {
            if (_unsaved)
            {
                Save();
            }
        }
    }

    private static Keys Read(string path)
    {
        try
        {
            Keys keys = JsonSerializer.Deserialize<Keys>(File.ReadAllText(path), Json) ?? Keys.Empty;
            return keys.Schema == Keys.CurrentSchema ? keys : Keys.Empty;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            return Keys.Empty;
        }
    }

    private void Change(Action change)
    {
        lock (_gate)
        {
            change();
            Save();
        }
    }

    private void Save()
    {
        _unsaved = true;
        Keys all = new(Keys.CurrentSchema, [.. _sessions.Values], [.. _tokens.Values]);
        try
        {
            PrivateFile.Replace(_path, JsonSerializer.Serialize(all, Json) + "\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new AccessFileException($"{_path} cannot be written: {e.Message.TrimEnd('.')}.");
        }

        _unsaved = false;
    }
}
