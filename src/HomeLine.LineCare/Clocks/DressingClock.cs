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
        if (IsStopgap(story)) window = window with { Next = Repeating.From(reckoning, ClockRule.Film) };
        reckoning.Windows.Add(window);
        AddCompanions(reckoning, story, window);
    }

    /// <summary>A healed tunneled exit site without a dressing has no dressing clock: site check, connector and flush run on.</summary>
    public static bool IsBareAndHealed(LineStory story) =>
        story.Line.Kind == LineKind.Tunneled && story.Line.ExitSiteHealed && story.Covering is null or DressingKind.None
        && story.BrokenSeals.Length == 0 && story.Dressing.Missing != MissingDate.HospitalStay;

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
        var what = first ? Says.FirstDressing(covering) : story.Dressing.IsDated ? Says.Changed(covering) : "Dressing";
        var rule = !first ? RuleFor(covering) : IsGauze(covering) ? ClockRule.FirstGauze : ClockRule.FirstFilm;
        return new WindowDraft(CareItem.Dressing, story.Line.Id, null, story.Dressing, rule, what)
        {
            OpensDaysBeforeLast = (reckoning.Care.Risks & RiskFactors.AdhesiveInjury) != 0
                ? (int)reckoning.Value(RuleIds.AdhesiveInjuryEarly)
                : null,
        };
    }

    private static ClockRule RuleFor(DressingKind covering) => covering switch
    {
        DressingKind.Film or DressingKind.None => ClockRule.Film,
        DressingKind.Gauze => ClockRule.Gauze,
        DressingKind.GauzeUnderFilm => ClockRule.GauzeUnderFilm,
        DressingKind.AntisepticFilm => ClockRule.AntisepticFilm,
        _ => throw new ArgumentOutOfRangeException(nameof(covering), covering, "No such dressing."),
    };

    private static bool IsGauze(DressingKind covering) => covering is DressingKind.Gauze or DressingKind.GauzeUnderFilm;

    /// <summary>Gauze over an accessed port runs on its own, shorter clock beside the needle's.</summary>
    private static void AddOverNeedle(Reckoning reckoning, LineStory story)
    {
        if (!story.Accessed || story.Covering is not { } covering || !IsGauze(covering)) return;
        if (reckoning.Value(RuleIds.WingsGauzeCountsAsFilm) == 1) return;
        reckoning.Windows.Add(new WindowDraft(
            CareItem.Dressing, story.Line.Id, null, story.Dressing, ClockRule.GauzeOnPort, "Gauze over the port needle put on").Window(reckoning));
    }

    /// <summary>A site that is not healed and has nothing over it is due at once, and somebody licensed is asked.</summary>
    private static DueWindow Bare(Reckoning reckoning, LineStory story)
    {
        reckoning.Ask(story.Line.Id, DecisionCodes.NoDressing, story.Dressing.By!,
            "The site is not documented as healed and has no dressing: an order is needed, or a dressing.");
        var rule = reckoning.Policy.InForce(RuleIds.SealMiddle, reckoning.Today)!;
        var day = story.Dressing.Moment.Date;
        var why = Why.Of(story.Dressing.By, (rule, day), static (by, f) => new WindowReason(
            by!.Id, f.day, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
            $"No dressing since {Says.Short(f.day)} on a site not documented as healed; due now.", []));
        return Frame.Days(reckoning, why, CareItem.Dressing, story.Line.Id, day, day, standing: WindowStanding.CutShort) with
        {
            Owner = Owners.Of(reckoning, CareItem.Dressing, story.Line.Id, day),
        };
    }

    private static void AddCompanions(Reckoning reckoning, LineStory story, DueWindow dressing)
    {
        if (story.Line.Securement == SecurementKind.Adhesive)
            reckoning.Windows.Add(With(reckoning, dressing, CareItem.Securement, RuleIds.SecurementWithDressing, "Adhesive securement goes with the dressing"));
        reckoning.Windows.Add(With(reckoning, dressing, CareItem.OutsideLength, RuleIds.LengthWithDressing, "Outside length is measured with the dressing"));
    }

    private static DueWindow With(Reckoning reckoning, DueWindow dressing, CareItem item, string ruleId, string what) => dressing with
    {
        Item = item,
        SealClass = 0,
        Facts = Why.Of(dressing.Facts.Anchor, (dressing.Facts, reckoning.Policy, reckoning.Today, ruleId, what), static (_, f) =>
        {
            var rule = f.Policy.InForce(f.ruleId, f.Today)!;
            return f.Facts.Told with
            {
                RuleId = rule.Id,
                RuleValue = "with each dressing",
                Level = rule.Level,
                Source = rule.Source,
                Sentence = $"{f.what}: {f.Facts.Told.Sentence}",
            };
        }),
    };
}
