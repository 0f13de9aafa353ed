using System.Collections.Immutable;
using HomeLine.Agency;
using HomeLine.Agency.Access;
using HomeLine.Agency.WeekEditing;
using HomeLine.Web.Layout;
using HomeLine.Web.Pages.Week;
using HomeLine.Web.Parts;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.JSInterop;
using NodaTime;

namespace HomeLine.Web.Pages.WeekEditing;

/// <summary>The coordinator's hands on the draft: pick up, look, drop; and what others do meanwhile. It decides nothing; it asks the use case.</summary>
public sealed partial class WorkOnWeekPage
{
    private readonly CancellationTokenSource left = new();
    private WorkingWeek? week;
    private DraftBoard? board;
    private ImmutableArray<UnmetCareNeed> unmet = [];
    private InHand? held;
    private Refusal? refusal;
    private LocalDate firstDay;
    private LocalDate day;
    private string spoken = "";
    private string news = "";
    private string focus = "";
    private bool toHand;
    private bool isBusy;
    private ElementReference root;
    private IJSObjectReference? script;
    private DotNetObjectReference<WorkOnWeekPage>? here;
    private bool isWatched;

    [CascadingParameter] private Branch Branch { get; set; } = default!;

    [Parameter] public string? Day { get; set; }

    /// <summary>Only nurses of this name or identifier.</summary>
    [SupplyParameterFromQuery] public string? Nurse { get; set; }

    /// <summary>Only nurses who live near this town or visit it.</summary>
    [SupplyParameterFromQuery] public string? Area { get; set; }

    /// <summary>The day that is open.</summary>
    [SupplyParameterFromQuery(Name = "day")] public string? AskedDay { get; set; }

    private NurseFilter Filter => NurseFilter.Of(Nurse, Area);

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        LocalDate asked = WeekOf.Day(Day, Branch.Today);
        day = WeekOf.Shown(AskedDay, Day, asked, Branch.Today);
        if (asked == firstDay) return;
        firstDay = asked;
        held = null;
        await ReadAsync();
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Live.Changed += Heard;

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (board is null) return;
        if (!isWatched)
        {
            isWatched = true;
            here = DotNetObjectReference.Create(this);
            script = await Scripts.InvokeAsync<IJSObjectReference>("import", "./work-on-week.js");
            await script.InvokeVoidAsync("watch", root, here);
            _ = InvokeAsync(LookNowAndThenAsync);
        }

        if (toHand && script is not null)
        {
            toHand = false;
            await script.InvokeVoidAsync("focusHand", root);
        }

