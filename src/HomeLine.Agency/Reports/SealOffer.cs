using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using HomeLine.Planning.Answers;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>The answers to a broken seal on the published week, with the week each would make. Pure.</summary>
/// <param name="Offer">What the coordinator reads.</param>
/// <param name="Weeks">The week after each answer, by its key.</param>
public sealed record SealOffer(OfferedAnswers Offer, ImmutableDictionary<string, PlannedWeek> Weeks)
{
    /// <param name="roster">The roster with the report already in its ledger.</param>
    /// <param name="files">The roster cut by patient.</param>
    /// <param name="week">The published week.</param>
    /// <param name="report">The report; its screen has allowed scheduling.</param>
    /// <param name="wording">What the screen gives to read to the caller.</param>
    /// <param name="now">When the answers are looked for.</param>
    /// <param name="keepLater">Whether later visits with the same care stay beside the new one, because a person says so.</param>
    /// <param name="agency">The agency with what holds beside the roster: closed roads, held places.</param>
    public static Outcome<SealOffer> Of(
        AgencyRoster roster, CareFiles files, PlannedWeek week, ProblemReport report, ImmutableArray<string> wording, Instant now, AgencyAtHand? agency = null,
        bool keepLater = false)
    {
        if (agency is not null && HeldPlaces.With(agency with { Roster = roster, Files = files, Now = now }) is var wider && wider.Roster.Patients.Length > roster.Patients.Length)
            (roster, files, week) = (wider.Roster, wider.Files, HeldPlaces.Into(week, wider));
        Patient patient = roster.Patients.First(p => p.Id == report.Patient);
        var calendar = new PlanCalendar(roster.Profile.Zone, week.FirstDay, 7);
        if (UrgentBundle.Of(roster, files, patient, report.Line, calendar, now) is not { } bundle)
        {
            return CaregiverOwns(files, report, wording, now) is { } may
                ? new SealOffer(may, ImmutableDictionary<string, PlannedWeek>.Empty)
                : new Refusal("nothing-cut-short", "No dressing on this line is open to change.", "Check which line the caller means.");
        }

        ImmutableArray<WeekVisit> replaced = Replaced(week, bundle, calendar, now);
        ShortenedVisits shortened = ShortenedVisits.By(bundle, week, roster, files, calendar, now);
        StandingWeek standing = StandingWeek.Of(roster, files, shortened.Week, now, bundle.Task, replaced.Select(v => v.Id).ToHashSet())
            .WithClosures(agency?.Closures ?? [], roster);
        var need = new UrgentNeed(patient.Id.Value, [UrgentBundle.TaskId], [.. replaced.Select(v => v.Id)]);
        UrgentAnswers answers = Planner.Answer(standing.Problem, need);
        var words = new AnswerWords(roster, files, patient, bundle, shortened, calendar, report, now, keepLater);
        ImmutableArray<(AnswerInWords Words, PlannedWeek Week)> offered =
            [.. answers.Answers.Select((a, i) => words.Of(a, ((char)('A' + i)).ToString(), shortened.Week))];
        return new SealOffer(
            new OfferedAnswers(
                bundle.Window.SealClass,
                bundle.Window.Target,
                bundle.Window.LateFrom,
                [.. bundle.Needs.Select(n => n.Task.Label)],
                wording,
                null,
                [.. offered.Select(o => o.Words)],
                [.. answers.Dominated.Select((a, i) => words.Of(a, $"more {i + 1}", shortened.Week).Words)],
                answers.RuledOut),
            offered.ToImmutableDictionary(o => o.Words.Key, o => HeldPlaces.Without(o.Week)));
    }

    /// <summary>Later visits of which the bundle does everything: they are replaced, not kept.</summary>
    private static ImmutableArray<WeekVisit> Replaced(PlannedWeek week, UrgentBundle bundle, PlanCalendar calendar, Instant now)
    {
        var done = bundle.Needs.Select(n => n.Key).ToHashSet();
        int minute = calendar.Minute(now);
        return [.. week.Visits.Where(v =>
            v.Patient == bundle.Lead.Patient
            && calendar.Minute(v.Day, v.Start) > minute
            && v.Care.Any(c => c.Key == bundle.Lead.Key)
            && v.Care.All(c => done.Contains(c.Key)))];
    }

    private static OfferedAnswers? CaregiverOwns(CareFiles files, ProblemReport report, ImmutableArray<string> wording, Instant now)
    {
        var window = files.WhatIsDue(report.Patient, now).Windows.FirstOrDefault(w =>
            w.Line == report.Line && w.SealClass > 0 && w.Owner == PerformerKind.Caregiver);
        return window is null
            ? null
            : new OfferedAnswers(
                window.SealClass,
                window.Target,
                window.LateFrom,
                [CareLabels.Of(window.Item)],
                wording,
                "A caregiver is validated for this dressing and may change it now with the kit at home. Ask for the time it was done and record it.",
                [],
                [],
                []);
    }
}
