using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>An order's visits week by week, beside the interval clocks that know nothing of it.</summary>
/// <param name="Order">The order.</param>
/// <param name="Weeks">The weeks before, this one and those with planned visits.</param>
/// <param name="ThisWeek">First day of this week by the agency's week.</param>
/// <param name="AsNeededLeft">As-needed visits left; empty when none are ordered.</param>
public sealed record FrequencyLedger(CareOrder Order, ImmutableArray<FrequencyWeek> Weeks, LocalDate ThisWeek, int? AsNeededLeft)
{
    /// <summary>How many weeks back the page looks.</summary>
    private const int WeeksBack = 4;

    /// <summary>One for each frequency order that is active today.</summary>
    public static ImmutableArray<FrequencyLedger> Of(PatientCare care, IEnumerable<WeekVisit> visits, ImmutableArray<SignedVisit> records, PolicyBook policy, Instant now)
    {
        LocalDate today = now.InZone(care.Zone).Date;
        LocalDate thisWeek = VisitFrequency.FirstDayOfWeek(today, policy);
        ImmutableArray<LocalDate> days = VisitDays.Of(care, visits, records, now);
        return
        [
            .. care.Orders.Where(o => o.Kind == OrderKind.VisitFrequency && o.IsActiveOn(today)).Select(o => new FrequencyLedger(
                o,
                [.. WithThisWeek(VisitFrequency.Weeks(o, days.Where(o.IsActiveOn), policy), o, thisWeek).Where(w => w.FirstDay >= thisWeek.PlusWeeks(-WeeksBack))],
                thisWeek,
                VisitFrequency.AsNeededLeft(o))),
        ];
    }

    private static IEnumerable<FrequencyWeek> WithThisWeek(ImmutableArray<FrequencyWeek> weeks, CareOrder order, LocalDate thisWeek) =>
        order.VisitsPerWeek is not { } ordered || weeks.Any(w => w.FirstDay == thisWeek)
            ? weeks
            : weeks.Add(new FrequencyWeek(thisWeek, 0, ordered)).OrderBy(w => w.FirstDay);
}
