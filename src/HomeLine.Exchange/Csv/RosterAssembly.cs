using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.Exchange.Csv.Tables;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Exchange.Csv;

/// <summary>Reads the tables in the order in which they refer to each other, and puts the roster together.</summary>
internal sealed class RosterAssembly
{
    private readonly IRosterFiles files;
    private readonly ReadingChoices choices;
    private readonly RosterTies ties = new();
    private readonly ProblemList problems = new();
    private readonly TableReading tables;

    public RosterAssembly(IRosterFiles files, ReadingChoices choices)
    {
        this.files = files;
        this.choices = choices;
        tables = new TableReading(files, choices.Separator, ties, problems);
    }

    public RosterReading Read()
    {
        foreach (string stranger in files.Names.Where(name => RosterExport.Shapes.All(shape => shape.File != name)))
            problems.Add(stranger, 1, "", "", $"This file is not known. Files: {string.Join(", ", RosterFolder.FileNames)}.");
        var keys = new HashSet<string>(StringComparer.Ordinal);
        AgencyFacts facts = AgencyFacts.From(tables.Read(AgencyTable.Shape, row => AgencyTable.Read(row, keys)), choices, ties, problems);
        AgencyRoster roster = People(facts.Profile, Map());
        PlannedWeek? week = Week(facts);
        return new RosterReading
        {
            Roster = problems.Any ? null : roster,
            Published = problems.Any ? null : week,
            Problems = problems.InOrder(),
            AsksForDateOrder = problems.AsksForDateOrder,
            AsksForSeparator = problems.AsksForSeparator,
        };
    }

    private AgencyMap Map()
    {
        ImmutableArray<MapPlacesTable.Place> places = tables.Read(MapPlacesTable.Shape, MapPlacesTable.Read);
        ImmutableArray<MapPlacesTable.Place> branches = [.. places.Where(place => place.Kind == MapPlacesTable.PlaceKind.Branch)];
        if (branches.Length != 1 && files.Names.Contains(MapPlacesTable.Shape.File))
            problems.Add(MapPlacesTable.Shape.File, 1, "kind", "branch", $"There must be one row for the branch; there are {branches.Length}.");
        var known = new Dictionary<string, MapBarrier?>(StringComparer.Ordinal);
        ImmutableArray<MapBarriersTable.Entry> barriers = tables.Read(MapBarriersTable.Shape, row => MapBarriersTable.Read(row, known));
        ILookup<string, Crossing> crossings = barriers.Where(entry => entry.Crossing is not null)
            .ToLookup(entry => entry.Of, entry => entry.Crossing!, StringComparer.Ordinal);
        RoadFactors roads = MapRoadsTable.Assemble(tables.Read(MapRoadsTable.Shape, MapRoadsTable.Read));
        return new AgencyMap
        {
            BranchPlace = branches.IsEmpty ? default : branches[0].At,
            Towns = [.. places.Where(place => place.Kind == MapPlacesTable.PlaceKind.Town)
                .Select(place => new Town(place.Code, place.Name, place.At, place.State))],
            Drops = [.. places.Where(place => place.Kind == MapPlacesTable.PlaceKind.Drop)
                .Select(place => new SpecimenDrop(place.Name, place.At, place.Courier))],
            Barriers = [.. barriers.Where(entry => entry.Barrier is not null).Select(entry => entry.Barrier! with
            {
                Crossings = [.. crossings[entry.Of]],
            })],
            Roads = roads,
            Width = ties.MapWidth,
            Height = ties.MapHeight,
        };
    }

    private AgencyRoster People(AgencyProfile profile, AgencyMap map)
    {
        ImmutableArray<NurseFile> nurses = Nurses();
        ImmutableArray<Patient> patients = tables.Read(PatientsTable.Shape, PatientsTable.Read);
        return new AgencyRoster
        {
            Profile = profile,
            Map = map,
            Nurses = nurses,
            Patients = patients,
            Lines = tables.Read(LinesTable.Shape, LinesTable.Read),
            Infusions = tables.Read(InfusionsTable.Shape, InfusionsTable.Read),
            Orders = tables.Read(OrdersTable.Shape, OrdersTable.Read),
            Events = Events(),
            Caregivers = tables.Read(CaregiversTable.Shape, CaregiversTable.Read),
            Holds = tables.Read(HoldsTable.Shape, HoldsTable.Read),
            OutsideCare = tables.Read(OutsideCareTable.Shape, OutsideCareTable.Read),
            Exceptions = tables.Read(ExceptionsTable.Shape, ExceptionsTable.Read),
            Policy = Policy(),
        };
    }

    private ImmutableArray<NurseFile> Nurses()
    {
        ImmutableArray<NurseFile> nurses = tables.Read(NursesTable.Shape, NursesTable.Read);
        var earlier = new Dictionary<(string, IsoDayOfWeek), List<WorkingTime>>();
        var shifts = tables.Read(ShiftsTable.Shape, row => ShiftsTable.Read(row, earlier)).ToLookup(shift => shift.Nurse, shift => shift.Time);
        var leaves = tables.Read(LeavesTable.Shape, LeavesTable.Read).ToLookup(leave => leave.Nurse, leave => leave.Leave);
        return [.. nurses.Select(nurse => nurse with { Week = [.. shifts[nurse.Id]], Leaves = [.. leaves[nurse.Id]] })];
    }

    /// <summary>A correction may name an entry further down, so what is voided is looked at once all entries are known.</summary>
    private ImmutableArray<LineEvent> Events()
    {
        var voids = new List<(Row Row, string Id)>();
        ImmutableArray<LineEvent> events = tables.Read(EventsTable.Shape, row =>
        {
            LineEvent entry = EventsTable.Read(row);
            if (entry.Voids is { } old) voids.Add((row, old.Value));
            return entry;
        });
        foreach ((Row row, string id) in voids.Where(entry => !ties.Events.Contains(entry.Id)))
            row.Refuse("voids", id, "There is no such entry to void.");
        return events;
    }

    /// <summary>Rows that are right one by one may still contradict each other or the defaults beneath them.</summary>
    private ImmutableArray<PolicyRule> Policy()
    {
        var seen = new HashSet<(string, LocalDate)>();
        ImmutableArray<PolicyRule> rules = tables.Read(PolicyTable.Shape, row => PolicyTable.Read(row, seen));
        if (rules.Length > PolicyTable.MostRules)
            problems.Add(PolicyTable.Shape.File, 1, "", "", $"An agency has at most {PolicyTable.MostRules} rows of its own policy.");
        else
            foreach (string problem in PolicyCheck.Problems(PolicyBook.Default.With(rules)))
                problems.Add(PolicyTable.Shape.File, 1, "value", "", problem);
        return rules;
    }

    private PlannedWeek? Week(AgencyFacts facts)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        ImmutableArray<WeekVisit> visits = tables.Read(PublishedWeekTable.Shape, row => PublishedWeekTable.Read(row, facts.WeekFrom, seen));
        if (!files.Names.Contains(PublishedWeekTable.Shape.File)) return null;
        if (facts.WeekFrom is { } first) return new PlannedWeek { FirstDay = first, Version = facts.WeekVersion, Visits = visits };
        problems.Add(AgencyTable.Shape.File, 1, "key", "week_from", "The key week_from is needed with published-week.csv: the week's first day.");
        return null;
    }
}
