using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Policy;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>Where the agency's nurses take specimens to a drop point themselves, the stop is part of their day. Invented data.</summary>
public sealed class HandInsTests
{
    private static readonly AgencyRoster Driving = DemoAgency.Roster with
    {
        Policy = DemoAgency.Roster.Policy.Add(new PolicyRule("specimen.handin", 5, "minutes", new LocalDate(2027, 1, 1), PolicyLevel.Agency, RuleStanding.OwnDefault, "invented for this test")),
    };

    private static readonly CareFiles Files = CareFiles.Of(Driving);

    [Fact]
    public void The_trough_of_Thursday_reaches_the_branch_before_the_courier()
    {
        // P36 is drawn 13:30 to 13:50; the courier collects at the branch at 15:30.
        WeekVisit draw = DemoAgency.Published.Visits.Single(v => v.Patient.Value == "P36" && v.Care.Any(c => c.Key.EndsWith("P36-level", StringComparison.Ordinal)));
        HandIn handIn = Assert.Single(Of(Driving, Files, draw.Nurse, draw.Day));
        Assert.Equal((draw.Id, "Branch, pharmacy and laboratory drop", new LocalTime(15, 30)), (handIn.After, handIn.Drop, handIn.Courier));
        Assert.True(handIn.At > draw.Start.PlusMinutes(draw.Minutes) && handIn.At <= new LocalTime(15, 30));
        Assert.True(Period.Between(draw.Start, handIn.At, PeriodUnits.Minutes).Minutes <= 120);
        DayRoute with = DayRoute.Of(Driving, Files, DemoAgency.Published, draw.Nurse, draw.Day), without = DayRoute.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.Published, draw.Nurse, draw.Day);
        DayLeg leg = with.Stops.Single(s => s.Visit.Id == draw.Id);
        Assert.Equal((handIn.Drop, handIn.At), (leg.HandIn!.Drop, leg.HandIn.At));
        Assert.True(leg.TravelToHandIn > 0 && with.DrivingMinutes > without.DrivingMinutes);
    }

    [Fact]
    public void Where_somebody_else_takes_specimens_there_is_no_stop()
    {
        Assert.Empty(DemoAgency.Roster.Nurses.SelectMany(n => Of(DemoAgency.Roster, DemoAgency.Files, n.Id, DemoAgency.FirstDay.PlusDays(3))));
        Assert.Null(WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now).Problem.Rules.HandInMinutes);
    }

    [Fact]
    public void A_week_made_without_stops_is_told_which_specimens_have_none()
    {
        StandingWeek standing = StandingWeek.Of(Driving, Files, DemoAgency.Published, DemoAgency.Now);
        CheckReport check = Checker.Check(standing.Problem, standing.Plan);
        Assert.NotEmpty(check.Findings);
        Assert.All(check.Findings, f => Assert.Equal(ReasonCode.SpecimenLate, f.Reason.Code));
        Assert.DoesNotContain(check.Findings, f => f.Visit!.Contains("P36", StringComparison.Ordinal));
        HandIn[] all = [.. Driving.Nurses.SelectMany(n => Enumerable.Range(0, 7).SelectMany(d => Of(Driving, Files, n.Id, DemoAgency.FirstDay.PlusDays(d))))];
        Assert.Equal(DropStops.Of(standing.Problem, standing.Plan).Select(s => s.After).Order(), all.Select(h => h.After).Order());
        Assert.Equal(check.Figures.DropStops, all.Length);
    }

    [Fact]
    public void A_week_planned_with_them_hands_every_specimen_in()
    {
        WeekDemand demand = WeekDemand.Of(Driving, Files, DemoAgency.FirstDay, 7, DemoAgency.Now);
        WeekPlan plan = Planner.Plan(demand.Problem, new PlanOptions(1, 600), cancel: TestContext.Current.CancellationToken);
        CheckReport check = Checker.Check(demand.Problem, plan);
        Assert.True(check.Accepted, string.Join("\n", check.Findings.Select(f => f.Reason.Sentence)));
        var draws = demand.Problem.Tasks.Where(t => t.DrawToDropMinutes is not null).Select(t => t.Id).ToHashSet();
        Assert.NotEmpty(draws);
        Assert.Equal(
            plan.Visits.Where(v => v.Tasks.Any(draws.Contains)).Select(v => v.Id).Order(),
            DropStops.Of(demand.Problem, plan).SelectMany(s => s.Visits).Order());
        Assert.DoesNotContain(plan.Unmet, u => draws.Contains(u.Task));
    }

    private static ImmutableArray<HandIn> Of(AgencyRoster roster, CareFiles files, string nurse, LocalDate day) =>
        HandIns.Of(roster, files, DemoAgency.Published, nurse, day, RoadTravel.Of(roster));
}
