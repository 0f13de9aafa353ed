using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Exchange.Csv.Cells;

/// <summary>When a visit may start: <c>tue thu 09:00-12:30; fri 14:00-16:00</c>; without weekdays it holds every day.</summary>
internal static class AccessTimesCell
{
    private const string Form = "Write weekdays and times, for example tue thu 09:00-12:30; no weekday means every day.";

    public static ImmutableArray<AccessTime> Read(Row row, string column)
    {
        var times = ImmutableArray.CreateBuilder<AccessTime>();
        foreach (string part in row.Parts(column))
        {
            if (One(part) is not { } time) row.Refuse(column, part, Form);
            else if (time.To < time.From) row.Refuse(column, part, "This ends before it begins: no visit could ever start.");
            else if (times.Any(other => Overlap(other, time))) row.Refuse(column, part, "This overlaps another time given for the same weekday.");
            else times.Add(time);
        }

        return times.ToImmutable();
    }

    public static string Write(IEnumerable<AccessTime> times) => string.Join("; ", times.Select(time =>
        string.Concat(time.Weekdays.Select(day => WeekdayWords.Of(day) + " ")) + $"{TimeText.Write(time.From)}-{TimeText.Write(time.To)}"));

    private static AccessTime? One(string part)
    {
        string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string[] ends = words[^1].Split('-');
        if (ends.Length != 2 || TimeText.ReadTime(ends[0]) is not { } from || TimeText.ReadTime(ends[1]) is not { } to) return null;
        var days = ImmutableArray.CreateBuilder<IsoDayOfWeek>();
        foreach (string word in words[..^1])
        {
            if (!WeekdayWords.TryParse(word, out IsoDayOfWeek day) || days.Contains(day)) return null;
            days.Add(day);
        }

        return new AccessTime(days.ToImmutable(), from, to);
    }

    private static bool Overlap(AccessTime a, AccessTime b) =>
        (a.Weekdays.IsEmpty || b.Weekdays.IsEmpty || a.Weekdays.Intersect(b.Weekdays).Any()) && a.From <= b.To && b.From <= a.To;
}
