using System.Collections.Immutable;
using CsCheck;
using HomeLine.Planning.Answers;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests;

/// <summary>
/// Moves by hand, urgent answers and repairs make time for the drive to a drop point where nurses make it themselves. On paper: homes ten minutes apart on a line, the
/// drop point at place 0, five minutes to hand in; N1 draws at place 1 from 08:10 and is due there by 10:10, then goes to place 2 at 09:40. Invented data.
/// </summary>
public sealed class DropsByTheWayTests
{
    private static readonly Gen<int> Seeds = Gen.Int[1, 1_000_000];

    private static readonly PlannedVisit Draw = Told("vd", "D", "N1", At(0, 8, 10), "d"), After = Told("va", "A", "N1", At(0, 9, 40), "a");

    [Fact]
    public void A_visit_put_between_a_draw_and_its_drop_point_starts_after_the_stop()
    {
        WeekProblem week = Week(Task("w", "W"), Nurse("N2", 0));
        var hand = new HandWeek(week, [Draw, After, Visit("vw", "W", "N2", At(0, 8, 30), "w")]);
        Assert.Empty(hand.Check.Findings);
        HandChange change = hand.Try(new HandMove.Move("vw", new DayPlace("N1", 0, 1)));
        // Charted at 09:05, at the drop point 09:15, on at 09:20, half an hour to place 3. Straight there, 09:25, the specimen would come too late.
        Assert.Equal([], change.Broken.Select(f => f.Reason.Sentence));
        Assert.Equal(At(0, 9, 50), change.Moved!.Start);
        Assert.Equal(At(0, 10, 55), change.After.Single(v => v.Id == "va").Start);
        Assert.Contains(hand.PlacesOf("vw"), p => p.Place == new DayPlace("N1", 0, 1));
    }

    [Fact]
    public void A_draw_moved_by_hand_pushes_the_next_visit_by_the_stop()
    {
        WeekProblem week = Week(Task("w", "W") with { DrawToDropMinutes = 120 }, Nurse("N2", 0));
        var hand = new HandWeek(week, [Draw, After, Visit("vw", "W", "N2", At(0, 8, 30), "w")]);
        HandChange change = hand.Try(new HandMove.Move("vw", new DayPlace("N1", 0, 2)));
        Assert.Equal([], change.Broken.Select(f => f.Reason.Sentence));
        Assert.Single(DropStops.Of(week, Plan([.. hand.Visits.Where(v => v.Id is "vd")])));
        Assert.Equal(["vd", "vw"], Stops(week, hand, change).Select(s => s.After));
    }

    [Fact]
    public void An_urgent_visit_between_a_draw_and_its_drop_point_starts_after_the_stop()
    {
        WeekProblem week = Week(Task("u", "W") with { LateFrom = At(0, 10) }) with { Now = At(0, 6) };
        week = week with { Patients = [.. week.Patients.Select(p => p.Id == "D" ? p with { StartSpans = [new Span(At(0, 8), At(0, 8, 20))] } : p)] };
        UrgentAnswers found = Planner.Answer(week, new UrgentNeed("W", ["u"], []));
        UrgentAnswer best = found.Answers[0];
        Assert.Equal((At(0, 9, 50), "N1"), (best.Visit.Start, best.Visit.Nurse));
        Assert.Equal([], Checker.Check(week, best.Plan).Findings.Select(f => f.Reason.Sentence));
        Assert.Equal(Checker.Check(week, best.Plan).Score, best.Plan.Score);
    }

    [Fact]
    public void A_nurse_whose_specimen_would_come_too_late_says_so()
    {
        // At place 9 the draw itself takes the whole two hours' allowance on the road.
        WeekProblem week = Week(Task("u", "W") with { DrawToDropMinutes = 100, LateFrom = At(0, 15) }) with { Now = At(0, 6) };
        week = week with { Patients = [.. week.Patients.Select(p => p.Id == "W" ? p with { Place = 4 } : p)], DropPoints = [week.DropPoints[0] with { Cutoffs = [At(0, 9, 20)] }] };
        UrgentAnswers found = Planner.Answer(week, new UrgentNeed("W", ["u"], []));
        Assert.Empty(found.Answers);
        Assert.Contains(Assert.Single(found.RuledOut).Reason.Code, (string[])[ReasonCode.NoTimeLeft, ReasonCode.SpecimenLate]);
    }

    [Theory]
    [InlineData(40, "draw of Patient W may wait 40 minutes, and to the nearest drop point on Mon, lab, it takes 55 with the visit and 30 on the road.")]
    [InlineData(300, "From Patient W no drop point is reached before its last collection on Mon, the nearest being lab, 30 minutes away.")]
    public void A_draw_beyond_the_reach_of_every_drop_point_names_the_nearest(int most, string says)
    {
        WeekProblem week = Week(Task("w", "W") with { DrawToDropMinutes = most, Label = "draw", Opens = At(0, 13, 40), HardLatest = At(0, 16) });
        WeekPlan plan = Planner.Plan(week with { Published = null, Now = 0 }, new PlanOptions(1, 50), cancel: TestContext.Current.CancellationToken);
        PlanningReason reason = plan.Unmet.Single(u => u.Task == "w").Reasons[0];
        Assert.Equal((ReasonCode.SpecimenLate, says), (reason.Code, reason.Sentence));
    }

