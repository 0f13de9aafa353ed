using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>How the work of the published weeks before and of the week worked on is spread over the nurses, as a table and in words.</summary>
/// <param name="WeeksBefore">First days of the published weeks looked back on, the oldest first.</param>
/// <param name="Rows">A row for each nurse with a visit in any of the weeks, in roster order.</param>
/// <param name="Words">What stands out, a sentence for each measure.</param>
public sealed record FairLook(ImmutableArray<LocalDate> WeeksBefore, ImmutableArray<FairShare> Rows, ImmutableArray<string> Words)
{
    /// <summary>A sentence names so many nurses at most: our own default.</summary>
    private const int MostNamed = 3;

    /// <param name="roster">The nurses.</param>
    /// <param name="before">Published weeks before.</param>
    /// <param name="week">The week worked on.</param>
    /// <param name="rules">What counts as heavy and as an evening.</param>
    public static FairLook Of(AgencyRoster roster, ImmutableArray<PlannedWeek> before, PlannedWeek week, LoadRules rules)
    {
        ImmutableArray<FairShare> rows =
        [
            .. roster.Nurses.Select(n => new FairShare(n.Id, n.Name, before.Aggregate(default(WeekShare), (sum, w) => sum + WeekShare.Of(w, n.Id, rules)), WeekShare.Of(week, n.Id, rules)))
                .Where(r => r.Together.Visits > 0),
        ];
        return new FairLook([.. before.Select(w => w.FirstDay).Order()], rows, rows.IsEmpty ? [] : [.. Says(rows)]);
    }

    private static IEnumerable<string> Says(ImmutableArray<FairShare> rows)
    {
        yield return Counted("Evenings", rows, s => s.Evenings);
        yield return Counted("Weekend days", rows, s => s.WeekendDays);
        yield return Counted("Heavy visits", rows, s => s.Heavy);
        yield return ADay("Weighted visits a working day", rows, s => s.Weighted, tenths => string.Create(CultureInfo.InvariantCulture, $"{tenths / 10:0.0}"));
        yield return ADay("Time in homes a working day", rows, s => s.Minutes, minutes => $"{(int)minutes / 60} h {(int)minutes % 60:00}");
    }

    /// <summary>Who has most of something that is counted, and how many have none.</summary>
    private static string Counted(string what, ImmutableArray<FairShare> rows, Func<WeekShare, int> of)
    {
        FairShare[] having = [.. rows.Where(r => of(r.Together) > 0).OrderByDescending(r => of(r.Together)).ThenBy(r => r.Name, StringComparer.Ordinal)];
        if (having.Length == 0) return $"{what}: none.";
        string named = string.Join(", ", having.Take(MostNamed).Select(r => $"{r.Name} {of(r.Together)}"));
        int less = having.Length - Math.Min(MostNamed, having.Length), none = rows.Length - having.Length;
        return $"{what}: {named}{(less > 0 ? $", {less} with {of(having[MostNamed].Together)} or fewer" : "")}{(none > 0 ? $", {none} with none" : "")}.";
    }

    /// <summary>From least to most for each day worked, so that part time compares with full time.</summary>
    private static string ADay(string what, ImmutableArray<FairShare> rows, Func<WeekShare, int> of, Func<double, string> said)
    {
        var days = rows.Where(r => r.Together.Days > 0).Select(r => (r.Name, Each: (double)of(r.Together) / r.Together.Days)).OrderBy(r => r.Each).ThenBy(r => r.Name, StringComparer.Ordinal).ToArray();
        return days.Length == 1
            ? $"{what}: {said(days[0].Each)} ({days[0].Name})."
            : $"{what}: from {said(days[0].Each)} ({days[0].Name}) to {said(days[^1].Each)} ({days[^1].Name}).";
    }
}
