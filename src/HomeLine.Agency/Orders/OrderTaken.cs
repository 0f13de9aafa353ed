using System.Collections.Immutable;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.Agency.Orders;

/// <summary>An order as entered.</summary>
/// <param name="Draft">The order, with how it was taken when it was spoken.</param>
/// <param name="Answer">What somebody answered to what the record asks about it.</param>
public sealed record OrderEntry(OrderDraft Draft, string Answer = "");

/// <summary>An order that was kept, and what follows from it.</summary>
public sealed record OrderTaken(CareOrder Order, ImmutableArray<RecordingReply> Told);

/// <summary>A spoken order that waits for its signature, with the patient.</summary>
public sealed record UnsignedRow(UnsignedOrder Waits, CareOrder Order, string PatientName);

/// <summary>An order that ends soon, with the patient.</summary>
public sealed record EndingRow(EndingOrder Ending, string PatientName);

/// <summary>A person referred to the agency who has not been visited yet.</summary>
public sealed record Referral
{
    public required string Id { get; init; }
    public required string Name { get; init; }

    /// <summary>When the referral came; empty when nobody wrote it down, then the time of entry counts.</summary>
    public Instant? ReferredAt { get; init; }
    public required Instant EnteredAt { get; init; }

    /// <summary>When the person comes home; empty when at home already.</summary>
    public Instant? HomeAt { get; init; }

    /// <summary>The day of the start of care that was ordered; empty when none was.</summary>
    public LocalDate? OrderedOn { get; init; }
    public string Note { get; init; } = "";
    public required string EnteredBy { get; init; }

    /// <summary>When it was closed: visited, or declined.</summary>
    public Instant? ClosedAt { get; init; }
    public string ClosedBy { get; init; } = "";
    public string ClosedBecause { get; init; } = "";
}
