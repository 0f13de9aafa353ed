using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Scope;

/// <summary>Whether a caregiver may do a task: validated as this person, for this item, on this line, on this day.</summary>
public static class CaregiverGate
{
    /// <summary>Why not; empty when the person may.</summary>
    /// <param name="care">The patient.</param>
    /// <param name="person">Who, as written in the validation.</param>
    /// <param name="item">The task.</param>
    /// <param name="line">On which line; empty for care that is not on a line.</param>
    /// <param name="on">Civil day at the patient's place.</param>
    public static ScopeReason? WhyNot(PatientCare care, string person, CareItem item, LineId? line, LocalDate on)
    {
        ArgumentNullException.ThrowIfNull(care);
        ArgumentException.ThrowIfNullOrEmpty(person);
        if (Owners.IsValidated(care.Caregivers, item, line, on, person)) return null;
        var lapsed = care.Caregivers.Where(v => v.Person == person && v.Item == item && (v.Line is null || v.Line == line)).ToImmutableArray();
        return new ScopeReason(ScopeCodes.NotValidated, lapsed.IsEmpty
            ? $"{person} is not validated for this task on this line: the nurse does it."
            : $"The validation of {person} for this task ended {Says.Short(lapsed.Max(v => v.ValidThrough))}: the nurse does it.");
    }
}
