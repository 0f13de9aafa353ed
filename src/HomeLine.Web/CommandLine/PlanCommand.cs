using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Json;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Web.CommandLine;

/// <summary>The <c>plan</c> command: one week, planned and checked.</summary>
internal static class PlanCommand
{
    private const int MostIterations = 100_000_000;

    public static int Run(DirectoryInfo folder, string week, string? at, PlanOptions options, FileInfo output)
    {
        if (options.Iterations is < 0 or > MostIterations)
        {
            Console.Error.WriteLine($"--iterations: {options.Iterations} is not between 0 and {MostIterations}");
            return ExitCodes.BadInput;
        }

        if (RosterArgument.Date("--week", week) is not { } firstDay) return ExitCodes.BadInput;
        if (RosterArgument.Read(folder) is not { Roster: { } roster } reading) return ExitCodes.BadInput;
        if (Now(roster, at, firstDay) is not { } now) return ExitCodes.BadInput;
        WeekDemand demand = WeekDemand.Ahead(roster, reading.Published is { } promised ? [promised] : [], firstDay, now);
        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, pressed) =>
        {
            pressed.Cancel = true;
            stop.Cancel();
        };
        WeekPlan plan = Planner.Plan(demand.Problem, options, null, stop.Token);
        CheckReport check = Checker.Check(demand.Problem, plan);
        PlanFile file = PlanFile.Of(roster, CareFiles.Of(roster), demand, plan, check, options, now);
        int written = RosterArgument.Write(output, file.ToJson());
        Console.WriteLine(
            $"{check.Figures.Visits} visits, {check.Figures.DrivingMinutes} min driving, {check.Figures.LateTasks} late, "
            + $"{file.Unmet.Length} unmet; the checker {(check.Accepted ? "agrees" : $"has {check.Findings.Length} findings")}");
        return written == ExitCodes.Done && !check.Accepted ? ExitCodes.Broken : written;
    }

    /// <summary>As of the given time, else the roster's own now, else the beginning of the week.</summary>
    private static Instant? Now(AgencyRoster roster, string? at, LocalDate firstDay)
    {
        if (at is not null) return RosterArgument.Moment("--at", at, roster.Profile);
        Instant begins = firstDay.AtStartOfDayInZone(roster.Profile.Zone).ToInstant();
        return roster.Profile.FixedNow is { } now && now < begins + Duration.FromDays(7) ? now : begins;
    }
}
