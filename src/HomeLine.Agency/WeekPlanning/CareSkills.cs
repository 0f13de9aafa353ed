using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>Which skill words an item asks of the nurse: by the line it is done on, by its kind, by the patient, by the order.</summary>
public static class CareSkills
{
    public static ImmutableArray<string> Of(CareItem item, Line? line, CareOrder? order, Patient patient)
    {
        var skills = new SortedSet<string>(patient.NeedsSkills, StringComparer.Ordinal);
        if (line is not null && item is not (CareItem.Labs or CareItem.Recertification)) skills.Add(OfLine(line.Kind));
        if (item == CareItem.Labs) skills.Add("LAB");
        if (item == CareItem.Recertification) skills.Add("REC");
        if (order is not null) skills.UnionWith(order.Skills);
        return [.. skills];
    }

    private static string OfLine(LineKind kind) => kind switch
    {
        LineKind.Picc or LineKind.Midline => "PICC",
        LineKind.Tunneled => "TUN",
        LineKind.Port => "PORT",
        LineKind.DialysisCatheter => "DIALYSIS",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind of line"),
    };
}
