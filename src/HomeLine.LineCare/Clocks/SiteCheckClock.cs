using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>The nurse's look at a line that no dressing change brings one to, at care by somebody not validated, and at the site after removal.</summary>
internal static class SiteCheckClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind != LineKind.Port && DressingClock.IsBareAndHealed(story))
            reckoning.Windows.Add(new WindowDraft(
                CareItem.SiteCheck, story.Line.Id, null, story.SiteCheck, ClockRule.SiteCheck,
                story.SiteCheck.IsDated ? "Site without a dressing last seen by a nurse" : "Site without a dressing")
            { Owner = PerformerKind.Nurse }.Window(reckoning));
        if (story.Unverified is { } care) reckoning.Windows.Add(NurseCheck(reckoning, story.Line, care));
    }

    private static DueWindow NurseCheck(Reckoning reckoning, Line line, LineEvent care)
    {
        var rule = reckoning.Policy.InForce(RuleIds.NurseCheck, reckoning.Today)!;
        var day = care.Performed?.Date ?? reckoning.DayOf(care.RecordedAt);
        var what = $"Care{Says.By(care)} {Says.Short(day)}, not validated for it";
        reckoning.Ask(line.Id, DecisionCodes.UnverifiedCare, care, $"{what}: kept as unverified, a nurse looks within {Says.Amount(rule.Value, rule.Unit)}.");
        var why = Why.Of(care, (what, rule, day), static (by, f) => new WindowReason(
            by!.Id, f.day, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
            $"{f.what}; a nurse looks within {Says.Amount(f.rule.Value, f.rule.Unit)} ({Says.SetBy(f.rule)}).", []));
        return Frame.Days(reckoning, why, CareItem.NurseCheck, line.Id, day, day.PlusDays((int)rule.Value));
    }

    /// <summary>After removal only the site is looked at; a catheter shorter than what went in is asked about at once.</summary>
    public static void AddAfterRemoval(Reckoning reckoning, LineStory story)
    {
        if (story.Ended is not { Kind: LineEventKind.Removed } removal) return;
        if (removal.OutsideLengthCm is { } taken && story.Line.InsertedLengthCm is { } inserted && taken < inserted)
            reckoning.Ask(story.Line.Id, DecisionCodes.RemovedShorter, removal,
                $"The removed catheter measures {Says.Amount(taken, "cm")}, shorter than the {Says.Amount(inserted, "cm")} that went in. A piece may remain: this is an emergency.");
        if (story.CheckedAfterRemoval is not null) return;
        var rule = reckoning.Policy.InForce(RuleIds.Max(RuleIds.RemovalCheck), reckoning.Today)!;
        var day = removal.Performed?.Date ?? reckoning.DayOf(removal.RecordedAt);
        var why = Why.Of(removal, (rule, day), static (by, f) => new WindowReason(
            by!.Id, f.day, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
            $"Line removed {Says.Short(f.day)}; the site is looked at within {Says.Amount(f.rule.Value, f.rule.Unit)} ({Says.SetBy(f.rule)}).", []));
        reckoning.Windows.Add(Frame.Days(
            reckoning, why, CareItem.RemovalSiteCheck, story.Line.Id,
            day.PlusDays((int)reckoning.Value(RuleIds.Min(RuleIds.RemovalCheck))), day.PlusDays((int)rule.Value)));
    }
}
