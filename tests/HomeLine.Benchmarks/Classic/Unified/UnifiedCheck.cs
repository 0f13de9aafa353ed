namespace HomeLine.Benchmarks.Classic.Unified;

/// <summary>
/// Judges rows (who, whom, service, start, end) from the file's own numbers, component by component as the set's README describes them; shares nothing with the search.
/// It gives the published value for every solution published with the set. Two rules are ours, because all of those keep them: two services of one patient are given by
/// two people, and, where nothing else binds them, in the same window.
/// </summary>
internal static class UnifiedCheck
{
    public const string Words = "weighted sum named in the file; whole minutes of the file's matrix; a start belongs to the last window open by then; lunch excluded from waiting; two services of a patient by two people, independent ones in the same window; left as late as the first stop allows, or with the shift in the files of older origin";

    private const double Tolerance = 1e-6;

    public static Verdict Judge(UnifiedDay day, IReadOnlyList<UnifiedRow> rows)
    {
        var sums = new UnifiedSums(day);
        foreach (UnifiedRow row in rows.Where(row => day.People.All(person => person.Id != row.Person))) sums.Faults.Add($"{row.Person} does not work that day");
        for (int p = 0; p < day.People.Count; p++) Drive(day, p, [.. rows.Where(row => row.Person == day.People[p].Id).OrderBy(row => row.Start)], sums);
        foreach (UnifiedPatient patient in day.Patients) Cover(patient, [.. rows.Where(row => row.Patient == patient.Id && row.Service != UnifiedDay.LunchRow)], sums);
        return new Verdict(sums.Total(), sums.Faults, Words);
    }

    private static void Drive(UnifiedDay day, int p, UnifiedRow[] rows, UnifiedSums sums)
    {
        UnifiedPerson person = day.People[p];
        if (person.Lunch && rows.All(row => row.Service != UnifiedDay.LunchRow)) sums.MissedLunches++;
        if (rows.Length == 0)
        {
            sums.Idle[p] = person.Closes - person.Opens;
            return;
        }

        int at = person.Start;
        double free = day.LeaveWithTheShift ? person.Opens : rows[0].Start - day.Distances[at][Place(day, rows[0], sums)];
        if (free < person.Opens - Tolerance) sums.Faults.Add($"{person.Id} would have to leave at {free}, before the shift");
        sums.Idle[p] = free - person.Opens;
        for (int i = 0; i < rows.Length; i++)
        {
            UnifiedRow row = rows[i];
            int place = Place(day, row, sums);
            double leg = day.Distances[at][place], wait = row.Start - free - leg;
            sums.Travel += leg;
            sums.Work[p] += leg;
            if (wait < -Tolerance) sums.Faults.Add($"{person.Id} cannot be at {row.Patient} at {row.Start}");
            sums.Idle[p] += wait;
            if (i != 1 || rows[0].Service != UnifiedDay.LunchRow) sums.Waiting += wait;
            if (row.Service == UnifiedDay.LunchRow) Eat(day, person, row, sums);
            else Serve(day, p, row, sums);
            free = row.End;
            at = place;
        }

        double home = day.Distances[at][person.End];
        sums.Travel += home;
        sums.Work[p] += home;
        sums.Overtime += Math.Max(0, free + home - person.Closes);
        sums.Idle[p] += Math.Max(0, person.Closes - free - home);
    }

    private static int Place(UnifiedDay day, UnifiedRow row, UnifiedSums sums)
    {
        if (day.Patients.FirstOrDefault(patient => patient.Id == row.Patient) is { } known) return known.Place;
        sums.Faults.Add($"{row.Patient} is no patient");
        return 0;
    }

    private static void Eat(UnifiedDay day, UnifiedPerson person, UnifiedRow row, UnifiedSums sums)
    {
        if (day.Lunch is not { } lunch || !person.Lunch)
        {
            sums.Faults.Add($"{person.Id} has no right to lunch");
            return;
        }

        if (row.Start < lunch.Opens - Tolerance || (day.BoundTheEnd ? row.End : row.Start) > lunch.Closes + Tolerance || row.End - row.Start < lunch.Minutes - Tolerance)
            sums.Faults.Add($"{person.Id}: lunch from {row.Start} to {row.End} is too early, too late or too short");
    }

    private static void Serve(UnifiedDay day, int p, UnifiedRow row, UnifiedSums sums)
    {
        if (day.Patients.FirstOrDefault(one => one.Id == row.Patient) is not { } patient) return;
        sums.Work[p] += row.End - row.Start;
        if (!day.Able(patient, row.Service).Contains(p)) sums.Faults.Add($"{row.Person} may not give {row.Service} to {row.Patient}");
        if (patient.Preferred.Length > 0 && !patient.Preferred.Contains(row.Person)) sums.NotPreferred++;
        if (row.Start < patient.Windows[0].Opens - Tolerance) sums.Faults.Add($"{row.Patient} is begun at {row.Start}, before the first window opens");
        (int Opens, int Closes) window = patient.Windows.LastOrDefault(one => one.Opens <= row.Start, patient.Windows[0]);
        double late = Math.Max(0, (day.BoundTheEnd ? row.End : row.Start) - window.Closes);
        sums.Lateness += late;
        sums.LargestLateness = Math.Max(sums.LargestLateness, late);
    }

    private static void Cover(UnifiedPatient patient, UnifiedRow[] rows, UnifiedSums sums)
    {
        if (rows.Length == 0)
        {
            sums.LeftOut++;
            if (!patient.Optional) sums.Faults.Add($"{patient.Id} is left out");
            return;
        }

        foreach (UnifiedRow row in rows.Where(row => patient.Services.All(service => service.Service != row.Service))) sums.Faults.Add($"{patient.Id} did not ask for {row.Service}");
        foreach ((string service, int duration) in patient.Services)
        {
            UnifiedRow[] given = [.. rows.Where(row => row.Service == service)];
            if (given.Length != 1) sums.Faults.Add($"{patient.Id}: {service} is given {given.Length} times");
            else if (Math.Abs(given[0].End - given[0].Start - duration) > Tolerance) sums.Faults.Add($"{patient.Id}: {service} takes {given[0].End - given[0].Start}, {duration} asked");
        }

        UnifiedRow[] starts = [.. patient.Services.SelectMany(service => rows.Where(row => row.Service == service.Service))];
        if (starts.Length != 2) return;
        (UnifiedRow first, UnifiedRow second) = (starts[0], starts[1]);
        if (first.Person == second.Person) sums.Faults.Add($"{patient.Id}: one person for both services");
        if (patient.Gap is not { } gap)
        {
            if (patient.Windows.Count(window => window.Opens <= first.Start) != patient.Windows.Count(window => window.Opens <= second.Start)) sums.Faults.Add($"{patient.Id}: the two services are in different windows");
            return;
        }

        if (second.Start - first.Start < gap.Least - Tolerance || second.Start - first.Start > gap.Most + Tolerance)
            sums.Faults.Add($"{patient.Id}: {second.Start - first.Start} between the two starts, {gap.Least} to {gap.Most} allowed");
    }
}
