using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>What a visit is checked against: the roster as it stands, who writes, and what was recorded before.</summary>
/// <param name="Agency">The roster at the agency's now.</param>
/// <param name="Patient">Whose visit.</param>
/// <param name="Nurse">The nurse's file; empty for somebody without one.</param>
/// <param name="Name">Name as signed.</param>
/// <param name="Earlier">Records of this patient that stand, the amended one left out.</param>
/// <param name="Amended">The record that is amended; empty for a first one.</param>
/// <param name="RealNow">The real now, to compare a device's clock with.</param>
internal sealed record VisitSetting(
    AgencyAtHand Agency, Patient Patient, NurseFile? Nurse, string Name, ImmutableArray<VisitRecord> Earlier, VisitRecord? Amended, Instant RealNow)
{
    public PatientCare Care => Agency.Files[Patient.Id];

    public decimal Policy(string rule) => Agency.Files.Policy.ValueOf(rule, Agency.Today);

    /// <summary>Lines that are still in.</summary>
    public ImmutableArray<LineId> LinesIn()
    {
        var ended = Care.Events
            .Where(e => e.Kind is LineEventKind.Removed or LineEventKind.Exchanged && Care.Events.All(c => c.Voids != e.Id) && Amended?.Events.Contains(e.Id) != true)
            .Select(e => e.Line).ToHashSet();
        return [.. Care.Lines.Where(l => !ended.Contains(l.Id) && l.Kind != LineKind.DialysisCatheter).Select(l => l.Id)];
    }
}
