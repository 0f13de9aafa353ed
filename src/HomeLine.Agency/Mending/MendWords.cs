using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Mending;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>A repaired week in sentences: what changes, what it costs, who is told, what is left and why.</summary>
internal sealed class MendWords(MendSetting setting)
{
    private readonly WeekDifference difference = new(setting);

    public MendAnswer Answer(MendedWeek mended, ImmutableArray<string> broken)
    {
        ImmutableArray<VisitChange> changes = difference.To(mended.Plan, broken);
        ImmutableArray<LeftUnmet> unmet = Unmet(mended, changes);
        return new MendAnswer
        {
            Key = "",
            Title = Title(changes),
            Changes = changes,
            Unmet = unmet,
            Price = Price(mended, changes),
            ToTell = ToTell(mended, changes),
            Cautions = [.. difference.Cautions(changes), .. mended.Findings.Select(f => $"{f.Reason.Sentence} {f.Reason.Action}")],
        };
    }

    public BrokenInWords Broken(BrokenVisit broken)
    {
        WeekVisit visit = setting.Visit(broken.Visit.Id)!;
        return new BrokenInWords(visit, setting.People.Name(visit.Patient), broken.Reason.Code == ReasonCode.NurseOut ? "" : broken.Reason.Sentence, Waits(visit));
    }

    /// <summary>How long a visit can wait: what ties it, and the last day on time.</summary>
    public string Waits(WeekVisit visit)
    {
        CareTask? task = setting.Standing.Problem.Tasks.FirstOrDefault(t => t.Id == visit.Id);
        if (task is null) return "";
        var parts = new List<string>();
        if (task.Critical) parts.Add("critical care");
        int now = setting.Now;
        if (task.StartSpans.FirstOrDefault(s => s.To >= now) is { To: > 0 } span)
            parts.Add($"starts only between {Clock(span.From)} and {Clock(span.To)}");
        int last = Math.Min(task.LateFrom == int.MaxValue ? int.MaxValue : task.LateFrom - 1, task.HardLatest);
        if (last < setting.Calendar.End - 1 || task.HardLatest == last)
            parts.Add(task.HardLatest <= last ? $"cannot be made after {DayWords.Day(setting.Calendar.Local(last).Date)}" : $"last day on time {DayWords.Day(setting.Calendar.Local(last).Date)}");
        if (visit.Second is not null) parts.Add(setting.IsRideAlong(visit) ? "a ride-along: one person is enough" : "needs two people");
        return parts.Count == 0 ? "open all week" : string.Join("; ", parts);
    }

    private string Clock(int minute) => DayWords.Time(setting.Calendar.Local(minute).TimeOfDay);

    private static string Title(ImmutableArray<VisitChange> changes)
    {
        int nobody = changes.Count(c => c.After is null);
        int otherDay = changes.Count(c => c.After is { } after && after.Day != c.Before!.Day);
        int otherNurse = changes.Count(c => c.After is { } after && after.Day == c.Before!.Day && after.Nurse != c.Before.Nurse);
        int alone = changes.Count(c => c is { After: { } after, Before: { Second: not null } before } && after.Second is null && after.Nurse == before.Nurse && after.Day == before.Day && after.Start == before.Start);
        int later = changes.Length - nobody - otherDay - otherNurse - alone;
        var parts = new List<string>();
        if (otherNurse > 0) parts.Add($"{DayWords.Count(otherNurse, "visit", "visits")} the same day with another nurse");
        if (otherDay > 0) parts.Add($"{DayWords.Count(otherDay, "visit", "visits")} on another day");
        if (later > 0) parts.Add($"{DayWords.Count(later, "visit", "visits")} at another time");
        if (alone > 0) parts.Add($"{DayWords.Count(alone, "visit", "visits")} as told, without who was to go along");
        if (nobody > 0) parts.Add($"nobody for {DayWords.Count(nobody, "visit", "visits")}");
        return parts.Count == 0 ? "Everything stays" : char.ToUpperInvariant(parts[0][0]) + string.Join(", ", parts)[1..];
    }

    private MendPrice Price(MendedWeek mended, ImmutableArray<VisitChange> changes)
    {
        PlannedWeek after = AppliedWeek.Of(setting.Week, changes);
        int driving = 0, overtime = 0;
        foreach ((string nurse, LocalDate day) in NurseDays(changes))
        {
            var was = NurseDayFigures.Of(setting.Week, nurse, day, setting);
            var then = NurseDayFigures.Of(after, nurse, day, setting);
            driving += then.Driving - was.Driving;
            overtime += then.Overtime - was.Overtime;
        }

        return new MendPrice
        {
            Critical = mended.Score.Critical,
            Late = mended.Score.Risk,
            Unmet = changes.Count(c => c.After is null),
            Families = mended.Calls.Length,
            OtherDay = changes.Count(c => c.After is { } then && then.Day != c.Before!.Day),
            Waiting = changes.Where(Waits).Sum(c => c.MinutesLater),
            Nurses = mended.Nurses.Length,
            DrivingDelta = driving,
            Overtime = Math.Max(0, overtime),
            Disruption = mended.Score.Disruption,
        };
    }

