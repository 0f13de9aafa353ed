using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>What foreseen care asks of a roster, each table walked once: an order by its identifier, a line's lumens, the dressing it will wear next.</summary>
internal sealed class LinesNow
{
    private readonly ILookup<string, CareOrder> orders;
    private readonly ILookup<LineId, string> lumens;
    private readonly Dictionary<LineId, (LocalDate On, DressingKind Kind)> dressings = [];

    public LinesNow(AgencyRoster roster)
    {
        orders = roster.Orders.ToLookup(o => o.Id, StringComparer.Ordinal);
        lumens = roster.Lines.SelectMany(l => l.Lumens.Select(lumen => (l.Id, lumen.Label))).ToLookup(l => l.Id, l => l.Label);
        foreach (LineEvent entry in roster.Events)
        {
            if (entry is not { Line: { } line, Dressing: { } kind }) continue;
            LocalDate on = entry.Performed?.Date ?? LocalDate.MinIsoValue;
            if (!dressings.TryGetValue(line, out var last) || on > last.On) dressings[line] = (on, kind);
        }
    }

    public CareOrder? Order(string id) => orders[id].FirstOrDefault();

    public ImmutableArray<string> Lumens(LineId? line) => line is { } known ? [.. lumens[known]] : [];

    /// <summary>Gauze and tape stays gauze; anything else is followed by a film.</summary>
    public DressingKind NextDressing(LineId? line) =>
        line is { } known && dressings.TryGetValue(known, out var last) && last.Kind == DressingKind.Gauze ? DressingKind.Gauze : DressingKind.Film;
}
