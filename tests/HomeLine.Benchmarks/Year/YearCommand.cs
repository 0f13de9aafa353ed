using System.CommandLine;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary><c>year</c>: one invented year, planned and lived through by the program and by two plain rules; what stood late, what was driven, who was called.</summary>
internal static class YearCommand
{
    public static Command Create()
    {
        var roster = new Option<DirectoryInfo>("--roster") { Description = "Folder of roster files; its nurses and its map are taken.", DefaultValueFactory = _ => new DirectoryInfo("seed") };
        var patients = new Option<int>("--patients") { Description = "People in care at a time.", DefaultValueFactory = _ => 60 };
        var weeks = new Option<int>("--weeks") { Description = "Weeks.", DefaultValueFactory = _ => 52 };
        var seed = new Option<int>("--seed") { Description = "Draws the year.", DefaultValueFactory = _ => 1 };
        var iterations = new Option<int>("--iterations") { Description = "Rounds of the search for each week.", DefaultValueFactory = _ => 20_000 };
        var days = new Option<int>("--days") { Description = "Days the program looks at when it plans a week.", DefaultValueFactory = _ => 14 };
        var csv = new Option<FileInfo?>("--csv") { Description = "Writes the late hours of each week." };
        var picture = new Option<FileInfo?>("--picture") { Description = "Writes a drawing (SVG) of the year, a bar for each way and measure." };
        var late = new Option<FileInfo?>("--late") { Description = "Writes what stood late in the program's year, a line a day and item." };
        var command = new Command("year", "An invented year, planned by the program and by two plain rules.") { roster, patients, weeks, seed, iterations, days, csv, picture, late };
        command.SetAction((parsed, cancel) => Task.FromResult(Run(
            parsed.GetValue(roster)!, parsed.GetValue(patients), parsed.GetValue(weeks), parsed.GetValue(seed), parsed.GetValue(iterations), parsed.GetValue(days), parsed.GetValue(csv), parsed.GetValue(picture), parsed.GetValue(late), cancel)));
        return command;
    }

    private static int Run(DirectoryInfo folder, int patients, int weeks, int seed, int iterations, int days, FileInfo? csv, FileInfo? picture, FileInfo? late, CancellationToken cancel)
    {
        RosterReading reading = RosterFolder.Read(new RosterDirectory(folder.FullName));
        AgencyRoster agency = reading.Roster ?? throw new InvalidOperationException(string.Join('\n', reading.Problems.Select(p => p.Reason)));
        // Leave of the roster lies in one week of it and would tell nothing about a year.
        agency = agency with { Nurses = [.. agency.Nurses.Select(n => n with { Leaves = [] })] };
        var year = new InventedYear(agency, patients, weeks, seed);
        Console.WriteLine($"{weeks} weeks from {year.First:uuuu-MM-dd}, {patients} people in care at a time, {year.People.Length} in all, {agency.Nurses.Length} nurses; seed {seed}");
        var all = new List<YearFigures>();
        foreach (IYearPlanner planner in (IYearPlanner[])[new HomeLineYear(new PlanOptions((ulong)seed, iterations), days, keepsReserve: true), new HomeLineYear(new PlanOptions((ulong)seed, iterations), days, keepsReserve: false), new EverySeventhDay(), new EarliestDueFirst()])
        {
            YearFigures figures = Live(agency, year, planner, cancel);
            all.Add(figures);
            Console.WriteLine(Row(figures, weeks));
        }

        if (csv is not null) WriteCsv(csv, all);
        if (late is not null) File.WriteAllLines(late.FullName, all[0].LateList);
        if (picture is not null) File.WriteAllText(picture.FullName, YearPicture.Of(all));
        return 0;
    }

    /// <summary>Every morning what the night brought, then the calls of the day, then the day itself.</summary>
    private static YearFigures Live(AgencyRoster agency, InventedYear year, IYearPlanner planner, CancellationToken cancel)
    {
        var world = new YearWorld(agency, year, planner.Name);
        for (LocalDate day = year.First; day <= year.Last && !cancel.IsCancellationRequested; day = day.PlusDays(1))
        {
            if (day.DayOfWeek == IsoDayOfWeek.Monday)
            {
                world.At(day, new LocalTime(5, 0));
                world.Publish(planner.Plan(world, day), isNew: true);
                world.Figures.SlotsMissing += DayReserve.Of(world.Roster, world.Files.Policy, world.Week, RoadTravel.Of(world.Roster), day.AtMidnight()).Sum(d => Math.Max(0, d.Asked - d.Free));
            }

            world.At(day, new LocalTime(6, 0));
            world.Publish(planner.Morning(world), isNew: planner is EarliestDueFirst);
            foreach ((YearPatient person, LocalTime at) in Lifting(world, year, day)) Report(world, planner, person, day.At(at));
            world.LiveThrough(day);
        }

        return world.Figures;
    }

    private static IEnumerable<(YearPatient Person, LocalTime At)> Lifting(YearWorld world, InventedYear year, LocalDate day) =>
        from person in year.People
        where person.From <= day && person.Through > day && person.Line.Kind != LineKind.Port
        let at = year.LiftsAt(person.Patient.Id, day)
        where at is not null && !world.Week.Visits.Any(v => v.Patient == person.Patient.Id && v.Day == day && v.Start <= at)
        orderby at
        select (person, at.Value);

    private static void Report(YearWorld world, IYearPlanner planner, YearPatient person, LocalDateTime at)
    {
        world.At(at.Date, at.TimeOfDay);
        var report = new LineEvent
        {
            Id = new EventId("report"),
            Patient = person.Patient.Id,
            Line = person.Line.Id,
            Kind = LineEventKind.SealReported,
            Performed = CareMoment.Exactly(world.Now, world.Zone),
            RecordedAt = world.Now,
            Performer = PerformerKind.Caregiver,
            Seal = SealFinding.EdgeLifted,
        };
        world.Enter(report);
        world.At(at.Date, at.TimeOfDay);
        world.Publish(planner.Lifted(world, report));
    }

    private static string Row(YearFigures f, int weeks) => string.Create(CultureInfo.InvariantCulture,
        $"{f.Name,-34} visits {f.Visits,5} ({f.Visits / (double)weeks:0.0} a week, {f.InVain} in vain) | late {f.LateHours,7:0} h, of it broken dressings {f.LateBrokenHours,5:0} h | ordered days missed {f.MissedOrders,4} | {f.Kilometres,7:0} km, driving {f.DrivingHours / f.PaidHours,5:P0} of {f.PaidHours:0} h | in {f.Days} days | overtime {f.OvertimeHours,5:0} h ({f.PlannedOvertimeHours:0} planned) | same nurse {f.Continuity:P0} | calls {f.Calls} | slots missing {f.SlotsMissing}");

    private static void WriteCsv(FileInfo file, List<YearFigures> all)
    {
        using StreamWriter writer = file.CreateText();
        writer.WriteLine("week," + string.Join(',', all.Select(f => $"\"{f.Name}\"")));
        for (int week = 0; week < all[0].LateByWeek.Count; week++)
            writer.WriteLine($"{week + 1}," + string.Join(',', all.Select(f => f.LateByWeek[week].ToString("0.0", CultureInfo.InvariantCulture))));
    }
}
