using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Turns an anchor and a pair of rules into a window with its reason.</summary>
internal sealed record WindowDraft(CareItem Item, LineId? Line, string? Lumen, Anchor Anchor, string Ceiling, string? Floor, string What)
{
    /// <summary>The item whose validation decides who does it; the item itself unless it goes with another.</summary>
    public CareItem? OwnedAs { get; init; }

    public PerformerKind? Owner { get; init; }

    /// <summary>The item whose interval orders apply; the item itself unless it goes with another.</summary>
    public CareItem? OrderedAs { get; init; }

    /// <summary>No pull-in at all: opens this many days before the last one.</summary>
    public int? OpensDaysBeforeLast { get; init; }

    public DueWindow Window(Reckoning reckoning) => Anchor.IsDated ? Running(reckoning) : Unknown(reckoning);

    private DueWindow Running(Reckoning reckoning)
    {
        var moment = Anchor.Moment;
        var limit = reckoning.Limits.For(new LimitQuestion(Ceiling, OrderedAs ?? Item, Line, moment));
        var lastDay = reckoning.LastDayBefore(limit.LateFrom);
        var opens = Opens(reckoning, moment, limit, lastDay);
        var owner = Owner ?? Owners.Of(reckoning, OwnedAs ?? Item, Line, lastDay);
        return new DueWindow
        {
            Item = Item,
            Patient = reckoning.Care.Patient,
            Line = Line,
            Lumen = Lumen,
            Standing = WindowStanding.Running,
            Basis = limit.Basis,
            Opens = opens,
            Target = limit.Basis == ClockBasis.Date ? Instant.Max(opens, reckoning.StartOf(lastDay)) : limit.LateFrom,
            LateFrom = limit.LateFrom,
            OpensOn = reckoning.DayOf(opens),
            LastDay = lastDay,
            Owner = owner,
            Next = Repeating.From(reckoning, Ceiling, Floor, limit),
            Because = Reason(reckoning, moment, limit),
        };
    }

    private Instant Opens(Reckoning reckoning, CareMoment moment, Limit limit, LocalDate lastDay)
    {
        var opens = OpensDaysBeforeLast is { } before ? reckoning.StartOf(lastDay.PlusDays(-before))
            : Floor is null ? reckoning.EarliestOf(moment)
            : reckoning.Limits.Opens(Floor, moment);
        return opens < limit.LateFrom ? opens : Instant.Max(reckoning.EarliestOf(moment), reckoning.StartOf(lastDay));
    }

    private WindowReason Reason(Reckoning reckoning, CareMoment moment, Limit limit)
    {
        var by = Anchor.By!;
        var how = limit.Basis == ClockBasis.Hour && moment.At is null ? " (time not recorded)" : "";
        return new WindowReason(
            by.Id, moment.Date, limit.RuleId, limit.ValueText, limit.Level, limit.Source,
            $"{What} {Says.When(moment, reckoning.Care.Zone)}{how}{Says.By(by)}{Says.Trust(by.Certainty)}; "
                + $"at least every {limit.ValueText} ({limit.SetBy}){WallClock(reckoning, moment, limit)}.",
            limit.Overrode is null ? [] : [.. limit.Overrode]);
    }

    /// <summary>An elapsed time across a change of the clocks is told with the hour on the wall at its end.</summary>
    private static string WallClock(Reckoning reckoning, CareMoment moment, Limit limit)
    {
        if (limit.Basis != ClockBasis.Hour) return "";
        var zone = reckoning.Care.Zone;
        return zone.GetUtcOffset(reckoning.EarliestOf(moment)) == zone.GetUtcOffset(limit.LateFrom)
            ? ""
            : $"; the clocks change in between, it ends {Says.Moment(limit.LateFrom, zone)} by the wall clock";
    }

    private DueWindow Unknown(Reckoning reckoning)
    {
        var rule = reckoning.Policy.InForce(Ceiling, reckoning.Today)
            ?? throw new KeyNotFoundException($"No policy value '{Ceiling}' is in force.");
        var why = Says.Missing(Anchor.Missing);
        return Frame.FirstContact(reckoning, Item, Line, Lumen) with
        {
            Owner = Owner ?? Owners.Of(reckoning, OwnedAs ?? Item, Line, reckoning.Today),
            Next = Repeating.From(reckoning, Ceiling, Floor, null),
            Because = new WindowReason(
                Anchor.By?.Id, null, rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source,
                $"{What}: date unknown, {why}. Due at the first contact.", []),
        };
    }
}

/// <summary>Windows that do not come from a pair of rules.</summary>
internal static class Frame
{
    private static readonly WindowReason NoReason = new(null, null, "", "", PolicyLevel.Default, "", "", []);

    /// <summary>Due at the first contact: open since the morning, never late, last day today because it cannot be called on time tomorrow.</summary>
    public static DueWindow FirstContact(Reckoning reckoning, CareItem item, LineId? line, string? lumen) => new()
    {
        Item = item,
        Patient = reckoning.Care.Patient,
        Line = line,
        Lumen = lumen,
        Standing = WindowStanding.DateUnknown,
        Basis = ClockBasis.Date,
        Opens = reckoning.StartOf(reckoning.Today),
        Target = reckoning.StartOf(reckoning.Today),
        LateFrom = reckoning.EndOf(reckoning.Today),
        OpensOn = reckoning.Today,
        LastDay = reckoning.Today,
        Owner = PerformerKind.Nurse,
        Because = NoReason,
    };

    /// <summary>From a first to a last civil day, both included.</summary>
    public static DueWindow Days(Reckoning reckoning, CareItem item, LineId? line, LocalDate opens, LocalDate last) => new()
    {
        Item = item,
        Patient = reckoning.Care.Patient,
        Line = line,
        Standing = WindowStanding.Running,
        Basis = ClockBasis.Date,
        Opens = reckoning.StartOf(opens),
        Target = reckoning.StartOf(last),
        LateFrom = reckoning.EndOf(last),
        OpensOn = opens,
        LastDay = last,
        Owner = PerformerKind.Nurse,
        Because = NoReason,
    };
}
