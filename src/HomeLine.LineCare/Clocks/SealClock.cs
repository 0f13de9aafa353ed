using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>A report of a broken seal replaces the dressing's window by a deadline from the report, until a full change is recorded.</summary>
internal static class SealClock
{
    /// <summary>The window as it stands after the reports since the last full change: the most urgent deadline, and never later than the window was.</summary>
    public static DueWindow CutShort(Reckoning reckoning, LineStory story, DueWindow window)
    {
        var cut = window;
        foreach (var report in story.BrokenSeals)
        {
            var deadline = Deadline(reckoning, story, report, window);
            if (cut.Standing != WindowStanding.CutShort || deadline.LateFrom < cut.LateFrom) cut = deadline;
        }

        return cut;
    }

    private static DueWindow Deadline(Reckoning reckoning, LineStory story, LineEvent report, DueWindow window)
    {
        var reported = report.Performed is { } performed ? reckoning.EarliestOf(performed) : report.RecordedAt;
        var day = reckoning.DayOf(reported);
        var seal = SealClass.Of(report.Seal, reckoning.Care, story.Line, reckoning.Policy, day);
        var (lastId, targetId) = RulesOf(seal.Class);
        var last = After(reckoning, lastId, reported);
        if (seal.Class == 1) last = Instant.Min(last, reckoning.EndOf(day));
        if (window.Standing != WindowStanding.DateUnknown) last = Instant.Min(last, window.LateFrom);
        var target = Instant.Min(last, After(reckoning, targetId, reported));
        var lastDay = reckoning.LastDayBefore(last);
        return window with
        {
            Standing = WindowStanding.CutShort,
            Basis = ClockBasis.Hour,
            Opens = Instant.Min(reported, window.Opens),
            OpensOn = LocalDate.Min(day, window.OpensOn),
            Target = target,
            LateFrom = last,
            LastDay = lastDay,
            Owner = Owners.Of(reckoning, window.Item, window.Line, lastDay),
            SealClass = seal.Class,
            Facts = Why.Of(report, (rule: reckoning.Policy.InForce(lastId, reckoning.Today)!, seal, reported, window, reckoning.Days),
                static (by, f) => Tell(by!, f.rule, f.seal, f.reported, f.window, f.Days)),
        };
    }

    private static (string Last, string Target) RulesOf(int sealClass) => sealClass switch
    {
        1 => (RuleIds.SealTop, RuleIds.SealTopTarget),
        2 => (RuleIds.SealMiddle, RuleIds.SealMiddleTarget),
        _ => (RuleIds.SealLow, RuleIds.SealLowTarget),
    };

    private static Instant After(Reckoning reckoning, string ruleId, Instant reported)
    {
        var rule = reckoning.Policy.InForce(ruleId, reckoning.Today)!;
        return rule.Unit == "hours"
            ? reported + Duration.FromMinutes((double)(rule.Value * 60))
            : reckoning.EndOf(reckoning.DayOf(reported).PlusDays((int)rule.Value));
    }

    private static WindowReason Tell(LineEvent report, PolicyRule rule, SealClass seal, Instant reported, DueWindow window, CivilDays days)
    {
        var raised = seal.RaisedFor.Length > 0 ? $", raised from B{seal.Found} for {seal.RaisedFor}" : "";
        var amount = Says.Amount(rule.Value, rule.Unit);
        var within = rule.Unit == "hours" ? $"within {amount}" : amount;
        return new WindowReason(
            report.Id, days.DayOf(reported), rule.Id, amount, rule.Level, rule.Source,
            $"Seal reported broken {days.Told(reported)} (B{seal.Class}{raised}); a full change {within}, reinforcing does not count.",
            [$"The clock before the report: {window.Because.Sentence}"]);
    }
}
