using System.Text.Json;
using System.Text.Json.Serialization;

namespace PileController.Access;

/// <summary>What stands in <c>access.json</c>.</summary>
/// <param name="Schema">Form of the file.</param>
/// <param name="Passphrase">The passphrase, or null when none is set.</param>
/// <param name="Code">A code with which the browser may set one, or null.</param>
internal sealed record AccessState(int Schema, SecretHash? Passphrase, OneTimeCode? Code)
{
    /// <summary>The form this program writes.</summary>
    public const int CurrentSchema = 1;

    /// <summary>Nothing is set.</summary>
    public static AccessState Empty { get; } = new(CurrentSchema, null, null);
}

/// <summary>A code that works once.</summary>
/// <param name="Hash">The code.</param>
/// <param name="UntilUtcMilliseconds">When it ends.</param>
internal sealed record OneTimeCode(SecretHash Hash, long UntilUtcMilliseconds);

/// <summary>The file that says whether a passphrase is set. One that cannot be read is never written over.</summary>
internal sealed class AccessFile(string folder)
{
    /// <summary>Plain name of the file.</summary>
    public const string Name = "access.json";

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowDuplicateProperties = false,
        WriteIndented = true,
    };

    private readonly string _path = Path.Combine(folder, Name);

    /// <summary>Changes whenever the file does.</summary>
    public (DateTime WrittenUtc, long Bytes) Stamp()
    {
        FileInfo file = new(_path);
        return file.Exists ? (file.LastWriteTimeUtc, file.Length) : default;
    }

    /// <summary>What stands in the file; nothing is set when there is none.</summary>
    /// <exception cref="AccessFileException">It cannot be read; the message says why.</exception>
    public AccessState Read()
    {
        try
        {
            AccessState state = JsonSerializer.Deserialize<AccessState>(File.ReadAllText(_path), Json) ?? throw Unreadable("it holds nothing");
            string? fault = state.Schema != AccessState.CurrentSchema
                ? $"schema is {state.Schema}; allowed: {AccessState.CurrentSchema}"
                : state.Passphrase?.Fault() ?? state.Code?.Hash.Fault();
            return fault is null ? state : throw Unreadable(fault);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return AccessState.Empty;
        }
        catch (Exception e) when (e is UnauthorizedAccessException or (IOException and not AccessFileException))
        {
            throw Unreadable(e.Message.TrimEnd('.'));
        }
        catch (JsonException)
        {
            throw Unreadable("there is a field this program does not know, one is missing, or a value is of the wrong kind");
        }
    }

    /// <summary>Writes the file, for its owner only.</summary>
    /// <exception cref="AccessFileException">It cannot be written; the old one is as it was.</exception>
    public void Write(AccessState state)
    {
        try
        {
            PrivateFile.Replace(_path, JsonSerializer.Serialize(state, Json) + "\n");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new AccessFileException($"{_path} cannot be written: {e.Message.TrimEnd('.')}.");
        }
    }

    private AccessFileException Unreadable(string why) => new($"{_path} cannot be read and is left as it is: {why}.");
}

/// <summary>The file of the passphrase cannot be read or written. The message is a sentence for people.</summary>
internal sealed class AccessFileException(string message) : IOException(message);
