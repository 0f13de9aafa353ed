using System.CommandLine;

namespace HomeLine.Benchmarks.Clocks;

/// <summary><c>clocks</c>: how long the windows of many lines take.</summary>
internal static class ClocksCommand
{
    public static Command Create()
    {
        var lines = new Option<int>("--lines") { DefaultValueFactory = _ => 100_000, Description = "How many lines." };
        var histories = new Option<int>("--histories") { DefaultValueFactory = _ => 1_000, Description = "How many different ledgers among them." };
        var seed = new Option<int>("--seed") { DefaultValueFactory = _ => 1, Description = "Same seed, same lines." };
        var rounds = new Option<int>("--rounds") { DefaultValueFactory = _ => 5, Description = "Rounds over all lines; the fastest and the middle one are told." };
        var only = new Option<string>("--only") { DefaultValueFactory = _ => "", Description = "Only measurements whose name holds these words." };
        var statistics = new Option<bool>("--statistics") { Description = "With BenchmarkDotNet: wall time with its spread, over 100,000 lines. The other options do not count." };
        var command = new Command("clocks", "Windows of many lines with two years of care each: nanoseconds and bytes per line.") { lines, histories, seed, rounds, only, statistics };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(statistics)) ClockStatistics.Tell();
            else
                ClockTimes.Tell(
                    parsed.GetValue(lines), parsed.GetValue(histories), parsed.GetValue(seed), parsed.GetValue(rounds), parsed.GetValue(only) ?? "");
        });
        return command;
    }
}
