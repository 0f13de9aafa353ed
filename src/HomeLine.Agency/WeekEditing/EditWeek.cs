using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.Storage;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>
/// The coordinators' working draft of a week: one for all of them, changed one recorded step at a time. A step asked of a draft that has moved on is refused
/// with what happened meanwhile. Everything here needs <see cref="AgencyAction.PlanWeek"/>.
/// </summary>
public sealed class EditWeek(IDbContextFactory<AgencyDb> databases, AgencyClock clock, WorkingWeeks weeks)
{
    /// <summary>The draft as it stands, or the published week while nobody has changed it.</summary>
    public Task<Outcome<WorkingWeek>> OpenAsync(Actor actor, LocalDate firstDay, CancellationToken cancel) =>
        ReadAsync<WorkingWeek>(actor, firstDay, week => week, cancel);

    /// <summary>Every place that works for a visit, by day, nurse and position.</summary>
    public Task<Outcome<ImmutableArray<WorkingPlace>>> PlacesOfVisitAsync(Actor actor, LocalDate firstDay, int revision, string visit, CancellationToken cancel) =>
        AtRevisionAsync<ImmutableArray<WorkingPlace>>(actor, firstDay, revision, week => week.Hand.Visits.All(v => v.Id != visit)
            ? Gone
            : WorkingPlaces.Of(week, week.Hand.PlacesOf(visit), visit), cancel);

    /// <summary>Every place that works for an unmet need.</summary>
    public Task<Outcome<ImmutableArray<WorkingPlace>>> PlacesOfNeedAsync(Actor actor, LocalDate firstDay, int revision, string need, CancellationToken cancel) =>
        AtRevisionAsync<ImmutableArray<WorkingPlace>>(actor, firstDay, revision, week => UnmetCareNeed.TasksOf(week, need) is { IsEmpty: false } tasks
            ? WorkingPlaces.Of(week, week.Hand.PlacesOf(tasks), "")
            : Gone, cancel);

    /// <summary>What a change would do. Nothing is stored.</summary>
    public Task<Outcome<WhatIf>> TryAsync(Actor actor, LocalDate firstDay, int revision, HandEdit edit, CancellationToken cancel) =>
        AtRevisionAsync<WhatIf>(actor, firstDay, revision, week => GoingAlong.Fault(week, edit) is { } fault ? fault : HandMoves.Of(week, edit) is { } move ? WhatIf.Of(week, week.Hand.Try(move)) : Gone, cancel);

    /// <summary>
    /// Makes a change. Refused with <c>stale-draft</c> and what changed when the draft is no longer at that revision, with <c>edit-forbidden</c> and the rule
    /// when a rule forbids it.
    /// </summary>
    public Task<Outcome<WorkingWeek>> MakeAsync(Actor actor, LocalDate firstDay, int revision, HandEdit edit, CancellationToken cancel) =>
        ChangeAsync(actor, firstDay, revision, week => Steps.Of(week, edit), cancel);

    /// <summary>Takes the last change back. Refused with <c>nothing-to-undo</c> when there is none since the week was planned or published.</summary>
    public Task<Outcome<WorkingWeek>> UndoAsync(Actor actor, LocalDate firstDay, int revision, CancellationToken cancel) =>
        ChangeAsync(actor, firstDay, revision, Steps.Undo, cancel);

    /// <summary>Makes the change that was taken back last again.</summary>
    public Task<Outcome<WorkingWeek>> RedoAsync(Actor actor, LocalDate firstDay, int revision, CancellationToken cancel) =>
        ChangeAsync(actor, firstDay, revision, Steps.Redo, cancel);

    /// <summary>
    /// Brings the changes of a draft that was dropped because another version was published over to that version. Changes whose visits no longer stand
    /// where they stood are left out and named in the step's words.
    /// </summary>
    public Task<Outcome<WorkingWeek>> CarryOverAsync(Actor actor, LocalDate firstDay, int revision, CancellationToken cancel) =>
        ChangeAsync(actor, firstDay, revision, Steps.CarryOver, cancel);

    /// <summary>Which step and which published version stand now: cheap, for pages that look whether somebody else, or another server, changed the week.</summary>
    public async Task<Outcome<WeekStands>> StandsAsync(Actor actor, LocalDate firstDay, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        var rows = await db.Weeks.AsNoTracking().Where(w => w.FirstDay == firstDay).Select(w => new { w.IsDraft, w.Version, w.PublishedVersion }).ToListAsync(cancel);
        return new WeekStands(rows.FirstOrDefault(r => r.IsDraft)?.Version ?? 0, rows.FirstOrDefault(r => !r.IsDraft)?.PublishedVersion ?? 0);
    }

