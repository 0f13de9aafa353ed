using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>The question this room answers: what is due for this patient's lines, from when to when, and why.</summary>
public static class WhatIsDue
{
    /// <summary>Computes every window from the ledger, the orders and the policy in force. Pure: same inputs, same answer.</summary>
    /// <param name="care">The patient's lines, ledger and orders.</param>
    /// <param name="policy">The policy book with all its versions.</param>
    /// <param name="now">The instant to answer for.</param>
    public static CareAnswer For(PatientCare care, PolicyBook policy, Instant now) =>
        throw new NotImplementedException();
}
