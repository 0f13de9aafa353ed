using HomeLine.Agency.WeekPlanning;
namespace HomeLine.Agency.Tests.WeekPlanning;
public sealed class ScratchTests
{
    [Fact]
    public void Show()
    {
        WeekDemand demand = WeekDemand.Of(DemoAgency.Roster, DemoAgency.Files, DemoAgency.FirstDay, 7, DemoAgency.Now);
        foreach (var g in demand.Needs.Values.GroupBy(n => n.Patient.Value).OrderBy(g => g.Key))
            foreach (var n in g.OrderBy(n => n.Task.Opens))
                Console.WriteLine($"{n.Task.Id} {n.Task.Opens / 1440.0:0.0}-{n.Task.LateFrom / 1440.0:0.0} hard {n.Task.HardLatest / 1440.0:0.0} {n.Task.SetupMinutes}+{n.Task.WorkMinutes} {string.Join(',', n.Task.Skills)} crit {n.Task.Critical} w{n.Task.Weight} after {n.Task.After}");
    }
}