    private static Refusal Gone { get; } = new("visit-gone", "What you hold is no longer in the draft.", "Look at the draft again.");

    private async Task<Outcome<WorkingWeek>> ChangeAsync(
        Actor actor, LocalDate firstDay, int revision, Func<WorkingWeek, Outcome<WeekEdit>> step, CancellationToken cancel)
    {
        string words = "";
        Outcome<WorkingWeek> done = await AgencyWork.DoAsync<WorkingWeek>(databases, clock, actor, AgencyAction.PlanWeek, async (db, agency) =>
        {
            WorkingWeek week = await weeks.OfAsync(db, agency, firstDay, cancel);
            if (week.Revision != revision) return Stale(week, revision);
            Outcome<WeekEdit> edit = step(week);
            if (!edit.Succeeded) return edit.Refusal!;
            Outcome<WeekPlanning.StoredWeek> saved = await WeekStore.SaveDraftAsync(
                db, actor, HeldPlaces.Without(week.After(edit.Value.Before, edit.Value.After)), revision, clock.RealNow(), cancel);
            if (!saved.Succeeded) return saved.Refusal!;
            WeekEdit kept = await EditStore.AddAsync(
                db, edit.Value with { Base = saved.Value.Week.Version, Revision = saved.Value.Revision, At = clock.RealNow(), By = actor.Name }, cancel);
            words = kept.Words;
            await AuditTrail.AppendAsync(db, actor, "edit-week", $"week {firstDay:uuuu-MM-dd}", words, clock.RealNow(), cancel);
            return new WorkingWeek(week.Agency, week.Published, HeldPlaces.Into(saved.Value, week.Agency), week.Log.All.Add(kept), firstDay, week.Needs);
        }, cancel);
        if (done.Succeeded) weeks.Tell(new WeekChanged(firstDay, done.Value.Revision, actor.Name, words));
        return done;
    }

    private Task<Outcome<T>> ReadAsync<T>(Actor actor, LocalDate firstDay, Func<WorkingWeek, Outcome<T>> answer, CancellationToken cancel) =>
        ReadAsync(actor, firstDay, null, answer, cancel);

    private Task<Outcome<T>> AtRevisionAsync<T>(Actor actor, LocalDate firstDay, int revision, Func<WorkingWeek, Outcome<T>> answer, CancellationToken cancel) =>
        ReadAsync(actor, firstDay, revision, answer, cancel);

    private async Task<Outcome<T>> ReadAsync<T>(
        Actor actor, LocalDate firstDay, int? revision, Func<WorkingWeek, Outcome<T>> answer, CancellationToken cancel)
    {
        if (actor.Refuse(AgencyAction.PlanWeek) is { } refusal) return refusal;
        await using AgencyDb db = await databases.CreateDbContextAsync(cancel);
        Outcome<AgencyAtHand> read = await AgencyAtHand.ReadAsync(db, clock, cancel);
        if (!read.Succeeded) return read.Refusal!;
        WorkingWeek week = revision is { } seen && weeks.Known(firstDay, seen, read.Value) is { } known
            ? known
            : await weeks.OfAsync(db, read.Value, firstDay, cancel, toLookAt: true);
        return revision is { } asked && week.Revision != asked ? Stale(week, asked) : answer(week);
    }

    private static Refusal Stale(WorkingWeek week, int seen)
    {
        ImmutableArray<WeekEdit> meanwhile = [.. week.Log.All.Where(e => e.Base == week.Week.Version && e.Revision > seen)];
        string what = meanwhile.IsEmpty || week.Revision < seen
            ? week.Revision == 0 ? "the week was published or mended" : "the week was planned anew"
            : string.Join("; ", meanwhile.Select(e => $"{e.By}: {e.Words}"));
        return new Refusal("stale-draft", $"The draft changed meanwhile: {what}.", "Nothing of yours was lost or stored. Look at the draft, then repeat your change.");
    }
}

/// <summary>Where a week stands.</summary>
/// <param name="Revision">The draft's revision; 0 for none.</param>
/// <param name="Version">The published version; 0 for none.</param>
public sealed record WeekStands(int Revision, int Version);
