using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekEditing;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.OwnWeek;

/// <summary>
/// A nurse plans her own week in one action. Nobody else's visit moves; the result is a draft, which she publishes where her roles allow and which
/// otherwise waits for the coordinator, as one step that can be taken back.
/// </summary>
public sealed class PlanOwnWeek(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>Rounds of the search: enough that a week of 25 visits no longer gets better, and well under two seconds (our own default; docs/benchmarks.md).</summary>
    private const int Rounds = 2_000;

    private static readonly Refusal NoNurse = new("nurse-unknown", "This account belongs to no nurse.", "Ask an administrator to enter your number, or plan the whole week.");

    /// <summary>Her week as drafted, or as published while there is no draft. Needs <see cref="AgencyAction.PlanOwnWeek"/>.</summary>
    public async Task<Outcome<MyWeek>> AskAsync(Actor actor, LocalDate firstDay, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanOwnWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        if (read.Value.Roster.Nurses.All(n => n.Id != actor.NurseId)) return NoNurse;
        return await BoardAsync(db, await weeks.OfAsync(db, read.Value, firstDay, cancel), actor.NurseId!, cancel);
    }

    /// <summary>
    /// Plans it and keeps it as the draft. Needs <see cref="AgencyAction.PlanOwnWeek"/>. Refused with <c>own-week-past</c> for a week that lies behind, with
    /// <c>stale-draft</c> when somebody changed the draft meanwhile, and with <c>own-week-refused</c> when the checker holds something against the plan.
    /// </summary>
    public async Task<Outcome<MyWeek>> PlanAsync(Actor actor, LocalDate firstDay, CancellationToken cancel)
    {
        string words = "";
        Outcome<(MyWeek Week, int Revision)> done = await AgencyWork.DoPreparedAsync<OwnWeekPlan, (MyWeek, int)>(
            databases, clock, actor, AgencyAction.PlanOwnWeek,
            async (db, agency) => Refuse(agency, actor, firstDay) is null
                ? OwnWeekPlan.Of(await weeks.OfAsync(db, agency, firstDay, cancel), actor.NurseId!, new PlanOptions(Iterations: Rounds), cancel)
                : null!,
            async (db, agency, ready) =>
            {
                if (Refuse(agency, actor, firstDay) is { } refusal) return refusal;
                WorkingWeek week = await weeks.OfAsync(db, agency, firstDay, cancel);
                OwnWeekPlan plan = ready ?? OwnWeekPlan.Of(week, actor.NurseId!, new PlanOptions(Iterations: Rounds), cancel);
                if (plan.Revision != week.Revision || plan.Version != (week.Published?.Version ?? 0))
                    return new Refusal("stale-draft", $"{(week.ChangedBy.Length > 0 ? week.ChangedBy : "Somebody")} changed this week meanwhile.", "Nothing was kept. Plan your week once more.");
                if (plan.Broken is { } broken)
                    return new Refusal("own-week-refused", $"The checker refuses this plan: {broken.Sentence}", $"{broken.Action} Nothing was kept; ask the coordinator.");
                Outcome<StoredWeek> saved = await WeekStore.SaveDraftAsync(db, actor, After(week, plan), week.Revision, clock.RealNow(), cancel);
                if (!saved.Succeeded) return saved.Refusal!;
                string name = agency.Roster.Nurses.First(n => n.Id == actor.NurseId).Name;
                WeekEdit step = await EditStore.AddAsync(db, Steps.Planned(week.Week, saved.Value) with { Words = $"{name} planned her own week: {Count(plan.After.Length)}" }, cancel);
                words = step.Words;
                await AuditTrail.AppendAsync(db, actor, "plan-own-week", $"week {firstDay:uuuu-MM-dd}", words, clock.RealNow(), cancel);
                var kept = new WorkingWeek(week.Agency, week.Published, HeldPlaces.Into(saved.Value, week.Agency), week.Log.All.Add(step), firstDay, week.Needs);
                return (await BoardAsync(db, kept, actor.NurseId!, cancel), saved.Value.Revision);
            }, cancel);
        if (!done.Succeeded) return done.Refusal!;
        weeks.Tell(new WeekChanged(firstDay, done.Value.Revision, actor.Name, words));
        return done.Value.Week;
    }

    private static Refusal? Refuse(AgencyAtHand agency, Actor actor, LocalDate firstDay) =>
        agency.Roster.Nurses.All(n => n.Id != actor.NurseId) ? NoNurse
        : firstDay < agency.ThisWeek ? new Refusal("own-week-past", "That week lies behind.", "Choose this week or a later one.")
        : null;

    private static PlannedWeek After(WorkingWeek week, OwnWeekPlan plan)
    {
        PlannedWeek next = HeldPlaces.Without(week.After(plan.Before, plan.After));
        var said = plan.Unmet.Select(u => (u.Patient, u.Label)).ToHashSet();
        return next with { Unmet = [.. plan.Unmet, .. next.Unmet.Where(u => !said.Contains((u.Patient, u.Label)))] };
    }

    private static string Count(int visits) => visits == 1 ? "1 visit" : $"{visits} visits";

    private static async Task<MyWeek> BoardAsync(AgencyDb db, WorkingWeek week, string nurse, CancellationToken cancel)
    {
        AgencyAtHand agency = week.Agency;
        Instant begins = week.FirstDay.AtStartOfDayInZone(agency.Roster.Profile.Zone).ToInstant();
        StoredWeek? running = begins > agency.Now ? await WeekStore.PublishedAsync(db, agency.ThisWeek, cancel) : null;
        AgencyRoster then = running is null ? agency.Roster : Foreseen.At(agency.Roster, [running.Week], agency.Now, begins);
        WeekBoard board = WeekBoards.Of(
            then, CareFiles.Of(then), week.Week, week.Revision > 0, week.ChangedAt ?? agency.Now, Instant.Max(agency.Now, begins), agency.Closures);
        ImmutableHashSet<string> patients = OwnWeekDemand.PatientsOf(week, nurse);
        return new MyWeek(
            week.FirstDay,
            board.Nurses.First(n => n.NurseId == nurse),
            [.. week.Week.Unmet.Where(u => patients.Contains(u.Patient.Value))],
            week.Revision > 0,
            agency.Roster.Nurses.Length == 1,
            week.Published?.Version ?? 0,
            week.ChangedBy);
    }
}
