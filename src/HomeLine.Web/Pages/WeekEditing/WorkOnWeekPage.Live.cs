using HomeLine.Agency;
using HomeLine.Agency.WeekEditing;
using Microsoft.JSInterop;
using NodaTime.Text;

namespace HomeLine.Web.Pages.WeekEditing;

/// <summary>What comes from outside the page's own buttons: keys and drags, and other people's changes.</summary>
public sealed partial class WorkOnWeekPage
{
    /// <summary>How often the page looks whether the week was changed where nobody tells it: a mended day, another server. Our own default.</summary>
    private static readonly TimeSpan LooksEvery = TimeSpan.FromSeconds(20);

    private async Task LookNowAndThenAsync()
    {
        using var timer = new PeriodicTimer(LooksEvery);
        try
        {
            while (await timer.WaitForNextTickAsync(left.Token))
            {
                Outcome<WeekStands> stands = await Weeks.StandsAsync(await Asking.AskAsync(), firstDay, left.Token);
                if (stands.Succeeded && week is not null && (stands.Value.Revision != week.Revision || stands.Value.Version != (week.Published?.Version ?? 0)))
                    await InvokeAsync(() => CatchUpAsync(-1, "The week was changed meanwhile; this is how it stands now."));
            }
        }
        catch (OperationCanceledException)
        {
            // The page was left.
        }
    }

    /// <summary>A key while something is in hand.</summary>
    [JSInvokable]
    public async Task KeyAsync(string key)
    {
        if (held is null) return;
        if (key == "Escape") PutBack();
        else if (key == "Enter" && held is { At: >= 0, Then.IsAllowed: true }) await DropAsync();
        else if (key == "Enter") PutBack();
        else await LookAsync(held.Step(key));
        StateHasChanged();
    }

    /// <summary>A visit is dragged off its line.</summary>
    [JSInvokable]
    public async Task DragAsync(string visit)
    {
        if (held?.Stop?.Visit.Id != visit
            && board?.Nurses.SelectMany(n => n.Days).SelectMany(d => d.Stops).FirstOrDefault(s => s.Visit.Id == visit) is { } stop)
            await PickUpAsync(stop);
        StateHasChanged();
    }

    /// <summary>The dragged visit is over a place, or over a nurse's day.</summary>
    [JSInvokable]
    public async Task OverAsync(int place, string nurse, string date)
    {
        if (held is not { IsCarried: true }) return;
        if (place >= 0) await LookAsync(place);
        else if (LocalDatePattern.Iso.Parse(date).TryGetValue(default, out NodaTime.LocalDate over) && Cell(nurse, over) is { } cell) await IntoCellAsync(cell);
        StateHasChanged();
    }

    /// <summary>The dragged visit is let go: on a place that works it is dropped, elsewhere it stays in hand with the reason.</summary>
    [JSInvokable]
    public async Task LetGoAsync(int place, string nurse, string date)
    {
        if (place < 0 && nurse.Length == 0)
        {
            PutBack();
            StateHasChanged();
            return;
        }

        await OverAsync(place, nurse, date);
        if (held is { At: >= 0, Then.IsAllowed: true }) await DropAsync();
        StateHasChanged();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Live.Changed -= Heard;
        await left.CancelAsync();
        left.Dispose();
        here?.Dispose();
        if (script is null) return;
        try
        {
            await script.DisposeAsync();
        }
        catch (JSDisconnectedException)
        {
            // The page is gone already.
        }
    }

    private (DraftNurse, DraftDay)? Cell(string nurse, NodaTime.LocalDate date) =>
        board?.Nurses.FirstOrDefault(n => n.Id == nurse) is { } found && found.Days.FirstOrDefault(d => d.Day == date) is { } there ? (found, there) : null;

    // Raised on another person's circuit.
    private void Heard(WeekChanged change)
    {
        if (change.FirstDay == firstDay && !left.IsCancellationRequested)
            _ = InvokeAsync(() => CatchUpAsync(change.Revision, $"{change.By}: {change.Words}."));
    }

    /// <summary>Shows what somebody else did; what is in hand stays in hand where it still can.</summary>
    private async Task CatchUpAsync(int revision, string what)
    {
        if (isBusy || left.IsCancellationRequested || revision == board?.Revision) return;
        InHand? was = held;
        held = null;
        await ReadAsync();
        (news, spoken) = (what, what);
        DraftStop? stop = was?.Stop is { } kept
            ? board?.Nurses.SelectMany(n => n.Days).SelectMany(d => d.Stops).FirstOrDefault(s => s.Visit.Id == kept.Visit.Id)
            : null;
        if (stop is not null)
        {
            await PickUpAsync(stop);
            (news, toHand) = (what, false);
        }

        StateHasChanged();
    }
}
