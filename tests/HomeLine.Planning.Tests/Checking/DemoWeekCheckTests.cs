using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using HomeLine.Planning.Tests.Week;

namespace HomeLine.Planning.Tests.Checking;

/// <summary>The demonstration week against its published plan; the figures were worked out apart from this program (our own scenario).</summary>
public sealed class DemoWeekCheckTests
{
    private static readonly CheckReport Report = Checker.Check(DemoWeek.Problem, DemoWeek.Published);

    [Fact]
    public void The_published_week_breaks_no_rule() =>
        Assert.Equal([], Report.Findings.Select(f => $"{f.Rule} {f.Nurse} {f.Reason.Sentence}"));

    [Fact]
    public void The_published_week_has_the_figures_of_the_scenario() =>
        Assert.Equal(new PlanFigures(69, 5_320, 1_035, 1_281, 0, 28, 12_600, 3), Report.Figures);

    /// <summary>Late by 1, 5 and 3 days at weight 5: 50 + 750 + 300 points.</summary>
    [Fact]
    public void The_three_patients_who_were_late_before_the_week_make_the_whole_risk()
    {
        Assert.Equal(0, Report.Score.Critical);
        Assert.Equal(1_100, Report.Score.Risk);
    }

    [Fact]
    public void With_the_pass_closed_the_road_from_Mossgate_is_too_long()
    {
        WeekProblem problem = DemoWeek.Problem;
        problem = problem with { Travel = ((MapTravel)problem.Travel).WithClosed(["Larch Pass"]) };
        Finding finding = Checker.Check(problem, DemoWeek.Published).Findings.First(f => f.Visit == "P29-Wed");
        Assert.Equal((ReasonCode.CannotArrive, "H7"), (finding.Reason.Code, finding.Rule));
    }

    [Fact]
    public void With_the_pass_closed_P45_to_P29_takes_65_minutes_instead_of_31()
    {
        ITravelTimes travel = DemoWeek.Problem.Travel;
        Assert.Equal(31, travel.Minutes(PlaceOf("P45"), PlaceOf("P29")));
        Assert.Equal(65, ((MapTravel)travel).WithClosed(["Larch Pass"]).Minutes(PlaceOf("P45"), PlaceOf("P29")));
    }

    private static int PlaceOf(string patient) => DemoWeek.Patients.Single(p => p.Id == patient).Place;
}
