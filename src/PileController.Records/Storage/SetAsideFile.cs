namespace PileController.Records.Storage;

/// <summary>A file in quarantine.</summary>
/// <param name="Name">Its plain name there.</param>
/// <param name="UtcMilliseconds">When it was set aside.</param>
internal readonly record struct SetAsideFile(string Name, long UtcMilliseconds);
