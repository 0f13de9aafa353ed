using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.Travel;

namespace HomeLine.Agency.Absence;

/// <summary>What has to be arranged before a patient leaves for some days. Pure.</summary>
internal static class BeforeLeaving
{
    /// <summary>What stands against the stay, and what falls due meanwhile.</summary>
    public static ImmutableArray<RecordingReply> Replies(AgencyAtHand agency, Hold hold)
    {
        PatientCare care = agency.Files[hold.Patient];
        ImmutableArray<RecordingReply> replies = hold.Stay is { } stay
            ? stay.Replies([.. care.Holds.Where(h => h.From != hold.From).Select(h => h.Stay).OfType<Stay>()], LicensedThrough(agency.Roster, stay))
            : [];
        string[] due = [.. Meanwhile(agency, hold)];
        return due.Length == 0
            ? replies
            : replies.Add(new RecordingReply(AbsenceCodes.DueWhileAway, ReplyWeight.Tell, null, null, null,
                $"Falls due meanwhile: {string.Join("; ", due)}. {Arrange(hold)}"));
    }

    private static string Arrange(Hold hold) => hold.Elsewhere is { CareBy.Length: > 0 } place
        ? $"{place.CareBy} does it there; what was done is written down on return."
        : "It is done before leaving where its window allows, or somebody there has to be found.";

    private static IEnumerable<string> Meanwhile(AgencyAtHand agency, Hold hold) => agency.Files.WhatIsDue(hold.Patient, agency.Now).Windows
        .Where(w => w.Owner == PerformerKind.Nurse && w.LastDay >= hold.From && !(w.LastDay > hold.Through))
        .OrderBy(w => w.LastDay).ThenBy(w => w.Item)
        .Select(w => $"{CareLabels.Of(w.Item)}{(w.Line is { } line ? $" {line}" : "")} by {w.LastDay.ToString("ddd d MMM", CultureInfo.InvariantCulture)}")
        .Distinct();

    /// <summary>States in which some nurse is licensed to the last day of the stay, through the compact too.</summary>
    private static HashSet<string> LicensedThrough(AgencyRoster roster, Stay stay) =>
    [
        .. roster.Nurses.SelectMany(n => n.Licences)
            .Where(l => l.ValidThrough is not { } last || last >= stay.Through)
            .SelectMany(l => l.Compact && roster.Profile.CompactStates.Contains(l.State) ? roster.Profile.CompactStates : [l.State]),
    ];
}
