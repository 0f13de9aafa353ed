using System.Collections.Immutable;
using HomeLine.Agency.Reports;

namespace HomeLine.Agency.Mending;

/// <summary>Patients to ask how they are because, by the best answer, nobody comes to them on the day that was promised.</summary>
internal static class PhoneChecks
{
    public static ImmutableArray<PersonToTell> Of(ImmutableArray<MendAnswer> answers, MendSetting setting) => answers.IsEmpty
        ? []
        : [.. answers[0].Changes
            .Where(c => c.Before is not null && c.After?.Day != c.Before.Day)
            .Select(c => setting.People.Family(c.Before!.Patient, $"Nobody comes on {DayWords.Day(c.Before.Day)}. Ask the symptom questions; a yes stops everything else."))];
}
