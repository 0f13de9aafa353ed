using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Laboratory draws by order: every so many days from the last draw, or on the order's weekdays or dates.</summary>
internal static class LabsClock
{
    public static void Add(Reckoning reckoning, CareOrder order, LocalDate? lastDraw, LineEvent? draw)
    {
        if (order.Kind == OrderKind.DrugLevel && order.DoseTimes.IsDefaultOrEmpty)
            reckoning.Ask(order.Line, DecisionCodes.LevelWithoutDoseTimes, order.Id, order.StartsOn,
                $"{What(order)}: the dose times are not known, so nobody can say when it is drawn. Ask before it is planned.");
        if (order.EveryDays is { } every && order.Weekdays.IsEmpty && order.Dates.IsEmpty)
            AddRepeating(reckoning, order, every, lastDraw, draw);
        else
            foreach (var day in Occurrences.Open(order, lastDraw, reckoning.Today, reckoning.Horizon))
                reckoning.Windows.Add(OrderedWindow.On(reckoning, CareItem.Labs, order, day, What(order)));
    }

    private static void AddRepeating(Reckoning reckoning, CareOrder order, int every, LocalDate? lastDraw, LineEvent? draw)
    {
        if (every is < 1 or > 365)
        {
            reckoning.Ask(order.Line, DecisionCodes.OrderIntervalOutOfRange, order.Id, order.StartsOn,
                $"Order {order.Id} asks for a draw every {every} days; an interval is 1 to 365 days.");
            return;
        }

        var early = Math.Min(reckoning.Numbers.LabsEarly, every - 1);
        var next = new Repeat(every - early, every, ClockBasis.Date);
        var last = (lastDraw ?? order.StartsOn).PlusDays(every);
        if (lastDraw is null && last < reckoning.Today)
        {
            reckoning.Windows.Add(FirstDraw(reckoning, order, every, next));
            return;
        }

        if (order.EndsOn is { } ends && last > ends && last.PlusDays(-early) > ends) return;
        if (order.EndsOn is { } end && last > end) last = end;
        var why = Why.Of(draw, (order, every, lastDraw, reckoning.Days), static (by, f) =>
        {
            var since = f.lastDraw is { } drawn ? $"Last drawn {f.Days.Short(drawn)}" : $"Ordered from {f.Days.Short(f.order.StartsOn)}, no draw yet";
            return OrderedWindow.Reason(
                f.order, by, f.lastDraw, $"every {f.every} days", $"{What(f.order)}: {since}; every {f.every} days by order {f.order.Id}.");
        });
        reckoning.Windows.Add(Frame.Days(reckoning, why, CareItem.Labs, order.Line, last.PlusDays(-early), last, next, order.Id));
    }

    private static DueWindow FirstDraw(Reckoning reckoning, CareOrder order, int every, Repeat next) =>
        Frame.FirstContact(
            reckoning,
            Why.Of(null, (order, every), static (_, f) => OrderedWindow.Reason(f.order, null, null, $"every {f.every} days",
                $"{What(f.order)}: no draw is recorded under order {f.order.Id}. Due at the first contact.")),
            CareItem.Labs, order.Line, null, next: next, order: order.Id);

    private static string What(CareOrder order) => order.Text.Length > 0 ? order.Text
        : order.Kind == OrderKind.DrugLevel ? "Drug level" : "Laboratory draw";
}
