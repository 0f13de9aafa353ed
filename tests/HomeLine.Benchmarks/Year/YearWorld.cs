using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>One way of planning in one invented year: the ledger as it grows, the week as it stands, and what is driven and done each day.</summary>
internal sealed class YearWorld
{
    private const string Pass = "Larch Pass";
    private readonly AgencyRoster _agency;
    private readonly InventedYear _year;
    private readonly Dictionary<PatientId, List<LineEvent>> _ledgers = [];
    private int _entries;

    public YearWorld(AgencyRoster agency, InventedYear year, string name)
    {
        (_agency, _year, Figures) = (agency, year, new YearFigures(name));
        Week = new PlannedWeek { FirstDay = year.First, Visits = [] };
        Roster = agency;
        Files = CareFiles.Of(agency);
    }

    public YearFigures Figures { get; }

    public InventedYear Year => _year;

    /// <summary>The week that runs. What is put here is told to the families.</summary>
    public PlannedWeek Week { get; private set; }

    public AgencyRoster Roster { get; private set; }
    public CareFiles Files { get; private set; }
    public LocalDate Today { get; private set; }
    public Instant Now { get; private set; }

    /// <summary>Zone of the branch.</summary>
    public DateTimeZone Zone => _agency.Profile.Zone;

    /// <summary>Sets the clock and reads everything as it stands then: who is a patient, who works, which roads are open.</summary>
    public void At(LocalDate day, LocalTime time)
    {
        (Today, Now) = (day, day.At(time).InZoneLeniently(Zone).ToInstant());
        ImmutableArray<YearPatient> people = [.. _year.People.Where(p => p.From <= day && p.Through >= day)];
        foreach (YearPatient one in people)
            if (!_ledgers.ContainsKey(one.Patient.Id)) _ledgers.Add(one.Patient.Id, [.. one.Events]);
        // Whoever left the agency's care leaves the week too; nobody has to be called for that.
        var here = people.Select(p => p.Patient.Id).ToHashSet();
        Week = Week with { Visits = Week.Visits.RemoveAll(v => !here.Contains(v.Patient)) };
        Roster = _agency with
        {
            Profile = _agency.Profile with { FixedNow = Now },
            Patients = [.. people.Select(p => p.Patient with { KnownNurses = Known(p.Patient.Id) })],
            Lines = [.. people.Select(p => p.Line)],
            Events = [.. people.SelectMany(p => _ledgers[p.Patient.Id])],
            Orders = [.. people.SelectMany(p => p.Orders)],
            Caregivers = [.. people.SelectMany(p => p.Caregivers)],
            Holds = [],
            OutsideCare = [],
            Exceptions = [],
            Infusions = [],
            Nurses = [.. _agency.Nurses.Select(n => n with { Leaves = Out(n, day) })],
            Map = RoadsOf(day),
        };
        Files = CareFiles.Of(Roster);
    }

    /// <summary>The map of a day: the pass is closed when it snows.</summary>
    public AgencyMap RoadsOf(LocalDate day) => !_year.Snows(day) ? _agency.Map : _agency.Map with
    {
        Barriers = [.. _agency.Map.Barriers.Select(b => b with { Crossings = [.. b.Crossings.Select(c => c.Name == Pass ? c with { Closed = true } : c)] })],
    };

    /// <summary>Puts a week in force; everybody who was told something else is called once.</summary>
    public void Publish(PlannedWeek week, bool isNew = false)
    {
        if (!isNew) Figures.Calls += Changes(Week, week, Today.At(Now.InZone(Zone).TimeOfDay));
        Week = week with { Version = Week.Version + 1 };
    }

    public void Enter(LineEvent entry)
    {
        _ledgers[entry.Patient].Add(entry with { Id = new EventId($"y{++_entries}") });
    }

    /// <summary>Drives and does the day as it was planned, with visits that take longer and doors that stay shut; then counts what stands late.</summary>
    public void LiveThrough(LocalDate day)
    {
        At(day, new LocalTime(6, 0));
        var roads = RoadTravel.Of(Roster);
        var calendar = new PlanCalendar(Zone, Week.FirstDay, 7);
        var done = new List<WeekVisit>();
        var away = Roster.Nurses.Where(n => !n.Leaves.IsEmpty).Select(n => n.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var route in Week.Visits.Where(v => v.Day == day && !away.Contains(v.Nurse) && Roster.Patients.Any(p => p.Id == v.Patient)).GroupBy(v => v.Nurse))
            done.AddRange(Drive(Roster.Nurses.First(n => n.Id == route.Key), [.. route.OrderBy(v => v.Start)], roads, calendar));
        Instant end = day.PlusDays(1).AtStartOfDayInZone(Zone).ToInstant();
        AgencyRoster then = Foreseen.At(Roster, [new PlannedWeek { FirstDay = Week.FirstDay, Visits = [.. done] }], end, end);
        foreach (WeekVisit visit in done) Remember(visit);
        foreach (LineEvent entry in then.Events.Skip(Roster.Events.Length)) Enter(entry);
        At(day, new LocalTime(23, 59, 59));
        CountLate(day);
    }

