using System.Collections.Immutable;
using HomeLine.Planning.Routing.Crews;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The home-care problem with skills, soft windows and visits for two (Mankowska, Meisel and Bierwirth 2014); searched in thousandths.</summary>
internal sealed record CrewInstance(
    string Name,
    IReadOnlyList<CrewPatient> Patients,
    IReadOnlyList<(string Id, string[] Abilities)> Caregivers,
    double[][] Distances) : Instance(Name, "homecare")
{
    private const int PerOne = 1000;

    public override IReadOnlyList<string> Conventions => ["hhc-sum3"];

    public override string Class => $"{Patients.Count} patients";

    public CrewProblem Problem() => new(
        Distances.Length,
        [.. Distances.SelectMany(row => row.Select(Whole))],
        Caregivers.Count,
        [.. Patients.Select((patient, i) => new CrewVisit(
            i + 1,
            Whole(patient.Opens),
            Whole(patient.Closes),
            Part(patient.Parts[0]),
            patient.Parts.Length > 1 ? Part(patient.Parts[1]) : null,
            Whole(patient.LeastGap),
            Whole(patient.MostGap)))]);

    public override Solved Solve(Wanted wanted)
    {
        (CrewPlan plan, long iterations) = Run(wanted);
        return new Solved(
            CrewCheck.Judge(this, plan),
            [.. Caregivers.Select((caregiver, c) => new NamedRoute(caregiver.Id, [.. plan.Stops.Where(stop => stop.First == c || stop.Second == c).Select(stop => Patients[stop.Visit].Id)])).Where(route => route.Stops.Count > 0)],
            [],
            iterations);
    }

    private (CrewPlan Plan, long Iterations) Run(Wanted wanted)
    {
        try
        {
            CrewProblem problem = Problem();
            var islands = new Islands<CrewPlan>(wanted);
            return islands.Best(
                (seed, budget) =>
                {
                    var search = new CrewSearch(problem, seed);
                    search = new CrewSearch(problem, seed)
                    {
                        FirstTemperature = wanted.Tuning.First ?? search.FirstTemperature,
                        LastTemperature = wanted.Tuning.Last ?? search.LastTemperature,
                    };
                    return (search.Run(budget), search.Iterations);
                },
                plan => plan.Cost);
        }
        catch (ArgumentException fault)
        {
            throw new UnreadableFileException($"{Name}: {fault.Message}", fault);
        }
    }

    private CrewPart Part((string Service, double Duration) part)
    {
        ImmutableArray<int> able = [.. Enumerable.Range(0, Caregivers.Count).Where(c => Caregivers[c].Abilities.Contains(part.Service))];
        return new CrewPart(Whole(part.Duration), able);
    }

    private static int Whole(double number) => (int)Math.Round(number * PerOne);
}
