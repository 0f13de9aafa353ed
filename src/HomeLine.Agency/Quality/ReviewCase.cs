using HomeLine.Agency.Access;
using HomeLine.Agency.Storage;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.Quality;

/// <summary>A review as entered.</summary>
/// <param name="Entry">The ledger entry it is about.</param>
/// <param name="On">The day the event counts on; empty for the day of the entry.</param>
/// <param name="Counts">Whether it counts as an infection of a central line.</param>
/// <param name="Definition">The surveillance definition it was judged by.</param>
/// <param name="Reason">Why.</param>
public sealed record CaseReviewEntry(string Entry, LocalDate? On, bool Counts, string Definition, string Reason);

/// <summary>A clinical manager says whether something counts as an infection of a central line.</summary>
public sealed class ReviewCase(IDbContextFactory<AgencyDb> databases, AgencyClock clock)
{
    /// <summary>
    /// Needs <see cref="AgencyAction.ReviewCase"/>. Refused without a reason or a definition, for an unknown entry, a day to come, and for an infection of a
    /// line that had been in for fewer days than policy asks for before one can be laid to it.
    /// </summary>
    public Task<Outcome<CaseReview>> ReviewAsync(Actor actor, CaseReviewEntry entry, CancellationToken cancel) =>
        AgencyWork.DoAsync<CaseReview>(databases, clock, actor, AgencyAction.ReviewCase, async (db, agency) =>
        {
            LineEvent? about = agency.Roster.Events.FirstOrDefault(e => e.Id.Value == entry.Entry);
            if (about is null) return new Refusal("case-unknown", "There is no such entry.", "Load the page anew and choose again.");
            if (entry.Reason.Trim().Length == 0) return new Refusal("case-reason-missing", "The reason is missing.", "Write what was found and where it stands.");
            if (entry.Counts && entry.Definition.Trim().Length == 0)
                return new Refusal("case-definition-missing", "The definition is missing.", "Name the surveillance definition the agency counts by.");
            PatientCare care = agency.Files[about.Patient];
            LocalDate on = entry.On ?? about.Performed?.Date ?? about.RecordedAt.InZone(care.Zone).Date;
            if (on > agency.Today) return new Refusal("case-ahead", "That day has not come yet.", "Enter the day of the event.");
            CaseToReview? known = CaseToReview.Of(
                agency.Roster.Patients.First(p => p.Id == about.Patient), care, on, on, agency.Files.Policy, agency.Now, Array.Empty<CaseReview>().ToLookup(r => r.Entry))
                .FirstOrDefault(c => c.Entry == entry.Entry);
            int least = (int)agency.Files.Policy.ValueOf("infection.linedays.min", on);
            if (entry.Counts && known?.DaysIn is { } days && days < least)
                return new Refusal("case-too-early", $"The line had been in for {days} days; policy lays an infection to a line from day {least} on.", "Say that it does not count, or correct the day.");
            int before = await db.CaseReviews.CountAsync(cancel);
            var made = new CaseReview
            {
                Id = $"review {before + 1}",
                Entry = entry.Entry,
                Patient = about.Patient,
                Line = about.Line,
                EventOn = on,
                Counts = entry.Counts,
                Definition = entry.Definition.Trim(),
                Reason = entry.Reason.Trim(),
                ReviewedBy = actor.Name,
                ReviewedAt = agency.Now,
            };
            db.CaseReviews.Add(made);
            await AuditTrail.AppendAsync(
                db, actor, "review-case", $"patient {about.Patient.Value}", $"entry {entry.Entry} {(entry.Counts ? "counts" : "does not count")} on {on:uuuu-MM-dd}", clock.RealNow(), cancel);
            return made;
        }, cancel);
}
