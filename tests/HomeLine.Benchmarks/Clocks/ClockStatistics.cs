using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.NoEmit;
using HomeLine.LineCare;

namespace HomeLine.Benchmarks.Clocks;

/// <summary>The same measurements with BenchmarkDotNet: wall time per line with its spread, and bytes allocated per line.</summary>
[MemoryDiagnoser]
public class ClockStatistics
{
    private const int Lines = 100_000;
    private const int Ledgers = 1_000;

    private PatientCare[] _patients = [];

    public static void Tell() => BenchmarkRunner.Run<ClockStatistics>(DefaultConfig.Instance
        .AddJob(Job.Default.WithToolchain(InProcessNoEmitToolchain.Instance).WithInvocationCount(1).WithUnrollFactor(1).WithWarmupCount(3).WithIterationCount(12))
        .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "homeline-benchmarks")));

    [GlobalSetup]
    public void Invent()
    {
        _patients = InventedLines.Invent(Lines, Ledgers, seed: 1);
        ClockTimes.Without(_patients);
    }

    [Benchmark(OperationsPerInvoke = Lines, Description = "without reasons, one core")]
    public long Without() => ClockTimes.Without(_patients);

    [Benchmark(OperationsPerInvoke = Lines, Description = "with reasons, one core")]
    public long With() => ClockTimes.With(_patients);

    [Benchmark(OperationsPerInvoke = Lines, Description = "recording one entry and windows")]
    public long AfterOneEntry() => ClockTimes.AfterOneEntry(_patients);

    [Benchmark(OperationsPerInvoke = Lines, Description = "without reasons, all cores")]
    public long WithoutOnAllCores() => ClockTimes.OnAllCores(_patients, ClockTimes.Without);

    [Benchmark(OperationsPerInvoke = Lines, Description = "with reasons, all cores")]
    public long WithOnAllCores() => ClockTimes.OnAllCores(_patients, ClockTimes.With);
}
