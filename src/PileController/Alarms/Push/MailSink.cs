using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using PileController.Settings;

namespace PileController.Alarms.Push;

/// <summary>Sends messages by mail. The password is read from its file at each message and kept nowhere.</summary>
internal sealed class MailSink(MailSettings settings, TimeProvider time) : IPushSink
{
    private const int PatienceMilliseconds = 30_000;

    /// <inheritdoc/>
    public string Name => "The mail";

    /// <inheritdoc/>
    public async Task SendAsync(PushMessage message, CancellationToken cancellation)
    {
        using MimeMessage mail = new()
        {
            Subject = PushWords.Subject(message),
            Body = new TextPart("plain") { Text = PushWords.Text(message) },
            Date = time.GetUtcNow(),
        };
        mail.From.Add(MailboxAddress.Parse(settings.From));
        mail.To.AddRange(settings.To.Split(',').Select(one => MailboxAddress.Parse(one.Trim())));
        using SmtpClient client = new() { Timeout = PatienceMilliseconds };
        await client.ConnectAsync(settings.Host, settings.Port, Guard(settings.Tls), cancellation).ConfigureAwait(false);
        if (settings.User.Length > 0)
        {
            await client.AuthenticateAsync(settings.User, await PasswordAsync(cancellation).ConfigureAwait(false), cancellation).ConfigureAwait(false);
        }

        await client.SendAsync(mail, cancellation).ConfigureAwait(false);
        await client.DisconnectAsync(quit: true, cancellation).ConfigureAwait(false);
    }

    private static SecureSocketOptions Guard(MailTls tls) => tls switch
    {
        MailTls.Tls => SecureSocketOptions.SslOnConnect,
        MailTls.StartTls => SecureSocketOptions.StartTls,
        _ => SecureSocketOptions.None,
    };

    private async Task<string> PasswordAsync(CancellationToken cancellation)
    {
        string[] lines = await File.ReadAllLinesAsync(settings.PasswordFile, cancellation).ConfigureAwait(false);
        return lines.Length > 0 && lines[0].Length > 0
            ? lines[0]
            : throw new InvalidOperationException($"alarms.mail.passwordFile: {settings.PasswordFile} is empty; its first line is to be the password.");
    }
}
