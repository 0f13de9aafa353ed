using System.Collections.Immutable;

namespace HomeLine.Agency.Roster;

/// <summary>What an import does to one row.</summary>
public enum RowState
{
    /// <summary>New to the agency.</summary>
    Added,

    /// <summary>Known, and different.</summary>
    Changed,

    /// <summary>Known, and the same.</summary>
    Unchanged,

    /// <summary>Known, and not mentioned: it stays.</summary>
    LeftAlone,
}

/// <summary>One row of the preview.</summary>
/// <param name="Kind">What it is, for example <c>patient</c>.</param>
/// <param name="Key">Which one, for example <c>P03</c>.</param>
/// <param name="State">What would happen.</param>
/// <param name="Fields">The fields that differ, for a changed row.</param>
public sealed record RowPreview(string Kind, string Key, RowState State, ImmutableArray<string> Fields);

/// <summary>A row that cannot be stored as it is.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Key">Which one.</param>
/// <param name="Refusal">Why, and what to do.</param>
public sealed record RowConflict(string Kind, string Key, Refusal Refusal);

/// <summary>A row before and after.</summary>
public sealed record RowChanged<T>(string Key, T Before, T After, ImmutableArray<string> Fields);

/// <summary>The rows of one kind, sorted by what happens to them.</summary>
/// <param name="Kind">What they are.</param>
/// <param name="Added">New rows.</param>
/// <param name="Changed">Different rows.</param>
/// <param name="Unchanged">Equal rows.</param>
/// <param name="LeftAlone">Rows the import does not mention.</param>
/// <param name="Repeated">Keys the import mentions more than once.</param>
/// <param name="KeyOf">What tells rows of this kind apart.</param>
public sealed record RowChanges<T>(
    string Kind,
    ImmutableArray<T> Added,
    ImmutableArray<RowChanged<T>> Changed,
    ImmutableArray<T> Unchanged,
    ImmutableArray<T> LeftAlone,
    ImmutableArray<string> Repeated,
    Func<T, string> KeyOf)
{
    /// <summary>All rows after the change.</summary>
    public IEnumerable<T> After => [.. Unchanged, .. LeftAlone, .. Changed.Select(c => c.After), .. Added];

    /// <summary>The rows as the preview lists them.</summary>
    public IEnumerable<RowPreview> Rows =>
    [
        .. Added.Select(r => new RowPreview(Kind, KeyOf(r), RowState.Added, [])),
        .. Changed.Select(c => new RowPreview(Kind, c.Key, RowState.Changed, c.Fields)),
        .. Unchanged.Select(r => new RowPreview(Kind, KeyOf(r), RowState.Unchanged, [])),
        .. LeftAlone.Select(r => new RowPreview(Kind, KeyOf(r), RowState.LeftAlone, [])),
    ];
}

/// <summary>Compares the rows of one kind.</summary>
public static class RowChanges
{
    /// <summary>Matches rows by key alone and compares what they say; the first of a repeated key counts.</summary>
    public static RowChanges<T> Between<T>(
        string kind, Func<T, string> keyOf, ImmutableArray<T> current, ImmutableArray<T> incoming)
    {
        var before = current.ToLookup(keyOf, StringComparer.Ordinal);
        ILookup<string, T> after = incoming.ToLookup(keyOf, StringComparer.Ordinal);
        var added = ImmutableArray.CreateBuilder<T>();
        var changed = ImmutableArray.CreateBuilder<RowChanged<T>>();
        var unchanged = ImmutableArray.CreateBuilder<T>();
        foreach (IGrouping<string, T> row in after)
        {
            T now = row.First();
            if (!before.Contains(row.Key))
            {
                added.Add(now);
                continue;
            }
            T then = before[row.Key].First();
            ImmutableArray<string> fields = RowText.Differences(then, now);
            if (fields.IsEmpty) unchanged.Add(now);
            else changed.Add(new RowChanged<T>(row.Key, then, now, fields));
        }
        return new RowChanges<T>(
            kind, added.ToImmutable(), changed.ToImmutable(), unchanged.ToImmutable(),
            [.. before.Where(row => !after.Contains(row.Key)).SelectMany(row => row)],
            [.. after.Where(row => row.Count() > 1).Select(row => row.Key)],
            keyOf);
    }
}
