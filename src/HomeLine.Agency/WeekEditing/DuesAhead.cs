using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What a changed week does to the due dates of the seven days after it: the next windows if every visit of the week is made.</summary>
public static class DuesAhead
{
    /// <param name="roster">The roster.</param>
    /// <param name="before">The week as it stands.</param>
    /// <param name="after">The week as it would be.</param>
    /// <param name="patients">Patients whose visits change.</param>
    /// <param name="now">Now.</param>
    public static ImmutableArray<string> Of(AgencyRoster roster, PlannedWeek before, PlannedWeek after, IEnumerable<PatientId> patients, Instant now)
    {
        Instant end = before.FirstDay.PlusDays(7).AtStartOfDayInZone(roster.Profile.Zone).ToInstant();
        var news = ImmutableArray.CreateBuilder<string>();
        foreach (PatientId patient in patients.Distinct())
        {
            AgencyRoster alone = Alone(roster, patient);
            var was = LastDays(alone, Of(before, patient), patient, now, end);
            foreach ((string what, LocalDate day) in LastDays(alone, Of(after, patient), patient, now, end))
            {
                if (was.TryGetValue(what, out LocalDate old) && old != day && LocalDate.Min(old, day) < before.FirstDay.PlusDays(14))
                    news.Add($"{patient} {what}: next due {VisitWords.LongDay(day)} instead of {VisitWords.LongDay(old)}.");
            }
        }

        return news.ToImmutable();
    }

    private static Dictionary<string, LocalDate> LastDays(AgencyRoster alone, PlannedWeek week, PatientId patient, Instant now, Instant end)
    {
        AgencyRoster then = Foreseen.At(alone, [week], now, end);
        var days = new Dictionary<string, LocalDate>(StringComparer.Ordinal);
        foreach (DueWindow window in CareFiles.Of(then).WhatIsDue(patient, end).Windows.Where(w => w.Standing == WindowStanding.Running))
        {
            string what = window.Line is { } line ? $"{CareLabels.Of(window.Item)} ({line})" : CareLabels.Of(window.Item);
            LocalDate last = window.LastDay;
            days[what] = days.TryGetValue(what, out LocalDate known) ? LocalDate.Min(known, last) : last;
        }

        return days;
    }

    private static PlannedWeek Of(PlannedWeek week, PatientId patient) => week with { Visits = [.. week.Visits.Where(v => v.Patient == patient)] };

    /// <summary>The roster with one patient in it, so that only her clocks are asked.</summary>
    internal static AgencyRoster Alone(AgencyRoster roster, PatientId patient) => roster with
    {
        Patients = [.. roster.Patients.Where(p => p.Id == patient)],
        Lines = [.. roster.Lines.Where(l => l.Patient == patient)],
        Infusions = [.. roster.Infusions.Where(i => i.Patient == patient)],
        Events = [.. roster.Events.Where(e => e.Patient == patient)],
        Orders = [.. roster.Orders.Where(o => o.Patient == patient)],
        Caregivers = [.. roster.Caregivers.Where(c => c.Patient == patient)],
        Holds = [.. roster.Holds.Where(h => h.Patient == patient)],
        Exceptions = [.. roster.Exceptions.Where(x => x.Patient == patient)],
        OutsideCare = [.. roster.OutsideCare.Where(o => o.Patient == patient)],
    };
}
