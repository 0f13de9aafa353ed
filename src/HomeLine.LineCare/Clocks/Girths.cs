using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Arm girth: a baseline at the first measurement, then on symptoms only; a rise over the policy's step is asked about (open
/// vascular-access policy on catheter thrombosis: 3 cm over baseline).</summary>
internal static class Girths
{
    /// <summary>The first measurement of the arm of a line; empty when there is none.</summary>
    public static LineEvent? Baseline(PatientCare care, LineId line, Instant now)
    {
        foreach (var entry in OrderedLedger.Read(care.Events, care.Zone, now))
            if (entry.Line == line && entry.ArmGirthCm is not null) return entry;
        return null;
    }
}
