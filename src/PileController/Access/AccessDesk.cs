namespace PileController.Access;

/// <summary>What access is told.</summary>
/// <param name="Folder">Folder of the data.</param>
/// <param name="Clock">True time, not the demo's.</param>
internal sealed record AccessSetup(string Folder, TimeProvider Clock)
{
    /// <summary>The passphrase that counts while none is set in the folder; null for none. Hashed beside the start.</summary>
    public Lazy<SecretHash>? ForThisRun { get; init; }

    /// <summary>Whether what was typed is what a hash was made of. Takes long by design.</summary>
    public Func<SecretHash, string, bool> Fits { get; init; } = (hash, typed) => hash.Fits(typed);

    /// <summary>Names this machine answers to besides loopback and its own addresses.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];

    /// <summary>Whether other machines may look without signing in.</summary>
    public bool LookOnLan { get; init; }

    /// <summary>Whether other machines may steer over http that anyone on the way can read.</summary>
    public bool AllowPlainSteering { get; init; }
}

/// <summary>How an attempt to sign in ended.</summary>
/// <param name="Session">The session, when it was right.</param>
/// <param name="Secret">What goes into its cookie.</param>
/// <param name="WaitSeconds">How long to wait when it was not looked at, else null.</param>
internal sealed record SignIn(Session? Session, string? Secret = null, int? WaitSeconds = null);

/// <summary>Who may come in: passphrase, sessions, keys, journal.</summary>
/// <threadsafety>Safe from any thread.</threadsafety>
internal sealed class AccessDesk : IDisposable
{
    private const int BusySeconds = 2;
    private readonly Lock _gate = new();
    private readonly AccessSetup _setup;
    private readonly AccessFile _file;
    private readonly SignInBrake _brake = new();
    private readonly HashQueue _hashes = new();
    private (DateTime WrittenUtc, long Bytes)? _stamp;
    private AccessState _state = AccessState.Empty;
    private string? _fault;

    /// <summary>Takes up what is kept.</summary>
    public AccessDesk(AccessSetup setup)
    {
        _setup = setup;
        _file = new AccessFile(setup.Folder);
        Keys = new KeyRing(setup.Folder, setup.Clock);
        Journal = new AccessJournal(setup.Folder, setup.Clock);
        Journal.Load();
        if (setup.ForThisRun is { } hash)
        {
            _ = _hashes.TryRun(() => hash.Value);
        }
    }

    /// <summary>True time.</summary>
    public TimeProvider Clock => _setup.Clock;

    /// <summary>What access is told.</summary>
    public AccessSetup Setup => _setup;

    /// <summary>Sessions and keys of scripts.</summary>
    public KeyRing Keys { get; }

    /// <summary>Who came.</summary>
    public AccessJournal Journal { get; }

    /// <summary>Whether a passphrase stands. Also true while its file cannot be read: then nobody comes in by it.</summary>
    public bool Locked => _setup.ForThisRun is not null || Current() is { Fault: not null } or { Kept: not null };

    /// <summary>Why the file of the passphrase cannot be read, or null.</summary>
    public string? Fault => Current().Fault;

    /// <summary>Finds the session of a cookie.</summary>
    public Session? Find(string secret) => Standing() is { } standing ? Keys.Find(secret, standing.Salt) : null;

    /// <summary>Whether a session or key still stands; to ask is no use of it.</summary>
    /// <param name="mark">Its mark.</param>
    public bool Stands(string mark) => Standing() is { } standing && Keys.Stands(mark, standing.Salt);

    /// <summary>Signs somebody in. Hashes wait for each other; nobody else does.</summary>
    /// <exception cref="AccessFileException">The session cannot be kept.</exception>
    public Task<SignIn> SignInAsync(string passphrase, string name, string source, string from) => TryAsync(
        source, name, from, () => Standing() is { } standing && _setup.Fits(standing, passphrase) ? standing : null);

    /// <summary>Sets a new passphrase with a one-time code, ends all sessions, and signs in.</summary>
    /// <exception cref="AccessFileException">The passphrase cannot be kept.</exception>
    public Task<SignIn> SetByCodeAsync(string code, string passphrase, string name, string source, string from) => TryAsync(
        source, name, from, () => Code() is { } standing && _setup.Fits(standing.Hash, PassphraseWords.Tidied(code)) ? Replace(passphrase) : null);

    /// <inheritdoc/>
    public void Dispose()
    {
        _hashes.Dispose();
        Journal.Dispose();
    }

    private async Task<SignIn> TryAsync(string source, string name, string from, Func<SecretHash?> check)
    {
        if (_brake.Begin(source, Steady) is int wait)
        {
            return new SignIn(null, WaitSeconds: wait);
        }

        bool? good = null;
        try
        {
            if (_hashes.TryRun(check) is not { } hashing)
            {
                return new SignIn(null, WaitSeconds: BusySeconds);
            }

            SecretHash? fits = await hashing.ConfigureAwait(false);
            good = fits is not null;
            if (fits is null)
            {
                return new SignIn(null);
            }

            (string secret, Session session) = Keys.Open(name, from, fits.Salt);
            return new SignIn(session, secret);
        }
        finally
        {
            _brake.End(source, good, Steady);
        }
    }

    // On the thread of the hashes, one after another: so a code works once however many try it together.
    private SecretHash Replace(string passphrase)
    {
        AccessState state = new(AccessState.CurrentSchema, SecretHash.Of(passphrase), null);
        lock (_gate)
        {
            _file.Write(state);
            (_state, _fault, _stamp) = (state, null, _file.Stamp());
        }

        Keys.CloseAll();
        return state.Passphrase!;
    }

    private OneTimeCode? Code() =>
        Current().Code is { } code && _setup.Clock.GetUtcNow().ToUnixTimeMilliseconds() < code.UntilUtcMilliseconds ? code : null;

    // Outside the gate: the hash of this run's passphrase may still be in the making.
    private SecretHash? Standing() => Current() is { Fault: null } said ? said.Kept ?? _setup.ForThisRun?.Value : null;

    /// <summary>What the file says now: the command that sets a passphrase runs beside this program.</summary>
    private (OneTimeCode? Code, SecretHash? Kept, string? Fault) Current()
    {
        lock (_gate)
        {
            (DateTime WrittenUtc, long Bytes) stamp = _file.Stamp();
            if (stamp != _stamp)
            {
                _stamp = stamp;
                try
                {
                    (_state, _fault) = (_file.Read(), null);
                }
                catch (AccessFileException e)
                {
                    // Whoever spoils the file must not open the door by it.
                    (_state, _fault) = (AccessState.Empty, e.Message);
                }
            }

            return (_state.Code, _state.Passphrase, _fault);
        }
    }

    // A clock that nobody sets.
    private long Steady => (long)_setup.Clock.GetElapsedTime(0).TotalMilliseconds;
}
