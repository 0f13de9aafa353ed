using System.Collections.Immutable;
using HomeLine.Planning.Routing.Shifts;

namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>A day laid out for the search, and the search's answer as rows of the set.</summary>
internal sealed class UnifiedModel
{
    public UnifiedModel(UnifiedDay day)
    {
        Day = day;
        Problem = Laid();
    }

    public UnifiedDay Day { get; }

    public ShiftProblem Problem { get; }

    public IReadOnlyList<UnifiedRow> Rows(ShiftPlan plan) => [.. plan.Stops.SelectMany(stop => Rows(stop, Day.Patients[stop.Visit]))];

    private IEnumerable<UnifiedRow> Rows(ShiftStop stop, UnifiedPatient patient)
    {
        string person = Day.People[stop.Person].Id;
        if (stop.LunchStart is { } lunch) yield return new UnifiedRow(person, patient.Id, UnifiedDay.LunchRow, lunch, lunch + Day.Lunch!.Minutes);
        (string service, int duration) = patient.Services[stop.Second ? 1 : 0];
        yield return new UnifiedRow(person, patient.Id, service, stop.Start, stop.Start + duration);
    }

    private ShiftProblem Laid() => new(
        Day.Distances.Length,
        [.. Day.Distances.SelectMany(row => row)],
        [.. Day.People.Select(person => new ShiftPerson(person.Start, person.End, person.Opens, person.Closes, person.Lunch))],
        [.. Day.Patients.Select(Visit)],
        [.. Day.Patients.Select(patient => patient.Optional)],
        Prices())
    {
        WindowsBoundTheEnd = Day.BoundTheEnd,
        LeaveWithTheShift = Day.LeaveWithTheShift,
        Lunch = Day.Lunch is { } lunch ? new ShiftLunch(lunch.Opens, Day.BoundTheEnd ? lunch.Closes - lunch.Minutes : lunch.Closes, lunch.Minutes) : null,
    };

    // Services that have nothing to do with each other are given by two people in one window: the authors' validator does not ask for it, but every published solution does it.
    private ShiftVisit Visit(UnifiedPatient patient, int index)
    {
        var visit = new ShiftVisit(
            index,
            patient.Place,
            [.. patient.Windows.Select(window => new ShiftWindow(window.Opens, window.Closes))],
            Part(patient, 0),
            patient.Services.Length > 1 ? Part(patient, 1) : null);
        return patient.Services.Length == 1 ? visit : patient.Gap is { } gap ? visit with { LeastGap = gap.Least, MostGap = gap.Most } : visit.InOneWindow();
    }

    private ShiftPart Part(UnifiedPatient patient, int service)
    {
        ImmutableArray<int> preferred = [.. Enumerable.Range(0, Day.People.Count).Where(p => patient.Preferred.Contains(Day.People[p].Id))];
        // A wish for somebody who does not work that day is a wish that nobody meets.
        return new ShiftPart(patient.Services[service].Duration, [.. Day.Able(patient, patient.Services[service].Service)], patient.Preferred.Length > 0 && preferred.Length == 0 ? [-1] : preferred);
    }

    private ShiftPrices Prices() => new()
    {
        Travel = Price("travel_time"),
        Lateness = Price("total_tardiness"),
        LargestLateness = Price("highest_tardiness"),
        Waiting = Price("total_waiting_time"),
        Overtime = Price("total_extra_time"),
        LargestIdle = Price("max_idle_time"),
        NotPreferred = Price("caregiver_preferences"),
        LeftOut = Price("optional_patients"),
        MissedLunch = Price("missed_lunch_break"),
        Unevenness = Price("workload_balance"),
    };

    private long Price(string component) => Day.Weight(component) is { Hard: false } weight ? weight.Price : ShiftPrices.Forbidden;
}
