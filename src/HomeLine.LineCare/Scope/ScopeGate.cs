using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Scope;

/// <summary>
/// Whether a nurse may do something: licensed where the patient is at that hour (nurse licensure compact, official explanation), within the
/// credential, skilled and signed off on that day. Nobody in an office can override an answer of this gate.
/// </summary>
public static class ScopeGate
{
    private static readonly ImmutableArray<(GuardedCare Care, string Rule, string Words)> Guards =
    [
        (GuardedCare.Port, "scope.practicalnurse.port", "implanted ports"),
        (GuardedCare.FirstDose, "scope.practicalnurse.firstdose", "first doses"),
        (GuardedCare.NutritionTeaching, "scope.practicalnurse.nutritionteaching", "teaching parenteral nutrition"),
        (GuardedCare.Assessment, "scope.practicalnurse.assessment", "assessments"),
        (GuardedCare.Removal, "scope.practicalnurse.removal", "line removals"),
        (GuardedCare.NeverInterrupt, "scope.practicalnurse.neverinterrupt", "infusions that must not stop"),
        (GuardedCare.Child, "scope.practicalnurse.child", "children"),
    ];

    /// <summary>Every reason why not; empty when the nurse may.</summary>
    /// <param name="nurse">The nurse.</param>
    /// <param name="question">What is to be done, where and when.</param>
    /// <param name="policy">The policy book; what a practical nurse may do differs by state and is set there.</param>
    public static ImmutableArray<ScopeReason> WhyNot(ScopedNurse nurse, ScopeQuestion question, PolicyBook policy)
    {
        ArgumentNullException.ThrowIfNull(nurse);
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(policy);
        var reasons = ImmutableArray.CreateBuilder<ScopeReason>();
        if (Licence(nurse, question) is { } licence) reasons.Add(licence);
        if (IsPracticalNurse(nurse.Credential))
            foreach (var (care, rule, words) in Guards)
                if (question.Guarded.HasFlag(care) && policy.ValueOf(rule, question.On) == 0)
                    reasons.Add(new ScopeReason(ScopeCodes.BeyondCredential, $"{nurse.Name} is a practical nurse: not {words}."));
        foreach (var skill in question.Skills)
            if (Skill(nurse, skill, question) is { } reason) reasons.Add(reason);
        return reasons.ToImmutable();
    }

    private static bool IsPracticalNurse(string credential) => credential is "LPN" or "LVN";

    private static ScopeReason? Licence(ScopedNurse nurse, ScopeQuestion question)
    {
        var covering = nurse.Licences.Where(licence => Covers(licence, question)).ToList();
        if (covering.Count == 0)
            return new ScopeReason(ScopeCodes.LicenceMissing, $"{nurse.Name} has no licence in {question.State}, where the patient is on {Says.Short(question.On)}.");
        if (covering.Any(licence => licence.ValidThrough is not { } last || last >= question.On)) return null;
        var latest = covering.Max(licence => licence.ValidThrough!.Value);
        return new ScopeReason(ScopeCodes.LicenceExpired, $"The licence of {nurse.Name} in {question.State} ends {Says.Short(latest)}.");
    }

    private static bool Covers(PracticeLicence licence, ScopeQuestion question) =>
        licence.State == question.State
        || (licence.Compact && !question.CompactStates.IsDefaultOrEmpty
            && question.CompactStates.Contains(licence.State) && question.CompactStates.Contains(question.State));

    private static ScopeReason? Skill(ScopedNurse nurse, string skill, ScopeQuestion question)
    {
        var signed = nurse.Skills.Where(own => own.Skill == skill).ToList();
        if (signed.Count == 0) return new ScopeReason(ScopeCodes.SkillMissing, $"{nurse.Name} is not signed off for {skill}.");
        return signed.Any(own => own.ValidThrough is not { } last || last >= question.On)
            ? null
            : new ScopeReason(ScopeCodes.CompetencyLapsed, $"The sign-off of {nurse.Name} for {skill} has lapsed.");
    }
}
