namespace PileController.Records.Backups;

/// <summary>One file of a backup.</summary>
/// <param name="Name">Its path inside the backup, parts separated by '/'.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Crc32">CRC-32 of its bytes, eight hexadecimal digits.</param>
internal sealed record BackupFile(string Name, long Bytes, string Crc32);
