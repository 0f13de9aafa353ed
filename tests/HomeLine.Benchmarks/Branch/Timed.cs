using System.Diagnostics;
using System.Globalization;

namespace HomeLine.Benchmarks.Branch;

/// <summary>One kind of question asked again and again: wall milliseconds of each but the first, which warms the program up, and processor time of all threads: on one core with nothing else to do, about what the wall would say.</summary>
internal sealed class Timed(string what)
{
    private readonly List<double> _times = [];
    private readonly List<double> _cpu = [];
    private bool _isWarm;

    /// <summary>What came back, summed.</summary>
    public int Answers { get; set; }

    public async Task<T> RunAsync<T>(Func<Task<T>> ask)
    {
        double before = CpuClock.ProcessSeconds();
        long start = Stopwatch.GetTimestamp();
        T answer = await ask();
        if (_isWarm)
        {
            _times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            _cpu.Add((CpuClock.ProcessSeconds() - before) * 1_000);
        }

        _isWarm = true;
        return answer;
    }

    public void Print()
    {
        if (_times.Count == 0) return;
        _times.Sort();
        _cpu.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what},{_times.Count},{Answers},{_times.Average():0},{_times[_times.Count / 2]:0},{_times[(int)(_times.Count * 0.95)]:0},{_times[^1]:0},{_cpu.Average():0},{_cpu[_cpu.Count / 2]:0},{_cpu[(int)(_cpu.Count * 0.95)]:0}"));
    }
}
