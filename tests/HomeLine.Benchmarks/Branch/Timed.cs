using System.Diagnostics;
using System.Globalization;

namespace HomeLine.Benchmarks.Branch;

/// <summary>One kind of question asked again and again: wall milliseconds of each but the first, which warms the program up, and processor time of all.</summary>
internal sealed class Timed(string what)
{
    private readonly List<double> _times = [];
    private double _cpu;
    private bool _isWarm;

    /// <summary>What came back, summed.</summary>
    public int Answers { get; set; }

    public async Task<T> RunAsync<T>(Func<Task<T>> ask)
    {
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        long start = Stopwatch.GetTimestamp();
        T answer = await ask();
        if (_isWarm)
        {
            _times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            _cpu += (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds;
        }

        _isWarm = true;
        return answer;
    }

    public void Print()
    {
        if (_times.Count == 0) return;
        _times.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what},{_times.Count},{Answers},{_times.Average():0},{_times[_times.Count / 2]:0},{_times[(int)(_times.Count * 0.95)]:0},{_times[^1]:0},{_cpu / _times.Count:0}"));
    }
}
