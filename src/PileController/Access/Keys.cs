namespace PileController.Access;

/// <summary>Somebody signed in.</summary>
/// <param name="Mark">Mark of the secret in the browser's cookie.</param>
/// <param name="Name">The name the person gave.</param>
/// <param name="From">Address the person came from.</param>
/// <param name="MadeUtcMilliseconds">Since when.</param>
/// <param name="SeenUtcMilliseconds">When it was used last.</param>
/// <param name="With">Salt of the passphrase it was made with: it ends when that is replaced.</param>
internal sealed record Session(string Mark, string Name, string From, long MadeUtcMilliseconds, long SeenUtcMilliseconds, string With)
{
    private const long IdleMilliseconds = 12 * 3_600_000L;
    private const long MostMilliseconds = 30 * 24 * 3_600_000L;

    /// <summary>Whether it still counts. A clock that was set back ends nothing.</summary>
    public bool Stands(long nowUtcMilliseconds, string with) =>
        With == with && nowUtcMilliseconds - SeenUtcMilliseconds < IdleMilliseconds && nowUtcMilliseconds - MadeUtcMilliseconds < MostMilliseconds;
}

/// <summary>A key for a script.</summary>
/// <param name="Mark">Mark of the key.</param>
/// <param name="Name">What it is for.</param>
/// <param name="Scopes">What it may do.</param>
/// <param name="MadeUtcMilliseconds">Since when.</param>
/// <param name="UsedUtcMilliseconds">When it was used last, or null.</param>
/// <param name="MadeBy">Who made it.</param>
internal sealed record ScriptToken(string Mark, string Name, Scope Scopes, long MadeUtcMilliseconds, long? UsedUtcMilliseconds, string MadeBy);

/// <summary>All that opens, as it is kept: marks, never the secrets.</summary>
/// <param name="Schema">Form of the file.</param>
/// <param name="Sessions">Who is signed in.</param>
/// <param name="Tokens">The keys of scripts.</param>
internal sealed record Keys(int Schema, IReadOnlyList<Session> Sessions, IReadOnlyList<ScriptToken> Tokens)
{
    /// <summary>The form this program writes.</summary>
    public const int CurrentSchema = 1;

    /// <summary>Nothing opens.</summary>
    public static Keys Empty { get; } = new(CurrentSchema, [], []);
}
