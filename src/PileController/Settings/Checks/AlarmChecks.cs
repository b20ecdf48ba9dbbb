using System.Net;

namespace PileController.Settings.Checks;

/// <summary>What the messages of alarms cannot do without.</summary>
internal static class AlarmChecks
{
    public static readonly Check[] All =
    [
        Check.That(
            "alarms.mail.from", ["alarms.mail.host"],
            s => s.Alarms.Mail is { Host.Length: > 0, From.Length: 0 } ? "the address of the sender, since alarms.mail.host is given" : null, _ => "\"\""),
        Check.That(
            "alarms.mail.to", ["alarms.mail.host"],
            s => s.Alarms.Mail is { Host.Length: > 0, To.Length: 0 } ? "at least one address, since alarms.mail.host is given" : null, _ => "\"\""),
        Check.That(
            "alarms.mail.passwordFile", ["alarms.mail.user"],
            s => s.Alarms.Mail is { User.Length: > 0, PasswordFile.Length: 0 } ? "the path of a file with the password, since alarms.mail.user is given" : null,
            _ => "\"\""),
        Check.That(
            "alarms.mail.tls", ["alarms.mail.user", "alarms.mail.host"],
            s => s.Alarms.Mail is { Tls: MailTls.None, User.Length: > 0 } mail && !IsThisMachine(mail.Host)
                ? "\"startTls\" or \"tls\", since a password would go over the wire in plain words" : null,
            _ => "\"none\""),
    ];

    private static bool IsThisMachine(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out IPAddress? address) && IPAddress.IsLoopback(address));
}
