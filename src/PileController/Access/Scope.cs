namespace PileController.Access;

/// <summary>What somebody may do.</summary>
[Flags]
public enum Scope
{
    /// <summary>Nothing but the page's own files and signing in.</summary>
    None = 0,

    /// <summary>Read everything but who came in.</summary>
    Look = 1,

    /// <summary>Hand over forecasts of the weather.</summary>
    Forecast = 2,

    /// <summary>Everything.</summary>
    Steer = 4,
}

/// <summary>What scopes allow.</summary>
internal static class Scopes
{
    /// <summary>Whether what somebody has is enough for what is needed.</summary>
    public static bool Cover(this Scope have, Scope need) => have.HasFlag(Scope.Steer) || (have & need) == need;
}
