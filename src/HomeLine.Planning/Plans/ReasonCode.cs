using System.Collections.Immutable;

namespace HomeLine.Planning.Plans;

/// <summary>The stable codes of reasons and relaxations; docs/reasons.md says of each what it means and what to do.</summary>
public static class ReasonCode
{
    /// <summary>A task is done in more than one visit.</summary>
    public const string TaskTwice = "task-twice";

    /// <summary>A task is neither done nor named as unmet.</summary>
    public const string TaskForgotten = "task-forgotten";

    /// <summary>A task is named as unmet although a visit does it, or is named twice.</summary>
    public const string UnmetWrong = "unmet-wrong";

    /// <summary>Tasks that belong in one visit are in two, or one of them is left out.</summary>
    public const string TogetherSplit = "together-split";

    /// <summary>The plan names care the problem does not ask for.</summary>
    public const string TaskUnknown = "task-unknown";

    /// <summary>A visit does nothing.</summary>
    public const string VisitEmpty = "visit-empty";

    /// <summary>Two visits share an identifier.</summary>
    public const string VisitIdTwice = "visit-id-twice";

    /// <summary>A visit's minutes are not those of its tasks.</summary>
    public const string MinutesWrong = "minutes-wrong";

    /// <summary>A visit holds care of another patient.</summary>
    public const string OtherPatientsTask = "other-patients-task";

    /// <summary>The patient is not on the list: on hold, out of area, or unknown.</summary>
    public const string PatientUnknown = "patient-unknown";

    /// <summary>The nurse is not on the list.</summary>
    public const string NurseUnknown = "nurse-unknown";

    /// <summary>Care starts before it is due to open.</summary>
    public const string TooEarly = "too-early";

    /// <summary>Care starts after the latest start there is.</summary>
    public const string PastLatest = "past-latest";

    /// <summary>A visit starts before now, or outside the planning days.</summary>
    public const string OutsideHorizon = "outside-horizon";

    /// <summary>Care starts outside the times it is tied to.</summary>
    public const string OutsideStartTimes = "outside-start-times";

    /// <summary>A patient has two visits on a day.</summary>
    public const string TwoVisitsADay = "two-visits-a-day";

    /// <summary>Care follows the one before it too soon.</summary>
    public const string ChainTooSoon = "chain-too-soon";

    /// <summary>A skill is missing.</summary>
    public const string SkillMissing = "skill-missing";

    /// <summary>A licence is missing or ends before the day.</summary>
    public const string LicenceMissing = "licence-missing";

    /// <summary>The patient's home does not receive at that time.</summary>
    public const string HomeClosed = "home-closed";

    /// <summary>The patient does not want this nurse.</summary>
    public const string NurseRefused = "nurse-refused";

    /// <summary>The patient needs a nurse with a trait she lacks.</summary>
    public const string TraitMissing = "trait-missing";

    /// <summary>The nurse has a trait the home excludes.</summary>
    public const string TraitExcluded = "trait-excluded";

    /// <summary>The nurse does not work that day.</summary>
    public const string NotWorking = "not-working";

    /// <summary>The nurse would have to leave home before her shift.</summary>
    public const string BeforeShift = "before-shift";

    /// <summary>The nurse would be home too late.</summary>
    public const string OverrunsShift = "overruns-shift";

    /// <summary>No room for the break.</summary>
    public const string BreakMissing = "break-missing";

    /// <summary>More visits than the nurse takes in a day.</summary>
    public const string TooManyVisits = "too-many-visits";

    /// <summary>More visits of one kind than the nurse takes in a day or a week.</summary>
    public const string TooManyOfKind = "too-many-of-kind";

    /// <summary>Too little rest between two working days.</summary>
    public const string RestShort = "rest-short";

    /// <summary>The nurse cannot be there in time.</summary>
    public const string CannotArrive = "cannot-arrive";

    /// <summary>A two-person visit lacks its second person.</summary>
    public const string SecondMissing = "second-missing";

    /// <summary>A second person is sent where none is asked for, or the same person twice.</summary>
    public const string SecondWrong = "second-wrong";

    /// <summary>A specimen cannot reach a drop point in time.</summary>
    public const string SpecimenLate = "specimen-late";

    /// <summary>A visit that must stay was changed.</summary>
    public const string FixedChanged = "fixed-changed";

    /// <summary>A visit somebody pinned was moved by hand.</summary>
    public const string VisitPinned = "visit-pinned";

    /// <summary>No time is left in which the care may start.</summary>
    public const string NoTimeLeft = "no-time-left";

