using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>The published week as it stands, and everything answers are worked out and put in words with. Pure.</summary>
internal sealed class MendSetting
{
    public MendSetting(AgencyAtHand agency, PlannedWeek week, CareTask? urgent = null)
    {
        agency = HeldPlaces.With(agency);
        week = HeldPlaces.Into(week, agency);
        Agency = agency;
        Week = week;
        Standing = StandingWeek.Of(agency.Roster, agency.Files, week, agency.Now, urgent).WithClosures(agency.Closures, agency.Roster);
        Roads = RoadTravel.Of(agency.Roster);
        People = new PeopleNamed(agency);
        ToldMinutes = (int)agency.Files.Policy.ValueOf("told.range", agency.Today);
    }

    /// <summary>Stops the looking for answers.</summary>
    public CancellationToken Cancel { get; init; }

    public AgencyAtHand Agency { get; }

    public PlannedWeek Week { get; }

    public StandingWeek Standing { get; }

    public PlanCalendar Calendar => Standing.Calendar;

    public RoadTravel Roads { get; }

    public PeopleNamed People { get; }

    /// <summary>Length of the arrival range a family is told, minutes.</summary>
    public int ToldMinutes { get; }

    /// <summary>Now on the minute axis of the week.</summary>
    public int Now => Standing.Problem.Now;

    /// <summary>Whether the second person of a visit only looks on: the patient needs one.</summary>
    public bool IsRideAlong(WeekVisit visit) => visit.Second is not null && Agency.Roster.Patients.First(p => p.Id == visit.Patient).CrewSize == 1;

    public WeekVisit? Visit(string id) => Week.Visits.FirstOrDefault(v => v.Id == id);
}