    private IEnumerable<WeekVisit> Drive(NurseFile nurse, ImmutableArray<WeekVisit> visits, RoadTravel roads, PlanCalendar calendar)
    {
        var map = (MapTravel)roads.Times;
        int home = roads.PlaceOfNurse(nurse.Id), at = home, minute = -1, left = -1, documentation = (int)Files.Policy.ValueOf("visit.documentation", Today);
        foreach (WeekVisit visit in visits)
        {
            int place = roads.PlaceOfPatient(visit.Patient.Value), planned = calendar.Minute(visit.Day, visit.Start), way = map.Minutes(at, place);
            if (minute < 0) left = minute = planned - way;
            Figures.Drove(map.Kilometres(at, place), way);
            int start = Math.Max(planned, minute + way);
            bool isShut = _year.IsNobodyHome(visit.Patient, visit.Day);
            minute = start + (isShut ? 10 : (int)Math.Round(visit.Minutes * _year.Stretch(visit.Patient, visit.Day)) + documentation);
            at = place;
            if (isShut)
            {
                Figures.InVain++;
                Enter(InVain(visit));
                continue;
            }

            Figures.Made(visit.Patient.Value, visit.Nurse);
            yield return visit with { Start = calendar.Local(Math.Min(start, (calendar.Day(visit.Day) * 1440) + 1435)).TimeOfDay };
        }

        int back = map.Minutes(at, home);
        Figures.Drove(map.Kilometres(at, home), back);
        WorkingTime? hours = nurse.Week.FirstOrDefault(w => w.Weekday == Today.DayOfWeek);
        int shiftEnds = hours is null ? minute : calendar.Minute(Today, hours.To);
        WeekVisit last = visits[^1];
        int wouldEnd = calendar.Minute(last.Day, last.Start) + last.Minutes + documentation + map.Minutes(roads.PlaceOfPatient(last.Patient.Value), home);
        Figures.Worked(minute + back - left, Math.Max(0, minute + back - Math.Max(shiftEnds, left)), Math.Max(0, wouldEnd - Math.Max(shiftEnds, left)));
    }

    /// <summary>What is written down when nobody opens: no clock starts anew by it.</summary>
    private LineEvent InVain(WeekVisit visit)
    {
        Instant at = visit.Day.At(visit.Start).InZoneLeniently(Zone).ToInstant();
        return new LineEvent
        {
            Id = new EventId("in vain"),
            Patient = visit.Patient,
            Line = Roster.Lines.First(l => l.Patient == visit.Patient).Id,
            Kind = LineEventKind.Missed,
            Performed = CareMoment.Exactly(at, Zone),
            RecordedAt = at,
            Performer = PerformerKind.Nurse,
            PerformerName = visit.Nurse,
        };
    }

    private void CountLate(LocalDate day)
    {
        double week = 0;
        foreach (Patient patient in Roster.Patients)
        {
            CareAnswer answer = Files.WhatIsDue(patient.Id, Now);
            foreach (Chore chore in Chore.Of(Files[patient.Id], answer))
            {
                DueWindow window = chore.Lead;
                if (window.LateFrom >= Now) continue;
                if (window.Standing == WindowStanding.Ordered)
                {
                    if (window.LastDay == day.PlusDays(-1)) Figures.MissedOrders++;
                    continue;
                }

                double hours = Math.Min(24, (Now - window.LateFrom).TotalHours);
                week += hours;
                Figures.LateList.Add($"{day:uuuu-MM-dd},{patient.Id},{window.Item},{window.Standing},{window.LateFrom},{string.Join(' ', Week.Visits.Where(v => v.Patient == patient.Id).Select(v => $"{v.Day:ddd}/{v.Nurse}"))}");
                Figures.Late(hours, window.Standing == WindowStanding.CutShort);
            }
        }

        int index = Period.DaysBetween(_year.First, day) / 7;
        while (Figures.LateByWeek.Count <= index) Figures.LateByWeek.Add(0);
        Figures.LateByWeek[index] += week;
    }

    /// <summary>Families who hear of another day, another nurse, a start outside the hour they were told, a visit more or one less.</summary>
    private static int Changes(PlannedWeek before, PlannedWeek after, LocalDateTime now)
    {
        var then = after.Visits.Where(v => v.Day.At(v.Start) > now).ToDictionary(v => v.Id, StringComparer.Ordinal);
        var was = before.Visits.Where(v => v.Day.At(v.Start) > now).ToDictionary(v => v.Id, StringComparer.Ordinal);
        int changed = was.Values.Count(old => !then.TryGetValue(old.Id, out WeekVisit? now2)
            || now2.Day != old.Day || now2.Nurse != old.Nurse || now2.Start < (old.ToldFrom ?? old.Start) || now2.Start > (old.ToldFrom ?? old.Start).PlusMinutes(60));
        return changed + then.Keys.Count(id => !was.ContainsKey(id));
    }

    private ImmutableArray<string> Known(PatientId patient) => [.. _lastNurses.TryGetValue(patient, out List<string>? nurses) ? nurses.AsEnumerable().Reverse().Distinct().Take(2) : []];

    private readonly Dictionary<PatientId, List<string>> _lastNurses = [];

    /// <summary>Remembers who came, for whoever plans by it.</summary>
    private void Remember(WeekVisit visit)
    {
        if (!_lastNurses.TryGetValue(visit.Patient, out List<string>? nurses)) _lastNurses.Add(visit.Patient, nurses = []);
        nurses.Add(visit.Nurse);
    }

    /// <summary>Absences that are known by now: those that have begun, to their last day.</summary>
    private ImmutableArray<Leave> Out(NurseFile nurse, LocalDate today)
    {
        if (!_year.IsOut(nurse.Id, today)) return [];
        LocalDate last = today;
        while (_year.IsOut(nurse.Id, last.PlusDays(1)) && Period.DaysBetween(today, last) < 2) last = last.PlusDays(1);
        return [new Leave(today, last, "called out")];
    }
}
