using System.Collections.Immutable;
using HomeLine.Agency.CheckIns;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Today;

/// <summary>What is open now, and what lies on the table of whoever runs the day.</summary>
/// <param name="Now">The agency's now.</param>
/// <param name="Waiting">Calls that a red flag stopped; a licensed person decides them.</param>
/// <param name="Open">Troubles and reports with answers or a next step that waits, the most pressing first.</param>
/// <param name="Calls">People still to tell, the one whose time is up soonest first.</param>
/// <param name="Held">Visits at which nobody may ring until a licensed person has decided.</param>
/// <param name="Visits">Today's visits, by time.</param>
/// <param name="Earlier">Visits that could be earlier because time became free.</param>
/// <param name="HandOver">What happened since the last hand-over, open and closed.</param>
/// <param name="HandOverSince">Since when.</param>
public sealed record TodayBoard(
    Instant Now,
    ImmutableArray<OpenItem> Waiting,
    ImmutableArray<OpenItem> Open,
    ImmutableArray<ToTell> Calls,
    ImmutableArray<VisitToday> Held,
    ImmutableArray<VisitToday> Visits,
    ImmutableArray<VisitToday> Earlier,
    ImmutableArray<HandOverLine> HandOver,
    Instant HandOverSince)
{
    /// <summary>Nurses with their names, in roster order.</summary>
    public ImmutableArray<NurseToday> Nurses { get; init; } = [];

    /// <summary>Nurses who, by what they recorded, come too late to their next visit.</summary>
    public ImmutableArray<LateStart> LateStarts { get; init; } = [];

    /// <summary>Homes that ask for signs from which none came in time.</summary>
    public ImmutableArray<MissedCheckIn> MissedCheckIns { get; init; } = [];

    /// <summary>Reports of clinics that are awaited, overdue ones first.</summary>
    public ImmutableArray<ClinicToday> Clinics { get; init; } = [];

    /// <summary>Visits ahead with a lesson, by time.</summary>
    public ImmutableArray<VisitToday> Lessons { get; init; } = [];

    /// <summary>Places held for referrals, by when they are.</summary>
    public ImmutableArray<PlaceToday> Places { get; init; } = [];

    /// <summary>Roads and towns that are closed or will be, the next to end first.</summary>
    public ImmutableArray<ClosureToday> Closures { get; init; } = [];

    /// <summary>The published version of this week; 0 when none is.</summary>
    public int WeekVersion { get; init; }

    /// <summary>Why this version was published, by whom.</summary>
    public string WeekReason { get; init; } = "";
}

/// <summary>Something that waits.</summary>
/// <param name="Id">A trouble's or a report's identifier.</param>
/// <param name="Title">What it is.</param>
/// <param name="At">When it was filed.</param>
/// <param name="Waits">What it waits for.</param>
/// <param name="By">By when; empty when nothing is timed.</param>
/// <param name="Patient">About whom, when it is about a patient.</param>
public sealed record OpenItem(string Id, string Title, Instant At, string Waits, Instant? By, PatientId? Patient)
{
    /// <summary>Whether it is a trouble of the day rather than a dressing report.</summary>
    public bool IsTrouble => Id.StartsWith('T');
}

/// <summary>A visit of today.</summary>
/// <param name="Visit">As published.</param>
/// <param name="PatientName">Who.</param>
/// <param name="NurseName">Who goes.</param>
/// <param name="Standing">Where it stands by the plan.</param>
public sealed record VisitToday(WeekVisit Visit, string PatientName, string NurseName, VisitStanding Standing);

/// <summary>Where a visit stands by the plan; what was recorded says what really happened.</summary>
public enum VisitStanding
{
    /// <summary>Recorded, or should be over.</summary>
    Over,

    /// <summary>Should be under way.</summary>
    UnderWay,

    /// <summary>Within the hour: not moved any more.</summary>
    Frozen,

    Ahead,
}

/// <summary>A clinic that was to give care and has not reported.</summary>
/// <param name="Patient">Whose care.</param>
/// <param name="PatientName">Her name.</param>
/// <param name="Where">The clinic.</param>
/// <param name="ExpectedOn">When it was to be done.</param>
/// <param name="ReportBy">By when it was to report.</param>
/// <param name="IsOverdue">Whether that time is over: then it is ours.</param>
public sealed record ClinicToday(PatientId Patient, string PatientName, string Where, LocalDate ExpectedOn, LocalDateTime ReportBy, bool IsOverdue);

/// <summary>A place held for a referral.</summary>
/// <param name="Id">The number it was asked under.</param>
/// <param name="Name">Who was referred.</param>
/// <param name="NurseName">Who would come.</param>
/// <param name="At">When, branch time.</param>
/// <param name="Until">When it lapses.</param>
public sealed record PlaceToday(string Id, string Name, string NurseName, LocalDateTime At, Instant Until);

/// <summary>A closure that holds or will.</summary>
/// <param name="Id">The trouble it was told under.</param>
/// <param name="What">What is closed.</param>
/// <param name="From">From when, branch time.</param>
/// <param name="To">Until when.</param>
/// <param name="Why">Why.</param>
public sealed record ClosureToday(string Id, string What, LocalDateTime From, LocalDateTime To, string Why);

/// <summary>A nurse as she is found by name or number.</summary>
public sealed record NurseToday(string Id, string Name, string Credential, string Absence);

/// <summary>One line of the hand-over card.</summary>
/// <param name="At">When it was filed.</param>
/// <param name="What">What it was.</param>
/// <param name="Came">What came of it.</param>
/// <param name="IsOpen">Whether it still waits.</param>
public sealed record HandOverLine(Instant At, string What, string Came, bool IsOpen);
