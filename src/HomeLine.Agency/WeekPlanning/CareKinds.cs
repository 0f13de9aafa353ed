using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>The kinds by which nurses have caps on their visits: the skill words the care asks for, and whether it takes long.</summary>
internal static class CareKinds
{
    /// <summary>The skill word of starts of care, for which the agency has a cap for everybody.</summary>
    public const string StartOfCare = "SOC";

    public static ImmutableArray<string> Of(ImmutableArray<string> skills, int minutes, PolicyBook policy, LocalDate on) =>
        IsHeavy(minutes, policy, on) ? [.. skills, KindCap.Heavy] : skills;

    /// <summary>Whether so many minutes in the home count as heavy.</summary>
    public static bool IsHeavy(int minutes, PolicyBook policy, LocalDate on) => minutes >= policy.ValueOf("visit.heavy.from", on);
}