        if (focus.Length > 0 && script is not null)
        {
            string visit = focus;
            focus = "";
            await script.InvokeVoidAsync("focusVisit", root, visit);
        }
    }

    private async Task ReadAsync() => Take(await Weeks.OpenAsync(await Asking.AskAsync(), firstDay, left.Token));

    private void Take(Outcome<WorkingWeek> answer)
    {
        refusal = answer.Refusal;
        if (!answer.Succeeded) return;
        week = answer.Value;
        board = week.Board;
        unmet = week.UnmetNeeds;
    }

    private async Task PickUpAsync(DraftStop stop)
    {
        if (held?.Stop?.Visit.Id == stop.Visit.Id)
        {
            PutBack();
            return;
        }

        Clear();
        string title = $"{stop.Visit.Patient} {stop.PatientName}";
        Outcome<ImmutableArray<WorkingPlace>> places = stop.WhyItStays.Length > 0
            ? ImmutableArray<WorkingPlace>.Empty
            : await Weeks.PlacesOfVisitAsync(await Asking.AskAsync(), firstDay, board!.Revision, stop.Visit.Id, left.Token);
        await HoldAsync(places, found => new InHand(title, stop, null, found), stop.WhyItStays);
    }

    private async Task PickNeedUpAsync(UnmetCareNeed need)
    {
        Clear();
        Outcome<ImmutableArray<WorkingPlace>> places = await Weeks.PlacesOfNeedAsync(await Asking.AskAsync(), firstDay, board!.Revision, need.Key, left.Token);
        await HoldAsync(places, found => new InHand($"{need.Patient} {need.PatientName}: {need.Label}", null, need, found), "");
    }

    private async Task HoldAsync(Outcome<ImmutableArray<WorkingPlace>> places, Func<ImmutableArray<WorkingPlace>, InHand> hold, string whyItStays)
    {
        if (!places.Succeeded)
        {
            await StaleAsync(places.Refusal!);
            return;
        }

        held = hold(places.Value);
        toHand = true;
        spoken = whyItStays.Length > 0
            ? $"{held.Title} stays. {whyItStays}"
            : $"In hand: {held.Title}. {PlaceWords.Places(held.Places.Length)}. Arrow keys walk through them, Enter drops, Escape puts back.";
    }

    private async Task LookAsync(int index)
    {
        if (held is null || index < 0 || index >= held.Places.Length) return;
        WorkingPlace place = held.Places[index];
        held = held with { At = index, Edit = held.To(place.Nurse, place.Day, place.Position) };
        Show(place.Day);
        spoken = $"Place {index + 1} of {held.Places.Length}: {PlaceWords.Where(place)}. {PlaceWords.Price(place)}.";
        await AskAsync();
    }

    /// <summary>A nurse's day was pressed: it opens; with something in hand its best place is looked at, or the rule that forbids it is said.</summary>
    private async Task IntoCellAsync((DraftNurse Nurse, DraftDay Day) cell)
    {
        Show(cell.Day.Day);
        if (held is not { IsCarried: true }) return;
        int best = held.BestOn(cell.Nurse.Id, cell.Day.Day);
        if (best >= 0)
        {
            await LookAsync(best);
            return;
        }

        held = held with { At = -1, Edit = held.To(cell.Nurse.Id, cell.Day.Day, cell.Day.Stops.Length) };
        await AskAsync();
    }

    private async Task TryAsync(HandEdit edit)
    {
        held = (held ?? new InHand(Title(edit), null, null, [])) with { At = -1, Edit = edit };
        await AskAsync();
    }

    private async Task AskAsync()
    {
        if (held?.Edit is not { } edit) return;
        Outcome<WhatIf> then = await Weeks.TryAsync(await Asking.AskAsync(), firstDay, board!.Revision, edit, left.Token);
        if (!then.Succeeded)
        {
            await StaleAsync(then.Refusal!);
            return;
        }

        held = held with { Then = then.Value };
        if (!then.Value.IsAllowed) spoken = $"Not here: {then.Value.Rules[0].Sentence}";
        StateHasChanged();
    }

    private Task DropAsync() => held is { Edit: { } edit, Then.IsAllowed: true } ? MakeAsync(edit) : Task.CompletedTask;

    private async Task MakeAsync(HandEdit edit)
    {
        string? visit = held?.Stop?.Visit.Id ?? held?.Then?.Visit?.Id;
        await ChangeAsync(async actor => await Weeks.MakeAsync(actor, firstDay, board!.Revision, edit, left.Token), visit);
    }

    private Task UndoAsync() => ChangeAsync(async actor => await Weeks.UndoAsync(actor, firstDay, board!.Revision, left.Token), null);

    private Task RedoAsync() => ChangeAsync(async actor => await Weeks.RedoAsync(actor, firstDay, board!.Revision, left.Token), null);

    private Task CarryOverAsync() => ChangeAsync(async actor => await Weeks.CarryOverAsync(actor, firstDay, board!.Revision, left.Token), null);

    private async Task ChangeAsync(Func<Actor, Task<Outcome<WorkingWeek>>> change, string? visit)
    {
        if (isBusy) return;
        isBusy = true;
        Outcome<WorkingWeek> done = await change(await Asking.AskAsync());
        isBusy = false;
        if (!done.Succeeded)
        {
            await StaleAsync(done.Refusal!);
            return;
        }

        Clear();
        held = null;
        Take(done);
        spoken = $"Done: {week!.Log.All[^1].Words}.";
        if (visit is not null && week.Visit(visit) is { } stands)
        {
            Show(stands.Day);
            focus = visit;
        }
    }

    /// <summary>The draft moved on: what stands now is shown beside the refusal, and nothing is in hand.</summary>
    private async Task StaleAsync(Refusal because)
    {
        if (because.Code == "stale-draft")
        {
            held = null;
            await ReadAsync();
        }

        refusal = because;
        spoken = because.Sentence;
    }

    private void PutBack()
    {
        if (held is { } back) spoken = $"{back.Title} is put back.";
        focus = held?.Stop?.Visit.Id ?? "";
        if (held?.Stop is { } stop) Show(stop.Visit.Day);
        held = null;
    }

    /// <summary>Opens a day of the week; the address keeps it, so that a reload and a link that is sent show the same.</summary>
    private void Show(LocalDate chosen)
    {
        if (chosen == day) return;
        day = chosen;
        Navigation.NavigateTo(AddressOf(chosen), replace: true);
    }

    private void Clear()
    {
        refusal = null;
        news = "";
    }

    /// <summary>The nurses asked for, and whoever has the visit in hand.</summary>
    private DraftBoard Shown(DraftBoard draft) => Filter.IsOff
        ? draft
        : draft with { Nurses = [.. draft.Nurses.Where(n => Filter.Shows(n.Id, n.Name, n.Areas) || n.Id == held?.Stop?.Visit.Nurse || n.Id == held?.Place?.Nurse)] };

    private string Standing(DraftBoard draft) => draft switch
    {
        { Revision: 0, Version: 0 } => "Nothing is published or drafted for this week yet.",
        { Revision: 0 } => $"As published, version {draft.Version}.",
        { ChangedAt: { } at } => $"Draft on version {draft.Version}, step {draft.Revision}; last by {draft.ChangedBy}, {at.InWords(Branch.Zone)}. Kept as you go: leaving the page loses nothing.",
        _ => "",
    };

    private static string Title(HandEdit edit) => edit switch
    {
        HandEdit.SwapDays(var nurse, var with, var day) => $"{nurse} and {with} swap {day.InWords()}",
        _ => "A change",
    };

    private string AddressOf(LocalDate one) => QueryHelpers.AddQueryString(Filter.In(Address(WeekOf.MondayOf(one))), "day", one.Iso());

    private string InView(string address) => AskedDay is { Length: > 0 } ? QueryHelpers.AddQueryString(Filter.In(address), "day", day.Iso()) : Filter.In(address);

    private static string Address(LocalDate monday) => $"/week/{monday.Iso()}/work";
}
