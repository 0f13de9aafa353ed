using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Published visits ahead that lie on days on which their nurses will not work.</summary>
/// <param name="Visits">By start, both people of a two-person visit counted.</param>
/// <param name="Words">The same in words.</param>
internal sealed record TouchedVisits(ImmutableArray<WeekVisit> Visits, ImmutableArray<string> Words)
{
    public int Told => Visits.Count(v => v.Promise == PromiseState.Told);

    /// <summary>First days of the weeks that have to be mended.</summary>
    public ImmutableArray<LocalDate> Weeks => [.. Visits.Select(v => AgencyAtHand.WeekOf(v.Day)).Distinct()];

    public static async Task<TouchedVisits> OfAsync(
        AgencyDb db, AgencyAtHand agency, IReadOnlySet<string> nurses, LocalDate from, LocalDate through, CancellationToken cancel)
    {
        LocalDateTime now = agency.Now.InZone(agency.Roster.Profile.Zone).LocalDateTime;
        var visits = new List<WeekVisit>();
        foreach (LocalDate monday in await WeekStore.PublishedWeeksAsync(db, cancel))
        {
            if (monday > through || monday.PlusDays(6) < from) continue;
            StoredWeek week = (await WeekStore.PublishedAsync(db, monday, cancel))!;
            visits.AddRange(week.Week.Visits.Where(v => (nurses.Contains(v.Nurse) || (v.Second is { } second && nurses.Contains(second)))
                && v.Day >= from && v.Day <= through && v.Day.At(v.Start) >= now));
        }

        ImmutableArray<WeekVisit> inOrder = [.. visits.OrderBy(v => v.Day).ThenBy(v => v.Start)];
        var names = agency.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        return new TouchedVisits(
            inOrder,
            [.. inOrder.Select(v => $"{VisitWords.LongDay(v.Day)} {VisitWords.Time(v.Start)} {v.Patient} {names.GetValueOrDefault(v.Patient, "")}: {string.Join(", ", v.Care.Select(c => c.Label))}")]);
    }
}
