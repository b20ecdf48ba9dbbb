namespace PileController.Ledgers.Editing;

/// <summary>A change does not fit the book as it stands. The message is a sentence for people.</summary>
internal sealed class LedgerRefusedException(string message) : Exception(message);
