using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Planning.Mending;

namespace HomeLine.Agency.Mending;

/// <summary>Roads are closed for a while: who cannot be reached in time, who cannot wait, and who is phoned. Pure.</summary>
internal static class ClosureCase
{
    /// <summary>How the title of every closure begins; closures are found by it.</summary>
    public const string TitleBegins = "Closed: ";

    public static Refusal? Fault(RoadShut entry, AgencyAtHand agency)
    {
        if (entry.Crossings.IsEmpty && entry.Towns.IsEmpty)
            return new Refusal("closure-names-nothing", "It is not said what is closed.", "Choose at least one bridge, pass or town.");
        if (entry.To <= entry.From) return new Refusal("closure-ends-before-start", "It would open before it closes.", "Correct one of the times.");
        if (entry.To.InZoneLeniently(agency.Roster.Profile.Zone).ToInstant() <= agency.Now)
            return new Refusal("closure-over", "That closure is over already.", "Correct the times.");
        ImmutableHashSet<string> crossings = [.. agency.Roster.Map.Barriers.SelectMany(b => b.Crossings).Select(c => c.Name)];
        ImmutableHashSet<string> towns = [.. agency.Roster.Map.Towns.Select(t => t.Code)];
        return entry.Crossings.All(crossings.Contains) && entry.Towns.All(towns.Contains)
            ? null
            : new Refusal("closure-unknown-place", "One of the places is not on the agency's map.", "Choose from the list.");
    }

    /// <param name="entry">What is closed.</param>
    /// <param name="others">Closures that were reported before and count as well.</param>
    /// <param name="setting">The week as it stands, with the roads as usual.</param>
    public static MendOffer Offer(RoadShut entry, ImmutableArray<RoadShut> others, MendSetting setting)
    {
        AgencyRoster roster = setting.Agency.Roster;
        MendOffer offer = new WeekMend(setting).Of([.. StandingClosures.Changes([entry, .. others], roster, setting.Calendar).Select(c => new Trouble.Roads(c))]);
        string what = StandingClosures.Words(entry, roster.Map);
        return offer with
        {
            Facts =
            [
                $"{what} closed from {DayWords.Moment(entry.From)} to {DayWords.Moment(entry.To)}{(entry.Why.Length > 0 ? $": {entry.Why}" : "")}.",
                "Planning, moves by hand, every answer and the map count with it until then. When it opens earlier, say so here.",
                .. StandingClosures.Changes([entry], roster, setting.Calendar).SelectMany(c => CourierCautions.Of(c, setting)),
                .. Everywhere(entry, offer, setting),
                .. offer.CannotWait.IsEmpty ? ["Every visit still reaches its patient at its time."] : ImmutableArray<string>.Empty,
                "Whether a road can be driven is the nurse's to judge on the spot. She turns back when it cannot.",
            ],
            Next = offer.CannotWait.IsEmpty
                ? new NextStep("No visit is touched. Close it when the road is open again.", entry.To.InZoneLeniently(roster.Profile.Zone).ToInstant())
                : null,
        };
    }

    /// <summary>When no town can be entered or left: who can be reached inside the towns, on foot, and who only by phone.</summary>
    private static IEnumerable<string> Everywhere(RoadShut entry, MendOffer offer, MendSetting setting)
    {
        if (!setting.Agency.Roster.Map.Towns.All(t => entry.Towns.Contains(t.Code))) yield break;
        var nobody = (offer.Answers.IsEmpty ? offer.CannotWait.Select(b => b.Visit) : offer.Answers[0].Changes.Where(c => c.After is null).Select(c => c.Before!))
            .Select(v => v.Patient).ToHashSet();
        string[] Names(bool byPhone) =>
        [
            .. setting.Week.Visits.Where(v => v.Held is null && v.Day.At(v.Start) >= entry.From && v.Day.At(v.Start) < entry.To && setting.Calendar.Minute(v.Day, v.Start) > setting.Now)
                .Select(v => v.Patient).Where(p => nobody.Contains(p) == byPhone).Distinct().Select(setting.People.Name),
        ];
        string[] onFoot = Names(byPhone: false), phone = Names(byPhone: true);
        yield return $"Nobody gets from one town to another. On foot, inside a town: {(onFoot.Length == 0 ? "nobody" : string.Join(", ", onFoot))}.";
        yield return $"By phone only: {(phone.Length == 0 ? "nobody" : string.Join(", ", phone))}.";
    }
}
