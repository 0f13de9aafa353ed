using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Editing;

namespace HomeLine.Agency.WeekEditing;

/// <summary>A change of the working draft as the step that is recorded: pure, from the week as it stands.</summary>
internal static class Steps
{
    private static readonly Refusal NothingToUndo = new("nothing-to-undo", "There is no change of this draft to take back or make again.", "Look at the list of changes.");

    public static Outcome<WeekEdit> Of(WorkingWeek week, HandEdit edit) => edit switch
    {
        HandEdit.Pin(var visit) => Pin(week, visit, on: true),
        HandEdit.Unpin(var visit) => Pin(week, visit, on: false),
        HandEdit.StartOver => StartOver(week),
        _ => Move(week, edit),
    };

    public static Outcome<WeekEdit> Undo(WorkingWeek week) => week.Log.Undoable is { } last
        ? Reversed(week, last, EditKind.Undo) with { Before = last.After, After = last.Before, Pins = last.Unpins, Unpins = last.Pins }
        : NothingToUndo;

    public static Outcome<WeekEdit> Redo(WorkingWeek week) => week.Log.Redoable is { } last
        ? Reversed(week, last, EditKind.Redo) with { Before = last.Before, After = last.After, Pins = last.Pins, Unpins = last.Unpins }
        : NothingToUndo;

    public static Outcome<WeekEdit> CarryOver(WorkingWeek week)
    {
        ImmutableArray<WeekEdit> waiting = week.Log.Waiting(week.Published?.Version ?? 0);
        if (waiting.IsEmpty || week.Revision != 0) return new Refusal("nothing-to-carry", "No changes of an earlier draft wait to be brought over.", "Go on with the week as it stands.");
        var stands = week.Week.Visits.ToDictionary(v => v.Id);
        var left = new List<string>();
        foreach (WeekEdit edit in waiting)
        {
            bool fits = edit.Before.All(v => stands.TryGetValue(v.Id, out WeekVisit? now) && IsWhere(now, v) && week.WhyItStays(now).Length == 0)
                && edit.After.All(v => edit.Before.Any(b => b.Id == v.Id) || !stands.ContainsKey(v.Id));
            if (!fits)
            {
                left.Add(edit.Words);
                continue;
            }

            foreach (WeekVisit gone in edit.Before) stands.Remove(gone.Id);
            foreach (WeekVisit came in edit.After) stands[came.Id] = came;
        }

        string words = left.Count == 0
            ? $"{Count(waiting.Length)} of the earlier draft brought over"
            : $"{Count(waiting.Length - left.Count)} of the earlier draft brought over; left out: {string.Join("; ", left)}";
        return Difference(week, [.. stands.Values], EditKind.CarryOver, words);
    }

    /// <summary>The planner's new draft as a step, so that what people had done before can be taken back to.</summary>
    /// <param name="stood">The week as it stood: the draft, or the published week; empty when there was neither.</param>
    /// <param name="saved">The new draft.</param>
    public static WeekEdit Planned(PlannedWeek? stood, StoredWeek saved)
    {
        (ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after) = Between(stood?.Visits ?? [], saved.Week.Visits);
        return new WeekEdit
        {
            FirstDay = saved.Week.FirstDay,
            Number = 0,
            Base = saved.Week.Version,
            Revision = saved.Revision,
            Kind = EditKind.Planned,
            Words = $"Planned anew: {Count(after.Length)}",
            At = saved.SavedAt,
            By = saved.SavedBy,
            Before = before,
            After = after,
        };
    }

    private static Outcome<WeekEdit> Move(WorkingWeek week, HandEdit edit)
    {
        if (GoingAlong.Fault(week, edit) is { } fault) return fault;
        if (HandMoves.Of(week, edit) is not { } move)
            return new Refusal("visit-gone", "What you hold is no longer in the draft.", "Look at the draft again.");
        HandChange change = week.Hand.Try(move);
        if (!change.IsAllowed) return new Refusal("edit-forbidden", change.Broken[0].Reason.Sentence, change.Broken[0].Reason.Action);
        ImmutableArray<WeekVisit> before = [.. change.Before.Select(v => week.Visit(v.Id)!)], after = [.. change.After.Select(week.Kept)];
        return Made(week, Kind(edit), Words(edit, before, after, change.Moved?.Id)) with
        {
            Before = before,
            After = after,
            // A ride-along is for this visit: the planner keeps it, and nobody pushes it by accident.
            Pins = edit is HandEdit.GoAlong(var along, _) ? [along] : [],
        };
    }

