using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Ledger;
using NodaTime;

namespace HomeLine.Benchmarks.Year;

/// <summary>A way of planning. It reads the world as it stands and answers with the week as it should then be.</summary>
internal interface IYearPlanner
{
    /// <summary>As the figures call it.</summary>
    string Name { get; }

    /// <summary>The week to come, on the Sunday before.</summary>
    PlannedWeek Plan(YearWorld world, LocalDate monday);

    /// <summary>The morning: nurses have called out, roads are closed, somebody was referred yesterday, a door stayed shut.</summary>
    PlannedWeek Morning(YearWorld world);

    /// <summary>A dressing was reported lifting; the report is in the ledger.</summary>
    PlannedWeek Lifted(YearWorld world, LineEvent report);
}
