using System.Collections.Immutable;
using HomeLine.Agency.Due;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Supervision;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>The working draft as the page draws it.</summary>
/// <param name="FirstDay">The week.</param>
/// <param name="Revision">The draft's revision; give it back with each change.</param>
/// <param name="Version">The published version it was made from; 0 for none.</param>
/// <param name="Days">The days, in order.</param>
/// <param name="Nurses">A row for each nurse.</param>
/// <param name="Check">The checker's verdict on what lies ahead.</param>
/// <param name="Log">The changes.</param>
/// <param name="Waiting">Changes of a dropped draft that can be brought over.</param>
/// <param name="ChangedAt">When it was changed last; empty while nobody has.</param>
/// <param name="ChangedBy">By whom.</param>
public sealed record DraftBoard(
    LocalDate FirstDay,
    int Revision,
    int Version,
    ImmutableArray<LocalDate> Days,
    ImmutableArray<DraftNurse> Nurses,
    CheckReport Check,
    EditLog Log,
    int Waiting,
    Instant? ChangedAt,
    string ChangedBy)
{
    /// <summary>Free slots of each day for care nobody planned, against the reserve of policy.</summary>
    public ImmutableArray<DayReserve> Reserve { get; init; } = [];

    public static DraftBoard Of(WorkingWeek week)
    {
        ImmutableArray<LocalDate> days = [.. Enumerable.Range(0, 7).Select(week.FirstDay.PlusDays)];
        var patients = week.Agency.Roster.Patients.ToDictionary(p => p.Id);
        var tasks = week.Hand.Problem.Tasks.ToDictionary(t => t.Id);
        var plans = week.Hand.Visits.ToDictionary(v => v.Id);
        ILookup<(string, LocalDate), WeekVisit> seats = week.Week.Visits
            .SelectMany(v => v.Second is { } second ? new[] { (v.Nurse, v), (second, v) } : [(v.Nurse, v)])
            .ToLookup(s => (s.Item1, s.v.Day), s => s.v);
        TripTimes trips = TripTimes.Of(week.Hand.Problem);
        return new DraftBoard(
            week.FirstDay, week.Revision, week.Week.Version, days,
            [.. week.Agency.Roster.Nurses.Select(n => new DraftNurse(n.Id, n.Name, n.Credential, [.. days.Select(d => Day(n, d))]) { IsSupervised = Supervised.Needs(n), Supervises = Supervised.BySupervisor(n), Areas = AreasOf.Nurse(n, week.Week, patients, week.Agency.Roster.Map) })],
            week.Hand.Check, week.Log, week.Log.Waiting(week.Published?.Version ?? 0).Length, week.ChangedAt, week.ChangedBy)
        {
            Reserve = DayReserve.Of(week.Agency.Roster, week.Agency.Files.Policy, week.Week, week.Needs.Roads, week.Agency.Now.InZone(week.Agency.Roster.Profile.Zone).LocalDateTime),
        };

        DraftDay Day(NurseFile nurse, LocalDate day)
        {
            Shift? shift = week.Hand.Problem.Nurses.First(n => n.Id == nurse.Id).Shifts.FirstOrDefault(s => s.Day == week.Calendar.Day(day) && !s.OnCall);
            var stops = ImmutableArray.CreateBuilder<DraftStop>();
            var handIns = HandIns.Of(week.Agency.Roster, week.Agency.Files, week.Week, nurse.Id, day, week.Needs.Roads).ToDictionary(h => h.After);
            int home = week.Needs.Roads.PlaceOfNurse(nurse.Id), here = home, driving = 0, leave = 0;
            foreach (WeekVisit visit in seats[(nurse.Id, day)].OrderBy(v => v.Start))
            {
                handIns.TryGetValue(visit.Id, out HandIn? handIn);
                int there = week.Needs.Roads.PlaceOfPatient(visit.Patient.Value), start = week.Calendar.Minute(visit.Day, visit.Start);
                int travel = stops.Count == 0 ? trips.Reaching(here, there, start) : trips.Leaving(here, there, leave);
                (here, leave) = (there, start + visit.Minutes + week.Hand.Problem.Rules.DocumentationMinutes);
                int toDrop = handIn is null ? 0 : trips.Leaving(here, handIn.Place, leave);
                stops.Add(Stop(nurse, visit, travel) with { HandIn = handIn, TravelToHandIn = toDrop });
                driving += travel + toDrop;
                if (handIn is not null) (here, leave) = (handIn.Place, week.Calendar.Minute(day, handIn.Leave));
            }

            int wayHome = stops.Count == 0 ? 0 : trips.Leaving(here, home, leave);
            driving += wayHome;
            int back = stops.Count == 0 ? 0 : leave + wayHome - week.Calendar.Minute(day, LocalTime.Midnight);
            return new DraftDay(
                day,
                shift is null ? null : week.Calendar.Local(shift.From).TimeOfDay,
                shift is null ? null : week.Calendar.Local(shift.To).TimeOfDay,
                shift is null ? NurseCalendar.AbsenceOn(nurse, day) : "",
                week.Hand.BreakOf(nurse.Id, week.Calendar.Day(day)) is { } pause ? week.Calendar.Local(pause.From).TimeOfDay : null,
                shift?.LunchMinutes ?? 0,
                stops.ToImmutable(),
                driving,
                back,
                shift is null ? 0 : Math.Max(0, back - (shift.To % 1440)))
            {
                Paid = PaidDay.Of(nurse, [.. stops.Select(s => new DayLeg(s.Visit, s.TravelBefore, s.HandIn, s.TravelToHandIn))], driving, week.Needs.Roads, week.Agency.Files.Policy),
            };
        }

        DraftStop Stop(NurseFile nurse, WeekVisit visit, int travel)
        {
            Patient patient = patients[visit.Patient];
            bool late = plans.TryGetValue(visit.Id, out PlannedVisit? plan) && plan.Tasks.Any(t => tasks.TryGetValue(t, out CareTask? task) && plan.Start >= task.LateFrom);
            WeekVisit? told = week.Promised(visit.Id);
            return new DraftStop(
                visit, patient.Name, DueRows.PlaceOf(patient, week.Agency.Roster.Map), visit.Second == nurse.Id, travel, late,
                week.WhyItStays(visit), week.Log.Pinned.Contains(visit.Id), told,
                told is null ? week.Published is not null : VisitWords.Place(told) != VisitWords.Place(visit));
        }
    }
}

