using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests.Checking;

/// <summary>A right plan of two patients, broken one way at a time; each break must be found under its rule.</summary>
public sealed class CheckerRuleTests
{
    private static readonly WeekProblem Right = Of(
        [Nurse("N1", 0, 1, 2), Nurse("N2", 0, 1)],
        [Patient("A", 1), Patient("B", 2)],
        [Task("a", "A"), Task("b", "B")]);

    private static readonly PlannedVisit VisitA = Visit("va", "A", "N1", At(0, 8, 10), "a");
    private static readonly PlannedVisit VisitB = Visit("vb", "B", "N1", At(0, 9, 15), "b");

    [Fact]
    public void A_right_plan_is_accepted_and_scored_by_hand()
    {
        CheckReport report = Checker.Check(Right, Plan(VisitA, VisitB));
        Assert.True(report.Accepted);

        // 08:00 +10 at A, 40 + 15, +10 at B, 40 + 15, +20 home: 40 minutes of road, no waiting, two visits at 30.
        Assert.Equal(100, report.Score.Work);

        // Busy 80 + 30 + 40 = 150 minutes: 150 x 150 / 14,400 = 1.
        Assert.Equal(new PlanScore(0, 0, 0, 100, 1, 0), report.Score);
        Assert.Equal(40, report.Figures.DrivingMinutes);
    }

    [Fact]
    public void Waiting_is_paid_and_late_care_is_risk()
    {
        CheckReport report = Checker.Check(Right, Plan(VisitA, VisitB with { Start = At(0, 10) }));
        Assert.Equal(145, report.Score.Work);
        report = Checker.Check(Right, Plan(VisitA with { Start = At(1, 8, 10) }, VisitB with { Start = At(2, 8, 20) }));
        Assert.Equal((10 * 5) + (30 * 5), report.Score.Risk);
    }

    [Fact]
    public void Care_left_out_counts_more_than_care_done_on_the_last_day()
    {
        var unmet = new UnmetTask("b", [], []);
        long left = Checker.Check(Right, Plan(VisitA) with { Unmet = [unmet] }).Score.Risk;

        // Two days overdue at the end of the horizon and four more: 7 started days, 10 x 5 x 28.
        Assert.Equal(1_400, left);
    }

    [Theory]
    [MemberData(nameof(Breaks))]
    public void Every_break_is_found(string rule, string code, string how)
    {
        (WeekProblem problem, WeekPlan plan) = Broken(how);
        CheckReport report = Checker.Check(problem, plan);
        Assert.Contains(report.Findings, f => f.Rule == rule && f.Reason.Code == code);
        Assert.All(report.Findings, f => Assert.NotEmpty(f.Reason.Action));
    }

    public static TheoryData<string, string, string> Breaks() => new()
    {
        { "H1", ReasonCode.TaskTwice, "twice" },
        { "H1", ReasonCode.TaskForgotten, "forgotten" },
        { "H1", ReasonCode.UnmetWrong, "unmet though done" },
        { "H1", ReasonCode.TogetherSplit, "split" },
        { "H1", ReasonCode.MinutesWrong, "minutes" },
        { "H1", ReasonCode.VisitIdTwice, "same id" },
        { "H2", ReasonCode.TooEarly, "too early" },
        { "H2", ReasonCode.PastLatest, "past latest" },
        { "H2", ReasonCode.OutsideHorizon, "past" },
        { "H2", ReasonCode.ChainTooSoon, "chain" },
        { "H2", ReasonCode.TwoVisitsADay, "two a day" },
        { "H3", ReasonCode.SkillMissing, "skill" },
        { "H3", ReasonCode.LicenceMissing, "licence ended" },
        { "H3", ReasonCode.SkillMissing, "sign-off ended" },
        { "H3", ReasonCode.NurseUnknown, "no such nurse" },
        { "H5", ReasonCode.NotWorking, "day off" },
        { "H5", ReasonCode.BeforeShift, "before shift" },
        { "H5", ReasonCode.OverrunsShift, "overrun" },
        { "H5", ReasonCode.BreakMissing, "no break" },
        { "H5", ReasonCode.TooManyVisits, "too many" },
        { "H5", ReasonCode.TooManyOfKind, "too many starts of care a day" },
        { "H5", ReasonCode.TooManyOfKind, "too many starts of care a week" },
        { "H5", ReasonCode.RestShort, "rest" },
        { "H6", ReasonCode.HomeClosed, "home closed" },
        { "H6", ReasonCode.NurseRefused, "refused" },
        { "H6", ReasonCode.TraitMissing, "trait missing" },
        { "H6", ReasonCode.TraitExcluded, "trait excluded" },
        { "H7", ReasonCode.CannotArrive, "travel" },
        { "H8", ReasonCode.SecondMissing, "alone" },
        { "H8", ReasonCode.SecondWrong, "same person twice" },
        { "H10", ReasonCode.OutsideStartTimes, "dose time" },
        { "H11", ReasonCode.SpecimenLate, "no courier" },
        { "H12", ReasonCode.PatientUnknown, "on hold" },
        { "H13", ReasonCode.FixedChanged, "frozen moved" },
        { "H14", ReasonCode.TaskUnknown, "not asked for" },
    };

