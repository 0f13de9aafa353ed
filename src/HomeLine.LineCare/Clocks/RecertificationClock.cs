using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>The recertification assessment in the last days of every certification period; the start of care is day 1 (42 CFR 484.55(d)).</summary>
internal static class RecertificationClock
{
    public static void Add(Reckoning reckoning, LineEvent? last)
    {
        var rule = reckoning.Numbers.Recertification;
        var length = (int)rule.Value;
        var first = reckoning.Numbers.RecertificationFirst;
        var start = reckoning.Care.CareStartedOn;
        var period = Period(reckoning, last, start, length, first);
        var opens = start.PlusDays((period * length) + first - 1);
        var end = start.PlusDays(((period + 1) * length) - 1);
        var why = Why.Of(last, (rule, start, from: (period * length) + first, to: (period + 1) * length), static (by, f) => new WindowReason(
            by?.Id, by?.Performed?.Date ?? f.start, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
            $"Care started {Says.Short(f.start)} (day 1); assessment in days {f.from} to {f.to} ({Says.SetBy(f.rule)}).", []));
        reckoning.Windows.Add(Frame.Days(
            reckoning, why, CareItem.Recertification, null, opens, end, new Repeat(first, (2 * length) - first, ClockBasis.Date)));
    }

    /// <summary>The first period not yet covered, but never further back than the one before today's: older ones are history.</summary>
    private static int Period(Reckoning reckoning, LineEvent? last, LocalDate start, int length, int first)
    {
        var today = Index(NodaTime.Period.DaysBetween(start, reckoning.Today), length);
        var uncovered = 0;
        if (last?.Performed is { } done)
        {
            var days = NodaTime.Period.DaysBetween(start, done.Date);
            var period = Index(days, length);
            uncovered = days - (period * length) >= first - 1 ? period + 1 : period;
        }

        return Math.Max(Math.Max(uncovered, today - 1), 0);
    }

    private static int Index(int days, int length) => days < 0 ? 0 : days / length;
}
