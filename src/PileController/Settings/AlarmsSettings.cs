using PileController.Alarms;

namespace PileController.Settings;

/// <summary>How the connection to a mail server is guarded.</summary>
public enum MailTls
{
    /// <summary>Encrypted after a plain greeting (RFC 3207); refused where the server does not offer it.</summary>
    StartTls = 0,

    /// <summary>Encrypted from the first byte (RFC 8314).</summary>
    Tls,

    /// <summary>Not encrypted; for a mail server of this machine or this house.</summary>
    None,
}

/// <summary>Who is told of alarms, and how.</summary>
public sealed record AlarmsSettings
{
    /// <summary>Address alarms are posted to, http or https; empty for none.</summary>
    public string Webhook { get; init; } = "";

    /// <summary>Least priority that is told by webhook and mail.</summary>
    public AlarmPriority Least { get; init; } = AlarmPriority.Medium;

    /// <summary>The sign of life that is sent out.</summary>
    public HeartbeatSettings Heartbeat { get; init; } = new();

    /// <summary>The mail server.</summary>
    public MailSettings Mail { get; init; } = new();

    /// <summary>Whether a text is empty or an http or https address without name or password in it.</summary>
    /// <param name="text">The text.</param>
    public static bool IsAddress(string text) => text.Length == 0
        || (text.Length <= 1000 && Uri.TryCreate(text, UriKind.Absolute, out Uri? uri)
            && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps) && uri.UserInfo.Length == 0);
}

/// <summary>The sign of life.</summary>
public sealed record HeartbeatSettings
{
    /// <summary>Address it is posted to, http or https; empty for none.</summary>
    public string Url { get; init; } = "";

    /// <summary>How often, s (60 to 86,400).</summary>
    public double EverySeconds { get; init; } = 300;
}

/// <summary>The mail server. The password is in a file of its own, never in the settings.</summary>
public sealed record MailSettings
{
    /// <summary>Name of the server; empty for no mail.</summary>
    public string Host { get; init; } = "";

    /// <summary>Its port, 1 to 65535.</summary>
    public int Port { get; init; } = 587;

    /// <summary>How the connection is guarded.</summary>
    public MailTls Tls { get; init; }

    /// <summary>Address of the sender.</summary>
    public string From { get; init; } = "";

    /// <summary>Addresses of those who are told, with commas between.</summary>
    public string To { get; init; } = "";

    /// <summary>Name the server knows the sender by; empty for none.</summary>
    public string User { get; init; } = "";

    /// <summary>Path of a file whose first line is the password; empty for none.</summary>
    public string PasswordFile { get; init; } = "";
}
