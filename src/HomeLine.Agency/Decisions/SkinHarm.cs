using HomeLine.Agency.Roster;
using HomeLine.Agency.Visits;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;

namespace HomeLine.Agency.Decisions;

/// <summary>A skin injury or reaction written down at a visit that is not on file as a risk: proposed to the clinical manager, who decides. Pure.</summary>
internal static class SkinHarm
{
    /// <summary>What the records that stand propose.</summary>
    public static IEnumerable<OpenDecision> Of(IEnumerable<VisitRecord> standing, AgencyAtHand agency)
    {
        var patients = agency.Roster.Patients.ToDictionary(p => p.Id);
        foreach (VisitRecord record in standing)
        {
            foreach (LineEntry line in record.Entry.Lines)
            {
                RiskFactors known = patients[record.Patient].Risks;
                if (line.Found.HasFlag(SiteFinding.AdhesiveInjury) && !known.HasFlag(RiskFactors.AdhesiveInjury))
                    yield return Ask(record, line.Line, AppDecisionCodes.AdhesiveInjuryFound,
                        "skin injury under the adhesive. On file as a risk it stops early changes while the seal is intact");
                if (line.Found.HasFlag(SiteFinding.AntisepticReaction) && !known.HasFlag(RiskFactors.ChlorhexidineAllergy))
                    yield return Ask(record, line.Line, AppDecisionCodes.AntisepticReactionFound,
                        "rash or itch where the antiseptic touched. On file as an allergy to chlorhexidine it keeps every material with it out");
            }
        }
    }

    /// <summary>The risk that a question would put on file.</summary>
    public static RiskFactors RiskOf(string code) => code switch
    {
        AppDecisionCodes.AdhesiveInjuryFound => RiskFactors.AdhesiveInjury,
        AppDecisionCodes.AntisepticReactionFound => RiskFactors.ChlorhexidineAllergy,
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "This question puts nothing on file"),
    };

    private static OpenDecision Ask(VisitRecord record, LineId line, string code, string what) =>
        OpenDecision.Of(record.Patient, line, code, $"{record.SignedName} found {what}.", record.Id, record.Day);
}
