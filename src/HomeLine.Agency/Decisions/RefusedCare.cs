using System.Globalization;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>Refused care is not offered a third time without a clinician having spoken with the patient. Pure.</summary>
public static class RefusedCare
{
    /// <summary>Lines on which care was refused twice or more with no dressing change, access or other care in between.</summary>
    public static IEnumerable<OpenDecision> Twice(PatientCare care, Instant now)
    {
        var refused = new Dictionary<LineId, (LineEvent First, LineEvent Last, int Times)>();
        foreach (LineEvent entry in OrderedLedger.Read(care.Events, care.Zone, now))
        {
            if (entry.Line is not { } line) continue;
            if (entry.Kind == LineEventKind.Refused)
                refused[line] = refused.TryGetValue(line, out var before) ? (before.First, entry, before.Times + 1) : (entry, entry, 1);
            else if (entry.Kind is LineEventKind.DressingChanged or LineEventKind.PortAccessed or LineEventKind.ConnectorChanged
                or LineEventKind.Removed or LineEventKind.Exchanged)
                refused.Remove(line);
        }

        foreach ((LineId line, (LineEvent first, LineEvent last, int times)) in refused)
        {
            if (times < 2) continue;
            yield return OpenDecision.Of(
                care.Patient, line, AppDecisionCodes.RefusedTwice,
                $"Care was refused {times} times since {Day(first)}, last on {Day(last)}. A clinician speaks with the patient before it is offered again; the practitioner is told.",
                last.Id.Value, last.Performed?.Date);
        }
    }

    private static string Day(LineEvent entry) => entry.Performed?.Date.ToString("ddd d MMM", CultureInfo.InvariantCulture) ?? "an unknown day";
}
