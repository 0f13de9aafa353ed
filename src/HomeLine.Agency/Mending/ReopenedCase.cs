using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Checking;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// A road opened before its time: visits that its answer moved, that stand as it put them and still lie far enough ahead could go back to where they were.
/// Offered, never done by itself: the families were told the other time. Pure.
/// </summary>
internal static class ReopenedCase
{
    public static MendOffer Offer(RoadOpenAgain entry, MendSetting setting)
    {
        var back = new List<VisitChange>();
        PlannedWeek week = setting.Week;
        foreach (VisitChange moved in entry.Moved.Where(m => StandsAsMoved(m, setting)))
        {
            PlannedWeek then = AppliedWeek.Of(week, [Back(moved, setting)]);
            if (Findings(then, setting) > Findings(week, setting)) continue;
            back.Add(Back(moved, setting));
            week = then;
        }

        if (back.Count == 0) return new MendOffer { Facts = ["Nothing that was moved can go back: it has been made, starts within the hour, was changed since, or its place is taken. Everything stays as it was told."] };
        return new MendOffer
        {
            Facts =
            [
                "Nothing is moved by itself: the families were told the time they have now.",
                .. entry.Moved.Length > back.Count ? [$"{DayWords.Count(entry.Moved.Length - back.Count, "visit stays", "visits stay")} as moved: made, too close, changed since, or the place is taken."] : ImmutableArray<string>.Empty,
            ],
            Answers = [Answer([.. back], setting)],
        };
    }

    private static MendAnswer Answer(ImmutableArray<VisitChange> back, MendSetting setting)
    {
        PlannedWeek after = AppliedWeek.Of(setting.Week, back);
        var days = back.SelectMany(c => new[] { c.Before, c.After }.OfType<WeekVisit>())
            .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (Nurse: n, v.Day))).Distinct().ToArray();
        int driving = 0, overtime = 0;
        foreach ((string nurse, LocalDate day) in days)
        {
            var was = NurseDayFigures.Of(setting.Week, nurse, day, setting);
            var then = NurseDayFigures.Of(after, nurse, day, setting);
            (driving, overtime) = (driving + then.Driving - was.Driving, overtime + then.Overtime - was.Overtime);
        }

        return new MendAnswer
        {
            Key = "A",
            Title = $"{DayWords.Count(back.Length, "visit", "visits")} back to where they were before the road closed",
            Changes = back,
            Price = new MendPrice
            {
                Families = back.Length,
                OtherDay = back.Count(c => c.Before is { } b && b.Day != c.After!.Day),
                Nurses = days.Select(d => d.Nurse).Distinct().Count(),
                DrivingDelta = driving,
                Overtime = Math.Max(0, overtime),
            },
            ToTell = [.. back.SelectMany(c => People(c, setting))],
            Cautions = ["Each family was told another time since. Ask them before it is changed once more."],
        };
    }

    private static IEnumerable<PersonToTell> People(VisitChange change, MendSetting setting)
    {
        WeekVisit then = change.After!;
        yield return setting.People.Family(then.Patient, $"The road is open again. Could the nurse come on {DayWords.Range(then, setting.ToldMinutes)} after all?");
        foreach (string nurse in new[] { change.Before?.Nurse, change.Before?.Second, then.Nurse, then.Second }.OfType<string>().Distinct())
            yield return setting.People.Nurse(nurse, $"{change.Words} Read it when parked.");
    }

    private static VisitChange Back(VisitChange moved, MendSetting setting)
    {
        WeekVisit was = moved.Before!;
        string name = setting.People.Name(was.Patient), nurse = setting.People.NurseName(was.Nurse);
        return moved.After is { } now
            ? new VisitChange(now, was, $"{name} goes back from {DayWords.When(now)} to {DayWords.When(was)} with {nurse}.", setting.Calendar.Minute(was.Day, was.Start) - setting.Calendar.Minute(now.Day, now.Start))
            : new VisitChange(null, was, $"{name} gets the visit on {DayWords.When(was)} with {nurse} after all.", 0);
    }

    private static bool StandsAsMoved(VisitChange moved, MendSetting setting)
    {
        if (moved.Before is not { } was) return false;
        int frozen = setting.Now + setting.Standing.Problem.Rules.FrozenAheadMinutes;
        if (setting.Calendar.Minute(was.Day, was.Start) <= frozen) return false;
        WeekVisit? now = setting.Visit(was.Id);
        return moved.After is { } after
            ? now is not null && now.Held is null && (now.Nurse, now.Second, now.Day, now.Start) == (after.Nurse, after.Second, after.Day, after.Start) && setting.Calendar.Minute(now.Day, now.Start) > frozen
            : now is null && setting.Agency.Files.WhatIsDue(was.Patient, setting.Agency.Now).OnHold is null;
    }

    /// <summary>What the checker holds against a week, on the roads as they are now.</summary>
    private static int Findings(PlannedWeek week, MendSetting setting)
    {
        StandingWeek standing = StandingWeek.Of(setting.Agency.Roster, setting.Agency.Files, week, setting.Agency.Now).WithClosures(setting.Agency.Closures, setting.Agency.Roster);
        return Checker.Check(standing.Problem, standing.Plan).Findings.Length;
    }
}
