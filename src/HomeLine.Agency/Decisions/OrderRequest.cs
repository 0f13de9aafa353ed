using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>An order asked for after the fact: the visit was for safety and did not wait for it.</summary>
/// <param name="Id">Names the request.</param>
/// <param name="Patient">For whom.</param>
/// <param name="Line">On which line.</param>
/// <param name="AskedOn">Day of the visit, branch date.</param>
/// <param name="Sentence">What is asked for and why.</param>
/// <param name="AskedBy">Who applied the visit.</param>
public sealed record OrderRequest(string Id, PatientId Patient, LineId? Line, LocalDate AskedOn, string Sentence, string AskedBy);
