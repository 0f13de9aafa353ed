using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Whether somebody can be called out on every day of a week.</summary>
internal static class OnCallDays
{
    /// <summary>Days of the week, from today on, on which nobody is on call.</summary>
    public static ImmutableArray<LocalDate> Without(AgencyRoster roster, LocalDate firstDay, LocalDate today) =>
    [
        .. Enumerable.Range(0, 7).Select(firstDay.PlusDays)
            .Where(day => day >= today && !roster.Nurses.Any(n => n.Week.Any(w => w.OnCall && w.Weekday == day.DayOfWeek) && !n.Leaves.Any(l => day >= l.From && day <= l.Through))),
    ];

    /// <summary>The refusal, or nothing when the agency asks for none or every day has somebody.</summary>
    public static Refusal? Refuse(AgencyAtHand agency, LocalDate firstDay)
    {
        if (agency.Files.Policy.ValueOf("oncall.required", agency.Today) == 0) return null;
        ImmutableArray<LocalDate> without = Without(agency.Roster, firstDay, agency.Today);
        return without.IsEmpty
            ? null
            : new Refusal(
                "nobody-on-call",
                $"Nobody is on call on {string.Join(", ", without.Select(d => d.ToString("ddd d MMM", CultureInfo.InvariantCulture)))}.",
                "Enter who is on call (shifts.csv, on_call yes), or take back a leave. Nothing was published, and the draft is kept as it is.");
    }
}
