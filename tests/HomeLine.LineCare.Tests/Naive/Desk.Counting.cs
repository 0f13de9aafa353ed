using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

internal sealed partial class Desk
{
    private sealed record End(Instant Late, string Unit, string Rule);

    private Instant Soonest(CareMoment when) => when.At ?? _wall.Morning(when.Date);

    private Instant Latest(CareMoment when) => when.At ?? _wall.Midnight(when.Date);

    /// <summary>Some agencies call the day of change day 1.</summary>
    private int DayOne => (int)_rules.Value("calendar.dayofchange.isdayone", _today) == 1 ? 1 : 0;

    private Instant EndOf(decimal amount, string unit, CareMoment when) => unit == "hours"
        ? WallCalendar.HoursOn(Soonest(when), amount)
        : _wall.Midnight(WallCalendar.DaysOn(when.Date, (int)amount - DayOne));

    /// <summary>The policy on the day of care sets the end. Then each morning that is not yet late the book is looked up again: a shorter
    /// rule bites that same day and no earlier; a longer one waits for the next time.</summary>
    private End ByPolicy(string ceiling, CareMoment when)
    {
        var rule = _rules.OnOrFirst(ceiling, when.Date);
        var end = new End(EndOf(rule.Value, rule.Unit, when), rule.Unit, ceiling);
        var yesterday = _rules.On(ceiling, when.Date);
        for (var day = when.Date.PlusDays(1); _wall.Morning(day) < end.Late; day = day.PlusDays(1))
        {
            var today = _rules.On(ceiling, day);
            if (today is null || today == yesterday) continue;
            yesterday = today;
            var shorter = EndOf(today.Value, today.Unit, when);
            if (shorter < _wall.Midnight(day)) shorter = _wall.Midnight(day);
            if (shorter < end.Late) end = new End(shorter, today.Unit, ceiling);
        }

        return end;
    }

    /// <summary>An exception that still runs takes the policy's place. A longer one lends nothing after its own last day.</summary>
    private End WithException(End policy, string ceiling, CareMoment when)
    {
        var running = _file.Exceptions.Where(x => x.RuleId == ceiling && x.Through >= _today).ToList();
        if (running.Count == 0) return policy;
        var strictest = running.MinBy(x => x.Value)!;
        var late = EndOf(strictest.Value, policy.Unit, when);
        var over = _wall.Midnight(strictest.Through);
        if (late > policy.Late && late > over) late = over > policy.Late ? over : policy.Late;
        return policy with { Late = late };
    }

    /// <summary>A confirmed longer order takes the place of policy; whatever order is stricter than what then stands wins; an unconfirmed
    /// longer one only asks.</summary>
    private End WithOrders(End policy, CareItem item, LineId line, CareMoment when)
    {
        var orders = new List<(CareOrder Order, Instant Late)>();
        foreach (var order in _file.Orders)
        {
            if (order.Kind != OrderKind.Interval || order.Item != item || !order.IsActiveOn(_today)) continue;
            if ((order.Line is { } only && only != line) || order.EveryDays is not { } days) continue;
            if (days is < 1 or > 365) _questions.Add($"{line} {DecisionCodes.OrderIntervalOutOfRange}");
            else orders.Add((order, policy.Unit == "hours" ? WallCalendar.HoursOn(Soonest(when), days * 24) : EndOf(days, "days", when)));
        }

        var stands = policy;
        foreach (var (order, late) in orders)
        {
            if (late <= policy.Late) continue;
            if (!order.Confirmed)
            {
                _questions.Add($"{line} {DecisionCodes.LooserOrder}");
                continue;
            }

            var lends = order.EndsOn is { } last && _wall.Midnight(last) < late ? _wall.Midnight(last) : late;
            if (lends > policy.Late && (stands == policy || lends < stands.Late)) stands = stands with { Late = lends, Rule = order.Id };
        }

        foreach (var (order, late) in orders)
        {
            var bites = late;
            if (order.StartsOn > when.Date && bites < _wall.Midnight(order.StartsOn)) bites = _wall.Midnight(order.StartsOn);
            if (bites < stands.Late) stands = stands with { Late = bites, Rule = order.Id };
        }

        return stands;
    }

    private Instant OpensBy(string floor, CareMoment when)
    {
        var rule = _rules.On(floor, _today)!;
        var running = _file.Exceptions.Where(x => x.RuleId == floor && x.Through >= _today).ToList();
        var amount = running.Count > 0 ? running.Max(x => x.Value) : rule.Value;
        return rule.Unit == "hours"
            ? WallCalendar.HoursOn(Latest(when), amount)
            : _wall.Morning(WallCalendar.DaysOn(when.Date, (int)amount - DayOne));
    }

    /// <summary>From a box of the chart and a pair of rules to a window; without a date somebody can stand for it is due at the first contact.</summary>
    private Finding Window(CareItem item, WallChart chart, string? lumen, Box box, string ceiling, string? floor, PerformerKind? owner = null, int? opensBefore = null)
    {
        if (!box.IsKnown)
            return FirstContact(item, chart.Line.Id.Value, lumen, owner ?? OwnerOf(item, chart.Line.Id, _today), box.By?.Id.Value, ceiling);
        var when = box.When;
        var end = WithOrders(WithException(ByPolicy(ceiling, when), ceiling, when), item, chart.Line.Id, when);
        var last = _wall.DayAt(end.Late - Duration.Epsilon);
        var opens = opensBefore is { } days ? _wall.Morning(WallCalendar.DaysOn(last, -days))
            : floor is null ? Soonest(when)
            : OpensBy(floor, when);
        if (opens >= end.Late) opens = Instant.Max(Soonest(when), _wall.Morning(last));
        var target = end.Unit == "hours" ? end.Late : Instant.Max(opens, _wall.Morning(last));
        return new Finding(item, chart.Line.Id.Value, lumen, null, WindowStanding.Running, opens, target, end.Late, _wall.DayAt(opens), last,
            owner ?? OwnerOf(item, chart.Line.Id, last), 0, box.By!.Id.Value, end.Rule);
    }

    private Finding FirstContact(CareItem item, string? line, string? lumen, PerformerKind owner, string? anchor, string rule) => new(
        item, line, lumen, null, WindowStanding.DateUnknown, _wall.Morning(_today), _wall.Morning(_today), _wall.Midnight(_today), _today, _today,
        owner, 0, anchor, rule);

    private Finding Days(CareItem item, string? line, LocalDate first, LocalDate last, PerformerKind owner, string? anchor, string rule) => new(
        item, line, null, null, WindowStanding.Running, _wall.Morning(first), _wall.Morning(last), _wall.Midnight(last), first, last,
        owner, 0, anchor, rule);
}
