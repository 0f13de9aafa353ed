using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>Who did what to what, and when; each entry seals the one before it.</summary>
/// <param name="Sequence">1 for the first entry, without gaps. Order is by this number, never by the clock.</param>
/// <param name="At">When it was written.</param>
/// <param name="ActorId">The account.</param>
/// <param name="ActorName">The name shown at the time.</param>
/// <param name="Action">What was done, for example <c>publish-week</c>.</param>
/// <param name="Subject">To what, by identifier, for example <c>week 2027-03-08</c>.</param>
/// <param name="Detail">What else a reader needs, such as a reason; no more care data than that.</param>
/// <param name="PreviousHash">Hash of the entry before; empty for the first.</param>
/// <param name="Hash">Hash over everything above.</param>
public sealed record AuditEntry(
    long Sequence,
    Instant At,
    string ActorId,
    string ActorName,
    string Action,
    string Subject,
    string Detail,
    string PreviousHash,
    string Hash);
