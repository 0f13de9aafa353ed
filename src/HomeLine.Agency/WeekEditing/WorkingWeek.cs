using System.Collections.Immutable;
using HomeLine.Agency.Mending;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning;
using HomeLine.Planning.Editing;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>
/// The week the coordinators work on, made ready: the draft, or the published week while nobody has changed it; what was promised; the changes so far;
/// and the same as a plan that answers at once what a move would do. Nothing in it changes.
/// </summary>
public sealed class WorkingWeek
{
    private readonly ImmutableDictionary<string, WeekVisit> visits;
    private readonly ImmutableDictionary<string, WeekVisit> promised;
    private readonly Lazy<DraftBoard> board;
    private readonly Lazy<ImmutableArray<UnmetCareNeed>> unmet;

    /// <param name="agency">The roster at the agency's now.</param>
    /// <param name="published">The published week; empty when there is none.</param>
    /// <param name="draft">The draft; empty when nobody has changed the week.</param>
    /// <param name="edits">Every change of this week.</param>
    /// <param name="firstDay">The week.</param>
    /// <param name="ready">The needs, when they were derived before from the same roster.</param>
    public WorkingWeek(
        AgencyAtHand agency, PlannedWeek? published, StoredWeek? draft, ImmutableArray<WeekEdit> edits, LocalDate firstDay, WeekNeeds ready)
    {
        Agency = agency;
        FirstDay = firstDay;
        Published = published;
        Revision = draft?.Revision ?? 0;
        Week = draft?.Week ?? published ?? new PlannedWeek { FirstDay = firstDay, Visits = [] };
        ChangedAt = draft?.SavedAt;
        ChangedBy = draft?.SavedBy ?? "";
        Log = EditLog.Of(edits, Week.Version, Revision);
        Needs = ready;
        visits = Week.Visits.ToImmutableDictionary(v => v.Id);
        promised = published?.Visits.ToImmutableDictionary(v => v.Id) ?? ImmutableDictionary<string, WeekVisit>.Empty;
        Hand = HandPlan.Of(ready, Week, published, agency.Roster, Log.Pinned);
        board = new Lazy<DraftBoard>(() => DraftBoard.Of(this));
        unmet = new Lazy<ImmutableArray<UnmetCareNeed>>(() => UnmetCareNeed.Of(this, WhyUnmet()));
    }

    public AgencyAtHand Agency { get; }

    public LocalDate FirstDay { get; }

    public PlannedWeek? Published { get; }

    /// <summary>The draft's revision; 0 while nobody has changed the week.</summary>
    public int Revision { get; }

    /// <summary>The week as worked on.</summary>
    public PlannedWeek Week { get; }

    public Instant? ChangedAt { get; }

    public string ChangedBy { get; }

    public EditLog Log { get; }

    public WeekNeeds Needs { get; }

    /// <summary>The same as a plan to try moves on.</summary>
    public HandWeek Hand { get; }

    /// <summary>The week as a page draws it; drawn once, whoever looks.</summary>
    public DraftBoard Board => board.Value;

    /// <summary>Needs nobody covers, with why; asked once, whoever looks.</summary>
    public ImmutableArray<UnmetCareNeed> UnmetNeeds => unmet.Value;

    public PlanCalendar Calendar => Needs.Demand.Calendar;

    /// <summary>Only asked when something is unmet: it reads the whole plan.</summary>
    private Dictionary<string, UnmetTask> WhyUnmet() => Hand.Unmet.IsEmpty ? [] : Planner.WhyUnmet(Hand.Problem, Hand.Visits).ToDictionary(u => u.Task);

    public WeekVisit? Visit(string id) => visits.GetValueOrDefault(id);

    /// <summary>What was promised of a visit; empty for a new one.</summary>
    public WeekVisit? Promised(string id) => promised.GetValueOrDefault(id);

    /// <summary>Why a visit cannot be moved by hand; empty when it can.</summary>
    public string WhyItStays(WeekVisit visit)
    {
        if (HeldPlaces.IsHeld(visit.Id)) return "A place held for a referral. It is let go under Today.";
        if (visit.Held is { } held) return $"Held: {held}";
        if (Calendar.Minute(visit.Day, visit.Start) < Hand.Problem.Now) return "It lies behind: done or under way.";
        if (Log.Pinned.Contains(visit.Id)) return "Pinned. Take the pin out first.";
        return Hand.Stays(visit.Id) ? "It starts within the hour or is under way: it does not move." : "";
    }

    /// <summary>A plan's visit as it would be kept: unchanged against what was promised it keeps the promise, else it is only proposed.</summary>
    public WeekVisit Kept(PlannedVisit visit)
    {
        WeekVisit? was = Visit(visit.Id) ?? Promised(visit.Id), told = Promised(visit.Id);
        LocalDateTime start = Calendar.Local(visit.Start);
        ImmutableArray<string> stood = Hand.Visits.FirstOrDefault(v => v.Id == visit.Id)?.Tasks ?? [];
        var kept = new WeekVisit
        {
            Id = visit.Id,
            Patient = new PatientId(visit.Patient),
            Nurse = visit.Nurse,
            Second = visit.Second,
            Day = start.Date,
            Start = start.TimeOfDay,
            Minutes = visit.Minutes,
            Care = was is not null && stood.SequenceEqual(visit.Tasks) ? was.Care : [.. visit.Tasks.Select(t => Needs.Demand.Needs[t].AsVisitCare())],
        };
        return told is not null && Promises.Hold(told, kept, Hand.Problem.Rules.ToldRangeMinutes)
            ? kept with { Promise = told.Promise, ToldFrom = told.ToldFrom }
            : kept;
    }

    /// <summary>The week after a change: its visits, and what is then unmet.</summary>
    public PlannedWeek After(ImmutableArray<WeekVisit> before, ImmutableArray<WeekVisit> after)
    {
        var gone = before.Select(v => v.Id).ToHashSet();
        PlannedWeek next = Week with
        {
            Version = Published?.Version ?? 0,
            Visits = [.. Week.Visits.Where(v => !gone.Contains(v.Id)), .. after],
        };
        next = next with { Visits = [.. next.Visits.OrderBy(v => v.Day).ThenBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] };
        HandWeek then = HandPlan.Of(Needs, next, Published, Agency.Roster, Log.Pinned);
        return next with { Unmet = [.. then.Unmet.Select(Unmet), .. Needs.Demand.NotPlannable] };
    }

    private UnmetNeed Unmet(CareTask task)
    {
        CareNeed need = Needs.Demand.Needs[task.Id];
        return Week.Unmet.FirstOrDefault(u => u.Patient == need.Patient && u.Label == task.Label)
            ?? new UnmetNeed(need.Patient, task.Label, [new PlanningReason("taken-out", "Taken out of the plan by hand.", "Place it again, or say why it can wait.")], []) { LastDay = need.Windows[0].LastDay };
    }
}

/// <summary>What a week asks for, derived once from a roster.</summary>
/// <param name="Demand">The needs as the planner's problem, with what was published as its promises.</param>
/// <param name="Roads">The map.</param>
public sealed record WeekNeeds(WeekDemand Demand, RoadTravel Roads);
