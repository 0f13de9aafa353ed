using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Mending;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>A nurse calls out: who of her patients cannot wait, and who takes whom. Pure.</summary>
internal static class NurseOutCase
{
    public static Refusal? Fault(NurseIsOut entry, AgencyAtHand agency)
    {
        if (agency.Roster.Nurses.All(n => n.Id != entry.Nurse)) return new Refusal("nurse-not-found", "There is no such nurse.", "Choose the nurse again.");
        if (entry.Through < entry.From.Date) return new Refusal("out-ends-before-start", "The last day is before the first.", "Correct one of them.");
        return entry.From.Date < agency.Today ? new Refusal("out-in-past", "The first day has passed.", "Begin today, or record it as leave.") : null;
    }

    public static MendOffer Offer(NurseIsOut entry, MendSetting setting)
    {
        PlanCalendar calendar = setting.Calendar;
        string name = setting.People.NurseName(entry.Nurse);
        int from = Math.Max(calendar.Minute(entry.From), setting.Now);
        int to = Math.Min(calendar.Minute(entry.Through.PlusDays(1), LocalTime.Midnight), calendar.End);
        var facts = ImmutableArray.CreateBuilder<string>();
        string first = entry.From.TimeOfDay == LocalTime.Midnight ? DayWords.Day(entry.From.Date) : DayWords.Moment(entry.From);
        string when = entry.Through == entry.From.Date ? (entry.From.TimeOfDay == LocalTime.Midnight ? $"on {first}" : $"from {first}") : $"from {first} through {DayWords.Day(entry.Through)}";
        facts.Add($"{name} is out {when}{(entry.Why.Length > 0 ? $": {entry.Why}" : "")}. It is kept with her file: nothing more is planned for her in that time.");
        if (entry.Through >= calendar.FirstDay.PlusDays(calendar.DayCount))
            facts.Add("The answers are for this week. The next week is planned around her absence; look at it when it is published already.");
        if (to <= from) return new MendOffer { Facts = facts.ToImmutable() };
        MendOffer offer = new WeekMend(setting).Of([new Trouble.NurseOut(entry.Nurse, from, to)]);
        facts.AddRange(RideAlongs(entry.Nurse, from, to, setting));
        if (offer.CannotWait.IsEmpty) facts.Add("She has no visit in that time. Nobody has to be moved.");
        return offer with { Facts = facts.ToImmutable() };
    }

    /// <summary>Ride-alongs that fall out: the visit itself can be made by one, but the supervision is not.</summary>
    private static IEnumerable<string> RideAlongs(string nurse, int from, int to, MendSetting setting) => setting.Week.Visits
        .Where(v => v.Held is null && (v.Second == nurse || v.Nurse == nurse) && setting.IsRideAlong(v) && setting.Calendar.Minute(v.Day, v.Start) is var at && at >= from && at < to)
        .OrderBy(v => v.Day).ThenBy(v => v.Start)
        .Select(v => $"The ride-along of {setting.People.NurseName(v.Second!)} with {setting.People.NurseName(v.Nurse)} at {setting.People.Name(v.Patient)}, {DayWords.When(v)}, does not take place. "
            + (v.Second == nurse ? $"{setting.People.NurseName(v.Nurse)} can make the visit alone. " : "Nobody need go along with who comes instead. ")
            + "The supervision stays due: put it on another visit.");
}
