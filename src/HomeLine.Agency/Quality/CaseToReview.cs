using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.Quality;

/// <summary>A ledger entry behind which an infection of a central line may stand. Nothing counts by itself: a clinical manager looks at each.</summary>
/// <param name="Entry">The ledger entry.</param>
/// <param name="Patient">The patient.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="Line">The line; empty where the entry is about the patient as a whole.</param>
/// <param name="On">The day.</param>
/// <param name="What">What happened, in words.</param>
/// <param name="Note">What was noted with it.</param>
/// <param name="DaysIn">Days the central line had been in on that day, the day of insertion counted as the first, the longest of several; empty when unknown.</param>
/// <param name="Review">The last review; empty while nobody has looked.</param>
public sealed record CaseToReview(
    string Entry, PatientId Patient, string PatientName, LineId? Line, LocalDate On, string What, string Note, int? DaysIn, CaseReview? Review)
{
    /// <summary>Every such entry of a patient in a span, the oldest first.</summary>
    public static IEnumerable<CaseToReview> Of(
        Patient patient, PatientCare care, LocalDate from, LocalDate through, PolicyBook policy, Instant now, ILookup<string, CaseReview> reviews)
    {
        Line[] central = [.. care.Lines.Where(l => l.Kind.IsCentral())];
        if (central.Length == 0) yield break;
        foreach (LineEvent entry in OrderedLedger.Read(care.Events, care.Zone, now))
        {
            if (Words(entry.Kind) is not { } what) continue;
            LocalDate on = entry.Performed?.Date ?? entry.RecordedAt.InZone(care.Zone).Date;
            if (on < from || on > through) continue;
            Line[] about = entry.Line is { } line ? [.. central.Where(l => l.Id == line)] : central;
            if (about.Length == 0) continue;
            yield return new CaseToReview(
                entry.Id.Value, patient.Id, patient.Name, entry.Line, on, what, entry.Note, DaysInBy(care, about, on, policy, now),
                reviews[entry.Id.Value].OrderBy(r => r.ReviewedAt).LastOrDefault());
        }
    }

    private static int? DaysInBy(PatientCare care, Line[] lines, LocalDate on, PolicyBook policy, Instant now) =>
        LineDays.Of(care, on, on, policy, now).Lines.Where(c => lines.Any(l => l.Id == c.Line)).Max(c => c.DwellDays) is { } days ? days + 1 : null;

    private static string? Words(LineEventKind kind) => kind switch
    {
        LineEventKind.BloodCultureDrawn => "a blood culture was drawn",
        LineEventKind.AdmittedToHospital => "admitted to hospital with a central line",
        LineEventKind.Removed => "a central line came out",
        LineEventKind.UseLocked => "a line was locked for use",
        _ => null,
    };
}
