using System.Collections.Immutable;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Planning.Tests.Week;

/// <summary>
/// Weeks small enough to check by hand: places lie on a line, ten minutes apart, nurses live at place 0, work 08:00 to 16:00 with an hour of
/// overtime allowed, chart 15 minutes, and every task takes 10 minutes to get ready and 30 to do.
/// </summary>
internal static class SmallWeek
{
    public static WeekProblem Of(
        ImmutableArray<Nurse> nurses,
        ImmutableArray<PatientHome> patients,
        ImmutableArray<CareTask> tasks,
        int days = 3) => new()
        {
            FirstDay = new LocalDate(2027, 3, 8),
            DayCount = days,
            Travel = new Line(),
            Nurses = nurses,
            Patients = patients,
            Tasks = tasks,
            Rules = new PlanningRules(15, 660, 60, 10),
        };

    public static Nurse Nurse(string id, params int[] days) => new()
    {
        Id = id,
        Name = "Nurse " + id,
        Home = 0,
        Shifts = [.. days.Select(d => new Shift(d, At(d, 8), At(d, 16), At(d, 17)))],
        Skills = ["PICC"],
        Licences = [new Licence("Marrow", int.MaxValue)],
    };

    public static PatientHome Patient(string id, int place) => new() { Id = id, Name = "Patient " + id, Place = place, State = "Marrow" };

    /// <summary>A task of the patient, open from the first day, late after the last one.</summary>
    public static CareTask Task(string id, string patient, int firstDay = 0, int lastDay = 0) => new()
    {
        Id = id,
        Patient = patient,
        Label = "dressing",
        Opens = firstDay * 1440,
        LateFrom = (lastDay + 1) * 1440,
        SetupMinutes = 10,
        WorkMinutes = 30,
        Skills = ["PICC"],
        Weight = 5,
    };

    public static PlannedVisit Visit(string id, string patient, string nurse, int start, params string[] tasks) => new()
    {
        Id = id,
        Patient = patient,
        Nurse = nurse,
        Start = start,
        Minutes = 10 + (30 * tasks.Length),
        Tasks = [.. tasks],
    };

    public static WeekPlan Plan(params PlannedVisit[] visits) => new([.. visits], [], default);

    public static int At(int day, int hour, int minute = 0) => (day * 1440) + (hour * 60) + minute;

    /// <summary>Places on a line, ten minutes apart; five minutes within one place.</summary>
    private sealed class Line : ITravelTimes
    {
        public int Minutes(int from, int to) => from == to ? 5 : 10 * Math.Abs(from - to);
    }
}
