using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>What "now" is: the demo's fixed moment, or the clock's. The audit trail always uses the real one.</summary>
public sealed class AgencyClock(IClock clock)
{
    /// <summary>The agency's now, for questions of care and planning.</summary>
    public Instant Now(AgencyProfile profile) => profile.FixedNow ?? clock.GetCurrentInstant();

    /// <summary>The real now, for the audit trail, sign-in and links that expire.</summary>
    public Instant RealNow() => clock.GetCurrentInstant();
}
