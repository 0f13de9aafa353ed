using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;

namespace HomeLine.LineCare.Clocks;

/// <summary>The dressing over an exit site, with the adhesive securement and the outside length that go with each change.</summary>
internal static class DressingClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind == LineKind.Port)
        {
            AddOverNeedle(reckoning, story);
            return;
        }

        if (IsBareAndHealed(story)) return;
        var window = story.Covering == DressingKind.None && story.Dressing.IsDated
            ? Bare(reckoning, story)
            : SealClock.CutShort(reckoning, story, Draft(reckoning, story).Window(reckoning));
        if (IsStopgap(story)) window = window with { Next = Repeating.From(reckoning, RuleIds.Max(RuleIds.Film), RuleIds.Min(RuleIds.Film), null) };
        reckoning.Windows.Add(window);
        AddCompanions(reckoning, story, window);
    }

    /// <summary>A healed tunneled exit site without a dressing has no dressing clock: site check, connector and flush run on.</summary>
    public static bool IsBareAndHealed(LineStory story) =>
        story.Line.Kind == LineKind.Tunneled && story.Line.ExitSiteHealed && story.Covering is null or DressingKind.None
        && story.BrokenSeals.Count == 0 && story.Dressing.Missing != MissingDate.HospitalStay;

    /// <summary>
    /// The dressing put on at insertion, and gauze laid beneath a film for a while, are followed by a film as a rule (common practice, no source):
    /// looking ahead counts on a film. What is really put on sets the true clock.
    /// </summary>
    private static bool IsStopgap(LineStory story) =>
        story.Covering == DressingKind.GauzeUnderFilm || story.Dressing is { IsDated: true, FromInsertion: true };

    private static WindowDraft Draft(Reckoning reckoning, LineStory story)
    {
        var covering = story.Covering ?? DressingKind.Film;
        var first = story.Dressing is { IsDated: true, FromInsertion: true };
        var what = first ? $"First dressing ({Says.Material(covering).ToLowerInvariant()}) put on"
            : story.Dressing.IsDated ? $"{Says.Material(covering)} changed" : "Dressing";
        var (ceiling, floor) = first
            ? (IsGauze(covering) ? RuleIds.FirstGauze : RuleIds.FirstFilm, RuleIds.FirstOpens)
            : (RuleIds.Max(Pair(covering)), RuleIds.Min(Pair(covering)));
        return new WindowDraft(CareItem.Dressing, story.Line.Id, null, story.Dressing, ceiling, floor, what)
        {
            OpensDaysBeforeLast = reckoning.Care.Risks.HasFlag(RiskFactors.AdhesiveInjury)
                ? (int)reckoning.Value(RuleIds.AdhesiveInjuryEarly)
                : null,
        };
    }

    private static string Pair(DressingKind covering) => covering switch
    {
        DressingKind.Film or DressingKind.None => RuleIds.Film,
        DressingKind.Gauze => RuleIds.Gauze,
        DressingKind.GauzeUnderFilm => RuleIds.GauzeUnderFilm,
        DressingKind.AntisepticFilm => RuleIds.AntisepticFilm,
        _ => throw new ArgumentOutOfRangeException(nameof(covering), covering, "No such dressing."),
    };

    private static bool IsGauze(DressingKind covering) => covering is DressingKind.Gauze or DressingKind.GauzeUnderFilm;

    /// <summary>Gauze over an accessed port runs on its own, shorter clock beside the needle's.</summary>
    private static void AddOverNeedle(Reckoning reckoning, LineStory story)
    {
        if (!story.Accessed || story.Covering is not { } covering || !IsGauze(covering)) return;
        if (reckoning.Value(RuleIds.WingsGauzeCountsAsFilm) == 1) return;
        reckoning.Windows.Add(new WindowDraft(
            CareItem.Dressing, story.Line.Id, null, story.Dressing,
            RuleIds.Max(RuleIds.GauzeOnPort), RuleIds.Min(RuleIds.GauzeOnPort), "Gauze over the port needle put on").Window(reckoning));
    }

    /// <summary>A site that is not healed and has nothing over it is due at once, and somebody licensed is asked.</summary>
    private static DueWindow Bare(Reckoning reckoning, LineStory story)
    {
        reckoning.Ask(story.Line.Id, DecisionCodes.NoDressing, story.Dressing.By!,
            "The site is not documented as healed and has no dressing: an order is needed, or a dressing.");
        var rule = reckoning.Policy.InForce(RuleIds.SealMiddle, reckoning.Today)!;
        var day = story.Dressing.Moment.Date;
        return Frame.Days(reckoning, CareItem.Dressing, story.Line.Id, day, day) with
        {
            Standing = WindowStanding.CutShort,
            Owner = Owners.Of(reckoning, CareItem.Dressing, story.Line.Id, day),
            Because = new WindowReason(
                story.Dressing.By!.Id, day, rule.Id, Says.Amount(rule.Value, rule.Unit), rule.Level, rule.Source,
                $"No dressing since {Says.Short(day)} on a site not documented as healed; due now.", []),
        };
    }

    private static void AddCompanions(Reckoning reckoning, LineStory story, DueWindow dressing)
    {
        if (story.Line.Securement == SecurementKind.Adhesive)
            reckoning.Windows.Add(With(reckoning, dressing, CareItem.Securement, RuleIds.SecurementWithDressing, "Adhesive securement goes with the dressing"));
        reckoning.Windows.Add(With(reckoning, dressing, CareItem.OutsideLength, RuleIds.LengthWithDressing, "Outside length is measured with the dressing"));
    }

    private static DueWindow With(Reckoning reckoning, DueWindow dressing, CareItem item, string ruleId, string what)
    {
        var rule = reckoning.Policy.InForce(ruleId, reckoning.Today)!;
        return dressing with
        {
            Item = item,
            SealClass = 0,
            Because = dressing.Because with
            {
                RuleId = rule.Id,
                RuleValue = "with each dressing",
                Level = rule.Level,
                Source = rule.Source,
                Sentence = $"{what}: {dressing.Because.Sentence}",
            },
        };
    }
}
