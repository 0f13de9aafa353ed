using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Whether the nurse at the door may do what is planned or was done, by the scope gate. Pure.</summary>
internal static class VisitScope
{
    /// <summary>Reasons why not, by item; empty when she may do all of it. Somebody without a nurse's file cannot be asked about.</summary>
    public static ImmutableArray<(ItemEntry Item, ScopeReason Reason)> WhyNot(
        NurseFile? nurse, IEnumerable<ItemEntry> items, Patient patient, PatientCare care, PolicyBook policy, ImmutableArray<string> compact, LocalDate day)
    {
        if (nurse is null) return [];
        var scoped = new ScopedNurse(
            nurse.Name, nurse.Credential,
            [.. nurse.Skills.Select(s => new SignedSkill(s, nurse.SignOffs.FirstOrDefault(e => e.Skill == s)?.ValidThrough))],
            [.. nurse.Licences.Select(l => new PracticeLicence(l.State, l.ValidThrough, l.Compact))]);
        return
        [
            .. items.Where(i => i.DoneBy.Length == 0).SelectMany(item => ScopeGate
                .WhyNot(scoped, Question(item, patient, care, compact, day), policy)
                .Select(reason => (item, reason))),
        ];
    }

    /// <summary>Whether it is the first dose under its order.</summary>
    public static bool IsFirstDose(ItemEntry item, PatientCare care) =>
        item is { Item: CareItem.OrderedService, Order: { } id }
        && care.Orders.Any(o => o.Id == id && (o.FirstDose is not null || (!o.Skills.IsDefaultOrEmpty && o.Skills.Contains("FD"))))
        && !care.Events.Any(e => e.Order == id && e.Kind == LineCare.Ledger.LineEventKind.DoseGiven);

    private static ScopeQuestion Question(ItemEntry item, Patient patient, PatientCare care, ImmutableArray<string> compact, LocalDate day)
    {
        Line? line = care.Lines.FirstOrDefault(l => l.Id == item.Line);
        CareOrder? order = care.Orders.FirstOrDefault(o => o.Id == item.Order);
        return new ScopeQuestion(CareSkills.Of(item.Item, line, order, patient), Guarded(item, line, order, patient, care), StateOn(patient, care, day), day, compact);
    }

    /// <summary>The state the patient is in on that day: of the home, or of a stay elsewhere.</summary>
    private static string StateOn(Patient patient, PatientCare care, LocalDate day) =>
        care.Holds.FirstOrDefault(h => h.From <= day && day <= (h.Through ?? day) && h.Elsewhere is not null)?.Elsewhere?.State ?? patient.State;

    private static GuardedCare Guarded(ItemEntry item, Line? line, CareOrder? order, Patient patient, PatientCare care)
    {
        GuardedCare guarded = GuardedCare.None;
        if (line?.Kind == LineKind.Port) guarded |= GuardedCare.Port;
        if (IsFirstDose(item, care)) guarded |= GuardedCare.FirstDose;
        if (item.Item == CareItem.Recertification) guarded |= GuardedCare.Assessment;
        if (order?.Kind == OrderKind.Removal) guarded |= GuardedCare.Removal;
        if (order?.Kind == OrderKind.Teaching && care.Risks.HasFlag(RiskFactors.ParenteralNutrition)) guarded |= GuardedCare.NutritionTeaching;
        if (line is not null && care.Infusions.Any(i => i.Line == line.Id && i.NeverInterrupt)) guarded |= GuardedCare.NeverInterrupt;
        if (patient.NeedsSkills.Contains("PEDS")) guarded |= GuardedCare.Child;
        return guarded;
    }
}
