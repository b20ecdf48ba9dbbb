using PileController.Records.Checking;

namespace PileController.Records.Backups;

/// <summary>What was backed up or brought back.</summary>
/// <param name="Directory">Where it is now.</param>
/// <param name="Files">How many files.</param>
/// <param name="Bytes">Their lengths together.</param>
/// <param name="SetAside">Where the folder that was there before is now, or null.</param>
/// <param name="Check">What a check of the copied record found. What is wrong was wrong in the original too.</param>
public sealed record CopyReport(string Directory, int Files, long Bytes, string? SetAside, VerifyReport Check);
