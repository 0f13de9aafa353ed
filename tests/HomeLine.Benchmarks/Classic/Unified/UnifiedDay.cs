namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>
/// One day of the unified home-care problem as the file has it (Ceschia and others 2026): shifts, overtime, lunch, preferred people, an even load, two windows a day,
/// visits for two and patients who may be left out.
/// </summary>
/// <param name="Name">Name of the instance.</param>
/// <param name="BoundTheEnd">Whether windows bound the end of service and not its start.</param>
/// <param name="LeaveWithTheShift">Whether everybody leaves as the shift begins, as in the files that come from an older set; otherwise as late as the first stop allows.</param>
/// <param name="Weights">Weight of each component of the cost.</param>
/// <param name="People">Who works.</param>
/// <param name="Patients">Who is visited.</param>
/// <param name="Lunch">When lunch can be taken, or null.</param>
/// <param name="Distances">Minutes on the road between places.</param>
internal sealed record UnifiedDay(
    string Name,
    bool BoundTheEnd,
    bool LeaveWithTheShift,
    IReadOnlyDictionary<string, UnifiedWeight> Weights,
    IReadOnlyList<UnifiedPerson> People,
    IReadOnlyList<UnifiedPatient> Patients,
    UnifiedLunch? Lunch,
    int[][] Distances)
{
    /// <summary>Name of a row that is a lunch and no service.</summary>
    public const string LunchRow = "lunch_break";

    public UnifiedWeight Weight(string component) => Weights.TryGetValue(component, out UnifiedWeight weight) ? weight : new UnifiedWeight(0, false, Asked: false);

    /// <summary>Who may give a service to a patient at all: able, not incompatible, and preferred where a wish is no matter of cost.</summary>
    public IEnumerable<int> Able(UnifiedPatient patient, string service)
    {
        UnifiedWeight wish = Weight("caregiver_preferences");
        bool must = (wish.Hard || !wish.Asked) && patient.Preferred.Length > 0;
        return Enumerable.Range(0, People.Count).Where(p => People[p].Abilities.Contains(service) && !patient.Incompatible.Contains(People[p].Id) && (!must || patient.Preferred.Contains(People[p].Id)));
    }
}

/// <summary>How much a component of the cost weighs.</summary>
/// <param name="Price">Cost of one unit.</param>
/// <param name="Hard">Whether it must be 0.</param>
/// <param name="Asked">Whether the file names the component at all.</param>
internal readonly record struct UnifiedWeight(int Price, bool Hard, bool Asked = true);

/// <summary>Somebody who works.</summary>
internal sealed record UnifiedPerson(string Id, string[] Abilities, int Start, int End, int Opens, int Closes, bool Lunch);

/// <summary>Somebody who is visited. The gap between two services is from the first start to the second; null where they have nothing to do with each other.</summary>
internal sealed record UnifiedPatient(string Id, int Place, (int Opens, int Closes)[] Windows, (string Service, int Duration)[] Services, (int Least, int Most)? Gap, string[] Preferred, string[] Incompatible, bool Optional);

/// <summary>Lunch.</summary>
internal sealed record UnifiedLunch(int Opens, int Closes, int Minutes);

/// <summary>A row of a solution: who gives which service to whom, or has lunch at whose place.</summary>
internal sealed record UnifiedRow(string Person, string Patient, string Service, double Start, double End);