/// <summary>One nurse's week.</summary>
public sealed record DraftNurse(string Id, string Name, string Credential, ImmutableArray<DraftDay> Days)
{
    /// <summary>The towns she belongs to this week: the one nearest her home first, then those of her visits.</summary>
    public ImmutableArray<string> Areas { get; init; } = [];

    /// <summary>She works under supervision: somebody goes along now and then.</summary>
    public bool IsSupervised { get; init; }

    /// <summary>She may go along to supervise.</summary>
    public bool Supervises { get; init; }
}

/// <summary>One nurse's day.</summary>
/// <param name="Day">The day.</param>
/// <param name="ShiftFrom">Start of the shift; empty when she does not work.</param>
/// <param name="ShiftTo">End of the shift.</param>
/// <param name="Absence">Why she does not work.</param>
/// <param name="BreakFrom">Where the break falls between visits.</param>
/// <param name="BreakMinutes">How long it is.</param>
/// <param name="Stops">Her visits, by start.</param>
/// <param name="DrivingMinutes">All driving.</param>
/// <param name="HomeAgain">Minute of the day she is home; 0 without a visit.</param>
/// <param name="OvertimeMinutes">Minutes past the shift's end.</param>
public sealed record DraftDay(
    LocalDate Day, LocalTime? ShiftFrom, LocalTime? ShiftTo, string Absence, LocalTime? BreakFrom, int BreakMinutes,
    ImmutableArray<DraftStop> Stops, int DrivingMinutes, int HomeAgain, int OvertimeMinutes)
{
    /// <summary>What of it is paid, by estimate.</summary>
    public PaidDay Paid { get; init; } = PaidDay.None;

    /// <summary>Minutes in homes.</summary>
    public int HomeMinutes => Stops.Sum(s => s.Visit.Minutes);
}

/// <summary>One visit of a nurse's day.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="PatientName">Name as shown.</param>
/// <param name="Place">Town.</param>
/// <param name="AsSecond">She comes as the second person.</param>
/// <param name="TravelBefore">Minutes of driving before it.</param>
/// <param name="IsLate">Some of its care is late.</param>
/// <param name="WhyItStays">Why it cannot be moved; empty when it can.</param>
/// <param name="IsPinned">People pinned it.</param>
/// <param name="Told">What was published of it; empty for a new one.</param>
/// <param name="IsChanged">It is not where it was published.</param>
public sealed record DraftStop(
    WeekVisit Visit, string PatientName, string Place, bool AsSecond, int TravelBefore, bool IsLate, string WhyItStays, bool IsPinned, WeekVisit? Told, bool IsChanged)
{
    public LocalTime End => Visit.Start.PlusMinutes(Visit.Minutes);

    /// <summary>Where specimens are handed in after it; empty for nowhere.</summary>
    public HandIn? HandIn { get; init; }

    /// <summary>Minutes of driving there.</summary>
    public int TravelToHandIn { get; init; }
}
