using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using LiteDB.Engine;

namespace PileController.Records.Storage;

/// <summary>
/// The transactions that an error may leave open in an engine. LiteDB 5.0.21 finalizes such a transaction with code
/// that throws when its pages are half written or damaged, and a finalizer that throws ends the whole process, long
/// after the error (LiteDB issue 2828). A full disk or one damaged page would stop the control of the heap. Nothing
/// but memory is held by them, so they need no finalizer; LiteDB offers no way to say so.
/// </summary>
internal sealed class LeftTransactions
{
    private readonly IDictionary _open;

    /// <summary>Takes hold of an engine's own list, which outlives its closing.</summary>
    public LeftTransactions(LiteEngine engine) =>
        _open = (IDictionary)Field(Field(engine, "_monitor"), "_transactions");

    /// <summary>Keeps what is still open from being finalized; to be called when the engine is closed.</summary>
    [SuppressMessage("Usage", "CA1816", Justification = "The finalizers meant are those of LiteDB.")]
    public void Forget()
    {
        foreach (object transaction in _open.Values)
        {
            GC.SuppressFinalize(transaction);
        }
    }

    private static object Field(object of, string name) =>
        of.GetType().GetField(name, BindingFlags.Instance | BindingFlags.NonPublic)?.GetValue(of)
        ?? throw new MissingFieldException(of.GetType().FullName, name);
}
