using System.CommandLine;
using HomeLine.Planning;

namespace HomeLine.Web.CommandLine;

/// <summary>
/// The program without a browser: <c>plan</c> and <c>due</c> read a roster folder and write one JSON file.
/// Exit codes: 0 done, 1 broken, 2 bad input with a message for each fault.
/// </summary>
public static class ConsoleCommands
{
    /// <summary>Whether these arguments are for the console rather than the server.</summary>
    public static bool Handle(string[] args) => args is ["plan" or "due" or "--help" or "-h" or "-?" or "--version", ..];

    public static int Run(string[] args)
    {
        ParseResult parsed = Root().Parse(args);
        if (parsed.Errors.Count == 0) return parsed.Invoke();
        foreach (var error in parsed.Errors) Console.Error.WriteLine(error.Message);
        Console.Error.WriteLine("Try --help.");
        return ExitCodes.BadInput;
    }

    private static RootCommand Root() => new("HomeLine: care of central lines at home, planned. Without a command it serves the web pages; with the first word \"practice\" it serves a copy of the agency to practise on.")
    {
        Plan(),
        Due(),
    };

    private static Command Plan()
    {
        Option<DirectoryInfo> roster = RosterOption();
        var week = new Option<string>("--week") { Description = "First day of the week to plan, for example 2027-03-08.", Required = true };
        var output = new Option<FileInfo>("--out") { Description = "The JSON file to write.", Required = true };
        var seed = new Option<ulong>("--seed") { Description = "Seed of the search; the same seed gives the same plan.", DefaultValueFactory = _ => 1 };
        var iterations = new Option<int>("--iterations") { Description = "Rounds of the search, 0 to 100,000,000.", DefaultValueFactory = _ => 20_000 };
        var at = new Option<string?>("--at") { Description = "Plan as of this local time, for example 2027-03-08T06:00; the roster's own now when left out." };
        var command = new Command("plan", "Plans one week and writes the plan, the due windows, the unmet needs and the checker's verdict.")
        {
            roster, week, output, seed, iterations, at,
        };
        command.SetAction(parsed => PlanCommand.Run(
            parsed.GetRequiredValue(roster),
            parsed.GetRequiredValue(week),
            parsed.GetValue(at),
            new PlanOptions(parsed.GetValue(seed), parsed.GetValue(iterations)),
            parsed.GetRequiredValue(output)));
        return command;
    }

    private static Command Due()
    {
        Option<DirectoryInfo> roster = RosterOption();
        var at = new Option<string>("--at") { Description = "Local time at the branch, for example 2027-03-08T06:00.", Required = true };
        var output = new Option<FileInfo>("--out") { Description = "The JSON file to write.", Required = true };
        var command = new Command("due", "Writes every due window of a roster with its reason.") { roster, at, output };
        command.SetAction(parsed => DueCommand.Run(
            parsed.GetRequiredValue(roster), parsed.GetRequiredValue(at), parsed.GetRequiredValue(output)));
        return command;
    }

    private static Option<DirectoryInfo> RosterOption() =>
        new("--roster") { Description = "Folder with the roster's CSV files (docs/import.md).", Required = true };
}

/// <summary>What the process answers to its caller.</summary>
public static class ExitCodes
{
    public const int Done = 0;
    public const int Broken = 1;
    public const int BadInput = 2;
}
