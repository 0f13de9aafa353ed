using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Skill words a credential lets count: a practical nurse with a port typed beside her name is still not sent to a port.</summary>
public static class CredentialScope
{
    private static readonly ImmutableDictionary<string, GuardedCare> Guards = ImmutableDictionary.CreateRange(StringComparer.Ordinal,
    [
        KeyValuePair.Create("PORT", GuardedCare.Port),
        KeyValuePair.Create("FD", GuardedCare.FirstDose),
        KeyValuePair.Create("SOC", GuardedCare.Assessment),
        KeyValuePair.Create("REC", GuardedCare.Assessment),
        KeyValuePair.Create("REM", GuardedCare.Removal),
        KeyValuePair.Create("INO", GuardedCare.NeverInterrupt),
        KeyValuePair.Create("PEDS", GuardedCare.Child),
    ]);

    /// <summary>The nurse's skill words that count on a day.</summary>
    public static ImmutableArray<string> Within(NurseFile file, PolicyBook policy, LocalDate on) =>
        [.. file.Skills.Where(skill => !Guards.TryGetValue(skill, out GuardedCare guarded) || !IsBeyond(file, guarded, policy, on))];

    private static bool IsBeyond(NurseFile file, GuardedCare guarded, PolicyBook policy, LocalDate on) =>
        ScopeGate.WhyNot(new ScopedNurse(file.Name, file.Credential, [], [new PracticeLicence("", null)]), new ScopeQuestion([], guarded, "", on), policy)
            .Any(reason => reason.Code == ScopeCodes.BeyondCredential);
}
