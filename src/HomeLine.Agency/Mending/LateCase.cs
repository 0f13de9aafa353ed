using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Mending;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>A nurse runs behind: the rest of her day is projected; whose range it leaves is called, or somebody else goes. Pure.</summary>
internal static class LateCase
{
    private const int MostMinutes = 600;

    public static Refusal? Fault(RunsLate entry, AgencyAtHand agency)
    {
        if (agency.Roster.Nurses.All(n => n.Id != entry.Nurse)) return new Refusal("nurse-not-found", "There is no such nurse.", "Choose the nurse again.");
        return entry.Minutes is < 1 or > MostMinutes
            ? new Refusal("late-out-of-range", "The minutes behind lie between 1 and 600.", "Correct the minutes; for longer, she is out from a time on.")
            : null;
    }

    public static Outcome<MendOffer> Offer(RunsLate entry, MendSetting setting)
    {
        LocalDateTime now = setting.Calendar.Local(setting.Now);
        ImmutableArray<WeekVisit> hers = [.. setting.Week.Visits
            .Where(v => v.Held is null && v.Day == now.Date && (v.Nurse == entry.Nurse || v.Second == entry.Nurse)).OrderBy(v => v.Start)];
        WeekVisit? at = hers.LastOrDefault(v => v.Start <= now.TimeOfDay) ?? hers.FirstOrDefault();
        if (at is null) return new Refusal("nothing-left-today", "She has no visit today.", "Look at her day in the week.");
        string name = setting.People.NurseName(entry.Nurse);
        bool begun = at.Start <= now.TimeOfDay;
        MendOffer offer = new WeekMend(setting).Of([new Trouble.Overrun(at.Id, entry.Minutes)]);
        ImmutableArray<PersonToTell> first = begun ? [] : [setting.People.Family(at.Patient, $"The nurse comes about {entry.Minutes} minutes later than {DayWords.Time(at.Start)}.")];
        return offer with
        {
            Facts =
            [
                $"{name} is {entry.Minutes} min behind {(begun ? "with" : "on the way to")} {setting.People.Name(at.Patient)} ({DayWords.Time(at.Start)}).",
                .. offer.CannotWait.IsEmpty ? ["The rest of her day keeps its times."] : Projected(offer.CannotWait, offer.Answers, setting),
            ],
            ToTell = first,
        };
    }

    private static IEnumerable<string> Projected(ImmutableArray<BrokenInWords> broken, ImmutableArray<MendAnswer> answers, MendSetting setting)
    {
        foreach (BrokenInWords one in broken)
        {
            WeekVisit? stays = answers.SelectMany(a => a.Changes)
                .FirstOrDefault(c => c.Before!.Id == one.Visit.Id && c.After is { } after && after.Nurse == one.Visit.Nurse && after.Day == one.Visit.Day)?.After;
            if (stays is null) continue;
            bool inside = stays.ToldFrom == one.Visit.ToldFrom;
            yield return $"{one.Who}: about {DayWords.Time(stays.Start)} instead of {DayWords.Time(one.Visit.Start)}, {(inside ? "inside" : "outside")} the range that was told ({DayWords.Range(one.Visit, setting.ToldMinutes)}).";
        }
    }
}