    /// <summary>Later on the same day, and outside the range when one was told.</summary>
    private static bool Waits(VisitChange change) => change is { Before: { } before, After: { } after, MinutesLater: > 0 }
        && after.Day == before.Day && (before.ToldFrom is null || after.ToldFrom != before.ToldFrom);

    private static IEnumerable<(string Nurse, LocalDate Day)> NurseDays(ImmutableArray<VisitChange> changes) => changes
        .SelectMany(c => new[] { c.Before, c.After }.OfType<WeekVisit>())
        .SelectMany(v => new[] { v.Nurse, v.Second }.OfType<string>().Select(n => (n, v.Day)))
        .Distinct();

    private ImmutableArray<PersonToTell> ToTell(MendedWeek mended, ImmutableArray<VisitChange> changes)
    {
        var people = ImmutableArray.CreateBuilder<PersonToTell>();
        var changed = changes.ToDictionary(c => c.Before!.Id, StringComparer.Ordinal);
        foreach (FamilyCall call in mended.Calls)
        {
            if (!changed.TryGetValue(call.Before.Id, out VisitChange? change)) continue;
            people.Add(setting.People.Family(new PatientId(call.Patient), ForFamily(change), By(change)));
        }

        foreach (VisitChange change in changes.Where(c => c.After is null))
            people.Add(setting.People.ClinicalManager($"Nobody can come to {setting.People.Name(change.Before!.Patient)} on {DayWords.When(change.Before)}: decide what happens until then."));

        foreach (string nurse in mended.Nurses.Where(n => changes.Any(c => Has(c.Before, n) || Has(c.After, n))))
            people.Add(setting.People.Nurse(nurse, ForNurse(nurse, changes)));
        return people.ToImmutable();
    }

    /// <summary>Before the visit would have been frozen; for a visit close by, within the policy's promise.</summary>
    private Instant By(VisitChange change)
    {
        Instant begins = setting.Calendar.At(setting.Calendar.Minute(change.Before!.Day, change.Before.ToldFrom ?? change.Before.Start) - setting.Standing.Problem.Rules.FrozenAheadMinutes);
        return Instant.Max(setting.People.Soon, begins);
    }

    private string ForFamily(VisitChange change)
    {
        WeekVisit before = change.Before!;
        if (change.After is not { } after) return $"Nobody can come on {DayWords.When(before)}. Somebody licensed calls about what to do until then.";
        string who = after.Nurse == before.Nurse ? "The nurse" : setting.People.NurseName(after.Nurse);
        if (before.Second is not null && after.Second is null && after.Nurse == before.Nurse && after.Day == before.Day && after.Start == before.Start)
            return $"{setting.People.NurseName(after.Nurse)} comes alone, at the time that was told: {DayWords.Range(after, setting.ToldMinutes)}.";
        if (after.Day == before.Day && after.Start == before.Start) return $"{who} comes, at the time that was told: {DayWords.Range(after, setting.ToldMinutes)}.";
        return $"{who} comes on {DayWords.Range(after, setting.ToldMinutes)} instead of {DayWords.When(before)}.";
    }

    private string ForNurse(string nurse, ImmutableArray<VisitChange> changes)
    {
        var lines = new List<string>();
        foreach (VisitChange change in changes.Where(c => Has(c.Before, nurse) || Has(c.After, nurse)))
        {
            bool was = Has(change.Before, nurse), will = Has(change.After, nurse);
            string name = setting.People.Name(change.Before!.Patient);
            if (was && will) lines.Add($"{name} at {DayWords.When(change.After!)} instead of {DayWords.When(change.Before)}");
            else if (will) lines.Add($"new: {name} {DayWords.When(change.After!)}, {change.After!.Minutes} min");
            else if (was) lines.Add($"no longer yours: {name} {DayWords.When(change.Before)}");
        }

        string said = string.Join("; ", lines);
        return $"{char.ToUpperInvariant(said[0])}{said[1..]}. Read it when parked.";
    }

    private static bool Has(WeekVisit? visit, string nurse) => visit is not null && (visit.Nurse == nurse || visit.Second == nurse);

    /// <summary>Care left without a visit, with the reasons a repair has for it.</summary>
    public ImmutableArray<LeftUnmet> Unmet(MendedWeek mended, ImmutableArray<VisitChange> changes)
    {
        var reasons = mended.Plan.Unmet.ToDictionary(u => u.Task, StringComparer.Ordinal);
        return [.. changes.Where(c => c.After is null).Select(c =>
        {
            UnmetTask? why = reasons.GetValueOrDefault(c.Before!.Id);
            return new LeftUnmet(
                setting.People.Name(c.Before.Patient),
                string.Join("; ", c.Before.Care.Select(care => care.Label)),
                why is null || why.Reasons.IsEmpty ? "No nurse has room who may do it." : why.Reasons[0].Sentence,
                why is null ? [] : [.. why.Relaxations.Take(3).Select(r => r.Sentence)]);
        })];
    }
}
