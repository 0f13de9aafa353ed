using System.Collections.Immutable;
using System.Text.Json;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Exchange.Json;

/// <summary>The due windows of a roster as a documented JSON file (docs/json.md).</summary>
public sealed record DueFile(string Format, int Version, string Agency, string At, string Caution, ImmutableArray<DueEntry> Due)
{
    public const string FormatName = "homeline-due";

    public static DueFile Of(AgencyRoster roster, CareFiles files, Instant at) => new(
        FormatName,
        1,
        roster.Profile.Name,
        JsonText.Moment(at, roster.Profile.Zone),
        StandingCaution.Due,
        DueEntry.AllOf(roster, files, at));

    public string ToJson() => JsonSerializer.Serialize(this, JsonText.Options) + "\n";
}

/// <summary>The standing cautions that go with every file.</summary>
public static class StandingCaution
{
    public const string Due = "Computed from recorded care and your agency's policy. Orders and clinical judgement come first.";
    public const string Plan = Due + " A plan is a proposal until a person publishes it.";
}
