using MimeKit;
using PileController.Alarms;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "alarms" with "mail" and "heartbeat".</summary>
internal static class AlarmFields
{
    private const string AnAddress = "an http or https address without name and password in it, \"https://example.org/hook\", or \"\" for none";
    private const int LongestText = 320;

    private static readonly FieldTable<HeartbeatSettings> HeartbeatTable = new()
    {
        { "url", Text(AnAddress, AlarmsSettings.IsAddress), h => h.Url, (h, v) => h with { Url = v! }, "Where a sign of life is posted as long as ticks come on time; whoever listens there calls out when it stays away." },
        { "every", Seconds(60, 86_400), h => h.EverySeconds, (h, v) => h with { EverySeconds = v }, "How often." },
    };

    private static readonly FieldTable<MailSettings> MailTable = new()
    {
        { "host", Text("the name of a mail server, or \"\" for no mail", t => t.Length <= LongestText && !t.Any(c => char.IsWhiteSpace(c) || char.IsControl(c))), m => m.Host, (m, v) => m with { Host = v! }, "Mail server (SMTP) that takes the messages." },
        { "port", Whole(1, 65_535), m => m.Port, (m, v) => m with { Port = (int)v!.Value }, "Its port: usually 587 with startTls, 465 with tls (RFC 8314)." },
        { "tls", WordOf<MailTls>(), m => m.Tls, (m, v) => m with { Tls = v }, "How the connection is guarded; none is for a server of this machine only when a user is given." },
        { "from", Text("one mail address, or \"\"", t => t.Length == 0 || IsMailbox(t)), m => m.From, (m, v) => m with { From = v! }, "Address of the sender." },
        { "to", Text("mail addresses with commas between, or \"\"", t => t.Length == 0 || t.Split(',').All(IsMailbox)), m => m.To, (m, v) => m with { To = v! }, "Who is told." },
        { "user", Text("a name, or \"\" for none", t => t.Length <= LongestText && !t.Any(char.IsControl)), m => m.User, (m, v) => m with { User = v! }, "Name the server knows the sender by." },
        { "passwordFile", Text("the path of a file, or \"\" for none", t => t.Length <= 1000), m => m.PasswordFile, (m, v) => m with { PasswordFile = v! }, "File whose first line is the password; it is read at each message and never shown. Let nobody but the service read it." },
    };

    public static readonly FieldTable<AlarmsSettings> Table = new()
    {
        { "webhook", Text(AnAddress, AlarmsSettings.IsAddress), a => a.Webhook, (a, v) => a with { Webhook = v! }, "Where alarms are posted as JSON." },
        { "least", WordOf<AlarmPriority>(), a => a.Least, (a, v) => a with { Least = v }, "Least priority that is told by webhook and mail; the page shows all." },
        { "mail", MailTable, a => a.Mail, (a, v) => a with { Mail = v }, "Messages by mail." },
        { "heartbeat", HeartbeatTable, a => a.Heartbeat, (a, v) => a with { Heartbeat = v }, "The sign of life that is sent out." },
    };

    // Mail addresses allow so much that only their reader can tell; a plain name without a place is none here.
    private static bool IsMailbox(string text) =>
        text.Length <= LongestText && MailboxAddress.TryParse(text.Trim(), out MailboxAddress? mailbox) && mailbox.Address.Contains('@', StringComparison.Ordinal);
}
