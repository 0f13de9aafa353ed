using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using NodaTime;
using NodaTime.Text;

namespace HomeLine.Agency.Storage;

/// <summary>
/// Nobody starts two visits at one moment. The planner's checker says far more about overlaps; this is the last door
/// before the database, which holds the same rule for itself.
/// </summary>
internal static class DoubleBooking
{
    public static Refusal? In(PlannedWeek week)
    {
        var booked = new HashSet<(string Nurse, LocalDate Day, LocalTime Start)>();
        foreach (WeekVisit visit in week.Visits)
        {
            foreach (string nurse in (ImmutableArray<string>)(visit.Second is { } second ? [visit.Nurse, second] : [visit.Nurse]))
            {
                if (!booked.Add((nurse, visit.Day, visit.Start))) return Twice(nurse, visit);
            }
        }
        return null;
    }

    private static Refusal Twice(string nurse, WeekVisit visit) => new(
        "double-booked",
        $"{nurse} would be at two doors on {LocalDatePattern.Iso.Format(visit.Day)} at {LocalTimePattern.CreateWithInvariantCulture("HH:mm").Format(visit.Start)}.",
        "Move or reassign one of the two visits.");
}
