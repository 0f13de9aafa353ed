using System.CommandLine;
using System.Globalization;
using System.Text.Json;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Solves one instance file and prints cost and routes.</summary>
internal static class SolveCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The instance file." };
        var format = new Option<string?>("--format") { Description = $"Layout of the file: {string.Join(", ", AnyFile.Formats)}. Guessed when omitted." };
        var distance = new Option<string?>("--distance") { Description = "tenths (legs truncated to one decimal) or exact; the set's own convention when omitted." };
        var json = new Option<string?>("--json") { Description = "Where to write the solution as JSON." };
        var other = new Option<string?>("--other", "--crew") { Description = "The second file of an instance, when it is not where it usually is: the people for technicians, the requests for revealed." };
        var running = new RunOptions();
        var command = new Command("solve", "Solve one file of a published benchmark set.") { file, format, distance, json, other };
        running.AddTo(command);
        command.SetAction(parsed =>
        {
            try
            {
                Instance instance = AnyFile.Open(parsed.GetValue(file)!, parsed.GetValue(format), RunOptions.Distance(parsed.GetValue(distance)), parsed.GetValue(other));
                Wanted wanted = running.Read(parsed, CpuClock.ThreadSeconds());
                Solved solved = instance.Solve(wanted);
                double seconds = wanted.OfThisThread().Elapsed;
                Print(instance, solved, seconds, Console.Out);
                if (parsed.GetValue(json) is { } path) WriteJson(path, instance, solved, seconds);
                return solved.Verdict.Faults.Count == 0 ? 0 : 1;
            }
            catch (UnreadableFileException fault)
            {
                Console.Error.WriteLine(fault.Message);
                return 2;
            }
        });
        return command;
    }

    private static void Print(Instance instance, Solved solved, double seconds, TextWriter output)
    {
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{instance.Name}: cost {solved.Verdict.Cost:0.####}, {solved.Routes.Count} routes, {solved.Iterations} iterations, {seconds:0.00} s"));
        output.WriteLine($"convention: {solved.Verdict.Convention}");
        foreach (NamedRoute route in solved.Routes) output.WriteLine($"{route.Name}: {string.Join(' ', route.Stops)}");
        if (solved.LeftOut.Count > 0) output.WriteLine($"left out: {string.Join(' ', solved.LeftOut)}");
        foreach (string fault in solved.Verdict.Faults) output.WriteLine($"NOT VALID: {fault}");
        if (solved.Verdict.Faults.Count == 0) output.WriteLine("checked: valid");
    }

    private static void WriteJson(string path, Instance instance, Solved solved, double seconds)
    {
        try
        {
            File.WriteAllText(path, JsonSerializer.Serialize(
                new
                {
                    instance = instance.Name,
                    format = instance.Format,
                    cost = solved.Verdict.Cost,
                    valid = solved.Verdict.Faults.Count == 0,
                    faults = solved.Verdict.Faults,
                    convention = solved.Verdict.Convention,
                    iterations = solved.Iterations,
                    seconds,
                    routes = solved.Routes.Select(route => new { name = route.Name, stops = route.Stops }),
                    left_out = solved.LeftOut,
                },
                JsonSettings));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UnreadableFileException($"{path}: cannot be written ({fault.Message})", fault);
        }
    }

    private static readonly JsonSerializerOptions JsonSettings = new() { WriteIndented = true };
}
