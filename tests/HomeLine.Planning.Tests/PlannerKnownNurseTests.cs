using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using static HomeLine.Planning.Tests.Week.SmallWeek;

namespace HomeLine.Planning.Tests;

/// <summary>The usual nurse comes when she is free, else the backup, else whoever it may be; never at the price of work. Invented data.</summary>
public sealed class PlannerKnownNurseTests
{
    [Theory]
    [InlineData("N3 N2 N1", "N1")]
    [InlineData("N3 N2", "N2")]
    [InlineData("N3", "N3")]
    public void The_usual_nurse_comes_before_the_backup_and_both_before_a_stranger(string working, string comes)
    {
        WeekPlan plan = Planned(Of([.. working.Split(' ').Select(n => Nurse(n, 0))], [Known("A", 1)], [Task("a", "A")]));
        Assert.Equal(comes, Assert.Single(plan.Visits).Nurse);
    }

    [Fact]
    public void The_backup_comes_on_the_day_the_usual_nurse_has_no_room_for_it()
    {
        // The usual nurse takes one visit a day, and the other patient has only her.
        WeekProblem problem = Of(
            [Nurse("N3", 0), Nurse("N2", 0), Nurse("N1", 0) with { MaxVisitsADay = 1, Skills = ["PICC", "PORT"] }],
            [Known("A", 1), Patient("B", 1)],
            [Task("a", "A"), Task("b", "B") with { Skills = ["PORT"] }]);
        WeekPlan plan = Planned(problem);
        Assert.Equal(["A by N2", "B by N1"], plan.Visits.Select(v => $"{v.Patient} by {v.Nurse}").Order());
    }

    [Fact]
    public void Nobody_drives_further_for_it()
    {
        WeekPlan plan = Planned(Of([Nurse("N3", 0), Nurse("N1", 0) with { Home = 2 }], [Known("A", 0)], [Task("a", "A")]));
        Assert.Equal("N3", Assert.Single(plan.Visits).Nurse);
    }

    private static PatientHome Known(string id, int place) => Patient(id, place) with { KnownNurses = ["N1", "N2"] };

    private static WeekPlan Planned(WeekProblem problem) => Planner.Plan(problem, new PlanOptions(1, 200), cancel: TestContext.Current.CancellationToken);
}
