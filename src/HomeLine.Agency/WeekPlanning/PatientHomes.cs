using System.Collections.Immutable;
using HomeLine.Agency.Decisions;
using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Patients as the planner's homes: place, state, access, wishes, and how many visits the orders allow.</summary>
public static class PatientHomes
{
    public static PatientHome Of(Patient patient, PatientCare care, PolicyBook policy, RoadTravel roads, PlanCalendar calendar, ImmutableArray<SignedVisit> records, Instant now)
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
            RequiredTraits = [.. patient.RequiredTraits.Where(t => !ProtectedWish.Is(t))],
            ExcludedTraits = [.. patient.ExcludedTraits.Where(t => !ProtectedWish.Is(t))],
            RefusedNurses = patient.RefusedNurses,
            PreferredTraits = needsInterpreter ? [$"language:{patient.Language}"] : [],
            InterpreterUnless = needsInterpreter ? $"language:{patient.Language}" : null,
            InterpreterMinutes = needsInterpreter ? (int)policy.ValueOf("visit.interpreter", today) : 0,
            KnownNurses = patient.KnownNurses,
            CrewSize = patient.CrewSize,
            Allowances = Allowances(care, policy, calendar, records, now),
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
    /// and the as-needed ones left, which count once for the whole horizon. A week that begins under a renewed order counts by that one.
    /// </summary>
    private static ImmutableArray<WeekAllowance> Allowances(PatientCare care, PolicyBook policy, PlanCalendar calendar, ImmutableArray<SignedVisit> records, Instant now)
    {
        CareOrder[] orders = [.. care.Orders.Where(o => o is { Kind: OrderKind.VisitFrequency, VisitsPerWeek: not null }).OrderByDescending(o => o.StartsOn)];
        var allowances = ImmutableArray.CreateBuilder<WeekAllowance>();
        for (int first = 0; first < calendar.DayCount;)
        {
            LocalDate date = calendar.Date(first);
            int last = Math.Min(calendar.Day(VisitFrequency.LastDayOfWeek(date, policy)), calendar.DayCount - 1);
            // Under an order that starts within the week its visits count for the whole week; before the first order nothing is allowed or counted.
            if (orders.FirstOrDefault(o => o.IsActiveOn(date)) is { } order)
            {
                int made = MadeIn(care, VisitFrequency.FirstDayOfWeek(date, policy), date, records, now);
                allowances.Add(new WeekAllowance(first, last, Math.Max(0, order.VisitsPerWeek!.Value - made) + (VisitFrequency.AsNeededLeft(order) ?? 0)));
            }

            first = last + 1;
        }

        return allowances.ToImmutable();
    }

    private static int MadeIn(PatientCare care, LocalDate from, LocalDate before, ImmutableArray<SignedVisit> records, Instant now) =>
        VisitDays.Of(care, [], records, now).Count(day => day >= from && day < before);
}
