using System.CommandLine;

namespace HomeLine.Benchmarks.Classic;

/// <summary>The options that say how long and with which chance to run.</summary>
internal sealed class RunOptions
{
    private readonly Option<double> _seconds = new("--seconds") { Description = "Seconds to search, reading the file included.", DefaultValueFactory = _ => 10 };
    private readonly Option<int> _threads = new("--threads") { Description = "Threads, each with a seed of its own.", DefaultValueFactory = _ => 1 };
    private readonly Option<ulong> _seed = new("--seed") { Description = "Seed of the search.", DefaultValueFactory = _ => 1 };
    private readonly Option<string> _clock = new("--clock") { Description = "cpu: seconds of processor time of each thread; wall: seconds on the wall.", DefaultValueFactory = _ => "cpu" };
    private readonly Option<double?> _first = new("--first-temperature") { Description = "Tuning: first temperature, in mean legs." };
    private readonly Option<double?> _last = new("--last-temperature") { Description = "Tuning: last temperature, in mean legs." };
    private readonly Option<double?> _ruin = new("--ruin") { Description = "Tuning: visits removed by a ruin, on average." };
    private readonly Option<int?> _near = new("--near") { Description = "Tuning: neighbours tried on large instances." };
    private readonly Option<double?> _polish = new("--polish") { Description = "Tuning: share of the time after which the best set of all good routes is first chosen; above 1 for never." };

    private readonly Option<double?> _overload = new("--overload") { Description = "Tuning: share of a vehicle's capacity it may be overloaded by while searching." };

    private readonly Option<double?> _descend = new("--descend") { Description = "Tuning: improved plans at most this share above the best go through the local search; below 0 for none." };

    private readonly Option<double?> _anyDay = new("--any-day") { Description = "Tuning: share of the ruins that may move requests to other days." };

    public RunOptions()
    {
        _seconds.Validators.Add(result => Refuse(result, result.GetValueOrDefault<double>() is > 0 and < 1e6, "--seconds must be above 0"));
        _threads.Validators.Add(result => Refuse(result, result.GetValueOrDefault<int>() is >= 1 and <= 256, "--threads must be 1 to 256"));
        _clock.AcceptOnlyFromAmong("cpu", "wall");
    }

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { _seconds, _threads, _seed, _clock, _first, _last, _ruin, _near, _polish, _overload, _descend, _anyDay }) command.Add(option);
    }

    public Wanted Read(ParseResult parsed, double alreadyUsed) => new(
        parsed.GetValue(_seconds),
        parsed.GetValue(_threads),
        parsed.GetValue(_seed),
        parsed.GetValue(_clock) == "wall",
        alreadyUsed,
        new Tuning(parsed.GetValue(_first), parsed.GetValue(_last), parsed.GetValue(_ruin), parsed.GetValue(_near), parsed.GetValue(_polish), parsed.GetValue(_overload), parsed.GetValue(_descend), parsed.GetValue(_anyDay)));

    public static Distance? Distance(string? word) => word switch
    {
        null => null,
        "tenths" => Classic.Distance.Tenths,
        "exact" => Classic.Distance.Exact,
        _ => throw new UnreadableFileException($"--distance must be tenths or exact, not '{word}'"),
    };

    private static void Refuse(System.CommandLine.Parsing.OptionResult result, bool allowed, string message)
    {
        if (!allowed) result.AddError(message);
    }
}
