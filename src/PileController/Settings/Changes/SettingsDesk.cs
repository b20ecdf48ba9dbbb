using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace PileController.Settings.Changes;

/// <summary>
/// The settings of a running service: the file, what lies over it, and changes to that. A change is written first and
/// takes effect when the service is built anew; what came of that is told here.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
internal sealed class SettingsDesk
{
    /// <summary>Name of the file in the data folder.</summary>
    public const string FileName = "changes.json";

    private readonly Lock _lock = new();
    private readonly string _fileText;
    private readonly Action<string, string> _write;
    private ChangeBook _book = new();
    private Misfit? _misfit;
    private string? _toldForLong;
    private SettingsResult _inForce;

    /// <summary>Opens the settings.</summary>
    /// <param name="fileText">The settings file, without faults.</param>
    /// <param name="changes">What <see cref="FileName"/> says, or null where there is none.</param>
    /// <param name="write">Writes a file of the data folder anew, whole or not at all: its name and its text.</param>
    public SettingsDesk(string fileText, string? changes, Action<string, string> write)
    {
        _fileText = fileText;
        _write = write;
        if (changes is not null)
        {
            Take(changes);
        }

        _inForce = SettingsFile.Parse(Text);
    }

    /// <summary>The file's own settings, without what lies over them.</summary>
    public PileSettings File => SettingsFile.Parse(_fileText).Settings;

    /// <summary>The settings in force.</summary>
    public PileSettings Effective => _inForce.Settings;

    /// <summary>What is allowed in them and a person should still know of. Lines are told where the file alone is in force.</summary>
    public IReadOnlyList<SettingsWarning> Warnings =>
        [.. _inForce.Warnings.Select(warning => _book.Values.Count == 0 ? warning : warning with { Line = null })];

    /// <summary>Their text.</summary>
    public string Text => _book.Values.Count == 0 ? _fileText : SettingsMerge.Text(_fileText, _book.Values);

    /// <summary>What lies over the file and who put it there.</summary>
    public ChangeBook Book
    {
        get
        {
            lock (_lock)
            {
                return _book;
            }
        }
    }

    /// <summary>What did not go well with the changes, in a sentence; null when all did.</summary>
    public string? Trouble { get; private set; }

    /// <summary>True once a change waits for the service to be built anew.</summary>
    public bool Asked { get; private set; }

    /// <summary>True while a change is in force that no service has run with yet.</summary>
    public bool Tried
    {
        get
        {
            lock (_lock)
            {
                return !Asked && _book.Before is not null;
            }
        }
    }

    /// <summary>What an edit would come to.</summary>
    public EditOutcome Try(SettingsEdit edit)
    {
        lock (_lock)
        {
            return SettingsEditing.Try(_fileText, _book.Values, edit);
        }
    }

    /// <summary>Writes an edit without faults. It takes effect at <see cref="Renew"/>.</summary>
    /// <param name="edit">What is wanted.</param>
    /// <param name="basis">Fingerprint of the settings the person saw; null to change whatever they are.</param>
    /// <param name="utcMs">Now, milliseconds since 1970.</param>
    /// <param name="who">Who changes.</param>
    /// <param name="from">From where.</param>
    /// <returns>What came of it, or null when the settings are others than those the person saw.</returns>
    /// <exception cref="IOException">It could not be written; nothing is changed.</exception>
    public EditOutcome? Apply(SettingsEdit edit, string? basis, long utcMs, string who, string from)
    {
        lock (_lock)
        {
            if (Asked || (basis is not null && basis != Effective.Fingerprint()))
            {
                return null;
            }

            EditOutcome outcome = SettingsEditing.Try(_fileText, _book.Values, edit);
            if (outcome.Faults.Count == 0 && outcome.Differences.Count > 0)
            {
                ChangeBook next = _book.After(outcome, utcMs, who, from);
                SetAside();
                _write(FileName, next.ToJson());
                (_book, Asked) = (next, true);
            }

            return outcome;
        }
    }

    /// <summary>Takes the changes into force, for a service that is built anew.</summary>
    public void Renew()
    {
        lock (_lock)
        {
            Asked = false;
            Trouble = _toldForLong;
            _inForce = SettingsFile.Parse(Text);
        }
    }

    /// <summary>The service runs with the settings in force: nothing of them is taken back any more.</summary>
    public void Confirm()
    {
        lock (_lock)
        {
            if (_book.Before is not null)
            {
                Keep(_book with { Before = null });
            }
        }
    }

    /// <summary>Takes the last change back: the service did not start with it.</summary>
    /// <param name="why">Why not, in a sentence.</param>
    public void TakeBack(string why)
    {
        lock (_lock)
        {
            Keep(_book.TakenBack());
            Renew();
            Trouble = $"The last change was taken back, because the controller did not start with it: {why}{(_toldForLong is null ? string.Empty : $" {_toldForLong}")}";
        }
    }

    // Changes of another version of this program, or spoilt ones, may be all there is of somebody's work.
    private void SetAside()
    {
        if (_misfit is { } misfit)
        {
            _write(misfit.Name, misfit.Text);
            _toldForLong = $"The earlier changes that are not in force are kept aside as {misfit.Name} in the folder of the data.";
            _misfit = null;
        }
    }

    // A card that takes nothing must not keep the service from running with what it has in memory.
    private void Keep(ChangeBook book)
    {
        _book = book;
        try
        {
            _write(FileName, book.ToJson());
        }
        catch (IOException unwritten)
        {
            Trouble = $"What stands of the changes made on the page could not be written: {unwritten.Message}";
        }
    }

    // Heat must go on: changes that do not fit the file stay out of force, are kept, and it is said.
    private void Take(string changes)
    {
        try
        {
            ChangeBook kept = ChangeBook.FromJson(changes);
            ChangeBook book = kept.TakenBack();
            if (kept.Before is not null)
            {
                // The program ended before it had run with them, perhaps because of them.
                Keep(book);
                Trouble = "The last change was taken back: the program ended before it had run with it.";
            }

            EditOutcome outcome = SettingsEditing.Try(_fileText, new Dictionary<string, string>(), new SettingsEdit(book.Values, []));
            if (outcome.Faults.Count > 0)
            {
                _book = book with { Values = new Dictionary<string, string>() };
                _misfit = Misfit.Of(changes);
                Trouble = $"The changes made on the page do not fit the settings file and are not in force: {string.Join(" ", outcome.Faults.Select(fault => fault.Sentence))} {_misfit.Sentence}";
                return;
            }

            _book = book with { Values = outcome.Values };
        }
        catch (JsonException malformed)
        {
            _misfit = Misfit.Of(changes);
            Trouble = $"The changes made on the page cannot be read and are not in force: {malformed.Message} {_misfit.Sentence}";
        }
    }

    /// <summary>Changes that are not in force, and the name under which they are kept once others take their place.</summary>
    private sealed record Misfit(string Name, string Text)
    {
        public string Sentence => $"Before the next change takes their place they are kept aside as {Name}.";

        // By what is in it: the same text is kept once, however often the program starts with it.
        public static Misfit Of(string text) =>
            new($"changes-aside-{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..8]}.json", text);
    }
}
