using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Patients as the planner's homes: place, state, access, wishes, and how many visits the orders allow.</summary>
public static class PatientHomes
{
    public static PatientHome Of(Patient patient, PatientCare care, PolicyBook policy, RoadTravel roads, PlanCalendar calendar, Instant now)
    {
        LocalDate today = now.InZone(calendar.Zone).Date;
        bool needsInterpreter = patient.Language is not ("en" or "");
        return new PatientHome
        {
            Id = patient.Id.Value,
            Name = patient.Name,
            Place = roads.PlaceOfPatient(patient.Id.Value),
            State = patient.State,
            StartSpans = StartSpans(patient, calendar),
            RequiredTraits = patient.RequiredTraits,
            ExcludedTraits = patient.ExcludedTraits,
            RefusedNurses = patient.RefusedNurses,
            PreferredTraits = needsInterpreter ? [$"language:{patient.Language}"] : [],
            InterpreterUnless = needsInterpreter ? $"language:{patient.Language}" : null,
            InterpreterMinutes = needsInterpreter ? (int)policy.ValueOf("visit.interpreter", today) : 0,
            KnownNurses = patient.KnownNurses,
            CrewSize = patient.CrewSize,
            Allowances = Allowances(care, policy, calendar, today),
        };
    }

    private static ImmutableArray<Span> StartSpans(Patient patient, PlanCalendar calendar)
    {
        if (patient.AccessTimes.IsEmpty) return [];
        var spans = ImmutableArray.CreateBuilder<Span>();
        for (int day = 0; day < calendar.DayCount; day++)
        {
            LocalDate date = calendar.Date(day);
            foreach (AccessTime access in patient.AccessTimes.Where(a => a.Weekdays.IsEmpty || a.Weekdays.Contains(date.DayOfWeek)))
                spans.Add(new Span(calendar.Minute(date, access.From, patient.Zone), calendar.Minute(date, access.To, patient.Zone)));
        }

        return [.. spans.OrderBy(s => s.From)];
    }

    /// <summary>
    /// Visits the plan of care still allows in each calendar week of the horizon: ordered ones, less those already made,
    /// and the as-needed ones left, which count once for the whole horizon.
    /// </summary>
    private static ImmutableArray<WeekAllowance> Allowances(PatientCare care, PolicyBook policy, PlanCalendar calendar, LocalDate today)
    {
        CareOrder? order = care.Orders
            .Where(o => o.Kind == OrderKind.VisitFrequency && o.VisitsPerWeek is not null && o.StartsOn <= today && !(o.EndsOn < today))
            .MaxBy(o => o.StartsOn);
        if (order is null) return [];
        int asNeeded = Math.Max(0, (order.AsNeededVisits ?? 0) - order.AsNeededUsed);
        IsoDayOfWeek weekStart = policy.ValueOf("frequency.weekstart", today) == 1 ? IsoDayOfWeek.Monday : IsoDayOfWeek.Sunday;
        var allowances = ImmutableArray.CreateBuilder<WeekAllowance>();
        for (int first = 0; first < calendar.DayCount;)
        {
            LocalDate date = calendar.Date(first);
            LocalDate weekBegan = date.DayOfWeek == weekStart ? date : date.Previous(weekStart);
            int last = Math.Min(calendar.Day(weekBegan) + 6, calendar.DayCount - 1);
            int made = VisitDays(care, weekBegan, calendar.Date(0).PlusDays(first));
            allowances.Add(new WeekAllowance(first, last, Math.Max(0, order.VisitsPerWeek!.Value - made) + asNeeded));
            first = last + 1;
        }

        return allowances.ToImmutable();
    }

    private static int VisitDays(PatientCare care, LocalDate from, LocalDate before) => care.Events
        .Where(e => e.Performer == PerformerKind.Nurse && e.Performed is not null && IsCare(e.Kind))
        .Select(e => e.Performed!.Value.Date)
        .Where(d => d >= from && d < before)
        .Distinct()
        .Count();

    private static bool IsCare(LineEventKind kind) => kind is not (
        LineEventKind.Refused or LineEventKind.Missed or LineEventKind.PhoneCall or LineEventKind.SealReported
        or LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Inserted or LineEventKind.TipConfirmed);
}
