using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HomeLine.Benchmarks.Classic;

/// <summary>Runs a whole set over several seeds and compares it with the best-known values.</summary>
internal static class ClassicCommand
{
    public static Command Create()
    {
        var folder = new Argument<string>("folder") { Description = "Folder with the instance files and their bks.csv." };
        var format = new Option<string?>("--format") { Description = "Layout of the files; guessed when omitted." };
        var distance = new Option<string?>("--distance") { Description = "tenths or exact; the set's own convention when omitted." };
        var only = new Option<string?>("--only") { Description = "Regular expression the file's name must match." };
        var seeds = new Option<int>("--seeds") { Description = "How many seeds, counted up from --seed.", DefaultValueFactory = _ => 1 };
        var csv = new Option<string?>("--csv") { Description = "Where to write one row for each run." };
        var peer = new Option<bool>("--peer") { Description = "Also run OR-Tools routing on each instance, in turn, with the same seconds." };
        var peerSeconds = new Option<double?>("--peer-seconds") { Description = "Give OR-Tools routing these seconds instead; runs it as --peer does." };
        peerSeconds.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<double?>() is not (null or (> 0 and < 1e6))) result.AddError("--peer-seconds must be above 0");
        });
        var running = new RunOptions();
        var command = new Command("classic", "Run a published benchmark set and compare it with the best-known values.") { folder, format, distance, only, seeds, csv, peer, peerSeconds };
        running.AddTo(command);
        command.SetAction(parsed =>
        {
            try
            {
                Wanted wanted = running.Read(parsed, 0);
                double? other = parsed.GetValue(peerSeconds) ?? (parsed.GetValue(peer) ? wanted.Seconds : null);
                var run = new SetRun(
                    parsed.GetValue(folder)!,
                    parsed.GetValue(format),
                    RunOptions.Distance(parsed.GetValue(distance)),
                    new Regex(parsed.GetValue(only) ?? "", RegexOptions.None, TimeSpan.FromSeconds(1)),
                    parsed.GetValue(seeds),
                    other,
                    wanted);
                IReadOnlyList<RunRow> rows = run.Rows(Console.Out);
                SetTable.Write(rows, Console.Out);
                if (parsed.GetValue(csv) is { } path) File.WriteAllLines(path, RunRow.Csv(rows));
                return rows.All(row => row.Valid) ? 0 : 1;
            }
            catch (Exception fault) when (fault is UnreadableFileException or IOException or RegexParseException)
            {
                Console.Error.WriteLine(fault.Message);
                return 2;
            }
        });
        return command;
    }
}

/// <summary>One run of one instance.</summary>
internal sealed record RunRow(string Instance, string Class, string Solver, ulong Seed, double Seconds, double Cost, string Convention, double? Known, double? Bar, bool Valid, long Iterations, int LeftOut)
{
    /// <summary>Gap to the best-known value in percent.</summary>
    public double? Gap => Known is { } known ? 100 * (Cost - known) / known : null;

    /// <summary>Gap in percent to the second value of the set, where it has one: a solution proven reachable.</summary>
    public double? GapToBar => Bar is { } bar ? 100 * (Cost - bar) / bar : null;

    public static IEnumerable<string> Csv(IEnumerable<RunRow> rows) => rows
        .Select(row => string.Create(CultureInfo.InvariantCulture, $"{row.Instance},{row.Class},{row.Solver},{row.Seed},{row.Seconds:0.00},{row.Cost:0.####},\"{row.Convention}\",{row.Known},{row.Gap:0.0000},{row.GapToBar:0.0000},{(row.Valid ? "yes" : "no")},{row.Iterations},{row.LeftOut}"))
        .Prepend("instance,class,solver,seed,cpu_seconds,cost,convention,best_known,gap_percent,gap_to_second_percent,valid,iterations,left_out");
}
