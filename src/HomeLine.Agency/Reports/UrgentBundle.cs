using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Reports;

/// <summary>
/// What a nurse does when she has to come today anyway: the item with the deadline, and everything of the same patient that is
/// already useful to do. What is not yet useful is left for its own time.
/// </summary>
/// <param name="Lead">The need with the deadline.</param>
/// <param name="Needs">The whole bundle, the lead first.</param>
/// <param name="Task">The bundle as one task of the planner.</param>
public sealed record UrgentBundle(CareNeed Lead, ImmutableArray<CareNeed> Needs, CareTask Task)
{
    /// <summary>Identifier of the bundle's task and visit.</summary>
    public const string TaskId = "urgent";

    public DueWindow Window => Lead.Windows[0];

    /// <summary>The bundle of a line's broken seal; empty when a validated caregiver owns the change or nothing is cut short.</summary>
    public static UrgentBundle? Of(AgencyRoster roster, CareFiles files, Patient patient, LineId line, PlanCalendar calendar, Instant now)
    {
        var setting = new NeedSetting(files.Policy, calendar, now, PlannedAhead: false);
        PatientNeeds found = PatientNeeds.Of(patient, files[patient.Id], files.WhatIsDue(patient.Id, now), setting);
        CareNeed? lead = found.Needs.FirstOrDefault(n =>
            n.Windows[0] is { Standing: WindowStanding.CutShort, SealClass: > 0 } window && window.Line == line);
        if (lead is null) return null;
        int minute = calendar.Minute(now);
        ImmutableArray<CareNeed> bundle =
            [lead, .. found.Needs.Where(n => n != lead && n.Task.After is null && n.Task.Opens <= minute && StartsToday(n.Task, minute))];
        return new UrgentBundle(lead, bundle, Merge(lead.Task, [.. bundle.Select(n => n.Task)], minute));
    }

    /// <summary>A draw tied to a dose keeps its own time; it joins only when it may start at any time.</summary>
    private static bool StartsToday(CareTask task, int minute) => task.StartSpans.IsEmpty && task.HardLatest > minute;

    private static CareTask Merge(CareTask lead, ImmutableArray<CareTask> parts, int now) => lead with
    {
        Id = TaskId,
        Label = string.Join("; ", parts.Select(p => p.Label)),
        Opens = now,
        HardLatest = int.MaxValue,
        SetupMinutes = parts.Max(p => p.SetupMinutes),
        WorkMinutes = parts.Sum(p => p.WorkMinutes),
        Skills = [.. parts.SelectMany(p => p.Skills).Distinct().Order(StringComparer.Ordinal)],
        Critical = true,
        DrawToDropMinutes = parts.Min(p => p.DrawToDropMinutes),
        After = null,
        Safety = true,
    };
}
