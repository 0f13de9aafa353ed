using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.Holidays;

/// <summary>Who is off, who is on call and who works on a holiday. Pure.</summary>
/// <param name="Off">Those whose ordinary hours would go.</param>
/// <param name="OnCall">Those on call, who keep the hours of that day.</param>
/// <param name="Working">Those who work it all the same.</param>
internal sealed record HolidayCrew(ImmutableArray<NurseFile> Off, ImmutableArray<NurseFile> OnCall, ImmutableArray<NurseFile> Working)
{
    public static HolidayCrew Of(IEnumerable<NurseFile> nurses, LocalDate day, IReadOnlyCollection<string> works)
    {
        ImmutableArray<NurseFile> there = [.. nurses.Where(n => !n.Leaves.Any(l => l.IsAllDay(day)))];
        ImmutableArray<NurseFile> onCall = [.. there.Where(n => n.Week.Any(w => w.OnCall && w.Weekday == day.DayOfWeek))];
        ImmutableArray<NurseFile> usual = [.. there.Except(onCall).Where(n => n.Week.Any(w => !w.OnCall && w.Weekday == day.DayOfWeek))];
        return new HolidayCrew([.. usual.Where(n => !works.Contains(n.Id))], onCall, [.. usual.Where(n => works.Contains(n.Id))]);
    }

    /// <summary>The day off a holiday gives; a leave that no longer equals it was changed since and is somebody else's word.</summary>
    public static Leave LeaveOf(LocalDate day, string name) => new(day, day, name);
}
