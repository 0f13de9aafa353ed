using System.Globalization;
using HomeLine.Planning.Routing;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Technicians with skill levels, one person a task, tasks left to others at a price (Kovacs, Parragh, Doerner and Hartl 2012, without teams).</summary>
internal sealed record TechnicianInstance(string Name, IReadOnlyList<TechnicianTask> Tasks, int[][] Levels, Distance Distance) : Instance(Name, "technicians")
{
    public override IReadOnlyList<string> Conventions => ["strsp"];

    public override string Class => "technicians";

    public override Solved Solve(Wanted wanted)
    {
        (RoutingPlan plan, long iterations) = Searching.Run(Problem(), wanted);
        return Judged(plan, iterations);
    }

    public override Func<Wanted, Solved>? Peer => wanted => Judged(RoutingPeer.Run(Problem(), wanted), 0);

    private RoutingProblem Problem()
    {
        var unit = new Unit(Distance);
        (int[] cost, int[] time) = unit.Matrices([.. Tasks.Select(task => task.Plane)]);
        PlaneNode home = Tasks[0].Plane;
        return new RoutingProblem(
            Tasks.Count,
            cost,
            time,
            [.. Tasks.Skip(1).Select((task, i) => new RoutingRequest(i + 1, 0, unit.Of(task.Plane.Service), unit.Of(task.Plane.Opens), unit.Of(task.Plane.Closes))
            {
                EligibleKinds = [.. Enumerable.Range(0, Levels.Length).Where(person => Can(person, task))],
                PriceOfLeavingOut = unit.Of(task.Price),
            })],
            [.. Levels.Select(_ => new VehicleKind(0, 0, 0, 1, int.MaxValue, unit.Of(home.Opens), unit.Of(home.Closes)))]);
    }

    private bool Can(int person, TechnicianTask task) => Enumerable.Range(0, task.Needed.Length).All(skill => Levels[person][skill] >= task.Needed[skill]);

    private Solved Judged(RoutingPlan plan, long iterations) => new(
        Judge(plan),
        [.. plan.Routes.OrderBy(route => route.Kind).Select(route => new NamedRoute($"technician {route.Kind + 1}", [.. route.Requests.Select(Number)]))],
        [.. plan.LeftOut.Select(Number)],
        iterations);

    private static string Number(int request) => (request + 2).ToString(CultureInfo.InvariantCulture);

    /// <summary>Drives every route with the file's own numbers.</summary>
    private Verdict Judge(RoutingPlan plan)
    {
        var faults = new List<string>();
        double cost = plan.LeftOut.Sum(request => Tasks[request + 1].Price);
        int[] times = new int[Tasks.Count];
        foreach (PlannedRoute route in plan.Routes)
        {
            PlaneNode at = Tasks[0].Plane;
            double clock = at.Opens;
            foreach (int task in route.Requests.Select(request => request + 1).Append(0))
            {
                PlaneNode next = Tasks[task].Plane;
                double leg = Math.Sqrt(Math.Pow(at.X - next.X, 2) + Math.Pow(at.Y - next.Y, 2));
                if (Distance == Distance.Tenths) leg = Math.Floor((leg * 10) + 1e-7) / 10;
                cost += leg;
                double start = Math.Max(clock + leg, next.Opens);
                if (start > next.Closes + 1e-6) faults.Add($"task {task + 1} begins at {start:0.###}, after {next.Closes}");
                if (task > 0 && !Can(route.Kind, Tasks[task])) faults.Add($"technician {route.Kind + 1} lacks a skill for task {task + 1}");
                clock = start + next.Service;
                times[task]++;
                at = next;
            }
        }

        if (plan.Routes.GroupBy(route => route.Kind).Any(group => group.Count() > 1)) faults.Add("a technician has two routes");
        for (int task = 1; task < times.Length; task++)
            if (times[task] != (plan.LeftOut.Contains(task - 1) ? 0 : 1))
                faults.Add($"task {task + 1} is made {times[task]} times");
        return new Verdict(cost, faults, $"distance plus 200 + (sum of requirements)^1.5 for each task left out; {new Unit(Distance).Words}");
    }
}
