using System.Net;
using System.Net.Mail;
using HomeLine.Agency.Today;

namespace HomeLine.Web.Notes;

/// <summary>
/// Notes by SMTP: <c>Mail:Host</c>, <c>Mail:Port</c> (587), <c>Mail:From</c>, and where the host asks for them <c>Mail:UserName</c> and <c>Mail:Password</c>.
/// Always over TLS. Without a host nothing is sent.
/// </summary>
public sealed class SmtpNotes(IConfiguration configuration, ILogger<SmtpNotes> log) : INoteMail
{
    private const int UsualPort = 587;
    private readonly string host = configuration["Mail:Host"] ?? "";
    private readonly string from = configuration["Mail:From"] ?? "";

    public bool IsOn => host.Length > 0 && from.Length > 0;

    public async Task<bool> SendAsync(string address, string subject, string text, CancellationToken cancel)
    {
        using var client = new SmtpClient(host, configuration.GetValue("Mail:Port", UsualPort)) { EnableSsl = true };
        if (configuration["Mail:UserName"] is { Length: > 0 } user)
            client.Credentials = new NetworkCredential(user, configuration["Mail:Password"]);
        try
        {
            await client.SendMailAsync(from, address, subject, text, cancel);
            return true;
        }
        catch (Exception problem) when (problem is SmtpException or FormatException)
        {
            log.LogWarning(problem, "A note could not be sent");
            return false;
        }
    }
}
