using HomeLine.LineCare;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// When a patient may be visited at all: between the end of one hold and the start of the next, and while the plan of care is ordered.
/// </summary>
/// <param name="From">First plan minute.</param>
/// <param name="Through">Last plan minute, included.</param>
/// <param name="Because">What sets the end, in words.</param>
public sealed record PlanningSpan(int From, int Through, string Because)
{
    public bool IsEmpty => Through < From;

    public static PlanningSpan Of(PatientCare care, CareAnswer answer, PlanCalendar calendar, Instant now)
    {
        LocalDate today = now.InZone(care.Zone).Date;
        int from = Math.Max(0, calendar.Minute(now));
        var span = new PlanningSpan(from, calendar.End - 1, "The horizon ends.");
        if (answer.OnHold is { } hold)
        {
            if (hold.Through is not { } last) return span with { Through = from - 1, Because = $"On hold: {hold.Reason}." };
            span = span with { From = Math.Max(from, calendar.Minute(last.PlusDays(1), LocalTime.Midnight, care.Zone)) };
        }

        foreach (Hold next in care.Holds.Where(h => h.From > today))
            span = span.EndingBefore(calendar.Minute(next.From, LocalTime.Midnight, care.Zone), $"On hold from {next.From:uuuu-MM-dd}: {next.Reason}.");
        return PlanOfCareEnd(care, today) is { } end
            ? span.EndingBefore(calendar.Minute(end.PlusDays(1), LocalTime.Midnight, care.Zone), $"Orders end {end:uuuu-MM-dd}; nothing can be planned past them.")
            : span;
    }

    private PlanningSpan EndingBefore(int minute, string because) =>
        minute - 1 < Through ? this with { Through = minute - 1, Because = because } : this;

    /// <summary>Last day of the plan of care in force, renewals that follow without a gap among it; empty when it is open-ended or none is recorded.</summary>
    private static LocalDate? PlanOfCareEnd(PatientCare care, LocalDate today)
    {
        LocalDate? end = null;
        foreach (CareOrder order in care.Orders.Where(o => o.Kind == OrderKind.VisitFrequency).OrderBy(o => o.StartsOn))
        {
            if (order.StartsOn > today && (end is null || order.StartsOn > end.Value.PlusDays(1))) break;
            if (order.EndsOn is not { } last)
            {
                if (order.StartsOn <= today || end is not null) return null;
                continue;
            }

            end = end is { } e && e > last ? e : last;
        }

        return end;
    }
}