    [Fact]
    public void A_day_without_a_collection_is_named()
    {
        WeekProblem week = Week(Task("w", "W") with { DrawToDropMinutes = 300, Label = "draw" }) with { Published = null, DropPoints = [] };
        WeekPlan plan = Planner.Plan(week, new PlanOptions(1, 50), cancel: TestContext.Current.CancellationToken);
        Assert.Equal("No drop point is emptied on Mon for draw of Patient W.", plan.Unmet.Single(u => u.Task == "w").Reasons[0].Sentence);
    }

    [Fact]
    public void Every_place_offered_by_hand_passes_the_whole_checker() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            var hand = new HandWeek(problem, problem.Published!.Visits);
            foreach (PlannedVisit visit in hand.Visits.Where((_, i) => i % 3 == seed % 3))
            {
                foreach (WorkablePlace place in hand.PlacesOf(visit.Id))
                {
                    CheckReport whole = new HandWeek(problem, Then(hand, place.Change)).Check;
                    Assert.Equal(hand.Check.Findings.Length, whole.Findings.Length);
                    Assert.Equal(whole.Score, place.Change.Score);
                }
            }
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void Every_urgent_answer_passes_the_whole_checker() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            CareTask task = problem.Tasks[seed % problem.Tasks.Length];
            var urgent = new CareTask
            {
                Id = "urgent",
                Patient = task.Patient,
                Label = "urgent",
                Opens = 0,
                LateFrom = problem.DayCount * 1440,
                SetupMinutes = 10,
                WorkMinutes = 20,
                Weight = 5,
                DrawToDropMinutes = seed % 2 == 0 ? 150 : null,
            };
            WeekProblem now = problem with { Tasks = [.. problem.Tasks, urgent] };
            var known = Checker.Check(problem, problem.Published!).Findings.Select(f => (f.Rule, f.Visit, f.Reason.Code)).ToHashSet();
            UrgentAnswers found = Planner.Answer(now with { Published = problem.Published! with { Unmet = [.. problem.Published.Unmet, new UnmetTask("urgent", [], [])] } }, new UrgentNeed(urgent.Patient, ["urgent"], []));
            foreach (UrgentAnswer answer in found.Answers)
                Assert.Equal([], Checker.Check(now, answer.Plan).Findings.Where(f => !known.Contains((f.Rule, f.Visit, f.Reason.Code))).Select(f => f.Reason.Sentence));
        },
        iter: 120,
        threads: 1);

    [Fact]
    public void A_repair_breaks_no_rule() => Seeds.Sample(
        seed =>
        {
            WeekProblem problem = Published(seed);
            string nurse = problem.Nurses[seed % problem.Nurses.Length].Id;
            MendedWeek mended = Planner.Mend(problem, [new Trouble.NurseOut(nurse, 1440, 2880)], new MendOptions(1, 40), TestContext.Current.CancellationToken);
            Assert.Equal([], mended.Findings.Where(f => f.Reason.Code != ReasonCode.BreakMissing).Select(f => f.Reason.Sentence));
        },
        iter: 100,
        threads: 1);

    private static ImmutableArray<DropStop> Stops(WeekProblem week, HandWeek hand, HandChange change) => DropStops.Of(week, new WeekPlan(Then(hand, change), [], default));

    private static ImmutableArray<PlannedVisit> Then(HandWeek hand, HandChange change)
    {
        var gone = change.Before.Select(v => v.Id).ToHashSet();
        return [.. hand.Visits.Where(v => !gone.Contains(v.Id)), .. change.After];
    }

    private static PlannedVisit Told(string id, string patient, string nurse, int start, string task) =>
        Visit(id, patient, nurse, start, task) with { Promise = PromiseState.Told, ToldFrom = start };

    private static WeekProblem Week(CareTask more, params Nurse[] others)
    {
        WeekProblem week = Of(
            [Nurse("N1", 0), .. others],
            [Patient("D", 1), Patient("A", 2), Patient("W", 3)],
            [Task("d", "D") with { DrawToDropMinutes = 120 }, Task("a", "A"), more],
            1);
        return week with
        {
            Rules = week.Rules with { HandInMinutes = 5 },
            DropPoints = [new DropPoint("lab", 0, [At(0, 15)])],
            Published = Plan(Draw, After),
        };
    }

    /// <summary>Monday 06:00 of an invented week with drop points, everybody told.</summary>
    private static WeekProblem Published(int seed)
    {
        WeekProblem problem = RandomWeek.WithDrops(RandomWeek.Rich(seed), seed) with { Now = 360 };
        WeekPlan plan = Planner.Plan(problem, new PlanOptions(1, 40), cancel: TestContext.Current.CancellationToken);
        return problem with { Published = plan with { Visits = [.. plan.Visits.Select(v => v with { Promise = PromiseState.Told, ToldFrom = v.Start })] } };
    }
}
