using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// The seam between clocks and planner: the roster's due windows become the planner's problem, and nothing else knows both.
/// </summary>
/// <param name="Problem">What the planner gets.</param>
/// <param name="Needs">Every need by task identifier, so that answers can be read in the trade's words.</param>
/// <param name="NotPlannable">Needs that no plan may cover, with the reason.</param>
/// <param name="Calendar">The minute axis.</param>
public sealed record WeekDemand(
    WeekProblem Problem,
    ImmutableDictionary<string, CareNeed> Needs,
    ImmutableArray<UnmetNeed> NotPlannable,
    PlanCalendar Calendar)
{
    /// <summary>Derives the problem of a horizon from the roster as it stands at <paramref name="now"/>. Pure.</summary>
    public static WeekDemand Of(AgencyRoster roster, CareFiles files, LocalDate firstDay, int dayCount, Instant now)
    {
        var calendar = new PlanCalendar(roster.Profile.Zone, firstDay, dayCount);
        PatientNeeds found = NeedsOf(roster.Patients, files, calendar, now);
        return new WeekDemand(
            ProblemOf(roster, files, RoadTravel.Of(roster), calendar, now, [.. found.Needs.Select(n => n.Task)]),
            found.Needs.ToImmutableDictionary(n => n.Task.Id),
            found.NotPlannable,
            calendar);
    }

    /// <summary>What some patients need, without the problem around it.</summary>
    internal static PatientNeeds NeedsOf(IEnumerable<Patient> patients, CareFiles files, PlanCalendar calendar, Instant now)
    {
        var setting = new NeedSetting(files.Policy, calendar, now);
        var needs = ImmutableArray.CreateBuilder<CareNeed>();
        var notPlannable = ImmutableArray.CreateBuilder<UnmetNeed>();
        // Each patient is looked at by herself, so the cores share them; the order stays.
        foreach (PatientNeeds found in patients.AsParallel().AsOrdered().Select(p => PatientNeeds.Of(p, files[p.Id], files.WhatIsDue(p.Id, now), setting)))
        {
            needs.AddRange(found.Needs);
            notPlannable.AddRange(found.NotPlannable);
        }

        return new PatientNeeds(needs.ToImmutable(), notPlannable.ToImmutable());
    }

    /// <summary>
    /// The problem of a week that runs or lies ahead, planned from now or from its beginning. Visits promised until then count as made;
    /// what the week itself still promises is where the search starts.
    /// </summary>
    /// <param name="roster">The roster as it stands.</param>
    /// <param name="published">Published weeks: the one now running and the one to plan, where there are any.</param>
    /// <param name="firstDay">The week to plan.</param>
    /// <param name="now">Now.</param>
    /// <param name="dayCount">Days looked at: the week, or more, so that this week's visits are made on days that suit the next week's.</param>
    public static WeekDemand Ahead(AgencyRoster roster, ImmutableArray<PlannedWeek> published, LocalDate firstDay, Instant now, int dayCount = 7)
    {
        Instant from = Instant.Max(now, firstDay.AtStartOfDayInZone(roster.Profile.Zone).ToInstant());
        AgencyRoster then = Foreseen.At(roster, published, now, from);
        return PromisedVisits.In(
            Of(then, CareFiles.Of(then), firstDay, dayCount, from),
            published.FirstOrDefault(w => w.FirstDay == firstDay));
    }

    /// <summary>A problem over the whole roster with the given tasks.</summary>
    internal static WeekProblem ProblemOf(
        AgencyRoster roster, CareFiles files, RoadTravel roads, PlanCalendar calendar, Instant now, ImmutableArray<CareTask> tasks)
    {
        ILookup<PatientId, SignedVisit> records = roster.SignedVisits.ToLookup(v => v.Patient);
        return new()
        {
            FirstDay = calendar.FirstDay,
            DayCount = calendar.DayCount,
            Now = Math.Max(0, calendar.Minute(now)),
            Travel = roads.Times,
            SlowHours = roads.SlowHoursOf(calendar),
            Nurses = [.. roster.Nurses.Select(n => NurseCalendar.Of(n, roads, calendar, files.Policy, roster.Profile.CompactStates))],
            Patients = [.. roster.Patients.Select(p => PatientHomes.Of(p, files[p.Id], files.Policy, roads, calendar, [.. records[p.Id]], now))],
            Tasks = tasks,
            Rules = Rules(files.Policy, now.InZone(calendar.Zone).Date),
            DropPoints = DropPoints(roster, roads, calendar),
        };
    }

    internal static PlanningRules Rules(PolicyBook policy, LocalDate date) => new(
        DocumentationMinutes: (int)policy.ValueOf("visit.documentation", date),
        RestBetweenShiftsMinutes: 60 * (int)policy.ValueOf("shift.rest.min", date),
        ToldRangeMinutes: (int)policy.ValueOf("told.range", date),
        LateStepPoints: (int)policy.ValueOf("risk.late.first", date))
    {
        FrozenAheadMinutes = (int)policy.ValueOf("frozen.ahead", date),
        HandInMinutes = (int)policy.ValueOf("specimen.handin", date) is > 0 and var minutes ? minutes : null,
    };

    internal static ImmutableArray<DropPoint> DropPoints(AgencyRoster roster, RoadTravel roads, PlanCalendar calendar) =>
        [.. roster.Map.Drops.Select((drop, i) => new DropPoint(
            drop.Name,
            roads.PlaceOfDrop(i),
            [.. Enumerable.Range(0, calendar.DayCount)
                .SelectMany(day => drop.Courier
                    .Where(c => c.Weekday == calendar.Date(day).DayOfWeek)
                    .Select(c => calendar.Minute(calendar.Date(day), c.At)))
                .Order()]))];
}
