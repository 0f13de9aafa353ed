using System.Globalization;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>Turns an anchor and a pair of rules into a window with its reason.</summary>
/// <param name="Item">What is due.</param>
/// <param name="Line">On which line.</param>
/// <param name="Lumen">On which lumen, for items of a lumen.</param>
/// <param name="Anchor">What the clock runs from.</param>
/// <param name="Rule">The rules it runs on.</param>
/// <param name="What">How the reason begins; <c>{0}</c> stands for <see cref="About"/>.</param>
internal readonly record struct WindowDraft(CareItem Item, LineId? Line, string? Lumen, Anchor Anchor, ClockRule Rule, string What)
{
    /// <summary>A name in the reason's first words: a lumen's letter, a drug.</summary>
    public string? About { get; init; }

    /// <summary>Who does it, where the item's own validation does not decide.</summary>
    public PerformerKind? Owner { get; init; }

    /// <summary>No pull-in at all: opens this many days before the last one.</summary>
    public int? OpensDaysBeforeLast { get; init; }

    public DueWindow Window(Reckoning reckoning) => Anchor.IsDated ? Running(reckoning) : Unknown(reckoning);

    private DueWindow Running(Reckoning reckoning)
    {
        var moment = Anchor.Moment;
        var limit = reckoning.Limits.For(new LimitQuestion(Rule, Item, Line, moment));
        var lastDay = reckoning.LastDayBefore(limit.LateFrom);
        var opens = Opens(reckoning, moment, limit.LateFrom, lastDay);
        return new DueWindow(Why.Of(Anchor.By, (What, About, limit, reckoning.Days), static (by, f) => Tell(by!, f.What, f.About, f.limit, f.Days)))
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
            Owner = Owner ?? Owners.Of(reckoning, Item, Line, lastDay),
            Next = Repeating.From(reckoning, Rule, limit),
        };
    }

    private Instant Opens(Reckoning reckoning, CareMoment moment, Instant lateFrom, LocalDate lastDay)
    {
        var opens = OpensDaysBeforeLast is { } before ? reckoning.StartOf(lastDay, -before)
            : Rule.Floor is null ? reckoning.EarliestOf(moment)
            : reckoning.Limits.Opens(Rule, moment);
        return opens < lateFrom ? opens : Instant.Max(reckoning.EarliestOf(moment), reckoning.StartOf(lastDay));
    }

    private static WindowReason Tell(LineEvent by, string what, string? about, in Limit limit, CivilDays days)
    {
        var moment = by.Performed!.Value;
        var how = limit.Basis == ClockBasis.Hour && moment.At is null ? " (time not recorded)" : "";
        return new WindowReason(
            by.Id, moment.Date, limit.RuleId, limit.ValueText, limit.Level, limit.Source,
            $"{Begin(what, about)} {days.Told(moment)}{how}{Says.By(by)}{Says.Trust(by.Certainty)}; "
                + $"at least every {limit.ValueText} ({limit.SetBy}){WallClock(moment, limit, days)}.",
            limit.Overrode);
    }

    /// <summary>An elapsed time across a change of the clocks is told with the hour on the wall at its end.</summary>
    private static string WallClock(CareMoment moment, in Limit limit, CivilDays days)
    {
        if (limit.Basis != ClockBasis.Hour) return "";
        var from = moment.At ?? days.StartOf(moment.Date);
        return days.Zone.GetUtcOffset(from) == days.Zone.GetUtcOffset(limit.LateFrom)
            ? ""
            : $"; the clocks change in between, it ends {days.Told(limit.LateFrom)} by the wall clock";
    }

    private DueWindow Unknown(Reckoning reckoning)
    {
        var rule = reckoning.Policy.Clock(Rule).CeilingOn(reckoning.Today)
            ?? throw new KeyNotFoundException($"No policy value '{Rule.Ceiling}' is in force.");
        var why = Why.Of(Anchor.By, (What, About, Anchor.Missing, rule), static (by, f) => new WindowReason(
            by?.Id, null, f.rule.Rule.Id, f.rule.Amount, f.rule.Level, f.rule.Rule.Source,
            $"{Begin(f.What, f.About)}: date unknown, {Says.Missing(f.Missing)}. Due at the first contact.", []));
        return Frame.FirstContact(
            reckoning, why, Item, Line, Lumen, Owner ?? Owners.Of(reckoning, Item, Line, reckoning.Today), Repeating.From(reckoning, Rule));
    }

    private static string Begin(string what, string? about) => about is null ? what : string.Format(CultureInfo.InvariantCulture, what, about);
}
