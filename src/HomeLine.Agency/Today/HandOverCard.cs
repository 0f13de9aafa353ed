using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.Today;

/// <summary>The card that night hands to day and day to night: everything since the last hand-over, what is open first. Pure.</summary>
internal static class HandOverCard
{
    /// <summary>A hand-over that lies less than this back has only begun; its card still shows the shift before. Our own default.</summary>
    private static readonly Duration StillReading = Duration.FromHours(2);

    /// <summary>Since when the card counts: the last hand-over that is well behind.</summary>
    public static Instant Since(AgencyAtHand agency)
    {
        LocalTime morning = At("handover.morning"), evening = At("handover.evening");
        Instant latest = agency.Now - StillReading;
        return Enumerable.Range(-2, 3)
            .SelectMany(d => new[] { agency.Today.PlusDays(d).At(morning), agency.Today.PlusDays(d).At(evening) })
            .Select(at => at.InZoneLeniently(agency.Roster.Profile.Zone).ToInstant())
            .Where(at => at <= latest)
            .Max();

        LocalTime At(string rule) => LocalTime.Midnight.PlusMinutes((long)(agency.Files.Policy.ValueOf(rule, agency.Today) * 60));
    }

    public static ImmutableArray<HandOverLine> Of(AgencyAtHand agency, IReadOnlyCollection<FiledTrouble> troubles, IReadOnlyCollection<FiledReport> reports)
    {
        Instant since = Since(agency);
        var names = agency.Roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        IEnumerable<HandOverLine> lines = troubles
            .Where(t => t.State != TroubleState.Stopped && (t.FiledAt >= since || t.State == TroubleState.Open))
            .Select(t => new HandOverLine(t.FiledAt, t.Title, Came(t), t.State == TroubleState.Open))
            .Concat(reports.Where(r => r.FiledAt >= since || r.Outcome is ReportOutcome.Offered or ReportOutcome.Stopped)
                .Select(r => new HandOverLine(r.FiledAt, $"{names[r.Patient]}: {(r.Outcome == ReportOutcome.Stopped ? "red flag on the phone" : "dressing reported")}", Came(r), r.Outcome is ReportOutcome.Offered or ReportOutcome.Stopped)));
        return [.. lines.OrderByDescending(l => l.IsOpen).ThenBy(l => l.At)];
    }

    private static string Came(FiledTrouble trouble) => trouble.State switch
    {
        TroubleState.Open => trouble.Offer?.Next is { } next ? $"Waits: {next.What}" : "An answer has to be chosen.",
        TroubleState.Stopped => "A licensed person decides.",
        TroubleState.Applied => $"Answer {trouble.AppliedAnswer} applied. {trouble.Reason}",
        TroubleState.Closed => trouble.Offer?.Facts is { IsEmpty: false } facts ? facts[0] : trouble.Reason,
        _ => throw new ArgumentOutOfRangeException(nameof(trouble), trouble.State, "Unknown state"),
    };

    private static string Came(FiledReport report) => report.Outcome switch
    {
        ReportOutcome.Stopped => "Stopped by the screen. A licensed person decides.",
        ReportOutcome.Decided => $"Decided. {report.Reason}",
        ReportOutcome.Applied => $"Answer {report.AppliedAnswer} applied. {report.Reason}",
        ReportOutcome.Closed => $"Closed. {report.Reason}",
        ReportOutcome.Open or ReportOutcome.Offered => "An answer has to be chosen.",
        _ => throw new ArgumentOutOfRangeException(nameof(report), report.Outcome, "Unknown outcome"),
    };
}
