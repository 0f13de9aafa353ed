using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Exchange.Tests.Csv;

/// <summary>What is due in the demonstration agency at its fixed now, computed once.</summary>
internal static class SeedDue
{
    public static readonly LocalDate Monday = new(2027, 3, 8);

    private static readonly Lazy<CareFiles> Cut = new(() => CareFiles.Of(SeedFiles.Roster));

    private static readonly Lazy<ImmutableArray<CareAnswer>> All = new(() =>
        [.. SeedFiles.Roster.Patients.Select(patient => Files.WhatIsDue(patient.Id, Now))]);

    private static readonly Lazy<WeekDemand> Week = new(() => WeekDemand.Of(SeedFiles.Roster, Files, Monday, 7, Now));

    public static Instant Now => SeedFiles.Roster.Profile.FixedNow!.Value;

    public static CareFiles Files => Cut.Value;

    public static ImmutableArray<CareAnswer> Answers => All.Value;

    public static WeekDemand Demand => Week.Value;

    public static IEnumerable<DueWindow> Windows => Answers.SelectMany(answer => answer.Windows);

    /// <summary>Running dressing clocks, those waived because the line comes out among them.</summary>
    public static IEnumerable<DueWindow> Dressings => Windows.Concat(Answers.SelectMany(answer => answer.Waived).Select(waived => waived.Window))
        .Where(window => window.Item is CareItem.Dressing or CareItem.PortNeedle);

    public static CareAnswer Of(string patient) => Answers.Single(answer => answer.Patient.Value == patient);
}