    private static Outcome<WeekEdit> Pin(WorkingWeek week, string id, bool on)
    {
        if (week.Visit(id) is not { } visit) return new Refusal("visit-gone", "That visit is no longer in the draft.", "Look at the draft again.");
        if (week.Log.Pinned.Contains(id) == on) return NothingToUndo;
        return on
            ? Made(week, EditKind.Pin, $"{visit.Patient} {VisitWords.Place(visit)} is pinned") with { Pins = [id] }
            : Made(week, EditKind.Unpin, $"The pin of {visit.Patient} {VisitWords.Place(visit)} is taken out") with { Unpins = [id] };
    }

    private static Outcome<WeekEdit> StartOver(WorkingWeek week) => week.Published is { } published
        ? Difference(week, published.Visits, EditKind.StartOver, "The draft is the published week again")
        : NothingToUndo;

    private static Outcome<WeekEdit> Difference(WorkingWeek week, ImmutableArray<WeekVisit> then, EditKind kind, string words)
    {
        (ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after) = Between(week.Week.Visits, then);
        return before.IsEmpty && after.IsEmpty && kind != EditKind.CarryOver ? NothingToUndo : Made(week, kind, words) with { Before = before, After = after };
    }

    private static (ImmutableArray<WeekVisit> Before, ImmutableArray<WeekVisit> After) Between(ImmutableArray<WeekVisit> now, ImmutableArray<WeekVisit> then)
    {
        var was = now.ToDictionary(v => v.Id);
        var next = then.ToDictionary(v => v.Id);
        return (
            [.. was.Values.Where(v => !next.TryGetValue(v.Id, out WeekVisit? n) || !IsWhere(n, v))],
            [.. next.Values.Where(v => !was.TryGetValue(v.Id, out WeekVisit? n) || !IsWhere(n, v))]);
    }

    private static WeekEdit Reversed(WorkingWeek week, WeekEdit edit, EditKind kind) =>
        Made(week, kind, $"{(kind == EditKind.Undo ? "Taken back" : "Made again")}: {edit.Words}") with { Reverses = edit.Number };

    private static WeekEdit Made(WorkingWeek week, EditKind kind, string words) => new()
    {
        FirstDay = week.FirstDay,
        Number = 0,
        Base = week.Week.Version,
        Revision = 0,
        Kind = kind,
        Words = words,
        At = week.Agency.Now,
        By = "",
    };

    private static bool IsWhere(WeekVisit a, WeekVisit b) =>
        a.Nurse == b.Nurse && a.Second == b.Second && a.Day == b.Day && a.Start == b.Start && a.Care.Select(c => c.Key).SequenceEqual(b.Care.Select(c => c.Key));

    private static EditKind Kind(HandEdit edit) => edit switch
    {
        HandEdit.Place => EditKind.Place,
        HandEdit.TakeOut => EditKind.TakeOut,
        HandEdit.Swap => EditKind.Swap,
        HandEdit.SwapDays => EditKind.SwapDays,
        _ => EditKind.Move,
    };

    private static string Words(HandEdit edit, ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after, string? inHand)
    {
        if (edit is HandEdit.SwapDays(var nurse, var with, var day)) return $"{nurse} and {with} change {VisitWords.LongDay(day)}";
        string? first = inHand ?? before.FirstOrDefault()?.Id;
        string words = VisitWords.Change(before.FirstOrDefault(v => v.Id == first), after.FirstOrDefault(v => v.Id == first));
        int others = before.Count(v => v.Id != first);
        if (edit is HandEdit.Swap(_, var other) && before.FirstOrDefault(v => v.Id == other) is { } swapped)
            return $"{words}; {VisitWords.Change(swapped, after.First(v => v.Id == other))}";
        return others == 0 ? words : $"{words}; {others} {(others == 1 ? "visit starts" : "visits start")} later";
    }

    private static string Count(int changes) => changes == 1 ? "1 change" : $"{changes} changes";
}
