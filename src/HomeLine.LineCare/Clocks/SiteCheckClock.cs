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
                CareItem.SiteCheck, story.Line.Id, null, story.SiteCheck, RuleIds.Max(RuleIds.SiteCheck), RuleIds.Min(RuleIds.SiteCheck),
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
        return Frame.Days(reckoning, CareItem.NurseCheck, line.Id, day, day.PlusDays((int)rule.Value)) with
        {
            Because = new WindowReason(
                care.Id, day, rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source,
                $"{what}; a nurse looks within {Says.Amount(rule.Value, rule.Unit)} ({Says.SetBy(rule)}).", []),
        };
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
        reckoning.Windows.Add(Frame.Days(
            reckoning, CareItem.RemovalSiteCheck, story.Line.Id,
            day.PlusDays((int)reckoning.Value(RuleIds.Min(RuleIds.RemovalCheck))), day.PlusDays((int)rule.Value)) with
        {
            Because = new WindowReason(
                removal.Id, day, rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source,
                $"Line removed {Says.Short(day)}; the site is looked at within {Says.Amount(rule.Value, rule.Unit)} ({Says.SetBy(rule)}).", []),
        });
    }
}
