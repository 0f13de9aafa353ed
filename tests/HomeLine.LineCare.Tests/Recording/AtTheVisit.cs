using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.RedFlags;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;
using static HomeLine.LineCare.Tests.Recording.Would;

namespace HomeLine.LineCare.Tests.Recording;

/// <summary>What is asked at a visit beside the care itself: stays, levels, findings. Common practice, no source, where nothing else is named.</summary>
public sealed class AtTheVisit
{
    private static readonly Given Vancomycin = Picc(2).Infusion(InfusionKind.Intermittent, PerformerKind.Caregiver, "A")
        .Order(AnOrder(OrderKind.DrugLevel) with { DoseTimes = [new LocalTime(10, 0), new LocalTime(22, 0)] });

    private static string[] Said(Draw draw) => [.. BeforeDrawing.Replies(Vancomycin.Care, draw, PolicyBook.Default, At(Mar(8), 12)).Select(r => $"{r.Code} {r.Weight}")];

    [Fact]
    public void Care_of_our_nurse_during_a_hospital_stay_is_asked_about_and_before_or_after_it_is_not()
    {
        Given home = Picc().Dressing(Mar(1)).Event(LineEventKind.AdmittedToHospital, Mar(3), 9).Event(LineEventKind.ReturnedHome, Mar(6), 11);
        string[] On(int day, int hour) => [.. home.Replies(Entry(LineEventKind.SiteChecked, Mar(day), hour)).Select(r => r.Code)];

        Assert.Contains(RecordingCodes.BeforeDischarge, On(5, 10));
        Assert.Contains(RecordingCodes.BeforeDischarge, On(6, 10));
        Assert.DoesNotContain(RecordingCodes.BeforeDischarge, On(6, 12));
        Assert.DoesNotContain(RecordingCodes.BeforeDischarge, On(2, 10));
    }

    [Fact]
    public void A_level_cannot_be_closed_without_the_last_dose() =>
        Assert.Equal([$"{RecordingCodes.LevelWithoutLastDose} Refuse"], Said(new Draw("O1", First, "B", At(Mar(8), 9, 45))));

    [Fact]
    public void A_level_through_the_lumen_of_the_drug_is_asked_about_and_through_the_other_is_not()
    {
        Assert.Equal([$"{RecordingCodes.LevelFromDrugLumen} Ask"], Said(new Draw("O1", First, "A", At(Mar(8), 9, 45), At(Mar(7), 22))));
        Assert.Empty(Said(new Draw("O1", First, "B", At(Mar(8), 9, 45), At(Mar(7), 22))));
        Assert.Empty(Said(new Draw("O1", null, null, At(Mar(8), 9, 45), At(Mar(7), 22, 40))));
    }

    /// <summary>Ordered at 22:00, taken at 08:30: further from the order than the tolerance of 60 minutes (our own default).</summary>
    [Fact]
    public void A_dose_taken_before_the_draw_makes_the_level_a_question() =>
        Assert.Equal([$"{RecordingCodes.LevelOffDose} Ask"], Said(new Draw("O1", First, "B", At(Mar(8), 9, 45), At(Mar(8), 8, 30))));

    [Fact]
    public void A_draw_in_the_future_without_a_time_or_handed_in_before_it_was_drawn_is_refused()
    {
        Assert.Equal([$"{RecordingCodes.DrawTimeMissing} Refuse"], Said(new Draw("O2", null, null, null)));
        Assert.Equal([$"{RecordingCodes.InTheFuture} Refuse"], Said(new Draw("O2", null, null, At(Mar(8), 13))));
        Assert.Equal([$"{RecordingCodes.InTheFuture} Refuse"], Said(new Draw("O2", null, null, At(Mar(8), 9), null, At(Mar(8), 8))));
    }

    /// <summary>Two hours from draw to drop: our own default.</summary>
    [Fact]
    public void A_specimen_handed_in_after_two_hours_is_told()
    {
        Assert.Empty(Said(new Draw("O2", null, null, At(Mar(8), 9), null, At(Mar(8), 11))));
        Assert.Equal([$"{RecordingCodes.DropLate} Tell"], Said(new Draw("O2", null, null, At(Mar(8), 9), null, At(Mar(8), 11, 1))));
    }

    [Fact]
    public void Every_finding_that_is_a_red_flag_stops_the_screen_and_the_others_do_not()
    {
        foreach (SiteFinding finding in Enum.GetValues<SiteFinding>())
        {
            var yes = SiteRedFlags.In(finding).ToDictionary(id => id, _ => ScreenAnswer.Yes, StringComparer.Ordinal);
            Assert.Equal(SiteRedFlags.All.HasFlag(finding) && finding != SiteFinding.None, SymptomScreen.Evaluate(yes, ScreenContext.Unknown).Stopped is not null);
        }

        Assert.Equal(["line-broken", "pus"], SiteRedFlags.In(SiteFinding.Pus | SiteFinding.Broken | SiteFinding.Redness));
    }
}
