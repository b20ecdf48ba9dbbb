namespace PileController.Records;

/// <summary>Another process writes in this record.</summary>
public sealed class RecordInUseException : IOException
{
    /// <summary>Says which folder.</summary>
    public RecordInUseException(string directory, Exception? inner = null)
        : base($"The record in '{directory}' is in use by another process. Stop it, or name another folder.", inner)
    {
    }
}
