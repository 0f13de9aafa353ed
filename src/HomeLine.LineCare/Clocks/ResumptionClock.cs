using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Clocks;

/// <summary>After a stay of a day or more the assessment comes within 48 hours of the return home (42 CFR 484.55(d)(2), from memory). It is the
/// same assessment as recertification, so its window is brought forward and not doubled.</summary>
internal static class ResumptionClock
{
    public static void BringForward(Reckoning reckoning, PatientStory patient)
    {
        if (patient.BackHome is not { } back || !WasLong(reckoning, patient.Admitted, back)) return;
        var index = reckoning.Windows.FindIndex(static window => window.Item == CareItem.Recertification);
        var window = reckoning.Windows[index];
        var rule = reckoning.Policy.InForce(RuleIds.Resumption, reckoning.Today)!;
        var home = MomentOf(reckoning, back);
        var late = home + Duration.FromMinutes((double)(rule.Value * 60));
        if (late >= window.LateFrom) return;
        var day = reckoning.DayOf(home);
        reckoning.Windows[index] = window with
        {
            Basis = ClockBasis.Hour,
            Opens = home,
            OpensOn = day,
            Target = late,
            LateFrom = late,
            LastDay = reckoning.LastDayBefore(late),
            Facts = Why.Of(back, (day, rule, window), static (by, f) => new WindowReason(
                by!.Id, f.day, f.rule.Id, Says.Amount(f.rule.Value, f.rule.Unit), f.rule.Level, f.rule.Source,
                $"Home again {Says.Short(f.day)}; assessment within {Says.Amount(f.rule.Value, f.rule.Unit)} ({Says.SetBy(f.rule)}).",
                [$"The window without the stay: {f.window.Because.Sentence}"])),
        };
    }

    /// <summary>A return without an admission on record counts as a long stay.</summary>
    private static bool WasLong(Reckoning reckoning, LineEvent? admitted, LineEvent back)
    {
        if (admitted is null) return true;
        if (admitted.Performed is { At: { } went } && back.Performed is { At: { } came })
            return came - went >= Duration.FromMinutes((double)(reckoning.Value(RuleIds.ResumptionStay) * 60));
        return reckoning.DayOf(admitted) < reckoning.DayOf(back);
    }

    private static Instant MomentOf(Reckoning reckoning, LineEvent back) =>
        back.Performed is { } performed ? reckoning.EarliestOf(performed) : back.RecordedAt;
}
