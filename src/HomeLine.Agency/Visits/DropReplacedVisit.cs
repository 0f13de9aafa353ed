using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Access;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using Microsoft.EntityFrameworkCore;

namespace HomeLine.Agency.Visits;

/// <summary>Takes a later visit out of the published week because a recorded one has done its care. Only what was offered, only by who publishes.</summary>
public sealed class DropReplacedVisit(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>Needs <see cref="AgencyAction.PublishWeek"/>. Refused with <c>no-longer-replaced</c> when some of its care is due by then.</summary>
    /// <returns>Who must be told.</returns>
    public Task<Outcome<ImmutableArray<PersonToTell>>> DropAsync(Actor actor, string record, string visit, CancellationToken cancel) =>
        AgencyWork.DoAsync<ImmutableArray<PersonToTell>>(databases, clock, actor, AgencyAction.PublishWeek, async (db, agency) =>
        {
            VisitRecord? found = await db.VisitRecords.AsNoTracking().SingleOrDefaultAsync(r => r.Id == record, cancel);
            if (found is null) return new Refusal("record-unknown", "There is no such record.", "Look at the patient's visits again.");
            ImmutableArray<PlannedWeek> weeks = await AskVisit.WeeksAsync(db, agency.ThisWeek, cancel);
            ReplacedVisit? offered = ReplacedVisits.Of(found, weeks, agency).FirstOrDefault(r => r.Visit == visit);
            if (offered is not { MayBeTakenOut: true })
                return new Refusal("no-longer-replaced", "Some care of that visit is still due by its day.", "Leave it in the plan, or plan the week again.");
            PlannedWeek week = weeks.First(w => w.FirstDay == offered.Week);
            WeekVisit gone = week.Visits.First(v => v.Id == visit);
            Outcome<PlannedWeek> published = await WeekStore.PublishAsync(
                db, actor, week with { Visits = week.Visits.Remove(gone) }, $"Done at visit {record}", clock.RealNow(), cancel);
            if (!published.Succeeded) return published.Refusal!;
            ImmutableArray<PersonToTell> people = [.. People(gone, agency)];
            string ours = $"{record}-";
            int before = await db.ToTell.CountAsync(t => t.Id.StartsWith(ours), cancel);
            for (int i = 0; i < people.Length; i++)
                db.ToTell.Add(new ToTell { Id = string.Create(CultureInfo.InvariantCulture, $"{record}-{before + i + 1}"), Week = agency.ThisWeek, Person = people[i] });
            return people;
        }, cancel);

    private static IEnumerable<PersonToTell> People(WeekVisit gone, AgencyAtHand agency)
    {
        Patient patient = agency.Roster.Patients.First(p => p.Id == gone.Patient);
        string when = $"{gone.Day.ToString("ddd d MMM", CultureInfo.InvariantCulture)} {gone.Start.ToString("HH:mm", CultureInfo.InvariantCulture)}";
        yield return new PersonToTell(
            patient.Contact.Length > 0 ? $"{patient.Contact}, {patient.Name}" : patient.Name, Phone(patient.Phone), $"The visit on {when} is off: its care was done.", agency.Now);
        foreach (string nurse in (string[])(gone.Second is { } second ? [gone.Nurse, second] : [gone.Nurse]))
            if (agency.Roster.Nurses.FirstOrDefault(n => n.Id == nurse) is { } file)
                yield return new PersonToTell(file.Name, Phone(file.Phone), $"The visit to {patient.Name} on {when} is off: its care was done.", agency.Now);
    }

    private static string Phone(string number) => number.Length > 0 ? $"phone {number}" : "phone: number missing, use the other contact";
}
