using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Tests.Reports;

/// <summary>The red-letter Tuesday on the published week. Invented data; times and minutes are facts of the scenario, worked by hand.</summary>
public sealed class TuesdayStoryTests
{
    private static readonly Instant Call = DemoAgency.At(9, 7, 52);

    private static readonly ProblemReport SpouseOfP03 = new()
    {
        Patient = new PatientId("P03"),
        Line = new LineId("P03-1"),
        Caller = "spouse",
        SeenAt = Call,
        Answers = ImmutableDictionary<string, ScreenAnswer>.Empty,
        Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
    };

    private static readonly SealOffer Offered = Offer(Call);

    private static SealOffer Offer(Instant call)
    {
        var seen = new LineEvent
        {
            Id = new EventId("R1-seal"),
            Patient = SpouseOfP03.Patient,
            Line = SpouseOfP03.Line,
            Kind = LineEventKind.SealReported,
            Performed = CareMoment.Exactly(call, DemoAgency.Roster.Profile.Zone),
            RecordedAt = call,
            Performer = PerformerKind.Caregiver,
            Seal = SpouseOfP03.Finding,
        };
        AgencyRoster roster = DemoAgency.Roster with { Events = [.. DemoAgency.Roster.Events, seen] };
        return SealOffer.Of(roster, CareFiles.Of(roster), DemoAgency.Published, SpouseOfP03 with { SeenAt = call }, [], call).Value;
    }

    [Fact]
    public void An_edge_lifted_on_parenteral_nutrition_is_of_the_first_class_with_target_and_last_moment()
    {
        Assert.Equal(1, Offered.Offer.SealClass);
        Assert.Equal(DemoAgency.At(9, 11, 52), Offered.Offer.TargetBy);
        Assert.Equal(DemoAgency.At(9, 15, 52), Offered.Offer.LastAcceptable);
    }

    [Fact]
    public void The_three_answers_are_those_worked_by_hand()
    {
        string[] answers = [.. Offered.Offer.Answers.Select(a => $"{a.Key} {a.Visit.Nurse} {a.Visit.Start:HH:mm} {a.DrivingDelta:+0} min, target {(a.MeetsTarget ? "met" : "missed")}, moves {string.Join(" ", a.Moves)}")];

        Assert.Equal(
            [
                "A N3 10:08 +55 min, target met, moves ",
                "B N1 13:32 +11 min, target missed, moves ",
                "C N1 12:09 +8 min, target missed, moves Anise Kettledown moves from 12:09 to 13:47, 98 min later: one call.",
            ],
            answers);
    }

    [Fact]
    public void Wednesday_is_replaced_and_frees_the_nurse()
    {
        AnswerInWords best = Offered.Offer.Answers[0];

        Assert.Equal(["Wed 10 Mar 13:12 with Juniper Brasslock is no longer needed."], best.Replaces);
        Assert.Equal(["Juniper Brasslock gets 90 min and 7 min of driving back on Wed 10 Mar."], best.Frees);
        Assert.DoesNotContain(Offered.Weeks["A"].Visits, v => v.Patient.Value == "P03" && v.Day == new LocalDate(2027, 3, 10));
        Assert.Single(Offered.Weeks["A"].Visits, v => v.Patient.Value == "P03");
    }

    [Fact]
    public void A_later_visit_keeps_only_what_the_urgent_one_cannot_do_yet()
    {
        SealOffer monday = Offer(DemoAgency.At(8, 6, 0));

        AnswerInWords best = monday.Offer.Answers[0];
        WeekVisit wednesday = monday.Weeks["A"].Visits.Single(v => v.Patient.Value == "P03" && v.Day.Day == 10);
        Assert.Equal(["Wed 10 Mar 13:12 with Juniper Brasslock keeps only: weekly labs, PN off, by the courier (30 min instead of 75)."], best.Replaces);
        Assert.Equal((30, "P03|Labs|||P03-labs"), (wednesday.Minutes, wednesday.Care.Single().Key));
    }

    [Fact]
    public void A_move_to_another_day_names_both_days() =>
        Assert.All(
            Offer(DemoAgency.At(8, 6, 0)).Offer.Answers.SelectMany(a => a.Moves),
            m => Assert.DoesNotMatch(@"\d{4} min", m));

    [Fact]
    public void Only_those_concerned_are_told()
    {
        Assert.Equal(
            ["spouse, Clover Zigzagby", "Sorrel Mudlark", "Juniper Brasslock", "Laboratory list"],
            Offered.Offer.Answers[0].ToTell.Select(p => p.Who));
        Assert.Equal("As-needed visits: 2 of 3 used.", Offered.Offer.Answers[0].OrderLedger);
    }

    [Fact]
    public void Everybody_who_cannot_come_is_named_with_the_reason()
    {
        var reasons = Offered.Offer.RuledOut.ToDictionary(r => r.Nurse, r => r.Reason.Sentence);

        Assert.Contains("PN", reasons["N5"], StringComparison.Ordinal);
        Assert.Contains("13:30", reasons["N8"], StringComparison.Ordinal);
        Assert.Contains("N4", reasons.Keys);
    }

    [Fact]
    public void The_next_window_counts_from_the_visit() =>
        Assert.Equal("After this visit the dressing is next due Sun 14 Mar to Tue 16 Mar.", Offered.Offer.Answers[0].NextWindow);

    [Fact]
    public void The_bundle_takes_along_what_is_already_useful()
    {
        WeekVisit visit = Offered.Offer.Answers[0].Visit;

        Assert.Equal(75, visit.Minutes);
        Assert.Contains(visit.Care, c => c.Key == "P03|Connector|P03-1|AB|");
        Assert.Contains(visit.Care, c => c.Key.StartsWith("P03|Labs|", StringComparison.Ordinal));
    }

    [Fact]
    public void Chills_stop_everything_before_a_time_is_looked_for()
    {
        ImmutableDictionary<string, ScreenAnswer> answers = AllNoExcept("chills");
        ScreenOutcome screen = SymptomScreen.Evaluate(answers, ScreenContext.Of(DemoAgency.Files[new PatientId("P44")], DemoAgency.Files.Policy, new LocalDate(2027, 3, 9)));
        ProblemReport report = SpouseOfP03 with { Patient = new PatientId("P44"), Line = new LineId("P44-1"), Answers = answers };

        RedFlagStop stop = RedFlagStop.Of(DemoAgency.Roster, DemoAgency.Published, report, screen, new EventId("R2-lock"), DemoAgency.At(9, 8, 5));

        Assert.False(screen.MaySchedule);
        Assert.Equal(ScreenClass.UrgentClinician, screen.Class);
        Assert.Equal(["Tue 9 Mar 08:07, Sorrel Mudlark: Wait for the clinical manager."], stop.Flow.VisitsHeld);
        Assert.Contains(stop.Flow.ToTell, p => p.Who == "Clinical manager on duty");
        Assert.Contains(stop.Flow.ToTell, p => p.Who == "Sorrel Mudlark");
        Assert.All(stop.Week!.Visits.Where(v => v.Patient.Value == "P44"), v => Assert.NotNull(v.Held));
        Assert.Equal(LineEventKind.UseLocked, stop.Lock.Kind);
    }

    private static ImmutableDictionary<string, ScreenAnswer> AllNoExcept(string yes) => SymptomScreen.Questions(ScreenContext.Unknown)
        .TakeWhile(q => q.Id != yes)
        .ToImmutableDictionary(q => q.Id, _ => ScreenAnswer.No)
        .SetItem(yes, ScreenAnswer.Yes);
}
