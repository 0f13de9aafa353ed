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
        string what = string.Join(", ", entry.Crossings.Concat(entry.Towns.Select(code => roster.Map.Towns.First(t => t.Code == code).Name)));
        return offer with
        {
            Facts =
            [
                $"{what} closed from {DayWords.Moment(entry.From)} to {DayWords.Moment(entry.To)}{(entry.Why.Length > 0 ? $": {entry.Why}" : "")}.",
                "It counts for every answer until then. When the road opens earlier, close this without an answer: it counts no more.",
                .. StandingClosures.Changes([entry], roster, setting.Calendar).SelectMany(c => CourierCautions.Of(c, setting)),
                .. offer.CannotWait.IsEmpty ? ["Every visit still reaches its patient at its time."] : ImmutableArray<string>.Empty,
                "Whether a road can be driven is the nurse's to judge on the spot. She turns back when it cannot.",
            ],
            Next = offer.CannotWait.IsEmpty
                ? new NextStep("No visit is touched. Close it when the road is open again.", entry.To.InZoneLeniently(roster.Profile.Zone).ToInstant())
                : null,
        };
    }
}
