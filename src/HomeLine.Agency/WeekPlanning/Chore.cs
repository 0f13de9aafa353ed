using System.Collections.Immutable;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// Windows that are always answered in one go: a dressing with its securement and measurement, the connectors that share a window,
/// an order's draw. The first window leads; the others ride.
/// </summary>
public sealed record Chore(CareItem Item, Line? Line, CareOrder? Order, ImmutableArray<DueWindow> Windows)
{
    public DueWindow Lead => Windows[0];

    /// <summary>Names the need without its day.</summary>
    public string Key => string.Join(
        '|',
        Lead.Patient.Value,
        Item.ToString(),
        Line?.Id.Value ?? "",
        string.Concat(Windows.Where(w => w.Item == Item).Select(w => w.Lumen).Distinct()),
        Order?.Id ?? "");

    /// <summary>Cuts a patient's windows into chores for the agency's nurses; what others own is left out.</summary>
    public static IEnumerable<Chore> Of(PatientCare care, CareAnswer answer)
    {
        var lines = care.Lines.ToDictionary(l => l.Id);
        var orders = care.Orders.ToDictionary(o => o.Id);
        return answer.Windows
            .Where(w => w.Owner == PerformerKind.Nurse && LeadItem(w.Item) is not null)
            .GroupBy(Together)
            .Select(group => new Chore(
                LeadItem(group.First().Item)!.Value,
                group.First().Line is { } line ? lines[line] : null,
                group.First().Order is { } order ? orders[order] : null,
                [.. group.OrderBy(w => w.Item != LeadItem(w.Item)).ThenBy(w => w.LateFrom).ThenBy(w => w.Lumen, StringComparer.Ordinal)]))
            .Where(chore => chore.Lead.Item == chore.Item);
    }

    /// <summary>The item whose visit this one is part of; empty for what is no visit of its own (a phone check, a lapsing validation).</summary>
    private static CareItem? LeadItem(CareItem item) => item switch
    {
        CareItem.Securement or CareItem.OutsideLength => CareItem.Dressing,
        CareItem.CaregiverValidation or CareItem.RemovalSiteCheck => null,
        _ => item,
    };

    private static (CareItem? Item, LineId? Line, string? Order, long Opens, long Late) Together(DueWindow window) => window.Item switch
    {
        CareItem.Dressing or CareItem.Securement or CareItem.OutsideLength => (CareItem.Dressing, window.Line, null, 0, 0),
        _ => (window.Item, window.Line, window.Order, window.Opens.ToUnixTimeSeconds(), window.LateFrom.ToUnixTimeSeconds()),
    };
}
