using System.Collections.Immutable;
using System.Text.Json;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning;
using HomeLine.Planning.Checking;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Exchange.Json;

/// <summary>A week's plan as a documented JSON file (docs/json.md): visits, unmet needs, due windows, the checker's verdict.</summary>
public sealed record PlanFile(
    string Format,
    int Version,
    string Agency,
    string Week,
    string Now,
    string Caution,
    SearchEntry Search,
    PlanScore Score,
    PlanFigures Figures,
    ImmutableArray<VisitEntry> Visits,
    ImmutableArray<UnmetEntry> Unmet,
    CheckerEntry Checker,
    ImmutableArray<DueEntry> Due)
{
    public const string FormatName = "homeline-plan";

    public static PlanFile Of(
        AgencyRoster roster, CareFiles files, WeekDemand demand, WeekPlan plan, CheckReport check, PlanOptions options, Instant now)
    {
        PlannedWeek week = PlanInNames.Of(plan, demand);
        return new PlanFile(
            FormatName,
            1,
            roster.Profile.Name,
            JsonText.Date(week.FirstDay),
            JsonText.Moment(now, roster.Profile.Zone),
            StandingCaution.Plan,
            new SearchEntry(options.Seed, options.Iterations),
            check.Score,
            check.Figures,
            [.. plan.Visits.Select(v => VisitEntry.Of(v, demand))],
            [.. week.Unmet.Select(UnmetEntry.Of)],
            CheckerEntry.Of(check),
            DueEntry.AllOf(roster, files, now));
    }

    public string ToJson() => JsonSerializer.Serialize(this, JsonText.Options) + "\n";
}

/// <summary>What the plan can be repeated with.</summary>
public sealed record SearchEntry(ulong Seed, int Iterations);

/// <summary>One visit, in branch time.</summary>
public sealed record VisitEntry(
    string Id,
    string Day,
    string Start,
    string End,
    string Nurse,
    string? Second,
    string Patient,
    int Minutes,
    ImmutableArray<CareEntry> Care)
{
    public static VisitEntry Of(PlannedVisit visit, WeekDemand demand)
    {
        LocalDateTime start = demand.Calendar.Local(visit.Start);
        return new VisitEntry(
            visit.Id,
            JsonText.Date(start.Date),
            JsonText.Time(start.TimeOfDay),
            JsonText.Time(start.TimeOfDay.PlusMinutes(visit.Minutes)),
            visit.Nurse,
            visit.Second,
            visit.Patient,
            visit.Minutes,
            [.. visit.Tasks.Select(t => CareEntry.Of(demand.Needs[t], visit, demand))]);
    }
}

/// <summary>One item of care in a visit, with the window the planner kept and whether it is late in this plan.</summary>
public sealed record CareEntry(string Key, string Label, string Opens, string LateFrom, bool Late, string Because)
{
    public static CareEntry Of(CareNeed need, PlannedVisit visit, WeekDemand demand)
    {
        CareTask task = need.Task;
        DateTimeZone zone = demand.Calendar.Zone;
        return new CareEntry(
            need.Key,
            task.Label,
            JsonText.Moment(demand.Calendar.At(task.Opens), zone),
            JsonText.Moment(demand.Calendar.At(task.LateFrom), zone),
            visit.Start >= task.LateFrom,
            need.Windows[0].Because.Sentence);
    }
}

/// <summary>A need no visit covers.</summary>
public sealed record UnmetEntry(
    string Patient, string Need, ImmutableArray<PlanningReason> Reasons, ImmutableArray<Relaxation> Relaxations)
{
    public static UnmetEntry Of(UnmetNeed need) => new(need.Patient.Value, need.Label, need.Reasons, need.Relaxations);
}

/// <summary>The independent checker's verdict.</summary>
public sealed record CheckerEntry(bool Accepted, ImmutableArray<FindingEntry> Findings)
{
    public static CheckerEntry Of(CheckReport check) => new(check.Accepted, [.. check.Findings.Select(FindingEntry.Of)]);
}

/// <summary>One thing the checker holds against the plan.</summary>
public sealed record FindingEntry(string Rule, string? Visit, string? Nurse, string Code, string Sentence)
{
    public static FindingEntry Of(Finding finding) =>
        new(finding.Rule, finding.Visit, finding.Nurse, finding.Reason.Code, finding.Reason.Sentence);
}
