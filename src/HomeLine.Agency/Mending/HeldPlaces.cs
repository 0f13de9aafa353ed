using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Places held for referrals, as everybody who plans has to see them: a visit of somebody who is not on the roster yet, that stays where it is. Only looked
/// at, never stored with a week. Pure.
/// </summary>
internal static class HeldPlaces
{
    private const string Begins = "held-";

    /// <summary>Whether a visit is a held place and nobody's visit yet.</summary>
    public static bool IsHeld(string visit) => visit.StartsWith(Begins, StringComparison.Ordinal);

    /// <summary>Whether it is no patient of the roster but somebody a place is held for.</summary>
    public static bool IsHeld(PatientId patient) => patient.Value.StartsWith("(held", StringComparison.Ordinal);

    /// <summary>Those that hold now.</summary>
    public static IEnumerable<KeptPlace> Of(AgencyAtHand agency) => agency.Held.Where(h => h.Place.Until > agency.Now);

    /// <summary>The agency with the people places are held for; the same one when none is.</summary>
    public static AgencyAtHand With(AgencyAtHand agency)
    {
        var known = agency.Roster.Patients.Select(p => p.Id).ToHashSet();
        ImmutableArray<Patient> people = [.. Of(agency).Select(h => Person(h, agency)).Where(p => !known.Contains(p.Id))];
        if (people.IsEmpty) return agency;
        AgencyRoster roster = agency.Roster with { Patients = [.. agency.Roster.Patients, .. people] };
        return agency with { Roster = roster, Files = CareFiles.Of(roster) };
    }

    /// <summary>A week with the places held in it.</summary>
    public static PlannedWeek Into(PlannedWeek week, AgencyAtHand agency)
    {
        ImmutableArray<WeekVisit> places = [.. Of(agency).Where(h => AgencyAtHand.WeekOf(h.Place.Day) == week.FirstDay).Select(h => Visit(h, agency)).Where(v => week.Visits.All(w => w.Id != v.Id))];
        return places.IsEmpty ? week : week with { Visits = [.. week.Visits.Concat(places).OrderBy(v => v.Day).ThenBy(v => v.Start).ThenBy(v => v.Nurse, StringComparer.Ordinal)] };
    }

    /// <summary>The same for a stored week; nothing stays nothing.</summary>
    public static StoredWeek? Into(StoredWeek? stored, AgencyAtHand agency) => stored is null ? null : stored with { Week = Into(stored.Week, agency) };

    /// <summary>The week as it is kept: without them.</summary>
    public static PlannedWeek Without(PlannedWeek week) =>
        week.Visits.Any(v => IsHeld(v.Id)) ? week with { Visits = [.. week.Visits.Where(v => !IsHeld(v.Id))] } : week;

    /// <summary>What a week asks for, with the places as visits that stay.</summary>
    public static WeekDemand In(WeekDemand demand, AgencyAtHand agency)
    {
        WeekVisit[] places = [.. Of(agency).Select(h => Visit(h, agency)).Where(v => demand.Calendar.Minute(v.Day, v.Start) is var at && at >= demand.Problem.Now && at < demand.Calendar.End)];
        if (places.Length == 0) return demand;
        WeekPlan published = demand.Problem.Published ?? new WeekPlan([], [], default);
        return demand with
        {
            Problem = demand.Problem with
            {
                Tasks = [.. demand.Problem.Tasks, .. places.Select(v => Task(v, demand.Calendar))],
                Published = published with { Visits = [.. published.Visits, .. places.Select(v => Planned(v, demand.Calendar))] },
                FrozenVisits = [.. demand.Problem.FrozenVisits, .. places.Select(v => v.Id)],
            },
        };
    }

    /// <summary>An answer as it can be applied: a place that cannot be kept is said, and is no visit of the week.</summary>
    public static MendAnswer Without(MendAnswer answer, IEnumerable<KeptPlace> held)
    {
        ImmutableArray<VisitChange> lost = [.. answer.Changes.Where(c => c.Before is not null && IsHeld(c.Before.Id))];
        if (lost.IsEmpty) return answer;
        var names = held.Select(Named).ToHashSet(StringComparer.Ordinal);
        return answer with
        {
            Changes = [.. answer.Changes.Except(lost)],
            Unmet = [.. answer.Unmet.Where(u => !names.Contains(u.Who))],
            ToTell = [.. answer.ToTell.Where(p => !names.Contains(p.Who))],
            Cautions = [.. answer.Cautions, .. lost.Select(c => $"{names.FirstOrDefault(n => c.Words.StartsWith(n, StringComparison.Ordinal)) ?? "A place held"} cannot be kept: look at the referral again.")],
        };
    }

    private static string Named(KeptPlace held) => $"Place held for {held.Name}";

    /// <summary>What stands where a patient's number would: a word, counted where there are several.</summary>
    private static PatientId Code(KeptPlace held, AgencyAtHand agency)
    {
        int place = Of(agency).TakeWhile(h => h.Trouble != held.Trouble).Count();
        return new PatientId(place == 0 ? "(held)" : $"(held {place + 1})");
    }

    private static Patient Person(KeptPlace held, AgencyAtHand agency) => new()
    {
        Id = Code(held, agency),
        Name = Named(held),
        CareStartedOn = held.Place.Day,
        Home = held.Place.Home,
        State = agency.Roster.Map.NearestTown(held.Place.Home)?.State ?? "",
        ZoneId = agency.Roster.Profile.ZoneId,
    };

    private static WeekVisit Visit(KeptPlace held, AgencyAtHand agency) => new()
    {
        Id = Begins + held.Trouble,
        Patient = Code(held, agency),
        Nurse = held.Place.Nurse,
        Second = held.Place.Second,
        Day = held.Place.Day,
        Start = held.Place.Start,
        Minutes = held.Place.Minutes,
        Care = [],
        Promise = PromiseState.Frozen,
    };

    private static CareTask Task(WeekVisit place, PlanCalendar calendar) => new()
    {
        Id = place.Id,
        Patient = place.Patient.Value,
        Label = "start of care",
        Opens = calendar.Minute(place.Day, place.Start),
        LateFrom = calendar.Minute(place.Day.PlusDays(1), LocalTime.Midnight),
        SetupMinutes = 0,
        WorkMinutes = place.Minutes,
        Skills = [],
        Weight = 1,
    };

    private static PlannedVisit Planned(WeekVisit place, PlanCalendar calendar) => new()
    {
        Id = place.Id,
        Patient = place.Patient.Value,
        Nurse = place.Nurse,
        Second = place.Second,
        Start = calendar.Minute(place.Day, place.Start),
        Minutes = place.Minutes,
        Tasks = [place.Id],
        Promise = PromiseState.Frozen,
    };
}
