namespace PileController.Panel.Sight;

/// <summary>For whom a first look is written.</summary>
/// <param name="American">Whether it is told in °F and BTU.</param>
/// <param name="Scheme">The chosen colours.</param>
/// <param name="Access">How they stand with the controller.</param>
internal sealed record SightReader(bool American, PanelScheme Scheme, SightAccess Access);

/// <summary>What the button in the head has to say of signing in.</summary>
internal enum SightAccess
{
    /// <summary>A passphrase is set, and they have not given it.</summary>
    SignedOut = 0,

    /// <summary>They are signed in.</summary>
    SignedIn,

    /// <summary>No passphrase is set.</summary>
    Open,
}
