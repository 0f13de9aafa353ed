using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>What the planner's plan changes of the published week, visit by visit.</summary>
internal sealed class WeekDifference(MendSetting setting)
{
    /// <summary>Every visit that changes, in the order given first, the rest by time.</summary>
    /// <param name="plan">The plan after the change.</param>
    /// <param name="first">Identifiers to put first, in this order.</param>
    public ImmutableArray<VisitChange> To(WeekPlan plan, ImmutableArray<string> first)
    {
        var after = plan.Visits.ToDictionary(v => v.Id, StringComparer.Ordinal);
        var stands = setting.Standing.Plan.Visits.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        return [.. setting.Week.Visits
            .Where(v => stands.Contains(v.Id))
            .Select(v => Change(v, after.GetValueOrDefault(v.Id)))
            .OfType<VisitChange>()
            .OrderBy(c => first.IndexOf(c.Before!.Id) is var place and >= 0 ? place : int.MaxValue)
            .ThenBy(c => c.Before!.Day).ThenBy(c => c.Before!.Start)];
    }

    /// <summary>A visit that falls away.</summary>
    public static VisitChange Without(WeekVisit visit, string name, string why) =>
        new(visit, null, $"{name}, {DayWords.When(visit)}: {why}", 0);

    private VisitChange? Change(WeekVisit before, PlannedVisit? planned)
    {
        if (planned is null) return Without(before, setting.People.Name(before.Patient), "nobody can come.");
        LocalDateTime start = setting.Calendar.Local(planned.Start);
        bool same = planned.Nurse == before.Nurse && planned.Second == before.Second && start == before.Day.At(before.Start);
        if (same) return null;
        var after = before with
        {
            Nurse = planned.Nurse,
            Second = planned.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            Minutes = planned.Nurse == before.Nurse ? before.Minutes : planned.Minutes,
        };
        if (LeavesRange(before, after)) after = after with { ToldFrom = before.ToldFrom is null ? null : after.Start };
        int later = setting.Calendar.Minute(after.Day, after.Start) - setting.Calendar.Minute(before.Day, before.Start);
        return new VisitChange(before, after, Words(setting.People.Name(before.Patient), before, after, later), later);
    }

    private bool LeavesRange(WeekVisit before, WeekVisit after)
    {
        if (after.Day != before.Day || before.ToldFrom is not { } told) return after.Day != before.Day || after.Start != before.Start;
        return after.Start < told || after.Start > told.PlusMinutes(setting.ToldMinutes);
    }

    private string Words(string name, WeekVisit before, WeekVisit after, int later)
    {
        string with = after.Nurse == before.Nurse && after.Second == before.Second ? "" : $" with {Crew(after)}{(before.Second is not null && after.Second is null && after.Nurse == before.Nurse ? " alone" : "")}";
        if (after.Day != before.Day) return $"{name} moves from {DayWords.When(before)} to {DayWords.When(after)}{with}.";
        if (later == 0) return $"{name} keeps {DayWords.When(before)},{with}.";
        string way = later > 0 ? $"{later} min later" : $"{-later} min earlier";
        string told = LeavesRange(before, after) ? "" : ", inside the range that was told";
        return $"{name} moves from {DayWords.Time(before.Start)} to {DayWords.Time(after.Start)}{with}, {way}{told}.";
    }

    /// <summary>A nurse on call has no route: somebody has to reach her first.</summary>
    private IEnumerable<string> OnCall(ImmutableArray<VisitChange> changes) => changes
        .Where(c => c.After is { } after && after.Nurse != c.Before?.Nurse && IsOnCall(after))
        .Select(c => $"{setting.People.NurseName(c.After!.Nurse)} is on call on {DayWords.Day(c.After.Day)}: reach her before the family is told.")
        .Distinct();

    private bool IsOnCall(WeekVisit visit) => setting.Standing.Problem.Nurses.First(n => n.Id == visit.Nurse).Shifts
        .Any(s => s.OnCall && s.Day == setting.Calendar.Day(visit.Day));

    private string Crew(WeekVisit visit) => visit.Second is { } second
        ? $"{setting.People.NurseName(visit.Nurse)} and {setting.People.NurseName(second)}"
        : setting.People.NurseName(visit.Nurse);

    /// <summary>What a nurse who takes a visit over has to know before she sets off.</summary>
    public ImmutableArray<string> Cautions(ImmutableArray<VisitChange> changes) => [.. OnCall(changes), .. changes
        .Where(c => c.Before is not null && c.After is not null && c.After.Nurse != c.Before.Nurse)
        .Where(c => !Materials.ChlorhexidineAllowed(setting.Agency.Files[c.After!.Patient], setting.Agency.Files.Policy, c.After.Day).Allowed)
        .Select(c => $"{setting.People.NurseName(c.After!.Nurse)} needs the kit without chlorhexidine for {setting.People.Name(c.After.Patient)}.")];
}