    /// <summary>The nurse's day has no room.</summary>
    public const string DayFull = "day-full";

    /// <summary>It would fit, but care at greater risk takes the time.</summary>
    public const string OtherCareFirst = "other-care-first";

    /// <summary>Planning was stopped before it was known why the care is left out.</summary>
    public const string SearchStopped = "search-stopped";

    /// <summary>Families who were told a time would have to be moved.</summary>
    public const string MovesTold = "moves-told";

    /// <summary>A visit that must stay stands in the way.</summary>
    public const string FixedInTheWay = "fixed-in-the-way";

    /// <summary>Relaxation: some minutes of overtime.</summary>
    public const string Overtime = "overtime";

    /// <summary>Relaxation: a day later than the latest start.</summary>
    public const string DayLater = "day-later";

    /// <summary>Relaxation: a nurse who is free gains the missing skill, licence or validation.</summary>
    public const string GainScope = "gain-scope";

    /// <summary>Relaxation: a nurse on call.</summary>
    public const string OnCall = "on-call";

    /// <summary>Relaxation: another start time is agreed with the patient or the prescriber.</summary>
    public const string OtherTime = "other-time";

    /// <summary>Mending: the nurse is out.</summary>
    public const string NurseOut = "nurse-out";

    /// <summary>Mending: an overrun or the roads leave no time for it as published.</summary>
    public const string PushedOut = "pushed-out";

    /// <summary>Mending: it stays with its nurse but starts later.</summary>
    public const string PushedLater = "pushed-later";

    /// <summary>A family to tell: another time of the same day.</summary>
    public const string TellOtherTime = "tell-other-time";

    /// <summary>A family to tell: another nurse.</summary>
    public const string TellOtherNurse = "tell-other-nurse";

    /// <summary>A family to tell: another day.</summary>
    public const string TellOtherDay = "tell-other-day";

    /// <summary>A family to tell: nobody comes, and somebody will call about it.</summary>
    public const string TellNobody = "tell-nobody";

    /// <summary>A family to tell: late in the promised range.</summary>
    public const string TellLaterInRange = "tell-later-in-range";

    /// <summary>Its care is done in another visit of the patient.</summary>
    public const string TellJoined = "tell-joined";

    /// <summary>Why here: the best other place makes critical care later.</summary>
    public const string WhyCritical = "why-critical";

    /// <summary>Why here: the best other place makes care later.</summary>
    public const string WhyRisk = "why-risk";

    /// <summary>Why here: the best other place misses a duty.</summary>
    public const string WhyDuties = "why-duties";

    /// <summary>Why here: the best other place takes more driving, waiting, overtime or one more visit.</summary>
    public const string WhyWork = "why-work";

    /// <summary>Why here: the best other place suits the people less.</summary>
    public const string WhyPeople = "why-people";

    /// <summary>Why here: the best other place does care earlier than needed.</summary>
    public const string WhyLife = "why-life";

    /// <summary>Why here: there is no other place.</summary>
    public const string WhyOnly = "why-only";

    /// <summary>Why here: another place does as well.</summary>
    public const string WhyTie = "why-tie";

    /// <summary>Why here: another place would be better, all else being as it is.</summary>
    public const string WhyNotBest = "why-not-best";

    /// <summary>Every code, in order.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        TaskTwice, TaskForgotten, UnmetWrong, TogetherSplit, TaskUnknown, VisitEmpty, VisitIdTwice, MinutesWrong, OtherPatientsTask,
        PatientUnknown, NurseUnknown, TooEarly, PastLatest, OutsideHorizon, OutsideStartTimes, TwoVisitsADay, ChainTooSoon,
        SkillMissing, LicenceMissing, HomeClosed, NurseRefused, TraitMissing, TraitExcluded, NotWorking, BeforeShift, OverrunsShift,
        BreakMissing, TooManyVisits, TooManyOfKind, RestShort, CannotArrive, SecondMissing, SecondWrong, SpecimenLate, FixedChanged, VisitPinned,
        NoTimeLeft, DayFull, OtherCareFirst, SearchStopped, MovesTold, FixedInTheWay, Overtime, DayLater, GainScope, OnCall, OtherTime,
        NurseOut, PushedOut, PushedLater, TellOtherTime, TellOtherNurse, TellOtherDay, TellNobody, TellLaterInRange, TellJoined,
        WhyCritical, WhyRisk, WhyDuties, WhyWork, WhyPeople, WhyLife, WhyOnly, WhyTie, WhyNotBest,
    ];
}
