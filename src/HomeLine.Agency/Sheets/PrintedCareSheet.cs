using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>A care sheet that left the printer: a family may hold it, so the record says which one is the last.</summary>
/// <param name="Patient">For whom.</param>
/// <param name="Number">1 for the first, growing per patient.</param>
/// <param name="PrintedAt">When.</param>
/// <param name="PrintedBy">By whom, as shown.</param>
/// <param name="ContentHash">Hash of what it says; the same hash means nothing changed since.</param>
public sealed record PrintedCareSheet(PatientId Patient, int Number, Instant PrintedAt, string PrintedBy, string ContentHash);
