using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>The visits of a patient who is away, taken out of the published weeks: nobody rings at an empty home. Pure.</summary>
/// <param name="Visits">What was taken out, by time.</param>
/// <param name="WeeksAfter">Only the weeks that change.</param>
internal sealed record LiftedVisits(ImmutableArray<WeekVisit> Visits, ImmutableArray<PlannedWeek> WeeksAfter)
{
    /// <param name="weeks">The published weeks that may hold visits.</param>
    /// <param name="patient">Who is away.</param>
    /// <param name="from">First day away.</param>
    /// <param name="through">Last day away; empty when unknown.</param>
    /// <param name="now">Branch time: what is over stays as it was.</param>
    public static LiftedVisits Of(ImmutableArray<PlannedWeek> weeks, PatientId patient, LocalDate from, LocalDate? through, LocalDateTime now)
    {
        bool IsAway(WeekVisit visit) => visit.Patient == patient && visit.Day >= from && !(visit.Day > through)
            && visit.Day.At(visit.Start).PlusMinutes(visit.Minutes) >= now;
        ImmutableArray<PlannedWeek> changed = [.. weeks.Where(w => w.Visits.Any(IsAway))];
        return new LiftedVisits(
            [.. changed.SelectMany(w => w.Visits).Where(IsAway).OrderBy(v => v.Day).ThenBy(v => v.Start)],
            [.. changed.Select(w => w with { Visits = [.. w.Visits.Where(v => !IsAway(v))] })]);
    }

    public static ImmutableArray<PersonToTell> Told(PatientId patient, ImmutableArray<WeekVisit> lifted, PeopleNamed people) =>
        [.. lifted.SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (Nurse: n, Visit: v)))
            .GroupBy(x => x.Nurse)
            .Select(g => people.Nurse(g.Key, $"{people.Name(patient)} is away. Off: {string.Join("; ", g.Select(x => DayWords.When(x.Visit)))}."))];
}
