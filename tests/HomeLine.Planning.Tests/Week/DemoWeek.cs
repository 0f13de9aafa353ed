using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Planning.Tests.Week;

/// <summary>
/// The demonstration week as a planning problem. Homes receive from 08:00 to 20:00; dressing-like care has weight 5, twice that with parenteral
/// nutrition; the weights, like everything here, are invented.
/// </summary>
internal static class DemoWeek
{
    private static readonly string[] DayNames = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
    private static readonly string[][] NurseRows = Rows(DemoTables.Nurses), PatientRows = Rows(DemoTables.Patients);

    public static LocalDate Monday { get; } = new(2027, 3, 8);

    public static ImmutableArray<MapPoint> Places { get; } =
    [
        .. NurseRows.Select(r => Point(r[2].Split(' '))),
        .. PatientRows.Select(r => Point([r[3], r[4]])),
        new(24, 14), new(30, 34),
    ];

    public static ImmutableArray<Nurse> Nurses { get; } = [.. NurseRows.Select(NurseOf)];

    public static ImmutableArray<PatientHome> Patients { get; } = [.. PatientRows.Select(PatientOf)];

    public static ImmutableArray<CareTask> Tasks { get; } = [.. TasksOf()];

    public static WeekPlan Published { get; } = new([.. PublishedVisits()], [], default);

    public static WeekProblem Problem { get; } = new()
    {
        FirstDay = Monday,
        DayCount = 7,
        Now = Minute(0, "06:00"),
        Travel = new MapTravel(Places, DemoMap.Barriers, MapSettings.Default),
        Nurses = Nurses,
        Patients = Patients,
        Tasks = Tasks,
        Rules = new PlanningRules(15, 660, 60, 10),
        DropPoints =
        [
            new("branch", Places.Length - 2, [.. Enumerable.Range(0, 5).Select(d => Minute(d, "15:30")), Minute(5, "11:30")]),
            new("Mossgate clinic", Places.Length - 1, [.. Enumerable.Range(0, 5).Select(d => Minute(d, "14:00"))]),
        ],
    };

    public static int Minute(int day, string time) =>
        (day * 1440) + (int.Parse(time[..2], CultureInfo.InvariantCulture) * 60) + int.Parse(time[3..], CultureInfo.InvariantCulture);

    private static string[][] Rows(string table) =>
        [.. table.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split('|', StringSplitOptions.TrimEntries))];

    private static MapPoint Point(string[] xy) =>
        new(double.Parse(xy[0], CultureInfo.InvariantCulture), double.Parse(xy[1], CultureInfo.InvariantCulture));

    private static Nurse NurseOf(string[] row, int index) => new()
    {
        Id = row[0],
        Name = row[1],
        Home = index,
        Shifts = [.. row[3].Split(';', StringSplitOptions.TrimEntries).SelectMany(ShiftsOf)],
        Skills = [.. row[4].Split(' ')],
        Licences = [.. row[5].Split(' ').Select(s => new Licence(s, int.MaxValue))],
        Traits = [.. row[6].Split(' ')],
    };

    private static IEnumerable<Shift> ShiftsOf(string text)
    {
        string[] words = text.Split(' '), hours = words[^1].Split('-');
        return words[..^1].Select(w => Array.IndexOf(DayNames, w)).Select(d =>
            new Shift(d, Minute(d, hours[0]), Minute(d, hours[1]), Minute(d, hours[1])));
    }

    private static PatientHome PatientOf(string[] row, int index) => new()
    {
        Id = "P" + row[0],
        Name = row[1],
        Place = NurseRows.Length + index,
        State = row[2] == "WES" ? "Westling" : "Marrow",
        StartSpans = [.. Enumerable.Range(0, 7).Select(d => new Span(Minute(d, "08:00"), Minute(d, "20:00")))],
        PreferredTraits = row[0] == "14" ? ["female"] : [],
        ExcludedTraits = row[0] == "15" ? ["allergy:cat"] : [],
        InterpreterUnless = row[0] == "22" ? "language:vi" : null,
        InterpreterMinutes = row[0] == "22" ? 20 : 0,
        CrewSize = row[0] == "16" ? 2 : 1,
    };

    private static IEnumerable<CareTask> TasksOf()
    {
        var count = new Dictionary<string, int>();
        foreach (string[] row in Rows(DemoTables.Needs))
        {
            string patient = "P" + row[0];
            int number = count[patient] = count.GetValueOrDefault(patient) + 1;
            yield return TaskOf(row, patient, number);
        }
    }

    private static CareTask TaskOf(string[] row, string patient, int number)
    {
        string[] days = row[2].Split([" or ", "-"], StringSplitOptions.None), skills = row[6].Split(' ');
        int first = Array.IndexOf(DayNames, days[0]), last = Array.IndexOf(DayNames, days[^1]);
        int daysLate = patient switch { "P09" => 1, "P31" => 3, "P30" => 5, _ => 0 };
        int[] allowed = row[2].Contains("or", StringComparison.Ordinal) ? [first, last] : [.. Enumerable.Range(first, last - first + 1)];
        bool critical = skills.Contains("INO") || row[1].Contains("dose", StringComparison.Ordinal);
        return new CareTask
        {
            Id = $"{patient}-{number}",
            Patient = patient,
            Label = row[1],
            Opens = first * 1440,
            LateFrom = daysLate > 0 ? (1 - daysLate) * 1440 : (last + 1) * 1440,
            HardLatest = patient is "P12" or "P18" || critical ? ((last + 1) * 1440) - 1 : int.MaxValue,
            StartSpans = row[3].Length == 0 ? [] : [.. allowed.Select(d => new Span(Minute(d, row[3]), Minute(d, row[4])))],
            SetupMinutes = 15,
            WorkMinutes = int.Parse(row[5], CultureInfo.InvariantCulture) - 15,
            Skills = [.. skills],
            Critical = critical,
            Weight = skills.Contains("PN") ? 10 : 5,
            DrawToDropMinutes = row[1].Contains("trough", StringComparison.Ordinal) ? 120 : null,
            After = patient == "P06" && number > 1 ? $"P06-{number - 1}" : null,
            MinGap = patient == "P06" && number > 1 ? 1440 : 0,
            MaxGap = patient == "P06" && number > 1 ? 2880 : int.MaxValue,
            GapInDays = true,
        };
    }

    private static IEnumerable<PlannedVisit> PublishedVisits()
    {
        var tasks = Tasks.GroupBy(t => t.Patient).ToDictionary(g => g.Key, g => new Queue<CareTask>(g));
        var rows = Rows(DemoTables.Published);
        foreach (string[] row in rows)
        {
            int day = Array.IndexOf(DayNames, row[0]);
            foreach (string entry in row[2].Split(',', StringSplitOptions.TrimEntries).Where(e => !e.EndsWith("(escort)", StringComparison.Ordinal)))
            {
                string patient = entry[6..];
                CareTask task = tasks[patient].Dequeue();
                yield return new PlannedVisit
                {
                    Id = $"{patient}-{row[0]}",
                    Patient = patient,
                    Nurse = row[1],
                    Second = patient == "P16" ? "N6" : null,
                    Start = Minute(day, entry[..5]),
                    Minutes = task.SetupMinutes + task.WorkMinutes,
                    Tasks = [task.Id],
                    Promise = PromiseState.Told,
                    ToldFrom = Minute(day, entry[..5]),
                };
            }
        }
    }
}
