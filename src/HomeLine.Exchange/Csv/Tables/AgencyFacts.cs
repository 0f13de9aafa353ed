using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv.Cells;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>The facts of agency.csv put together: the profile, and what the other files are read against.</summary>
internal sealed record AgencyFacts(AgencyProfile Profile, LocalDate? WeekFrom, int WeekVersion)
{
    private const int LargestMap = 5_000;

    public static AgencyFacts From(ImmutableArray<AgencyTable.Fact> facts, ReadingChoices choices, RosterTies ties, ProblemList problems)
    {
        Dictionary<string, Row> rows = facts.ToDictionary(fact => fact.Key, fact => fact.Row, StringComparer.Ordinal);
        foreach (string key in AgencyTable.NeededKeys.Where(key => !rows.TryGetValue(key, out Row? row) || !row.Has("value")))
            problems.Add(AgencyTable.Shape.File, 1, "key", key, $"The key {key} with a value is needed.");

        string zoneId = ReadZone(rows, ties);
        ReadDateOrder(rows, choices, ties);
        foreach (string state in rows.TryGetValue("states", out Row? states) ? states.Parts("value") : []) ties.States.Add(state);
        if (rows.TryGetValue("map_width_km", out Row? width)) ties.MapWidth = (double)(width.Number("value", 1, LargestMap) ?? 1);
        if (rows.TryGetValue("map_height_km", out Row? height)) ties.MapHeight = (double)(height.Number("value", 1, LargestMap) ?? 1);
        Instant? fixedNow = Moment(rows, "fixed_now", ties);
        ties.AsOf = Moment(rows, "as_of", ties) ?? fixedNow ?? choices.Now;
        if (ties.AsOf is null)
            problems.Add(AgencyTable.Shape.File, 1, "key", "as_of", "The key as_of is needed: the date and time these files were written.");
        return new AgencyFacts(
            ProfileOf(rows, zoneId, fixedNow) with { CompactStates = CompactStates(rows) },
            rows.TryGetValue("week_from", out Row? from) ? from.Date("value") : null,
            rows.TryGetValue("week_version", out Row? version) ? version.Whole("value", 0, 1_000_000) ?? 0 : 0);
    }

    private static string ReadZone(Dictionary<string, Row> rows, RosterTies ties)
    {
        if (!rows.TryGetValue("zone", out Row? row)) return "";
        string id = row.Trimmed("value");
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(id) is { } zone) ties.BranchZone = zone;
        else if (id.Length > 0) row.Refuse("value", ZoneProblem);
        return id;
    }

    public const string ZoneProblem = "This time zone is not known. Write its identifier, for example America/New_York.";

    private static ImmutableArray<string> CompactStates(Dictionary<string, Row> rows) =>
        rows.TryGetValue("compact_states", out Row? row) ? [.. row.Parts("value").Select(state => row.State(state, "value"))] : [];

    private static void ReadDateOrder(Dictionary<string, Row> rows, ReadingChoices choices, RosterTies ties) =>
        ties.Dates = rows.TryGetValue("date_order", out Row? row) ? row.OptionalWord<DateOrder>("value") ?? choices.Dates : choices.Dates;

    private static Instant? Moment(Dictionary<string, Row> rows, string key, RosterTies ties) =>
        rows.TryGetValue(key, out Row? row) ? row.Instant("value", ties.BranchZone) : null;

    private static AgencyProfile ProfileOf(Dictionary<string, Row> rows, string zoneId, Instant? fixedNow)
    {
        string Value(string key) => rows.TryGetValue(key, out Row? row) ? row.Text("value") : "";
        string emergency = Value("emergency_number");
        return new AgencyProfile
        {
            Name = Value("name"),
            Branch = Value("branch"),
            ZoneId = zoneId,
            DayPhone = Value("day_phone"),
            OnCallPhone = Value("on_call_phone"),
            EmergencyNumber = emergency.Length == 0 ? "911" : emergency,
            IsDemo = rows.TryGetValue("demo", out Row? demo) && demo.YesNo("value"),
            FixedNow = fixedNow,
        };
    }
}
