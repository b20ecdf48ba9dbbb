using System.Diagnostics.CodeAnalysis;
using PileController.Access;
using PileController.Settings;

namespace PileController.Serving;

/// <summary>Who may come in during one run, and what the program says of it at its start.</summary>
/// <param name="Desk">Who may come in.</param>
/// <param name="Line">One line for whoever started it.</param>
internal sealed record RunAccess(AccessDesk Desk, string Line) : IDisposable
{
    /// <summary>Whether a passphrase stands: the demo makes one, a real rig has the one of its folder or none.</summary>
    /// <returns>False when the file of the passphrase cannot be read; <paramref name="fault"/> then says why.</returns>
    public static bool TryFind(PileSettings settings, string? folder, out bool passphraseSet, [NotNullWhen(false)] out string? fault)
    {
        fault = null;
        passphraseSet = settings.Rig.Simulated;
        try
        {
            passphraseSet |= folder is not null && new AccessFile(folder).Read().Passphrase is not null;
            return true;
        }
        catch (AccessFileException e)
        {
            fault = e.Message;
            return false;
        }
    }

    /// <summary>Opens the door of one run.</summary>
    public static RunAccess Open(PileSettings settings, string folder)
    {
        // A demo that anyone could steer would teach a habit that a real rig cannot bear.
        string? words = settings.Rig.Simulated ? PassphraseWords.Passphrase() : null;
        AccessDesk desk = new(new AccessSetup(folder, TimeProvider.System)
        {
            ForThisRun = words is null ? null : new(() => SecretHash.Of(words)),
            Names = settings.Panel.NameList(),
            LookOnLan = settings.Panel.LookOnLan,
            AllowPlainSteering = settings.Panel.AllowPlainSteering,
        });
        bool kept = new AccessFile(folder).Read().Passphrase is not null;
        return new RunAccess(
            desk,
            kept ? $"The passphrase set for {folder} stands."
            : words is not null ? $"Passphrase for this run: {words}"
            : "No passphrase is set: whoever is at this machine may change everything. Set one: PileController passphrase");
    }

    /// <inheritdoc/>
    public void Dispose() => Desk.Dispose();
}
