using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Who does an item next. A caregiver only while validated for that item on that line, from today through the last day of the window;
/// otherwise the nurse, at once.</summary>
internal static class Owners
{
    public static PerformerKind Of(Reckoning reckoning, CareItem item, LineId? line, LocalDate lastDay)
    {
        var through = LocalDate.Max(reckoning.Today, lastDay);
        return IsValidated(reckoning.Care.Caregivers, item, line, through) ? PerformerKind.Caregiver : PerformerKind.Nurse;
    }

    /// <summary>Whether anybody, or the named person, is validated for an item on a line on a day.</summary>
    public static bool IsValidated(
        ImmutableArray<CaregiverValidation> validations, CareItem item, LineId? line, LocalDate day, string? person = null)
    {
        foreach (var validation in validations)
            if (validation.Item == item && validation.ValidThrough >= day
                && (validation.Line is null || validation.Line == line)
                && (string.IsNullOrEmpty(person) || validation.Person == person)) return true;
        return false;
    }
}
