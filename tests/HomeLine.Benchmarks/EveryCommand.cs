using System.CommandLine;
using HomeLine.Benchmarks.Classic;

namespace HomeLine.Benchmarks;

/// <summary>The measurements, one line each, in the order of --help.</summary>
internal static class EveryCommand
{
    public static IEnumerable<Command> All()
    {
        yield return Branch.DuePageCommand.Create();
        yield return Branch.TroubleCommand.Create();
        yield return Branch.OwnWeekCommand.Create();
        yield return Clocks.ClocksCommand.Create();
        yield return Weeks.WeeksCommand.Create();
        yield return Weeks.CancelCommand.Create();
        yield return Weeks.ProofCommand.Create();
        yield return Weeks.BoundCommand.Create();
        yield return SolveCommand.Create();
        yield return ClassicCommand.Create();
        yield return VerifyCommand.Create();
        yield return Weeks.UrgentCommand.Create();
        yield return Weeks.WhatIfCommand.Create();
        yield return Load.LoadCommand.Create();
        yield return Load.ServeCommand.Create();
        yield return Year.YearCommand.Create();
    }
}
