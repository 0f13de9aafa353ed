using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The week as people look at it: published, or the draft beside it.</summary>
public sealed class AskWeek(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    private readonly DrawnWeeks drawn = new();

    /// <summary>Needs <see cref="AgencyAction.SeeWeek"/>; a draft needs <see cref="AgencyAction.PlanWeek"/>. Refused with <c>no-week</c> when there is none.</summary>
    public async Task<Outcome<WeekBoard>> AskAsync(Actor actor, LocalDate firstDay, bool draft, CancellationToken cancel)
    {
        if (actor.Refuse(draft ? AgencyAction.PlanWeek : AgencyAction.SeeWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        StoredWeek? stored = draft
            ? await WeekStore.DraftAsync(db, firstDay, cancel)
            : await WeekStore.PublishedAsync(db, firstDay, cancel);
        if (stored is null)
        {
            return new Refusal(
                "no-week",
                draft ? "There is no draft for this week." : "No plan is published for this week.",
                "A coordinator plans the week and publishes it.");
        }

        Instant begins = firstDay.AtStartOfDayInZone(read.Value.Roster.Profile.Zone).ToInstant();
        StoredWeek? before = begins > read.Value.Now ? await WeekStore.PublishedAsync(db, read.Value.ThisWeek, cancel) : null;
        return drawn.Of(firstDay, draft, new DrawnWeeks.Source(read.Value, stored, before), () => Draw(HeldPlaces.With(read.Value), stored, before, begins, draft));
    }

    private static WeekBoard Draw(AgencyAtHand agency, StoredWeek stored, StoredWeek? before, Instant begins, bool draft)
    {
        AgencyRoster then = begins > agency.Now ? Foreseen.At(agency.Roster, before is null ? [] : [before.Week], agency.Now, begins) : agency.Roster;
        return WeekBoards.Of(then, CareFiles.Of(then), HeldPlaces.Into(stored.Week, agency), draft, stored.SavedAt, Instant.Max(agency.Now, begins), agency.Closures);
    }

    /// <summary>First day of the planning week that holds the agency's today.</summary>
    public async Task<Outcome<LocalDate>> ThisWeekAsync(Actor actor, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.SeeWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        return read.Succeeded ? read.Value.ThisWeek : read.Refusal!;
    }
}
