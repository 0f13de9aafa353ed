using System.Collections.Immutable;
using System.Text.Json.Serialization;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.RedFlags;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>Something that breaks a day, as somebody told it. Times without a zone are branch time.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(NurseIsOut), "nurse-out")]
[JsonDerivedType(typeof(RunsLate), "runs-late")]
[JsonDerivedType(typeof(RoadShut), "road-shut")]
[JsonDerivedType(typeof(PumpAlarm), "pump-alarm")]
[JsonDerivedType(typeof(AtTheDoor), "at-the-door")]
[JsonDerivedType(typeof(DoseTaken), "dose-taken")]
[JsonDerivedType(typeof(InHospital), "in-hospital")]
[JsonDerivedType(typeof(TimeFreed), "time-freed")]
[JsonDerivedType(typeof(CanWeTakeIt), "can-we-take-it")]
[JsonDerivedType(typeof(RoadOpenAgain), "road-open-again")]
[JsonDerivedType(typeof(ClinicSilent), "clinic-silent")]
[JsonDerivedType(typeof(LessonOff), "lesson-off")]
public abstract record TroubleEntry;

/// <summary>A nurse calls out, for the day or from a time on.</summary>
/// <param name="Nurse">Her number.</param>
/// <param name="From">From when she makes no visit.</param>
/// <param name="Through">Last day, included.</param>
/// <param name="Why">In a word, for example <c>ill</c>; no clinical details.</param>
public sealed record NurseIsOut(string Nurse, LocalDateTime From, LocalDate Through, string Why) : TroubleEntry;

/// <summary>A nurse runs behind with the visit she is in or on the way to.</summary>
/// <param name="Nurse">Her number.</param>
/// <param name="Minutes">Minutes behind, 1 to 600.</param>
public sealed record RunsLate(string Nurse, int Minutes) : TroubleEntry;

/// <summary>Roads are closed for a while.</summary>
/// <param name="Crossings">Names of bridges and passes that cannot be crossed.</param>
/// <param name="Towns">Codes of towns nobody can drive into or out of.</param>
/// <param name="From">From when.</param>
/// <param name="To">Until when; after <paramref name="From"/>.</param>
/// <param name="Why">For example <c>snow</c>.</param>
public sealed record RoadShut(ImmutableArray<string> Crossings, ImmutableArray<string> Towns, LocalDateTime From, LocalDateTime To, string Why) : TroubleEntry
{
    /// <summary>Set when it opened before its time.</summary>
    public RoadOpened? Opened { get; init; }

    /// <summary>Until when it really holds.</summary>
    [JsonIgnore]
    public LocalDateTime Ends => Opened is { } opened && opened.At < To ? opened.At : To;

    /// <summary>Whether it holds at a moment; the end is not in it.</summary>
    public bool HoldsAt(LocalDateTime at) => at >= From && at < Ends;
}

/// <summary>A closure lifted before its time.</summary>
/// <param name="At">When.</param>
/// <param name="By">Who said so.</param>
/// <param name="Why">Why, for example <c>ploughed</c>.</param>
public sealed record RoadOpened(LocalDateTime At, string By, string Why);

/// <summary>A road opened before its time: what was moved because of it is looked at again.</summary>
/// <param name="Closure">The closure's number.</param>
/// <param name="Moved">What was moved.</param>
public sealed record RoadOpenAgain(string Closure, ImmutableArray<VisitChange> Moved) : TroubleEntry;

/// <summary>A call during which the symptom screen comes before everything else.</summary>
public abstract record ScreenedEntry : TroubleEntry
{
    public required PatientId Patient { get; init; }

    /// <summary>The line it is about.</summary>
    public required LineId Line { get; init; }

    /// <summary>Who calls.</summary>
    public required string Caller { get; init; }

    /// <summary>The screen's answers by question.</summary>
    public required ImmutableDictionary<string, ScreenAnswer> Answers { get; init; }

    /// <summary>The caller's own words.</summary>
    public string InTheirWords { get; init; } = "";
}

/// <summary>A pump sounds an alarm.</summary>
public sealed record PumpAlarm : ScreenedEntry
{
    public required AlarmKind Alarm { get; init; }

    /// <summary>Whether the steps of the phone script ended it; empty until they were read.</summary>
    public bool? Solved { get; init; }
}

/// <summary>What the pump says.</summary>
public enum AlarmKind
{
    /// <summary>Air in the tubing.</summary>
    Air,

    /// <summary>It cannot push against something.</summary>
    Blocked,

    /// <summary>The battery is low or empty.</summary>
    Battery,

    /// <summary>The bag or cassette is nearly empty or empty.</summary>
    BagEmpty,

    /// <summary>Something else, or nobody can say.</summary>
    Other,
}

/// <summary>A patient has already taken the dose that a level was to be drawn before.</summary>
public sealed record DoseTaken : ScreenedEntry
{
    /// <summary>When the dose was taken.</summary>
    public required Instant TakenAt { get; init; }
}

/// <summary>A nurse stands before a home and the visit cannot be made as planned.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Answer">What happened.</param>
/// <param name="Tries">What was tried so far, in order.</param>
/// <param name="Note">What else matters; needed for a refusal and an unsafe scene.</param>
public sealed record AtTheDoor(string Visit, DoorAnswer Answer, ImmutableArray<DoorTry> Tries, string Note) : TroubleEntry;

/// <summary>What happened at the door.</summary>
public enum DoorAnswer
{
    NobodyHome,
    Refused,

    /// <summary>The nurse does not go in, or leaves.</summary>
    Unsafe,
}

/// <summary>One try to reach somebody.</summary>
/// <param name="At">When.</param>
/// <param name="How">How, for example <c>rang and knocked</c>.</param>
public sealed record DoorTry(LocalTime At, string How);

/// <summary>A patient was admitted.</summary>
/// <param name="Patient">Who.</param>
/// <param name="From">Since when; empty when unknown, then from today, said so.</param>
/// <param name="Where">Where, for example <c>hospital</c>.</param>
public sealed record InHospital(PatientId Patient, LocalDate? From, string Where) : TroubleEntry;

/// <summary>A nurse has time before a visit that was promised later.</summary>
/// <param name="Visit">The visit that could be earlier.</param>
public sealed record TimeFreed(string Visit) : TroubleEntry;

/// <summary>A referral on the phone: can we take it?</summary>
/// <param name="Referral">What was said.</param>
public sealed record CanWeTakeIt(ReferralFacts Referral) : TroubleEntry
{
    /// <summary>Set when the place that was held for it was let go.</summary>
    public PlaceReleased? Released { get; init; }

    /// <summary>The number the referral is kept under since an answer was chosen; closing it lets the place go.</summary>
    public string? KeptAs { get; init; }
}

/// <summary>A clinic was to do the care and its report did not come in time: it is ours now.</summary>
/// <param name="Patient">Whose care.</param>
public sealed record ClinicSilent(PatientId Patient) : TroubleEntry;

/// <summary>A lesson cannot be held as planned, for example because who learns is ill.</summary>
/// <param name="Visit">The visit with the lesson.</param>
/// <param name="Why">Why, in a few words.</param>
public sealed record LessonOff(string Visit, string Why) : TroubleEntry;
