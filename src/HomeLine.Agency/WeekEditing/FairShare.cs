using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>One nurse's part of one week, or of several added up.</summary>
/// <param name="Days">Days with a visit.</param>
/// <param name="Visits">Visits, those as a second person among them.</param>
/// <param name="Weighted">Visits with long ones counted for more, tenths.</param>
/// <param name="Heavy">Visits that take long.</param>
/// <param name="Evenings">Days with a visit in the evening.</param>
/// <param name="WeekendDays">Saturdays and Sundays with a visit.</param>
/// <param name="Minutes">Minutes in homes.</param>
public readonly record struct WeekShare(int Days, int Visits, int Weighted, int Heavy, int Evenings, int WeekendDays, int Minutes)
{
    public static WeekShare operator +(WeekShare a, WeekShare b) => new(
        a.Days + b.Days, a.Visits + b.Visits, a.Weighted + b.Weighted, a.Heavy + b.Heavy, a.Evenings + b.Evenings, a.WeekendDays + b.WeekendDays, a.Minutes + b.Minutes);

    /// <summary>A nurse's part of a week.</summary>
    public static WeekShare Of(PlannedWeek week, string nurse, LoadRules rules)
    {
        WeekVisit[] hers = [.. week.Visits.Where(v => v.Nurse == nurse || v.Second == nurse)];
        return new WeekShare(
            hers.Select(v => v.Day).Distinct().Count(),
            hers.Length,
            hers.Sum(v => LoadRules.Weight(v.Minutes)),
            hers.Count(v => v.Minutes >= rules.HeavyFrom),
            hers.Where(v => v.Start >= rules.Evening).Select(v => v.Day).Distinct().Count(),
            hers.Where(v => IsWeekend(v.Day)).Select(v => v.Day).Distinct().Count(),
            hers.Sum(v => v.Minutes));
    }

    internal static bool IsWeekend(LocalDate day) => day.DayOfWeek is IsoDayOfWeek.Saturday or IsoDayOfWeek.Sunday;
}

/// <summary>A nurse's part of the published weeks before, beside the week worked on.</summary>
/// <param name="Nurse">Identifier.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Before">The weeks before, added up.</param>
/// <param name="Now">The week worked on.</param>
public sealed record FairShare(string Nurse, string Name, WeekShare Before, WeekShare Now)
{
    public WeekShare Together => Before + Now;
}
