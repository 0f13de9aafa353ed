using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Whether a visit still is what people were told.</summary>
public static class Promises
{
    /// <summary>Same people, same day, and the start as published or inside the range the family was told.</summary>
    public static bool Hold(WeekVisit told, WeekVisit now, int rangeMinutes)
    {
        if (told.Nurse != now.Nurse || told.Second != now.Second || told.Day != now.Day) return false;
        if (told.Start == now.Start) return true;
        return told is { Promise: PromiseState.Told, ToldFrom: { } from }
            && MinutesFrom(from, now.Start) is >= 0 and var after && after <= rangeMinutes;
    }

    /// <summary>Minutes from one time of a day to another; negative when it is earlier.</summary>
    public static long MinutesFrom(LocalTime from, LocalTime to) => Period.Between(from, to, PeriodUnits.Minutes).Minutes;
}