    private static (WeekProblem Problem, WeekPlan Plan) Broken(string how) => how switch
    {
        "twice" => (Right, Plan(VisitA, VisitB, Visit("va2", "A", "N1", At(1, 9), "a"))),
        "forgotten" => (Right, Plan(VisitA)),
        "unmet though done" => (Right, Plan(VisitA, VisitB) with { Unmet = [new UnmetTask("a", [], [])] }),
        "split" => (Tasks(t => t with { Together = "kit" }, Task("a2", "A", 0, 2)),
            Plan(VisitA, VisitB, Visit("va2", "A", "N1", At(1, 9), "a2"))),
        "minutes" => (Right, Plan(VisitA with { Minutes = 30 }, VisitB)),
        "same id" => (Right, Plan(VisitA, VisitB with { Id = "va" })),
        "too early" => (Tasks(t => t with { Opens = At(0, 12) }), Plan(VisitA, VisitB)),
        "past latest" => (Tasks(t => t with { HardLatest = At(0, 8) }), Plan(VisitA, VisitB)),
        "past" => (Right with { Now = At(0, 9) }, Plan(VisitA, VisitB)),
        "chain" => (Tasks(t => t, Task("a2", "A", 0, 2) with { After = "a", MinGap = 2880 }),
            Plan(VisitA, VisitB, Visit("va2", "A", "N1", At(1, 9), "a2"))),
        "two a day" => (Tasks(t => t, Task("a2", "A")), Plan(VisitA, VisitB, Visit("va2", "A", "N1", At(0, 11), "a2"))),
        "skill" => (Tasks(t => t with { Skills = ["PORT"] }), Plan(VisitA, VisitB)),
        "sign-off ended" => (Nurse1(n => n with { SkillEnds = [new SkillEnd("PICC", -1)] }), Plan(VisitA, VisitB)),
        "licence ended" => (Nurse1(n => n with { Licences = [new Licence("Marrow", -1)] }), Plan(VisitA, VisitB)),
        "no such nurse" => (Right, Plan(VisitA with { Nurse = "N9" }, VisitB)),
        "day off" => (Right, Plan(VisitA with { Nurse = "N2", Start = At(2, 9) }, VisitB)),
        "before shift" => (Right, Plan(VisitA with { Start = At(0, 8, 5) }, VisitB)),
        "overrun" => (Right, Plan(VisitA, VisitB with { Start = At(0, 15, 50) })),
        "no break" => (Nurse1(WithBreak), Plan(VisitA, VisitB)),
        "too many" => (Nurse1(n => n with { MaxVisitsADay = 1 }), Plan(VisitA, VisitB)),
        "too many starts of care a day" => (Starts(aWeek: false), Plan(VisitA, VisitB)),
        "too many starts of care a week" => (Starts(aWeek: true), Plan(VisitA, VisitB with { Start = At(1, 9) })),
        "rest" => (Right with { Rules = Right.Rules with { RestBetweenShiftsMinutes = 1_380 } },
            Plan(VisitA, VisitB with { Start = At(1, 8, 20) })),
        "home closed" => (Patient1(p => p with { StartSpans = [new Span(At(0, 9), At(0, 10))] }), Plan(VisitA, VisitB)),
        "refused" => (Patient1(p => p with { RefusedNurses = ["N1"] }), Plan(VisitA, VisitB)),
        "trait missing" => (Patient1(p => p with { RequiredTraits = ["female"] }), Plan(VisitA, VisitB)),
        "trait excluded" => (Patient1(p => p with { ExcludedTraits = ["allergy:cat"] }, "allergy:cat"), Plan(VisitA, VisitB)),
        "travel" => (Right, Plan(VisitA, VisitB with { Start = At(0, 9, 14) })),
        "alone" => (Patient1(p => p with { CrewSize = 2 }), Plan(VisitA, VisitB)),
        "same person twice" => (Patient1(p => p with { CrewSize = 2 }), Plan(VisitA with { Second = "N1" }, VisitB)),
        "dose time" => (Tasks(t => t with { StartSpans = [new Span(At(0, 9), At(0, 10))] }), Plan(VisitA, VisitB)),
        "no courier" => (Tasks(t => t with { DrawToDropMinutes = 60 }) with { DropPoints = [new DropPoint("lab", 0, [At(0, 8, 55)])] },
            Plan(VisitA, VisitB)),
        "on hold" => (Right, Plan(VisitA with { Patient = "C" }, VisitB)),
        "frozen moved" => (Right with { Published = Plan(VisitA with { Promise = PromiseState.Frozen }) }, Plan(VisitA with { Start = At(0, 8, 30) }, VisitB)),
        "not asked for" => (Right, Plan(VisitA, VisitB with { Tasks = ["b", "x"] })),
        _ => throw new ArgumentOutOfRangeException(nameof(how), how, "No such break."),
    };

    private static WeekProblem Tasks(Func<CareTask, CareTask> change, params CareTask[] more) =>
        Right with { Tasks = [change(Right.Tasks[0]), Right.Tasks[1], .. more.Select(change)] };

    private static WeekProblem Starts(bool aWeek) => Nurse1(n => n with { Caps = [new VisitCap("SOC", 1, aWeek)] }) with { Tasks = [.. Right.Tasks.Select(t => t with { Kinds = ["SOC"] })] };

    private static WeekProblem Nurse1(Func<Nurse, Nurse> change) => Right with { Nurses = [change(Right.Nurses[0]), Right.Nurses[1]] };

    private static WeekProblem Patient1(Func<PatientHome, PatientHome> change, params string[] traits) =>
        Nurse1(n => n with { Traits = [.. traits] }) with { Patients = [change(Right.Patients[0]), Right.Patients[1]] };

    /// <summary>The break must begin at 08:30; she is with A then.</summary>
    private static Nurse WithBreak(Nurse nurse) =>
        nurse with { Shifts = [nurse.Shifts[0] with { LunchMinutes = 30, LunchFrom = At(0, 8, 30), LunchTo = At(0, 8, 30) }] };
}
