using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>A nurse-day's visits grouped by patient, with the roads between them.</summary>
internal sealed class DayGraph
{
    private readonly int[] _road;

    public DayGraph(WeekProblem problem, NurseDay day, int nearPatients)
    {
        Day = day;
        int[] patients = [.. day.Nodes.Select(n => n.Patient).Distinct().Order()];
        var place = patients.Select((p, i) => (p, i)).ToDictionary(p => p.p, p => p.i);
        Nodes = [.. day.Nodes.OrderBy(n => place[n.Patient]).ThenBy(n => n.From)];
        PatientOf = [.. Nodes.Select(n => place[n.Patient])];
        Patients = patients.Length;
        FirstNode = new int[Patients + 1];
        foreach (int p in PatientOf) FirstNode[p + 1]++;
        for (int p = 0; p < Patients; p++) FirstNode[p + 1] += FirstNode[p];
        int[] places = [.. patients.Select(p => problem.Patients[p].Place), problem.Nurses[day.Nurse].Home];
        _road = new int[places.Length * places.Length];
        for (int a = 0; a < places.Length; a++)
            for (int b = 0; b < places.Length; b++) _road[(a * places.Length) + b] = problem.Travel.Minutes(places[a], places[b]);
        Self = [.. Enumerable.Range(0, Patients).Select(Seen.Of)];
        Near = [.. Enumerable.Range(0, Patients).Select(p => NearOf(p, nearPatients))];
    }

    public NurseDay Day { get; }

    public VisitNode[] Nodes { get; }

    /// <summary>By node: the patient as numbered here.</summary>
    public int[] PatientOf { get; }

    public int Patients { get; }

    /// <summary>By patient: where her nodes begin; one more at the end.</summary>
    public int[] FirstNode { get; }

    public Seen[] Self { get; }

    /// <summary>By patient: the patients near her, herself among them, that a nurse-day standing there remembers.</summary>
    public Seen[] Near { get; }

    /// <summary>The place of home.</summary>
    public int Home => Patients;

    public int Road(int from, int to) => _road[(from * (Patients + 1)) + to];

    private Seen NearOf(int patient, int count)
    {
        Seen near = Self[patient];
        foreach (int other in Enumerable.Range(0, Patients).Where(p => p != patient).OrderBy(p => Road(patient, p)).ThenBy(p => p).Take(Math.Max(0, count - 1)))
            near = near.With(Self[other]);
        return near;
    }
}
