using HomeLine.Agency.Today;

namespace HomeLine.Web.Notes;

/// <summary>Looks every half minute whether a nurse has to be sent a note; only where a mail host is configured.</summary>
public sealed class NoteRounds(SendNotes notes, INoteMail mail, ILogger<NoteRounds> log) : BackgroundService
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(30);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!mail.IsOn)
            return;
        using var timer = new PeriodicTimer(Between);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await notes.SendAsync(stoppingToken);
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                // The call list stands: nobody depends on a note.
                log.LogError(problem, "Notes could not be sent");
            }
        }
    }
}
