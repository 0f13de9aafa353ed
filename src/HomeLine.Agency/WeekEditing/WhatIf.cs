using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What a change would do, before it is made.</summary>
/// <param name="Rules">The rules that forbid it, in words; empty when it may be made.</param>
/// <param name="Visit">The visit in hand as it would stand; empty when it is taken out.</param>
/// <param name="Tiers">The score before and after, tier by tier.</param>
/// <param name="DrivingMinutes">Driving added.</param>
/// <param name="OvertimeMinutes">Overtime added.</param>
/// <param name="LateTasks">Items of care more that are late.</param>
/// <param name="Others">What happens to other visits, in words.</param>
/// <param name="ToTell">Who has to be told because of it, against what is published.</param>
/// <param name="NewDues">Due dates after the week that it changes, in words.</param>
public sealed record WhatIf(
    ImmutableArray<PlanningReason> Rules,
    WeekVisit? Visit,
    ImmutableArray<TierChange> Tiers,
    int DrivingMinutes,
    int OvertimeMinutes,
    int LateTasks,
    ImmutableArray<string> Others,
    ImmutableArray<WhoToTell> ToTell,
    ImmutableArray<string> NewDues)
{
    public bool IsAllowed => Rules.IsEmpty;

    internal static WhatIf Of(WorkingWeek week, HandChange change)
    {
        ImmutableArray<WeekVisit> before = [.. change.Before.Select(v => week.Visit(v.Id)).OfType<WeekVisit>()];
        ImmutableArray<WeekVisit> after = [.. change.After.Select(week.Kept)];
        PlannedWeek then = week.Week with { Visits = [.. week.Week.Visits.Except(before), .. after] };
        return new WhatIf(
            [.. change.Broken.Select(f => f.Reason).DistinctBy(r => r.Sentence)],
            change.Moved is { } moved ? after.First(v => v.Id == moved.Id) : null,
            TierWords.Compare(week.Hand.Check.Score, change.Score),
            change.DrivingMinutes,
            change.OvertimeMinutes,
            change.LateTasks,
            [.. OtherVisits(before, after, change.Moved?.Id)],
            PeopleToTell.Of(
                [.. before.Concat(after).Select(v => week.Promised(v.Id)).OfType<WeekVisit>().Distinct()],
                after,
                week.Calendar.Local(week.Hand.Problem.Now),
                week.Agency.Roster,
                week.Hand.Problem.Rules.ToldRangeMinutes),
            Dues(week, then, before, after));
    }

    private static IEnumerable<string> OtherVisits(ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after, string? inHand) =>
        before.Where(v => v.Id != inHand).Select(was => VisitWords.Change(was, after.FirstOrDefault(v => v.Id == was.Id)) + ".");

    /// <summary>Only another day moves a due date.</summary>
    private static ImmutableArray<string> Dues(WorkingWeek week, PlannedWeek then, ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after)
    {
        IEnumerable<PatientId> moved = before.Concat(after).GroupBy(v => v.Patient)
            .Where(g => !before.Where(v => v.Patient == g.Key).Select(v => v.Day).ToHashSet().SetEquals(after.Where(v => v.Patient == g.Key).Select(v => v.Day)))
            .Select(g => g.Key);
        return DuesAhead.Of(week.Agency.Roster, week.Week, then, moved, Instant.Max(week.Agency.Now, week.Calendar.At(0)));
    }
}

/// <summary>A place that works for what is in hand, with the price in a few figures; the whole answer is a <see cref="WhatIf"/>.</summary>
/// <param name="Nurse">Whose day.</param>
/// <param name="NurseName">Her name.</param>
/// <param name="Day">The day.</param>
/// <param name="Position">Visits before it.</param>
/// <param name="After">The patient visited before it; empty when it would be the first.</param>
/// <param name="Start">When it would start.</param>
/// <param name="Minutes">Minutes in the home.</param>
/// <param name="DrivingMinutes">Driving added.</param>
/// <param name="OvertimeMinutes">Overtime added.</param>
/// <param name="LateTasks">Items of care more that are late.</param>
/// <param name="FamiliesToTell">Families who were told something else.</param>
/// <param name="Rank">1 for the place the score likes best.</param>
public sealed record WorkingPlace(
    string Nurse, string NurseName, LocalDate Day, int Position, string After, LocalTime Start, int Minutes,
    int DrivingMinutes, int OvertimeMinutes, int LateTasks, int FamiliesToTell, int Rank);
