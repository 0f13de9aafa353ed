using HomeLine.Planning.Problem;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Patients of an invented week: hours at which they receive, wishes, and the nurses they know, who live near.</summary>
internal static class InventedPatient
{
    public static PatientHome Of(Draw draw, int index, int nurses, MapPoint[] homes, Nurse[] staff)
    {
        MapPoint home = homes[nurses + index];
        int[] near = [.. Enumerable.Range(0, nurses).OrderBy(n => Square(homes[n], home)).ThenBy(n => n).Take(4)];
        int known = draw.Percent(75) ? 1 + draw.Below(3) : 0;
        int offset = draw.Below(2);
        (int from, int to) = draw.Below(10) switch { < 2 => (8, 12), < 3 => (12, 20), _ => (8, 20) };
        return new PatientHome
        {
            Id = $"P{index + 1}",
            Name = $"Patient {index + 1}",
            Place = nurses + index,
            State = "Marrow",
            StartSpans = [.. Enumerable.Range(0, InventedWeek.Days).Select(d => new Span(InventedWeek.At(d, from), InventedWeek.At(d, to)))],
            PreferredTraits = draw.Percent(15) ? ["female"] : [],
            ExcludedTraits = draw.Percent(4) ? ["allergy:cat"] : [],
            RefusedNurses = draw.Percent(3) ? [staff[near[^1]].Id] : [],
            KnownNurses = [.. near.Skip(offset).Take(known).Select(n => staff[n].Id)],
            InterpreterUnless = draw.Percent(6) ? "language:es" : null,
            InterpreterMinutes = 20,
            CrewSize = draw.Percent(1) ? 2 : 1,
            Allowances = [new WeekAllowance(0, InventedWeek.Days - 1, 8)],
        };
    }

    private static double Square(MapPoint a, MapPoint b) => ((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y));
}
