using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Orders;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Tests.WeekPlanning;

/// <summary>What has to be delivered first: not before it is there, and not at all while nobody knows when. Invented data.</summary>
public sealed class DeliveryTests
{
    /// <summary>The immunoglobulin of P20, Wednesday from 09:00; its drug comes on Tuesday by 18:00.</summary>
    private const string Infusion = "P20-ig";

    private static readonly LocalDate Wednesday = DemoAgency.FirstDay.PlusDays(2);

    [Fact]
    public void A_delivery_on_the_day_before_leaves_the_visit_its_hours() =>
        Assert.Equal(Minute(2, 9, 0), Earliest(Demand(order => order)));

    [Fact]
    public void A_delivery_within_the_hours_of_the_visit_is_waited_for()
    {
        WeekDemand demand = Demand(order => order with { NotBefore = Wednesday.At(new LocalTime(10, 15)) });
        Assert.Equal(Minute(2, 10, 15), Task(demand).Opens);
        WeekPlan plan = Planning.Planner.Plan(demand.Problem, new Planning.PlanOptions(1, 50), cancel: TestContext.Current.CancellationToken);
        Assert.All(plan.Visits.Where(v => v.Tasks.Contains(Task(demand).Id)), v => Assert.InRange(v.Start, Minute(2, 10, 15), Minute(2, 11, 0)));
    }

    [Fact]
    public void A_delivery_nobody_knows_the_time_of_is_asked_for_and_nothing_is_planned()
    {
        WeekDemand demand = Demand(order => order with { NotBefore = CareOrder.DeliveryNotKnown });
        PlanningReason reason = Assert.Single(Assert.Single(demand.NotPlannable, u => u.Patient.Value == "P20").Reasons);
        Assert.Equal("delivery-unknown", reason.Code);
        Assert.Contains("pharmacist", reason.Action, StringComparison.Ordinal);
        Assert.DoesNotContain(demand.Problem.Tasks, t => t.Id.Contains(Infusion, StringComparison.Ordinal));
    }

    [Fact]
    public void A_delivery_that_nobody_receives_is_asked_about()
    {
        AccessTime evenings = new([], new LocalTime(19, 0), new LocalTime(21, 0)), mornings = new([], new LocalTime(8, 0), new LocalTime(12, 0));
        PlanningReason reason = Assert.Single(Assert.Single(Demand(order => order, evenings).NotPlannable, u => u.Reasons.Any(r => r.Code == "delivery-no-receiver")).Reasons);
        Assert.Contains("2027-03-09 by 18:00", reason.Sentence, StringComparison.Ordinal);
        Assert.Contains("family", reason.Action, StringComparison.Ordinal);
        Assert.DoesNotContain(Demand(order => order, mornings).NotPlannable, u => u.Patient.Value == "P20");
    }

    private static int Earliest(WeekDemand demand) => Math.Max(Task(demand).Opens, Task(demand).StartSpans.Min(s => s.From));

    private static CareTask Task(WeekDemand demand) => demand.Problem.Tasks.Single(t => t.Id.Contains(Infusion, StringComparison.Ordinal));

    private static WeekDemand Demand(Func<CareOrder, CareOrder> change, AccessTime? access = null)
    {
        AgencyRoster roster = DemoAgency.Roster with
        {
            Orders = [.. DemoAgency.Roster.Orders.Select(o => o.Id == Infusion ? change(o) : o)],
            Patients = [.. DemoAgency.Roster.Patients.Select(p => p.Id.Value == "P20" && access is not null ? p with { AccessTimes = [access] } : p)],
        };
        return WeekDemand.Of(roster, CareFiles.Of(roster), DemoAgency.FirstDay, 7, DemoAgency.Now);
    }

    private static int Minute(int day, int hour, int minute) => (day * 1440) + (hour * 60) + minute;
}
