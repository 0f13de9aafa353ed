using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Agency.PolicyLibrary;

/// <summary>A due date that a policy would move.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="LineLabel">On which line; empty for items of the patient.</param>
/// <param name="ItemLabel">Which item.</param>
/// <param name="From">The window as it is; empty when it would appear.</param>
/// <param name="To">The window as it would be; empty when it would disappear.</param>
/// <param name="Because">Why, with the rule.</param>
/// <param name="Before">The window itself as it is.</param>
/// <param name="After">The window itself as it would be.</param>
public sealed record MovedDue(
    PatientId Patient, string PatientName, string LineLabel, string ItemLabel, string From, string To, string Because, DueWindow? Before, DueWindow? After);

/// <summary>Works out which due dates a policy would move, on the real ledgers, as of the moment it takes effect. Pure.</summary>
public static class PolicyPreview
{
    /// <summary>
    /// Every patient's windows under the policy as it is and as it would be. Both are asked as of the day the draft takes effect at the patient's
    /// place, or now when that day has begun: what opens earlier or later shows only from that day on.
    /// </summary>
    public static ImmutableArray<MovedDue> Of(AgencyAtHand agency, PolicyDraft draft)
    {
        PolicyBook book = agency.Files.Policy;
        PolicyBook changed = book.With(draft.Rules(""));
        var moved = ImmutableArray.CreateBuilder<MovedDue>();
        foreach (Patient patient in agency.Roster.Patients)
        {
            PatientCare care = agency.Files[patient.Id];
            Instant at = AsOf(draft, patient, agency.Now);
            foreach (MovedWindow window in WhatWouldMove.Between(WhatIsDue.For(care, book, at), WhatIsDue.For(care, changed, at)))
                moved.Add(Row(patient, care, window));
        }

        return [.. moved.OrderBy(m => (m.After ?? m.Before)!.LateFrom).ThenBy(m => m.PatientName, StringComparer.Ordinal).ThenBy(m => m.ItemLabel, StringComparer.Ordinal)];
    }

    /// <summary>The moment a draft is judged at for one patient.</summary>
    public static Instant AsOf(PolicyDraft draft, Patient patient, Instant now) =>
        Instant.Max(now, patient.Zone.AtStartOfDay(draft.EffectiveFrom).ToInstant());

    /// <summary>One moved window in words.</summary>
    public static MovedDue Row(Patient patient, PatientCare care, MovedWindow moved)
    {
        DueWindow window = (moved.After ?? moved.Before)!;
        Line? line = window.Line is { } id ? care.Lines.First(l => l.Id == id) : null;
        string item = window.Order is { } order && care.Orders.FirstOrDefault(o => o.Id == order) is { Text.Length: > 0 } named
            ? named.Text : CareLabels.Of(window.Item);
        return new MovedDue(
            patient.Id,
            patient.Name,
            line is null ? "" : $"{CareLabels.Of(line)} {line.Id}",
            window.Lumen is { } lumen ? $"{item}, lumen {lumen}" : item,
            InWords(moved.Before, patient.Zone),
            InWords(moved.After, patient.Zone),
            string.Join(" ", window.Because.Overrode.Select(o => $"Instead of {o}.").Prepend(window.Because.Sentence)),
            moved.Before,
            moved.After);
    }

    private static string InWords(DueWindow? window, DateTimeZone zone)
    {
        if (window is null) return "";
        if (window.Standing == WindowStanding.DateUnknown) return "date unknown: at the first contact";
        if (window.Basis == ClockBasis.Hour) return $"by {window.LateFrom.InZone(zone).LocalDateTime.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture)}";
        return window.OpensOn == window.LastDay ? Day(window.LastDay) : $"{Day(window.OpensOn)} to {Day(window.LastDay)}";
    }

    private static string Day(LocalDate day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
