using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Orders;

/// <summary>By when the first visit after a referral or a return home has to be made.</summary>
/// <param name="By">The last acceptable instant, or the end of the ordered day.</param>
/// <param name="From">From when it counts.</param>
/// <param name="Assumed">True when the referral's own time is missing and the time of entry stands in for it.</param>
public sealed record FirstVisit(Instant By, Instant From, bool Assumed)
{
    /// <summary>Within 48 hours of the referral, or of the return home when that is later, or on the ordered day (42 CFR 484.55(a)(1)).</summary>
    /// <param name="referredAt">When the referral came; empty when nobody wrote it down.</param>
    /// <param name="enteredAt">When it was entered.</param>
    /// <param name="homeAt">When the patient came or comes home; empty when already at home.</param>
    /// <param name="orderedOn">The day of the start of care that the prescriber ordered; empty when none was.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="zone">Zone of the patient's home.</param>
    public static FirstVisit Due(
        Instant? referredAt, Instant enteredAt, Instant? homeAt, LocalDate? orderedOn, PolicyBook policy, DateTimeZone zone)
    {
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentNullException.ThrowIfNull(zone);
        var from = referredAt ?? enteredAt;
        if (homeAt is { } home && home > from) from = home;
        var by = orderedOn is { } day
            ? zone.AtStartOfDay(day.PlusDays(1)).ToInstant()
            : from + Duration.FromMinutes((double)(policy.ValueOf(RuleIds.InitialVisit, from.InZone(zone).Date) * 60));
        return new FirstVisit(by, from, referredAt is null);
    }

    /// <summary>Last day of the comprehensive assessment, included: 5 days after the start of care (42 CFR 484.55(b)(1)).</summary>
    /// <param name="startOfCare">Day care started.</param>
    /// <param name="policy">The policy book.</param>
    public static LocalDate AssessmentBy(LocalDate startOfCare, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(policy);
        return startOfCare.PlusDays((int)policy.ValueOf(RuleIds.Assessment, startOfCare));
    }
}
