using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Today;

/// <summary>Back to the published version before, while nothing it would change has started. What was published stays in the history; going back is a version of its own.</summary>
public sealed class StepBack(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Publishes the version before as the next one. Needs <see cref="AgencyAction.PublishWeek"/>. Refused with <c>stale-week</c> when another version was
    /// published meanwhile and with <c>begun-since</c> when a visit that differs has started or is about to: then only forward.
    /// </summary>
    /// <param name="actor">Who goes back.</param>
    /// <param name="firstDay">The week.</param>
    /// <param name="seenVersion">The version the person looks at.</param>
    /// <param name="reason">Why.</param>
    /// <param name="cancel">Cancels the work.</param>
    public Task<Outcome<PlannedWeek>> BackAsync(Actor actor, LocalDate firstDay, int seenVersion, string reason, CancellationToken cancel) =>
        AgencyWork.DoAsync<PlannedWeek>(databases, clock, actor, AgencyAction.PublishWeek, async (db, agency) =>
        {
            if (string.IsNullOrWhiteSpace(reason)) return new Refusal("back-reason-missing", "It is not said why.", "Write it in a few words.");
            ImmutableArray<PublishedVersion> history = await WeekStore.HistoryAsync(db, firstDay, cancel);
            if (history.Length < 2) return new Refusal("nothing-before", "There is no version before this one.", "Change the week forward.");
            (PlannedWeek before, PlannedWeek now) = (history[^2].Week, history[^1].Week);
            if (now.Version != seenVersion) return new Refusal("stale-week", $"Version {now.Version} was published meanwhile: {history[^1].Reason}", "Look at the week again.");
            ImmutableArray<(WeekVisit? Was, WeekVisit? Will)> differ = Difference(now, before);
            if (Begun(differ, agency) is { } begun) return begun;
            Outcome<PlannedWeek> back = await WeekStore.PublishAsync(db, actor, before with { Version = now.Version }, $"Back to version {before.Version}: {reason.Trim()}", clock.RealNow(), cancel);
            if (back.Succeeded) Tell(db, agency, back.Value, differ);
            return back;
        }, cancel);

    private static ImmutableArray<(WeekVisit? Was, WeekVisit? Will)> Difference(PlannedWeek now, PlannedWeek before)
    {
        var then = before.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        var stands = now.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        return [.. stands.Keys.Union(then.Keys).Order(StringComparer.Ordinal)
            .Select(id => (Was: stands.GetValueOrDefault(id), Will: then.GetValueOrDefault(id)))
            .Where(pair => Place(pair.Was) != Place(pair.Will))];
    }

    private static (string, string?, LocalDate, LocalTime, string, bool)? Place(WeekVisit? visit) => visit is null
        ? null
        : (visit.Nurse, visit.Second, visit.Day, visit.Start, string.Join(';', visit.Care.Select(c => c.Key)), visit.Held is null);

    private static Refusal? Begun(ImmutableArray<(WeekVisit? Was, WeekVisit? Will)> differ, AgencyAtHand agency)
    {
        LocalDateTime frozen = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime.PlusMinutes((int)agency.Files.Policy.ValueOf("frozen.ahead", agency.Today));
        WeekVisit? close = differ.SelectMany(d => new[] { d.Was, d.Will }).OfType<WeekVisit>().Where(v => v.Day.At(v.Start) < frozen).MinBy(v => v.Day.At(v.Start));
        // A visit that a licensed person's decision holds or released is never put back by a step.
        if (differ.Any(d => d.Was?.Held is not null || d.Will?.Held is not null || (d.Was is null && d.Will is not null && agency.Files.WhatIsDue(d.Will.Patient, agency.Now).OnHold is not null)))
            return new Refusal("back-over-decision", "The change held a visit or took out those of a patient who is away.", "That is decided under Decisions or ended on the patient's page.");
        return close is null
            ? null
            : new Refusal("begun-since", $"{close.Patient} on {DayWords.When(close)} has begun or is about to.", "It can only be changed forward: report what is wrong.");
    }

    private static void Tell(AgencyDb db, AgencyAtHand agency, PlannedWeek week, ImmutableArray<(WeekVisit? Was, WeekVisit? Will)> differ)
    {
        var people = new PeopleNamed(agency);
        int told = (int)agency.Files.Policy.ValueOf("told.range", agency.Today);
        var list = new List<PersonToTell>();
        foreach ((WeekVisit? was, WeekVisit? will) in differ)
        {
            PatientId patient = (was ?? will)!.Patient;
            if ((was ?? will)!.Promise >= PromiseState.Told)
                list.Add(people.Family(patient, will is null ? $"The visit on {DayWords.When(was!)} is off." : $"The nurse comes on {DayWords.Range(will, told)}, as it was before."));
            foreach (string nurse in new[] { was?.Nurse, was?.Second, will?.Nurse, will?.Second }.OfType<string>().Distinct())
                list.Add(people.Nurse(nurse, $"{people.Name(patient)}: {(will is null ? "off" : $"{DayWords.When(will)} with {people.NurseName(will.Nurse)}, as it was before")}. Read it when parked."));
        }

        for (int i = 0; i < list.Count; i++)
            db.ToTell.Add(new ToTell { Id = $"B{week.Version}-{week.FirstDay:MMdd}-{i + 1}", Week = week.FirstDay, Person = list[i] });
    }
}
