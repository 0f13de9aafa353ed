using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>The question this room answers: what is due for this patient's lines, from when to when, and why.</summary>
public static class WhatIsDue
{
    /// <summary>Computes every window from the ledger, the orders and the policy in force. Pure: same inputs, same answer.
    /// Ordered dates are listed for the days ahead that policy names (<c>horizon</c>).</summary>
    /// <param name="care">The patient's lines, ledger and orders.</param>
    /// <param name="policy">The policy book with all its versions.</param>
    /// <param name="now">The instant to answer for.</param>
    public static CareAnswer For(PatientCare care, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        return EveryClock.Read(new Reckoning(care, policy, now, null));
    }

    /// <summary>As <see cref="For(PatientCare, PolicyBook, Instant)"/>, listing ordered dates as far ahead as asked.</summary>
    /// <param name="care">The patient's lines, ledger and orders.</param>
    /// <param name="policy">The policy book with all its versions.</param>
    /// <param name="now">The instant to answer for.</param>
    /// <param name="horizonDays">Days ahead for ordered dates, today plus this many included; 0 to 366.</param>
    public static CareAnswer For(PatientCare care, PolicyBook policy, Instant now, int horizonDays)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentNullException.ThrowIfNull(policy);
        ArgumentOutOfRangeException.ThrowIfNegative(horizonDays);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(horizonDays, 366);
        return EveryClock.Read(new Reckoning(care, policy, now, horizonDays));
    }
}
