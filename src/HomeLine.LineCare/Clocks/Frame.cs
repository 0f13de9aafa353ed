using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Windows that do not come from a pair of rules.</summary>
internal static class Frame
{
    /// <summary>Due at the first contact: open since the morning, never late, last day today because it cannot be called on time tomorrow.</summary>
    public static DueWindow FirstContact(
        Reckoning reckoning, Why why, CareItem item, LineId? line, string? lumen, PerformerKind owner = PerformerKind.Nurse, Repeat? next = null, string? order = null) => new(why)
        {
            Item = item,
            Patient = reckoning.Care.Patient,
            Line = line,
            Lumen = lumen,
            Order = order,
            Standing = WindowStanding.DateUnknown,
            Basis = ClockBasis.Date,
            Opens = reckoning.Morning,
            Target = reckoning.Morning,
            LateFrom = reckoning.Midnight,
            OpensOn = reckoning.Today,
            LastDay = reckoning.Today,
            Owner = owner,
            Next = next,
        };

    /// <summary>From a first to a last civil day, both included, for the nurse.</summary>
    public static DueWindow Days(
        Reckoning reckoning, Why why, CareItem item, LineId? line, LocalDate opens, LocalDate last, Repeat? next = null, string? order = null,
        WindowStanding standing = WindowStanding.Running) => new(why)
        {
            Item = item,
            Patient = reckoning.Care.Patient,
            Line = line,
            Order = order,
            Standing = standing,
            Basis = ClockBasis.Date,
            Opens = reckoning.StartOf(opens),
            Target = reckoning.StartOf(last),
            LateFrom = reckoning.EndOf(last),
            OpensOn = opens,
            LastDay = last,
            Owner = PerformerKind.Nurse,
            Next = next,
        };
}
