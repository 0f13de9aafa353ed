using System.Collections.Immutable;

namespace HomeLine.Agency.WeekEditing;

/// <summary>The changes of a week read as what can be taken back, what can be made again, and which visits are pinned.</summary>
/// <param name="All">Every change ever, in order.</param>
/// <param name="Live">Those the draft as it stands was made by, in order: without a gap since it was last planned or published.</param>
/// <param name="Undoable">What would be taken back next.</param>
/// <param name="Redoable">What would be made again next.</param>
/// <param name="Pinned">Visits pinned.</param>
public sealed record EditLog(
    ImmutableArray<WeekEdit> All, ImmutableArray<WeekEdit> Live, WeekEdit? Undoable, WeekEdit? Redoable, ImmutableHashSet<string> Pinned)
{
    /// <param name="edits">Every change of the week, in order.</param>
    /// <param name="version">The published version the draft was made from.</param>
    /// <param name="revision">The draft's revision; 0 when there is none.</param>
    public static EditLog Of(ImmutableArray<WeekEdit> edits, int version, int revision)
    {
        ImmutableArray<WeekEdit> live = Unbroken(edits, version, revision);
        (ImmutableStack<WeekEdit> done, ImmutableStack<WeekEdit> undone) = Stacks(live);
        return new EditLog(edits, live, done.IsEmpty ? null : done.Peek(), undone.IsEmpty ? null : undone.Peek(), PinsOf(edits));
    }

    /// <summary>Changes of the last draft that was dropped because another version was published, net of what was taken back; empty when none wait.</summary>
    public ImmutableArray<WeekEdit> Waiting(int publishedVersion)
    {
        if (All.IsEmpty || !Live.IsEmpty || All[^1].Kind == EditKind.Published || All[^1].Base >= publishedVersion) return [];
        return [.. Stacks(Unbroken(All, All[^1].Base, All[^1].Revision)).Done.Reverse().Where(e => e.Kind is not (EditKind.Pin or EditKind.Unpin))];
    }

    private static ImmutableArray<WeekEdit> Unbroken(ImmutableArray<WeekEdit> edits, int version, int revision)
    {
        var live = new Stack<WeekEdit>();
        for (int i = edits.Length - 1; i >= 0 && edits[i] is { Kind: not EditKind.Published } edit && edit.Base == version && edit.Revision == revision; i--, revision--)
            live.Push(edit);
        return [.. live];
    }

    private static (ImmutableStack<WeekEdit> Done, ImmutableStack<WeekEdit> Undone) Stacks(ImmutableArray<WeekEdit> live)
    {
        var done = ImmutableStack<WeekEdit>.Empty;
        var undone = ImmutableStack<WeekEdit>.Empty;
        foreach (WeekEdit edit in live)
        {
            if (edit.Kind == EditKind.Undo)
            {
                if (done.IsEmpty) continue;
                undone = undone.Push(done.Peek());
                done = done.Pop();
            }
            else if (edit.Kind == EditKind.Redo)
            {
                if (undone.IsEmpty) continue;
                done = done.Push(undone.Peek());
                undone = undone.Pop();
            }
            else
            {
                done = done.Push(edit);
                undone = ImmutableStack<WeekEdit>.Empty;
            }
        }

        return (done, undone);
    }

    private static ImmutableHashSet<string> PinsOf(ImmutableArray<WeekEdit> edits) =>
        edits.Aggregate(ImmutableHashSet<string>.Empty, (pins, edit) => pins.Except(edit.Unpins).Union(edit.Pins));
}
