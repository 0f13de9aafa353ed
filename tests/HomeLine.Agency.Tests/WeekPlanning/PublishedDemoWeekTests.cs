using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>The published week of the demonstration, re-derived from ledger, orders and policy. Invented data.</summary>
public sealed class PublishedDemoWeekTests
{
    private static readonly WeekDemand Demand = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now);

    [Fact]
    public void Every_item_of_every_visit_answers_a_need()
    {
        var keys = Demand.Needs.Values.Select(n => n.Key).ToHashSet();

        string[] strays = [.. DemoAgency.Published.Visits.SelectMany(v => v.Care).Select(c => c.Key).Where(k => !keys.Contains(k)).Distinct()];

        Assert.True(strays.Length == 0, string.Join("\n", strays));
    }

    [Fact]
    public void Every_need_is_answered_by_a_visit()
    {
        var answered = DemoAgency.Published.Visits.SelectMany(v => v.Care).Select(c => c.Key).ToHashSet();

        string[] open = [.. Demand.Needs.Values.Where(n => !answered.Contains(n.Key)).Select(n => $"{n.Task.Id} day {n.Task.Opens / 1440} to {n.Task.LateFrom / 1440}")];

        Assert.True(open.Length == 0, string.Join("\n", open));
    }

    [Fact]
    public void The_minutes_of_every_visit_follow_from_policy()
    {
        var needs = Demand.Needs.Values.ToLookup(n => n.Key);
        var wrong = new List<string>();
        foreach (WeekVisit visit in DemoAgency.Published.Visits)
        {
            CareTask[] tasks = [.. visit.Care.Select(c => needs[c.Key].FirstOrDefault()?.Task).OfType<CareTask>()];
            Patient patient = DemoAgency.Roster.Patients.First(p => p.Id == visit.Patient);
            NurseFile nurse = DemoAgency.Roster.Nurses.First(n => n.Id == visit.Nurse);
            int interpreter = patient.Language != "en" && !nurse.Traits.Contains($"language:{patient.Language}") ? 20 : 0;
            int minutes = tasks.Max(t => t.SetupMinutes) + tasks.Sum(t => t.WorkMinutes) + interpreter;
            if (minutes != visit.Minutes) wrong.Add($"{visit.Id}: {minutes} instead of {visit.Minutes}");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    [Fact]
    public void The_checker_accepts_it_with_the_figures_of_the_scenario()
    {
        StandingWeek standing = StandingWeek.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.Published, DemoAgency.Now);

        CheckReport check = Checker.Check(standing.Problem, standing.Plan);

        Assert.True(check.Accepted, string.Join("\n", check.Findings.Select(f => $"{f.Rule} {f.Visit} {f.Nurse}: {f.Reason.Sentence}")));
        Assert.Equal(69, check.Figures.Visits);
        Assert.Equal(5_320, check.Figures.HomeMinutes);
        Assert.Equal(1_035, check.Figures.ChartingMinutes);
        Assert.Equal(1_281, check.Figures.DrivingMinutes);
        Assert.Equal(28, check.Figures.NurseDays);
        Assert.Equal(12_600, check.Figures.ShiftMinutes);
    }
}
